/** Daylight readings in the book, by location and day. */
import { ask } from "../../kernel/client.js";
import { book } from "../../store/index.js";
import { readingQuestion } from "../../store/questions/reading.js";
import { joined } from "../../words/isolated.js";

/** @typedef {import("../../store/log/book.js").Thing} Thing */

const DAY = 24 * 60;

/**
 * Every bare reading of daylight at a location.
 * @param {string} location
 * @returns {{light: Thing, reading: Thing}[]}
 */
export function daylightReadings(location) {
  return book
    .below(location, "setup")
    .flatMap((setup) => book.below(setup.id, "light"))
    .filter((light) => light.data.lamp === "daylight")
    .flatMap((light) => book.below(light.id, "reading").map((reading) => ({ light, reading })))
    .filter(({ reading }) => !reading.data.pack?.length);
}

/**
 * The windows of a location that look somewhere of their own, as "sun" takes them.
 * @param {Record<string, any> | undefined} data  of the location
 */
export function facingWindows(data) {
  return (data?.windows ?? [])
    .filter((/** @type {any} */ row) => String(row.facing_deg ?? "").trim())
    .map((/** @type {any} */ { name, facing_deg, horizon_deg }) => ({
      name,
      facing_deg,
      horizon_deg,
    }));
}

/** When the sun shines into each of them, in words. @param {any} day  the kernel's answer */
export function directWords(day) {
  return (day.windows ?? []).flatMap((/** @type {any} */ { name, window: glass }) =>
    glass ? [joined([name, glass.words], ": ")] : [],
  );
}

/** What this phone's clock is ahead of UTC on a day, in hours. @param {string} date */
export function deviceOffset(date) {
  const noon = new Date(`${date}T12:00:00`);
  return Number.isNaN(noon.getTime()) ? "" : String(-noon.getTimezoneOffset() / 60);
}

/**
 * Hours ahead of UTC: as kept with a location where that is a plain number, otherwise of this
 * phone on that day.
 * @param {unknown} typed
 * @param {string} date
 */
export function offsetOf(typed, date) {
  const hours = Number(
    String(typed ?? "")
      .replace(",", ".")
      .replace("−", "-") || Number.NaN,
  );
  return Number.isFinite(hours) ? hours : Number(deviceOffset(date));
}

/** The clock that runs `hours` ahead of UTC, at a moment. @param {string} at @param {number} hours */
export function clockAt(at, hours) {
  const local = new Date(Date.parse(at) + hours * 3_600_000).toISOString();
  const [hour, minute] = local.slice(11, 16).split(":").map(Number);
  return {
    date: local.slice(0, 10),
    time: local.slice(11, 16),
    minute: (hour * 60 + minute) % DAY,
  };
}

/**
 * The CCT, Duv and level of readings, as the kernel tells them, the earliest first; those of which
 * it tells no CCT are left out.
 * @param {{light: Thing, reading: Thing}[]} readings
 */
export async function withCct(readings) {
  const found = [];
  for (const one of readings) {
    const answer = await ask({ ask: "describe", reading: readingQuestion(one.reading.data) });
    if (answer.problem || !answer.cct_K) continue;
    const { cct_K, duv, illuminance_lx, illuminance_fc } = answer;
    found.push({ ...one, cct_K, duv, illuminance_lx, illuminance_fc });
  }
  return found.sort((a, b) => Date.parse(a.reading.at) - Date.parse(b.reading.at));
}
