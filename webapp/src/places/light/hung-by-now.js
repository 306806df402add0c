/** A light read again: whether what was to hang on it hangs by now, changed with one tap. */
import { html, nothing } from "lit";
import { t } from "../../words/index.js";

/** @param {string[]} pack labels of gels */
const words = (pack) => pack.join(" + ") || t("pack.bare");

/** @param {string[]} one @param {string[]} other */
const same = (one, other) => [...one].sort().join("\n") === [...other].sort().join("\n");

/**
 * @param {object} hung
 * @param {import("../../store/drafts/light-draft.js").Offered | null} hung.offered
 * @param {string[]} hung.before   what was on it at its reading before
 * @param {string[]} hung.value    what is said to be on it now
 * @param {(pack: string[]) => void} hung.onChange
 */
export function hungByNow({ offered, before, value, onChange }) {
  const choices = [
    ...(offered
      ? [{ pack: offered.pack, label: t(`hungNow.${offered.by}`, { pack: words(offered.pack) }) }]
      : []),
    { pack: before, label: t("hungNow.before", { pack: words(before) }) },
    { pack: /** @type {string[]} */ ([]), label: t("hungNow.bare") },
  ];
  const unlike = choices.filter(
    ({ pack }, i) => choices.findIndex((one) => same(one.pack, pack)) === i,
  );
  if (unlike.length < 2) return nothing;
  return html`<div class="row" role="group" aria-label=${t("hungNow.title")}>
    ${unlike.map(
      ({ pack, label }) => html`<button
        type="button"
        class="chip"
        aria-pressed=${same(pack, value) ? "true" : "false"}
        @click=${() => onChange([...pack])}
      >
        ${label}
      </button>`,
    )}
  </div>`;
}
