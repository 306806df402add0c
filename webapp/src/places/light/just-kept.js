/** What was kept last, with a way back and a way on: take it back, or read the same light again. */
import { html } from "lit";
import { t } from "../../words/index.js";
import { timeOfDay } from "../../words/numbers.js";

/** @param {import("../../store/drafts/light-draft.js").Last} last */
export const keptWords = ({ at, name }) => t("light.kept", { time: timeOfDay(at), name });

/**
 * @param {import("../../store/drafts/light-draft.js").Last} last
 * @param {{onUndo: () => void, onAgain: () => void, twin: string, onTwin: () => void}} does
 *   twin: the name of a light that is the same
 */
export function justKept(last, { onUndo, onAgain, twin, onTwin }) {
  return html`<div class="just-kept">
    <p class="kept">${keptWords(last)}</p>
    <div class="actions">
      <button type="button" class="quiet" @click=${onUndo}>${t("undo")}</button>
      <button type="button" class="quiet" @click=${onAgain}>${t("light.again")}</button>
      <button type="button" class="quiet" @click=${onTwin}>
        ${t("light.twin", { name: last.name, twin })}
      </button>
    </div>
  </div>`;
}
