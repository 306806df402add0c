/** What several places do with a thing of the book: delete it, and settle what was edited twice. */
import { html, nothing } from "lit";
import { sayWithUndo } from "../../parts/toast.js";
import { book, reportFault } from "../../store/index.js";
import { t } from "../../words/index.js";
import { readingWords } from "../../words/reading.js";

/** @typedef {import("../../store/log/book.js").Thing} Thing */

/** @param {Thing} thing */
export async function deleteThing(thing) {
  const undo = await book.remove(thing.id);
  sayWithUndo(t("book.deleted", { name: thing.data.name ?? t("book.reading") }), undo);
}

/**
 * When a thing was edited in two places at once: every version, to choose the one that stands.
 * @param {Thing} thing
 */
export function versions(thing) {
  if (thing.heads.length < 2) return nothing;
  const words = (/** @type {Record<string, any>} */ data) =>
    thing.kind === "reading"
      ? [readingWords(data), data.note].filter(Boolean).join(". ")
      : data.name;
  return html`<span class="versions" role="group" aria-label=${t("book.twoVersions")}>
    ${t("book.twoVersions")}
    ${thing.heads.map(
      (head) => html`<button
        type="button"
        class="chip"
        @click=${() =>
          (head.gone ? book.remove(thing.id) : book.edit(thing.id, head.data)).catch(reportFault)}
      >
        ${head.gone ? t("book.versionGone") : t("book.keepVersion", { name: words(head.data) ?? "" })}
      </button>`,
    )}
  </span>`;
}
