/**
 * Drift of one light: warmth, tint and amount of light against its first reading, one strip each,
 * over the readings in time. The numbers are the kernel's; here they are only laid out.
 */
import { html, nothing, svg } from "lit";
import { t } from "../words/index.js";
import { duv, mired, stopsChange, whenRead } from "../words/numbers.js";

const WIDTH = 340;
const STRIP = 84;
const PAD = { left: 10, right: 10, top: 22, bottom: 10 };

const STRIPS = /** @type {const} */ ([
  { key: "mired", label: "drift.warmth", words: mired },
  { key: "duv", label: "drift.tint", words: duv },
  { key: "stops", label: "drift.light", words: stopsChange },
]);

/**
 * @param {any[]} points of the kernel's "since", the oldest first
 * @param {{title: string}} options
 */
export function driftChart(points, { title }) {
  const hours = points.map((point) => point.hours);
  const span = Math.max(...hours) - Math.min(...hours);
  // Within a day and a half true to time; over weeks one step a reading, or the days would be dots.
  // So also where a clock was set back.
  const forward = hours.every((hour, i) => i === 0 || hour >= hours[i - 1]);
  const toTime = forward && span > 0 && span <= 36;
  const last = points.length - 1;
  const across = (/** @type {number} */ i) =>
    PAD.left +
    (WIDTH - PAD.left - PAD.right) *
      (toTime ? (hours[i] - hours[0]) / span : i / Math.max(last, 1));
  const shown = STRIPS.filter(({ key }) => points.some((point) => point.drift[key] != null));
  return html`<figure class="chart drift">
    <svg
      viewBox="0 0 ${WIDTH} ${STRIP * shown.length + 16}"
      role="img"
      aria-label="${title}. ${shown
        .map(
          ({ key, label, words }) =>
            `${t("drift.most", { label: t(label) })}: ${words(farthest(points, key))}`,
        )
        .join(". ")}"
    >
      ${shown.map((strip, row) => stripOf(strip, points, across, row * STRIP))}
      ${svg`<text x=${PAD.left} y=${STRIP * shown.length + 11}>${whenRead(points[0].at)}</text>
        <text x=${WIDTH - PAD.right} y=${STRIP * shown.length + 11} text-anchor="end">${whenRead(
          points[last].at,
        )}</text>`}
    </svg>
    ${toTime ? nothing : html`<figcaption class="hint">${t("drift.steps")}</figcaption>`}
  </figure>`;
}

/** What went farthest from the first reading. @param {any[]} points @param {string} key */
function farthest(points, key) {
  const known = points.map((point) => point.drift[key]).filter((value) => value != null);
  return known.reduce((most, value) => (Math.abs(value) >= Math.abs(most) ? value : most), 0);
}

/**
 * @param {typeof STRIPS[number]} strip
 * @param {any[]} points
 * @param {(i: number) => number} across
 * @param {number} top
 */
function stripOf({ key, label, words }, points, across, top) {
  const values = points.map((point) => point.drift[key]);
  const known = values.filter((value) => value != null);
  const most = Math.max(...known, 0);
  const least = Math.min(...known, 0);
  const high = STRIP - PAD.top - PAD.bottom;
  const up = (/** @type {number} */ value) =>
    top + PAD.top + high * (most === least ? 0.5 : (most - value) / (most - least));
  const dots = values.flatMap((value, i) => (value == null ? [] : [[across(i), up(value)]]));
  return svg`<g class="strip">
    <text x=${PAD.left} y=${top + 14}>${t("drift.most", { label: t(label) })}</text>
    <text class="number" x=${WIDTH - PAD.right} y=${top + 14} text-anchor="end">${words(
      farthest(points, key),
    )}</text>
    <line class="zero" x1=${PAD.left} x2=${WIDTH - PAD.right} y1=${up(0)} y2=${up(0)}></line>
    <polyline points=${dots.map((dot) => dot.map((n) => n.toFixed(1)).join(",")).join(" ")}></polyline>
    ${dots.map(([x, y]) => svg`<circle cx=${x.toFixed(1)} cy=${y.toFixed(1)} r="3.5"></circle>`)}
  </g>`;
}
