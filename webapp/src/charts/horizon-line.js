/**
 * What stands before a window, drawn against the sun's way: directions across, heights upward. A
 * tap places a point, a tap on a point takes it off, a drag moves it.
 */
import { html, nothing, svg } from "lit";
import { t } from "../words/index.js";
import { ends } from "./sun-day.js";

const WIDTH = 340;
const HEIGHT = 220;
const PAD = { left: 30, right: 8, top: 12, bottom: 24 };
/** What a thumb hits, in the drawing's own units: 44 px where the page is 320 px wide. */
const GRIP = 27;
/** Farther than this, in CSS px, a touch is a drag. */
const SLIPS = 6;

/** @typedef {{azimuth_deg: number, altitude_deg: number}} Point */

/** Degrees from straight ahead, -180 to 180. @param {number} azimuth @param {number} facing */
const aside = (azimuth, facing) => ((azimuth - facing + 540) % 360) - 180;

/** @param {number} angle from straight ahead */
const across = (angle) => PAD.left + ((angle + 90) / 180) * (WIDTH - PAD.left - PAD.right);

/** @param {number} altitude @param {number} top the highest that is drawn, in degrees */
const upward = (altitude, top) =>
  HEIGHT - PAD.bottom - (altitude / top) * (HEIGHT - PAD.top - PAD.bottom);

/** The one touch that holds a point, and how high is drawn meanwhile: a scale that moved would run away. */
const held = { moved: false, x: 0, y: 0, top: 0 };

/** @param {{x: number, y: number}[]} points */
const path = (points) => points.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join(" ");

/**
 * @param {object} drawing
 * @param {any} drawing.day     the kernel's answer to "sun", with its window
 * @param {(Point & {at: number})[]} drawing.points  those of the line, and their places in the list
 * @param {(point: Point) => void} drawing.onPlace
 * @param {(at: number, point: Point, begins: boolean) => void} drawing.onMove
 * @param {(at: number) => void} drawing.onRemove
 */
export function horizonLine({ day, points, onPlace, onMove, onRemove }) {
  const { facing_deg: facing, direct, horizon } = day.window;
  const heights = [...day.curve, ...horizon, ...points].map(({ altitude_deg }) => altitude_deg);
  const fits = Math.min(90, Math.max(30, Math.ceil((Math.max(...heights) + 8) / 10) * 10));
  const top = held.top || fits;
  /** Where it was touched, in whole degrees. @param {MouseEvent} event @returns {Point} */
  const touched = (event) => {
    const target = /** @type {Element} */ (event.currentTarget);
    const box = /** @type {Element} */ (target.closest("svg")).getBoundingClientRect();
    const x = ((event.clientX - box.left) / box.width) * WIDTH;
    const y = ((event.clientY - box.top) / box.height) * HEIGHT;
    const angle = ((x - PAD.left) / (WIDTH - PAD.left - PAD.right)) * 180 - 90;
    const high = ((HEIGHT - PAD.bottom - y) / (HEIGHT - PAD.top - PAD.bottom)) * top;
    const within = Math.round(Math.min(90, Math.max(-90, angle)));
    return {
      azimuth_deg: (Math.round(facing) + within + 360) % 360,
      altitude_deg: Math.round(Math.min(89, Math.max(0, high))),
    };
  };
  /** @param {number} at */
  const grip = (at) => ({
    down: (/** @type {PointerEvent} */ event) => {
      /** @type {Element} */ (event.currentTarget).setPointerCapture(event.pointerId);
      Object.assign(held, { moved: false, x: event.clientX, y: event.clientY, top });
    },
    move: (/** @type {PointerEvent} */ event) => {
      const target = /** @type {Element} */ (event.currentTarget);
      if (!target.hasPointerCapture(event.pointerId)) return;
      const begins = !held.moved;
      held.moved ||= Math.hypot(event.clientX - held.x, event.clientY - held.y) > SLIPS;
      if (held.moved) onMove(at, touched(event), begins);
    },
    up: () => {
      held.top = 0;
    },
    click: (/** @type {Event} */ event) => {
      event.stopPropagation();
      if (!held.moved) onRemove(at);
      held.moved = false;
    },
  });
  const shown = (points.length ? points : horizon)
    .map((/** @type {Point} */ one) => ({
      x: across(aside(one.azimuth_deg, facing)),
      y: upward(one.altitude_deg, top),
    }))
    .sort((/** @type {{x: number}} */ a, /** @type {{x: number}} */ b) => a.x - b.x);
  const floor = HEIGHT - PAD.bottom;
  const line = shown.length && [
    { x: PAD.left, y: shown[0].y },
    ...shown,
    { x: WIDTH - PAD.right, y: shown[shown.length - 1].y },
  ];
  const way = day.curve
    .map((/** @type {any} */ one) => ({ ...one, angle: aside(one.azimuth_deg, facing) }))
    .filter((/** @type {any} */ one) => one.altitude_deg > 0 && Math.abs(one.angle) <= 90)
    .map((/** @type {any} */ one) => ({
      x: across(one.angle),
      y: upward(one.altitude_deg, top),
      minute: one.minute,
    }));
  return html`<figure class="chart horizon-line">
    <svg
      viewBox="0 0 ${WIDTH} ${HEIGHT}"
      role="img"
      aria-label=${t("sun.lineChart")}
      @click=${(/** @type {MouseEvent} */ event) => onPlace(touched(event))}
    >
      ${svg`
        ${[0, 30, 60, 90]
          .filter((value) => value <= top)
          .map(
            (
              value,
            ) => svg`<line class=${value ? "grid" : "horizon"} x1=${PAD.left} x2=${WIDTH - PAD.right} y1=${upward(value, top)} y2=${upward(value, top)}></line>
            <text x=${PAD.left - 4} y=${upward(value, top) + 4} text-anchor="end">${value}°</text>`,
          )}
        ${[-90, -45, 0, 45, 90].map(
          (angle) => svg`<text x=${across(angle)} y=${HEIGHT - 8}
            text-anchor=${angle === -90 ? "start" : angle === 90 ? "end" : "middle"}>${(Math.round(facing) + angle + 360) % 360}°</text>`,
        )}
        ${
          line
            ? svg`<polygon class="before" points=${path([{ x: PAD.left, y: floor }, ...line, { x: WIDTH - PAD.right, y: floor }])}></polygon>
              <polyline class="pen" points=${path(line)}></polyline>`
            : nothing
        }
        ${pieces(way).map((piece) => svg`<polyline class="line" points=${path(piece)}></polyline>`)}
        ${direct.map((/** @type {any} */ span) => {
          const [from, to] = ends(span);
          const lit = way.filter(
            (/** @type {any} */ one) => one.minute >= from && one.minute <= to,
          );
          return pieces(lit).map(
            (piece) => svg`<polyline class="direct" points=${path(piece)}></polyline>`,
          );
        })}
        ${way
          .filter((/** @type {any} */ { minute }) => minute % 120 === 0)
          .map(
            (/** @type {any} */ { x, y, minute }) =>
              svg`<text class="number" x=${x} y=${y - 7} text-anchor="middle">${minute / 60}</text>`,
          )}
        ${points.map((one) => {
          const [x, y] = [across(aside(one.azimuth_deg, facing)), upward(one.altitude_deg, top)];
          const { down, move, up, click } = grip(one.at);
          return svg`<circle class="light" cx=${x} cy=${y} r="7"></circle>
            <circle class="grip" cx=${x} cy=${y} r=${GRIP}
              @pointerdown=${down} @pointermove=${move} @lostpointercapture=${up} @click=${click}></circle>`;
        })}
      `}
    </svg>
    <figcaption class="hint">${t("sun.lineChartKey")}</figcaption>
  </figure>`;
}

/** Parts of a way with no moment left out between. @param {{x: number, y: number, minute: number}[]} way */
function pieces(way) {
  /** @type {(typeof way)[]} */
  const found = [];
  for (const [i, one] of way.entries()) {
    if (!i || one.minute - way[i - 1].minute > 10 || Math.abs(one.x - way[i - 1].x) > 90)
      found.push([]);
    found[found.length - 1].push(one);
  }
  return found;
}
