/**
 * A surface as it stands before you: each point a cell with its level and how far it is off, told
 * by sign and shape, and the lines of one level between them. The numbers are the kernel's.
 */
import { html, nothing, svg } from "lit";
import { ref } from "lit/directives/ref.js";
import { t } from "../words/index.js";
import { signedStops } from "../words/numbers.js";

/**
 * @typedef {object} Cell
 * @property {number} across  0 to 1
 * @property {number} up      0 to 1
 * @property {string} [level] as typed
 * @property {string} [planned] the level that was to be
 * @property {number} [stops] against the aim
 * @property {boolean} [holds]
 * @property {string} [words] how far off, said
 * @property {string | null} [problem]
 */

/** @param {Cell} cell */
const markOf = ({ stops, holds, problem }) => {
  if (problem) return "!";
  if (stops === undefined) return "";
  return holds ? "●" : stops > 0 ? "▲" : "▼";
};

/** @param {Cell} cell @param {number} index */
const heard = (cell, index) =>
  t("sweep.point", {
    n: index + 1,
    what:
      cell.problem ??
      [cell.level, cell.words, cell.planned && t("sweep.plan", { n: cell.planned })]
        .filter(Boolean)
        .join(", ") ??
      "",
  });

/** Puts a free point where it was read; by property, as the policy lets no style attribute in. @param {Cell} cell */
const placed =
  ({ across, up }) =>
  (/** @type {Element | undefined} */ element) => {
    if (!(element instanceof HTMLElement)) return;
    element.style.left = `${across * 100}%`;
    element.style.bottom = `${up * 100}%`;
  };

/** The order in which a grid is drawn: from the top. @param {number} count @param {number | null} columns */
const fromTop = (count, columns) =>
  Array.from({ length: count }, (_, k) => k).sort((a, b) =>
    columns ? Math.floor(b / columns) - Math.floor(a / columns) || a - b : a - b,
  );

/** @param {Cell} cell */
const styleOf = (cell) =>
  cell.stops === undefined ? "" : cell.holds ? "holds" : cell.stops > 0 ? "over" : "under";

/**
 * @param {object} map
 * @param {Cell[]} map.cells  row by row from the lower left, or free
 * @param {number | null} map.columns  null: free points
 * @param {any} map.lines     the kernel's map, or null
 * @param {string} map.title
 * @param {number} [map.current]  the point that is typed into
 * @param {number} [map.aim]      the point that is the aim
 * @param {string} [map.photo]    what free points lie on
 * @param {(index: number) => void} [map.onTouch]
 */
export function surfaceMap({ cells, columns, lines, title, current, aim, photo, onTouch }) {
  const shown = fromTop(cells.length, columns).map((index) => {
    const cell = cells[index];
    const inside = html`<span class="level">${cell.level || "–"}</span>
      <span class="off"><span class="mark">${markOf(cell)}</span> ${cell.stops === undefined || cell.problem ? "" : signedStops(cell.stops)}</span>${cell.planned ? html`<span class="off plan">${t("sweep.plan", { n: cell.planned })}</span>` : nothing}`;
    const place = columns ? undefined : placed(cell);
    const style = `cell ${styleOf(cell)} ${index === aim ? "aim" : ""}`;
    return onTouch
      ? html`<button
          type="button"
          class=${style}
          ${place ? ref(place) : nothing}
          aria-current=${index === current ? "true" : nothing}
          aria-label=${heard(cell, index)}
          @click=${(/** @type {Event} */ event) => {
            event.stopPropagation();
            onTouch(index);
          }}
        >
          ${inside}
        </button>`
      : html`<span class=${style} ${place ? ref(place) : nothing} role="img" aria-label=${heard(cell, index)}
          >${inside}</span
        >`;
  });
  return html`<div
    class="surface ${columns ? "grid" : "free"} ${columns && columns > 5 ? "dense" : ""}"
    role="group"
    aria-label=${title}
    data-columns=${columns ?? nothing}
  >
    ${photo ? html`<img src=${photo} alt="" />` : nothing} ${contourLines(lines)} ${shown}
  </div>`;
}

/** @param {any} map the kernel's answer */
function contourLines(map) {
  if (!map) return nothing;
  const line = (/** @type {number[][]} */ path) =>
    path.map(([across, up]) => `${across * 100},${100 - up * 100}`).join(" ");
  return html`<svg class="lines" viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden="true">
    ${map.lines.map((/** @type {any} */ { stops, paths }) => {
      const style = Math.abs(stops) < 1e-6 ? "aim" : stops > 0 ? "over" : "under";
      return paths.map(
        (/** @type {number[][]} */ path) =>
          svg`<polyline class=${style} points=${line(path)}></polyline>`,
      );
    })}
  </svg>`;
}
