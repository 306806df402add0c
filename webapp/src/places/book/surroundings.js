/** What stands around the readings of a setup, for its report: stops, mains and sun. */

import { book, settings } from "../../store/index.js";
import { cameraQuestion, levelOf, mainsQuestion } from "../../store/questions/camera.js";
import { directWords, facingWindows } from "./daylight.js";

/** @typedef {typeof import("../../kernel/client.js").ask} Ask  the kernel, by whoever wants to know */

/**
 * The stop of each light for the camera of the Kit; null where it has no level.
 * @param {Ask} ask
 * @param {any} setup  one of the kernel's "report"
 * @returns {Promise<(string | null)[]>}
 */
export async function stopsOf(ask, setup) {
  const lights = setup.slips.map((/** @type {any} */ slip) => levelOf(slip.readings.at(-1) ?? {}));
  const answer = await ask({
    ask: "levels",
    lights,
    camera: cameraQuestion(),
    say: settings.get("say"),
  });
  return lights.map((/** @type {unknown} */ _, /** @type {number} */ i) =>
    answer.problem || answer.lights[i].problem ? null : answer.lights[i].now.stop,
  );
}

/** Hours ahead of UTC of the clock that a time was read from. @param {string} at */
function offsetOf(at) {
  const [, sign, hours, minutes] = /([+-])(\d\d):(\d\d)$/.exec(at) ?? ["", "+", "0", "0"];
  return `${sign}${Number(hours) + Number(minutes) / 60}`;
}

/**
 * Mains that collide with the shutter, and the sun on the day of the first reading.
 * @param {Ask} ask
 * @param {any} setup  one of the kernel's "report"
 * @returns {Promise<string[]>} sentences
 */
export async function placeLines(ask, setup) {
  const location = book.thing(book.thing(setup.id)?.parent);
  const lines = [];
  const mains = mainsQuestion(location);
  if (mains) lines.push((await ask(mains)).collision);
  const { lat_deg, lon_deg, utc_offset_h, facing_deg, horizon_deg, horizon } = location?.data ?? {};
  if (lat_deg && lon_deg && setup.first) {
    const date = setup.first.slice(0, 10);
    const clock = utc_offset_h || offsetOf(setup.first);
    const place = { lat_deg, lon_deg, utc_offset_h: clock, facing_deg, horizon_deg, horizon };
    const windows = facingWindows(location?.data);
    const day = await ask({ ask: "sun", ...place, windows, date, step_min: 120 });
    lines.push(day.words, day.window?.words, ...directWords(day));
  }
  return lines.flatMap((line) => line || []);
}
