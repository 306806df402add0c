/** R1 to R15 as bars about a zero line, with a word for those that are low. */
import { html, nothing, svg } from "lit";
import { t, tMaybe } from "../words/index.js";
import { index } from "../words/numbers.js";
import { patch } from "./patch.js";

const WIDTH = 120;
const HEIGHT = 14;
const LOW = -50; // the scale's left end; what lies beyond is cut off with a mark

/** @param {any} cri the kernel's "cri" */
export function indexBars(cri) {
  const x = (/** @type {number} */ value) => ((Math.max(value, LOW) - LOW) / (100 - LOW)) * WIDTH;
  return html`<table class="bars">
    <caption>
      ${t("bars.title")}
    </caption>
    <thead class="spoken">
      <tr>
        <th scope="col">${t("bars.sample")}</th>
        <th scope="col">${t("bars.value")}</th>
        <td></td>
        <th scope="col">${t("bars.word")}</th>
      </tr>
    </thead>
    <tbody>
      ${cri.r.map((/** @type {number} */ value, /** @type {number} */ k) => {
        const [from, to] = [Math.min(x(0), x(value)), Math.max(x(0), x(value))];
        const word = cri.r_words[k];
        return html`<tr class=${word ? "low" : ""}>
          <th scope="row">
            R${k + 1} <span class="hint">${cri.r_names[k]}</span> ${patch(cri.pairs[k])}
          </th>
          <td class="value">${index(value)}</td>
          <td>
            <svg viewBox="0 0 ${WIDTH} ${HEIGHT}" aria-hidden="true">
              ${svg`<rect class="bar" x=${from} y="2" width=${to - from} height=${HEIGHT - 4}></rect>
                <line class="zero" x1=${x(0)} x2=${x(0)} y1="0" y2=${HEIGHT}></line>
                ${value < LOW ? svg`<path class="beyond" d="M6 0L0 ${HEIGHT / 2}L6 ${HEIGHT}z"></path>` : nothing}`}
            </svg>
          </td>
          <td class="word">${word ? tMaybe(`bars.${word}`, word) : ""}</td>
        </tr>`;
      })}
    </tbody>
  </table>
  <p class="hint">${t("bars.pairs")}</p>`;
}
