/** Through one day: when a light holds behind what hangs, when it is near, out or not known. */
import { html, svg } from "lit";
import { t } from "../words/index.js";

const WIDTH = 340;
const DAY = 24 * 60;
const FLOOR = 30;

/** @param {number} minute */
const across = (minute) => 2 + (minute / DAY) * (WIDTH - 4);

/** Height of each verdict: full, half, a line; not known is nothing. */
const HIGH = /** @type {Record<string, number>} */ ({ holds: 24, near: 12, out: 1 });

/**
 * @param {any[]} stretches  as "hold" answers them
 * @param {number[]} read    minutes of the readings
 * @param {number} now       the minute that is looked at
 * @param {string} words     what it says
 */
export function heldDay(stretches, read, now, words) {
  return html`<figure class="chart">
    <svg viewBox="0 0 ${WIDTH} 50" role="img" aria-label=${words}>
      ${svg`
        ${stretches.map(({ verdict, from_minute: from, to_minute: to }) => {
          const high = HIGH[verdict] ?? 0;
          return svg`<rect class=${verdict === "holds" ? "ink" : "line"} x=${across(from)} y=${FLOOR - high}
            width=${across(to + 1) - across(from)} height=${high}></rect>`;
        })}
        ${read.map((minute) => svg`<circle class="ink" cx=${across(minute)} cy=${FLOOR + 4} r="2.5"></circle>`)}
        <line class="pen" x1=${across(now)} x2=${across(now)} y1="0" y2=${FLOOR + 8}></line>
        ${[0, 6, 12, 18, 24].map(
          (hour) =>
            svg`<text x=${across(hour * 60)} y="48" text-anchor=${hour === 0 ? "start" : hour === 24 ? "end" : "middle"}>${hour}:00</text>`,
        )}
      `}
    </svg>
    <figcaption class="hint">${t("hold.key")}</figcaption>
  </figure>`;
}
