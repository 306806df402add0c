/**
 * The colour vector graphic of ANSI/IES TM-30: the reference is the circle, the light the other
 * outline; each arrow is what happens to the colours of one hue. Outwards is more vivid.
 */
import { html, nothing, svg } from "lit";
import { t } from "../words/index.js";
import { index, signedPercent } from "../words/numbers.js";
import { figureTable } from "./figures.js";
import { patch } from "./patch.js";

const SIZE = 300;
const ROOM = 1.25; // how far beyond the farthest point the drawing reaches

/** @param {any} tm30 the kernel's "tm30" */
export function colourVectors(tm30) {
  const { polygon, arrows, bin_edges_deg: edges } = tm30.graphic;
  const whole = (/** @type {(number | null)[]} */ point) => point.every((value) => value != null);
  const seen = polygon.filter(whole);
  const far = Math.max(1, ...seen.map((/** @type {number[]} */ [a, b]) => Math.hypot(a, b)));
  const scale = SIZE / 2 / (far * ROOM);
  const at = (/** @type {number[]} */ [a, b]) =>
    [SIZE / 2 + a * scale, SIZE / 2 - b * scale].map((value) => value.toFixed(1));
  const turn = (/** @type {number} */ degrees, /** @type {number} */ radius) => {
    const angle = (degrees * Math.PI) / 180;
    return at([radius * Math.cos(angle), radius * Math.sin(angle)]);
  };
  const width = 360 / edges.length;
  return html`<figure class="chart vectors">
    <svg viewBox="0 0 ${SIZE} ${SIZE}" role="img" aria-label=${t("vectors.title")}>
      ${svg`
        <defs><marker id="tip" viewBox="0 0 8 8" refX="6" refY="4" markerWidth="5" markerHeight="5"
          orient="auto-start-reverse"><path d="M0 0L8 4L0 8z"></path></marker></defs>
        ${edges.map((/** @type {number} */ edge, /** @type {number} */ bin) => {
          const [x, y] = turn(edge, far * ROOM);
          const [tx, ty] = turn(edge + width / 2, far * 1.15);
          return svg`<line class="grid" x1=${SIZE / 2} y1=${SIZE / 2} x2=${x} y2=${y}></line>
            <text x=${tx} y=${Number(ty) + 4} text-anchor="middle">${bin + 1}</text>`;
        })}
        <circle class="reference" cx=${SIZE / 2} cy=${SIZE / 2} r=${scale}></circle>
        <polygon class="line" points=${seen.map((/** @type {number[]} */ point) => at(point).join(",")).join(" ")}></polygon>
        ${arrows.map((/** @type {number[][]} */ [from, to]) => {
          if (!whole(from) || !whole(to)) return nothing;
          const [[x1, y1], [x2, y2]] = [at(from), at(to)];
          return svg`<line class="arrow" x1=${x1} y1=${y1} x2=${x2} y2=${y2} marker-end="url(#tip)"></line>`;
        })}
      `}
    </svg>
    <figcaption class="hint">${t("vectors.legend")}</figcaption>
    <details class="more">
      <summary>${t("vectors.table")}</summary>
      ${figureTable(
        t("vectors.title"),
        [t("vectors.bin"), t("vectors.chroma"), t("vectors.hue"), "Rf"],
        tm30.bins.map((/** @type {number | null} */ fidelity, /** @type {number} */ bin) => [
          html`${bin + 1} ${hueWords(bin)} ${patch(tm30.pairs[bin])}`,
          signedPercent(tm30.chroma_shift[bin]),
          tm30.hue_shift[bin] == null ? "–" : signedPercent(tm30.hue_shift[bin] * 100),
          index(fidelity),
        ]),
      )}
      <p class="hint">${t("bars.pairs")}</p>
    </details>
  </figure>`;
}

/** Names for some of the bins, where the hue is plain. @param {number} bin from 0 */
function hueWords(bin) {
  const names = /** @type {const} */ ({ 0: "red", 4: "yellow", 7: "green", 11: "blue" });
  const name = names[/** @type {0} */ (bin)];
  return name ? t(`vectors.${name}`) : "";
}
