/**
 * The sun's height and the estimated colour of daylight through one day, with readings laid over.
 * All values come from the kernel; here they are only laid out.
 */
import { html, svg } from "lit";
import { t } from "../words/index.js";
import { joined } from "../words/isolated.js";
import { kelvin } from "../words/numbers.js";

const WIDTH = 340;
const PAD = { left: 52, right: 10, top: 10, bottom: 24 };
const DAY = 24 * 60;

/** @param {number} minute */
const across = (minute) => PAD.left + (minute / DAY) * (WIDTH - PAD.left - PAD.right);

/** @param {number} height @param {number} low @param {number} high */
const scale = (height, low, high) => (/** @type {number} */ value) =>
  height - PAD.bottom - ((value - low) / (high - low)) * (height - PAD.top - PAD.bottom);

/** @param {{x: number, y: number}[]} points */
const line = (points) => points.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join(" ");

/** @param {number} height */
const hours = (height) =>
  [0, 6, 12, 18, 24].map(
    (
      hour,
    ) => svg`<line class="grid" x1=${across(hour * 60)} x2=${across(hour * 60)} y1=${PAD.top} y2=${height - PAD.bottom}></line>
      <text x=${across(hour * 60)} y=${height - 8} text-anchor=${hour === 24 ? "end" : "middle"}>${hour}:00</text>`,
  );

/** Ends of a span in minutes; one that reaches beyond the day ends with it. @param {any} span */
export const ends = (span) => [span.from?.minute ?? 0, span.to?.minute ?? DAY];

/**
 * @param {any} day  the kernel's answer to "sun"
 */
export function sunHeight(day) {
  const height = 190;
  const heights = day.curve.map((/** @type {any} */ one) => one.altitude_deg);
  const [low, high] = [Math.min(-18, ...heights), Math.max(30, ...heights) + 5];
  const y = scale(height, low, high);
  const points = day.curve.map((/** @type {any} */ one) => ({
    x: across(one.minute),
    y: y(one.altitude_deg),
    minute: one.minute,
  }));
  const band = (/** @type {any} */ span, /** @type {string} */ kind, /** @type {number} */ top) => {
    const [from, to] = ends(span);
    return svg`<rect class=${kind} x=${across(from)} width=${Math.max(1, across(to) - across(from))} y=${top} height="8"></rect>`;
  };
  const direct = day.window?.direct ?? [];
  return html`<figure class="chart">
    <svg viewBox="0 0 ${WIDTH} ${height}" role="img" aria-label=${t("sun.chart")}>
      ${svg`
        <defs>
          <pattern id="sun-dots" width="4" height="4" patternUnits="userSpaceOnUse"><circle class="ink" cx="2" cy="2" r="1.2"></circle></pattern>
          <pattern id="sun-stripes" width="4" height="4" patternUnits="userSpaceOnUse"><path class="pen" d="M0 4 4 0"></path></pattern>
        </defs>
        ${hours(height)}
        ${[0, 30, 60, 90]
          .filter((value) => value <= high)
          .map(
            (
              value,
            ) => svg`<line class=${value ? "grid" : "horizon"} x1=${PAD.left} x2=${WIDTH - PAD.right} y1=${y(value)} y2=${y(value)}></line>
              <text x=${PAD.left - 6} y=${y(value) + 4} text-anchor="end">${value}°</text>`,
          )}
        ${day.golden.map((/** @type {any} */ span) => band(span, "golden", height - PAD.bottom - 18))}
        ${day.blue.map((/** @type {any} */ span) => band(span, "blue", height - PAD.bottom - 9))}
        <polyline class="line" points=${line(points)}></polyline>
        ${direct.map((/** @type {any} */ span) => {
          const [from, to] = ends(span);
          const part = points.filter(
            (/** @type {any} */ one) => one.minute >= from && one.minute <= to,
          );
          return svg`<polyline class="direct" points=${line(part)}></polyline>`;
        })}
      `}
    </svg>
    <figcaption class="hint">${t(day.window ? "sun.chartKey" : "sun.chartKeyOpen")}</figcaption>
  </figure>`;
}

/**
 * When the sun shines into each window, on the hours of the picture above.
 * @param {any} day  the kernel's answer to "sun"
 */
export function sunInWindows(day) {
  const seen = (day.windows ?? []).filter((/** @type {any} */ one) => one.window);
  if (!seen.length) return "";
  const low = 20;
  const bar = (
    /** @type {any} */ span,
    /** @type {string} */ kind,
    /** @type {number} */ top,
    /** @type {number} */ high,
  ) => {
    const [from, to] = ends(span);
    return svg`<rect class=${kind} x=${across(from)} width=${Math.max(1, across(to) - across(from))} y=${top} height=${high}></rect>`;
  };
  return html`<figure class="chart sun-windows">
    <ul>
      ${seen.map(
        (/** @type {any} */ { name, window: glass }) => html`<li>
          ${joined([name, glass.words], ": ")}
          <svg viewBox="0 0 ${WIDTH} ${low}" aria-hidden="true">
            ${svg`
              <line class="horizon" x1=${across(0)} x2=${across(DAY)} y1="12" y2="12"></line>
              ${[0, 6, 12, 18, 24].map((hour) => svg`<line class="grid" x1=${across(hour * 60)} x2=${across(hour * 60)} y1="0" y2="12"></line>`)}
              ${day.golden.map((/** @type {any} */ span) => bar(span, "golden", 14, 4))}
              ${day.blue.map((/** @type {any} */ span) => bar(span, "blue", 14, 4))}
              ${glass.direct.map((/** @type {any} */ span) => bar(span, "ink", 3, 8))}
            `}
          </svg>
        </li>`,
      )}
    </ul>
    <svg viewBox="0 0 ${WIDTH} 14" aria-hidden="true">
      ${[0, 6, 12, 18, 24].map((hour) => svg`<text x=${across(hour * 60)} y="10" text-anchor=${hour === 24 ? "end" : "middle"}>${hour}:00</text>`)}
    </svg>
    <figcaption class="hint">${t("sun.windowsKey")}</figcaption>
  </figure>`;
}

/**
 * @typedef {object} DayReading
 * @property {number} minute
 * @property {number} cct_K
 * @property {string} words
 */

/**
 * @param {any} day
 * @param {DayReading[]} readings
 */
export function daylightColour(day, readings) {
  const height = 170;
  /** @type {("open_K" | "sun_K" | "shade_K")[]} */
  const kinds = ["open_K", "sun_K", "shade_K"];
  const known = day.curve.flatMap((/** @type {any} */ one) => kinds.map((kind) => one[kind]));
  const all = [...known, ...readings.map(({ cct_K }) => cct_K)].filter((value) => value !== null);
  if (!all.length) return html``;
  // A clear shade runs to tens of thousands of kelvin: what is above leaves the picture.
  const low = Math.min(...all, 4000);
  const high = Math.min(Math.max(...all), 14000);
  const y = scale(height, low, high);
  const shown = (/** @type {any} */ one, /** @type {typeof kinds[number]} */ kind) =>
    one[kind] !== null && one[kind] <= high;
  const marks = [low, (low + high) / 2, high];
  return html`<figure class="chart">
    <svg viewBox="0 0 ${WIDTH} ${height}" role="img" aria-label=${t("sun.colour")}>
      ${svg`
        ${hours(height)}
        ${marks.map(
          (
            value,
          ) => svg`<line class="grid" x1=${PAD.left} x2=${WIDTH - PAD.right} y1=${y(value)} y2=${y(value)}></line>
            <text x=${PAD.left - 4} y=${y(value) + 4} text-anchor="end">${kelvin(value)}</text>`,
        )}
        ${kinds.map(
          (kind) =>
            svg`<polyline class=${kind.slice(0, -2)} points=${line(
              day.curve
                .filter((/** @type {any} */ one) => shown(one, kind))
                .map((/** @type {any} */ one) => ({ x: across(one.minute), y: y(one[kind]) })),
            )}></polyline>`,
        )}
        ${readings
          .filter(({ cct_K }) => cct_K <= high)
          .map(
            (
              { minute, cct_K },
              i,
            ) => svg`<circle class="light" cx=${across(minute)} cy=${y(cct_K)} r="8"></circle>
              <text class="number" x=${across(minute)} y=${y(cct_K) + 4} text-anchor="middle">${i + 1}</text>`,
          )}
      `}
    </svg>
    <figcaption>
      <span class="hint">${t("sun.colourKey")}</span>
    </figcaption>
  </figure>`;
}

/**
 * Readings over the day, of one kind of number; the hours are those of the other charts.
 * @param {{minute: number, value: number | null | undefined}[]} readings
 * @param {string} label
 * @param {(value: number) => string} words
 */
export function readDay(readings, label, words) {
  const height = 110;
  const known = readings.flatMap(({ minute, value }, i) =>
    value == null ? [] : [{ minute, value, n: i + 1 }],
  );
  if (!known.length) return html``;
  const values = known.map(({ value }) => value);
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const room = (most - least || Math.abs(most) || 1) / 4;
  const y = scale(height, least - room, most + room);
  const points = known.map(({ minute, value }) => ({ x: across(minute), y: y(value) }));
  return html`<figure class="chart">
    <svg viewBox="0 0 ${WIDTH} ${height}" role="img" aria-label=${label}>
      ${svg`
        ${hours(height)}
        ${[...new Set([least, most])].map(
          (
            value,
          ) => svg`<line class="grid" x1=${PAD.left} x2=${WIDTH - PAD.right} y1=${y(value)} y2=${y(value)}></line>
            <text x=${PAD.left - 4} y=${y(value) + 4} text-anchor="end">${words(value)}</text>`,
        )}
        <polyline class="line" points=${line(points)}></polyline>
        ${known.map(
          (
            { n },
            i,
          ) => svg`<circle class="light" cx=${points[i].x} cy=${points[i].y} r="8"></circle>
            <text class="number" x=${points[i].x} y=${points[i].y + 4} text-anchor="middle">${n}</text>`,
        )}
      `}
    </svg>
    <figcaption class="hint">${label}</figcaption>
  </figure>`;
}
