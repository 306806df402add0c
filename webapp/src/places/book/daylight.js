/** Daylight readings in the book, by location and day. */
import { ask } from "../../kernel/client.js";
import { book } from "../../store/index.js";
import { readingQuestion } from "../../store/questions/reading.js";

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
