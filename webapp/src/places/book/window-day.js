/** The windows of a location through a day: what each needs at a time, and how long that holds. */
import { html, nothing } from "lit";
import { heldDay } from "../../charts/held-day.js";
import { choice } from "../../parts/inputs.js";
import { slider } from "../../parts/slider.js";
import { fetchNote } from "../../parts/to-fetch.js";
import { verdictMark } from "../../parts/verdict.js";
import { warningList } from "../../parts/warnings.js";
import { book, settings } from "../../store/index.js";
import { curves, labels } from "../../store/log/measured-gels.js";
import { typedIn } from "../../store/questions/by-the-roll.js";
import { readingQuestion, terms, whiteQuestion } from "../../store/questions/reading.js";
import { t } from "../../words/index.js";
import { joined } from "../../words/isolated.js";
import { dayOf, duv, illuminance, kelvin } from "../../words/numbers.js";
import { clockAt, daylightReadings, offsetOf } from "./daylight.js";

/** @typedef {Record<string, any>} Row */

const STEP = 5; // minutes

/** @param {number} minute */
const clock = (minute) =>
  `${String(Math.floor(minute / 60)).padStart(2, "0")}:${String(minute % 60).padStart(2, "0")}`;

/** Bare daylight readings of a location, each with its day and minute there. @param {any} location */
function readingsAt(location) {
  return daylightReadings(location.id).map((one) => {
    const hours = offsetOf(location.data.utc_offset_h, one.reading.at.slice(0, 10));
    return { ...one, ...clockAt(one.reading.at, hours) };
  });
}

/**
 * The day that is looked at, the days there are, and the minute.
 * @param {any} location
 * @param {{day: string, minute: string}} typed
 */
export function dayAt(location, typed) {
  const all = readingsAt(location);
  const days = [...new Set(all.map(({ date }) => date))].sort().reverse();
  const date = days.includes(typed.day) ? typed.day : (days[0] ?? "");
  const read = all.filter((one) => one.date === date);
  const last = Math.max(...read.map(({ minute }) => minute), 0);
  const minute = typed.minute === "" ? last : Number(typed.minute);
  return { days, date, read, minute };
}

/**
 * The windows that the book keeps of a location, and what hangs on those without gels of their
 * own; gels by label.
 * @param {Record<string, any>} data  of the location
 */
export function keptWindows(data) {
  const rows = /** @type {Row[]} */ (data.windows ?? []);
  return {
    windows: rows.map(({ gel_ids: ids, ...row }) =>
      row.gels ? { ...row, gels: labels(row.gels, ids) } : row,
    ),
    gels: labels(data.window_gels, data.window_gel_ids),
  };
}

/** The lines that something is typed in, each with a name. @param {Row[]} rows @returns {Row[]} */
export const namedWindows = (rows) =>
  rows
    .map((row, i) => ({ ...row, name: row.name || t("windows.nth", { n: i + 1 }) }))
    .filter((_, i) => typedIn(rows[i]));

/**
 * @param {any} location
 * @param {Row[]} windows           those that something is typed of, with their names
 * @param {string[]} common         what hangs where a window has nothing of its own
 * @param {ReturnType<typeof dayAt>} day
 * @param {Record<string, any>} more  the light wanted inside, or another white
 * @returns {import("../../kernel/answers.js").Question<"hold"> | null}
 */
export function holdQuestion(location, windows, common, { date, read, minute }, more = {}) {
  if (!windows.length || !date) return null;
  const { lat_deg, lon_deg, utc_offset_h, facing_deg, horizon_deg, horizon } = location.data;
  const placed = lat_deg && lon_deg;
  const hung = [...new Set(windows.flatMap(({ gels }) => gels ?? common))];
  const { own_gels: own = [], ...rest } = /** @type {Record<string, any>} */ (terms());
  return {
    ask: "hold",
    time: clock(minute),
    ...(placed
      ? { lat_deg, lon_deg, date, utc_offset_h: String(offsetOf(utc_offset_h, date)) }
      : {}),
    target: whiteQuestion(),
    ...rest,
    own_gels: [...own, ...curves(hung)],
    ...more,
    windows: windows.map((row) => ({
      name: row.name,
      gels: row.gels ?? common,
      ...(row.facing_deg?.trim()
        ? { facing_deg: row.facing_deg, horizon_deg: row.horizon_deg }
        : { facing_deg, horizon_deg, horizon: horizon ?? [] }),
      readings: ofWindow(read, row).map((one) => ({
        ...readingQuestion(one.reading.data),
        time: one.time,
      })),
    })),
  };
}

/** @template {{light: {id: string}}} T @param {T[]} read @param {Row} row */
const ofWindow = (read, row) => read.filter(({ light }) => !row.light || light.id === row.light);

/**
 * How long what hangs on the windows of a location holds, on the last day that they were read.
 * @param {import("./surroundings.js").Ask} ask
 * @param {string} id          of the location
 * @param {any} target         the white, as T; nothing for that of the camera
 * @returns {Promise<Held | null>}
 */
export async function windowsHeld(ask, id, target) {
  const location = book.thing(id);
  if (!location) return null;
  const { windows, gels } = keptWindows(location.data);
  const day = dayAt(location, { day: "", minute: "" });
  const named = namedWindows(windows);
  const question = holdQuestion(location, named, gels, day, target ? { target } : {});
  const answer = question && (await ask({ ...question, most: 1, depth: 1 }));
  return answer && !answer.problem ? { answer, day, windows: named } : null;
}

/** @typedef {{answer: any, day: ReturnType<typeof dayAt>, windows: Row[]}} Held */

/** The same on paper. @param {Held} held */
export const heldLines = ({ answer, day, windows }) => html`<p>
    ${t("hold.on", {
      day: dayOf(`${day.date}T12:00:00`),
      white: `${kelvin(answer.target.cct_K)} · Duv ${duv(answer.target.duv)}`,
    })}
  </p>
  ${answer.windows.map(
    (/** @type {any} */ one, /** @type {number} */ i) => html`<div class="together">
      <p>${joined([one.name, one.words], ": ")}</p>
      ${drawn(one, windows[i] ?? {}, day)}
    </div>`,
  )}`;

/** @param {any} one @param {Row} row @param {ReturnType<typeof dayAt>} day */
function drawn(one, row, day) {
  const read = ofWindow(day.read, row).map(({ minute }) => minute);
  return one.stretches.length ? heldDay(one.stretches, read, day.minute, one.words) : nothing;
}

/**
 * @param {object} view
 * @param {ReturnType<typeof dayAt>} view.day
 * @param {any} view.answer          to "hold"
 * @param {Row[]} view.windows       those that were asked about
 * @param {(fields: {day?: string, minute?: string}) => void} view.onTime
 * @param {(index: number, gels: string[]) => void} view.onHang
 */
export function windowDay({ day, answer, windows, onTime, onHang }) {
  if (!day.date) return html`<p class="hint">${t("hold.noReadings")}</p>`;
  return html`
    ${
      day.days.length > 1
        ? choice({
            id: "windows-day",
            label: t("hold.day"),
            value: day.date,
            options: day.days.map((value) => ({ value, label: dayOf(`${value}T12:00:00`) })),
            onChange: (value) => onTime({ day: value, minute: "" }),
          })
        : html`<p>${dayOf(`${day.date}T12:00:00`)}</p>`
    }
    ${slider({
      id: "windows-time",
      label: t("hold.time"),
      words: clock(day.minute),
      min: 0,
      max: 24 * 60 - STEP,
      step: STEP,
      value: String(day.minute),
      onInput: (minute) => onTime({ minute }),
    })}
    ${answer?.windows.map((/** @type {any} */ one, /** @type {number} */ i) =>
      oneWindow(one, i, day, windows[i] ?? {}, (gels) => onHang(i, gels)),
    )}
  `;
}

/**
 * @param {any} one
 * @param {number} i
 * @param {ReturnType<typeof dayAt>} day
 * @param {Row} row
 * @param {(gels: string[]) => void} hang
 */
function oneWindow(one, i, day, row, hang) {
  const light = [
    one.light?.cct_K ? `${kelvin(one.light.cct_K)}, Duv ${duv(one.light.duv)}` : "",
    one.illuminance_lx ? illuminance(one, settings.get("illuminance")) : "",
  ].filter(Boolean);
  const hangs = one.gels.length
    ? t("report.hangs", { pack: one.gels.join(" + ") })
    : t("hold.bare");
  return html`<section class="window" aria-labelledby="windows-held-${i}">
    <h3 id="windows-held-${i}">${one.name}</h3>
    ${one.hung ? html`<p>${verdictMark(one.hung.promise)} ${hangs}</p>` : html`<p>${hangs}</p>`}
    <p class="change">${one.words}</p>
    ${drawn(one, row, day)}
    <p class="reason">${[light.join(", "), one.basis_words].filter(Boolean).join(". ")}</p>
    ${one.nd?.gels.length ? html`<p class="reason">${t("hold.nd", { words: one.nd.words })}</p>` : nothing}
    ${fetchNote(one.nd?.fetch ?? [])}
    ${warningList(one.warnings)}
    ${
      one.packs.length
        ? html`<details class="more">
            <summary>${t("hold.packs", { time: clock(day.minute) })}</summary>
            <ul class="plain">
              ${one.packs.map((/** @type {any} */ pack) => packLine(pack, hang, one))}
            </ul>
          </details>`
        : nothing
    }
  </section>`;
}

/** @param {any} pack @param {(gels: string[]) => void} hang @param {any} one  its window */
function packLine(pack, hang, one) {
  const all = [...pack.gels, ...(pack.nd?.gels ?? [])];
  const hangs = [...all].sort().join() === [...one.gels].sort().join();
  return html`<li>
    <p>${verdictMark(pack.promise)} ${all.join(" + ")}</p>
    ${fetchNote(all)}
    <p class="reason">${pack.hold_words}</p>
    ${
      hangs
        ? html`<p class="reason">${t("hold.hanging")}</p>`
        : html`<div class="actions">
            <button
              type="button"
              aria-label=${t("hold.hang", { gels: all.join(" + "), name: one.name })}
              @click=${() => hang(all)}
            >
              ${t("windows.hang", { gels: all.join(" + ") })}
            </button>
          </div>`
    }
  </li>`;
}
