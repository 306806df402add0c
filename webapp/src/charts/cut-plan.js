/** Where each piece lies on the rolls: every roll a band, its length across the page. */
import { html, svg } from "lit";
import { t } from "../words/index.js";

const WIDTH = 340;
const MOST = 12; // rolls on screen

/**
 * @param {any} plan  the kernel's answer to "windows"
 */
export function cutPlan(plan) {
  const rolls = plan.rolls.slice(0, MOST);
  const longest = Math.max(...rolls.map((/** @type {any} */ roll) => roll.used_m));
  const scale = (WIDTH - 2) / longest;
  return html`<figure class="chart">
    ${rolls.map((/** @type {any} */ roll, /** @type {number} */ i) => band(roll, i, scale))}
    <figcaption>
      <ol class="key">
        ${windowNames(plan).map((name) => html`<li>${name}</li>`)}
      </ol>
      ${
        plan.rolls.length > MOST
          ? html`<span class="hint">${t("windows.moreRolls", { n: plan.rolls.length - MOST })}</span>`
          : ""
      }
    </figcaption>
  </figure>`;
}

/** Names by number of the window, as the pieces bear them. @param {any} plan */
function windowNames(plan) {
  /** @type {string[]} */
  const names = [];
  for (const cut of plan.cuts) names[cut.window] = cut.name;
  return names;
}

/** @param {any} roll @param {number} index @param {number} scale */
function band(roll, index, scale) {
  const height = roll.width_m * scale;
  const words = roll.pieces.map((/** @type {any} */ p) => `${p.name} ${p.words}`).join(", ");
  const label = t("windows.planWords", { n: index + 1, words: roll.words, pieces: words });
  const of = [t("windows.roll", { n: index + 1, words: roll.words }), roll.gels.join(" + ")];
  return html`<p class="hint">${of.filter(Boolean).join(": ")}</p>
    <svg class="cut" viewBox="0 0 ${WIDTH} ${(height + 2).toFixed(1)}" role="img" aria-label=${label}>
      ${svg`<rect class="roll" x="1" y="1" width=${roll.used_m * scale} height=${height}></rect>
        ${roll.pieces.map((/** @type {any} */ piece) => drawn(piece, scale))}`}
    </svg>`;
}

/** @param {any} piece @param {number} scale */
function drawn(piece, scale) {
  const [x, y] = [1 + piece.at_along_m * scale, 1 + piece.at_across_m * scale];
  const [width, height] = [piece.along_m * scale, piece.across_m * scale];
  const room = Math.min(width, height) > 12;
  return svg`<rect class="piece" x=${x} y=${y} width=${width} height=${height}></rect>
    ${
      room
        ? svg`<text class="number" x=${x + width / 2} y=${y + height / 2 + 4} text-anchor="middle">${piece.window + 1}</text>`
        : ""
    }`;
}
