/** One reading in a list: what it read, when, and how it stood. Leads to the whole reading. */
import { html, nothing } from "lit";
import { patch } from "../../charts/patch.js";
import { verdictMark } from "../../parts/verdict.js";
import { verdicts } from "../../store/log/search.js";
import { t, tMaybe } from "../../words/index.js";
import { joined } from "../../words/isolated.js";
import { whenRead } from "../../words/numbers.js";
import { readingWords } from "../../words/reading.js";

/**
 * @param {import("../../store/log/book.js").Thing} reading
 * @param {object} [shown]
 * @param {string} [shown.title]
 * @param {string} [shown.where]
 * @param {string} [shown.verdict]
 */
export function readingRow(reading, { title, where, verdict } = {}) {
  const { data } = reading;
  const twice = reading.heads.length > 1;
  const hint = [
    tMaybe(`stage.${data.stage}`, ""),
    whenRead(reading.at),
    where,
    data.follows ? t("reading.clock") : "",
  ].filter(Boolean);
  return html`<li>
    <a class="reading" href="#reading/${reading.id}">
      <span>
        ${title ? html`<strong>${title}</strong>` : nothing} ${readingWords(data, verdicts.whiteOf(reading))}
        <span class="hint">${joined(hint)}</span>
        ${data.note ? html`<span class="hint note">${data.note}</span>` : nothing}
      </span>
      ${patch([verdicts.whiteOf(reading)?.grey])}
      ${twice ? html`<span class="tag">${t("book.twice")}</span>` : nothing}
      ${verdict ? verdictMark(/** @type {"out"} */ (verdict)) : nothing}
    </a>
  </li>`;
}
