/**
 * What a lamp did before, for the kernel's guess of it: spectra that were measured of the same light,
 * and what gel did to it. The kernel says by x y how far that is to be believed.
 */
import { dialledWords } from "../../words/reading.js";
import { book } from "../index.js";
import { readingQuestion } from "../questions/reading.js";
import { gelsOn } from "./measured-gels.js";
import { sameLights } from "./shoot.js";

/** So many of each are enough. */
const MOST = 2;

/** Whether a lamp without a spectrum was left as it was, but for gels. @param {any} one @param {any} other */
const gelled = (one, other) =>
  gelsOn(one).join() !== gelsOn(other).join() &&
  !one.spectrum &&
  !other.spectrum &&
  dialledWords(one.dialled) === dialledWords(other.dialled) &&
  (one.dimmer ?? "") === (other.dimmer ?? "") &&
  one.lamp === other.lamp;

/**
 * What is known of a light beside a bare x y, as a field of R; none where the reading has its own
 * spectrum, and none of daylight, which changes by itself.
 * @param {string | null} light  its id, null for one that the book does not have yet
 * @param {Record<string, any>} now  the reading, as kept or typed
 * @param {string} [id]  of the reading, where it is kept
 * @returns {{before?: Record<string, any>[]}}
 */
export function pastOf(light, now, id) {
  if (!light || now.spectrum || now.lamp === "daylight") return {};
  const name = String(book.thing(light)?.data.name ?? "");
  /** @type {Record<string, any>[]} */
  const spectra = [];
  /** @type {Record<string, any>[]} */
  const shifts = [];
  for (const same of sameLights(light)) {
    const kept = book.below(same, "reading");
    const at = kept.findIndex((one) => one.id === id);
    const earlier = kept.slice(at + 1).map(({ data }) => data);
    spectra.push(...earlier.filter(({ spectrum }) => spectrum));
    const all = same === light ? [now, ...earlier] : earlier;
    for (const [i, next] of all.slice(0, -1).entries()) {
      const reading = all[i + 1];
      if (gelled(reading, next)) shifts.push({ reading, next });
    }
  }
  const before = [
    ...spectra.slice(0, MOST).map((reading) => ({ reading: readingQuestion(reading, name) })),
    ...shifts.slice(0, MOST).map(({ reading, next }) => ({
      reading: readingQuestion(reading, name),
      next: readingQuestion(next, name),
    })),
  ];
  return before.length ? { before } : {};
}
