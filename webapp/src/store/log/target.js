/**
 * What a light is measured against: decided here, and nowhere else. Every view, question and print
 * asks here, so that no two of them can say different things of one light.
 *
 * The lights of a setup stand around one centre: the light they match, when one is chosen, otherwise
 * the white the camera is set to. A light may be meant to be something else beside it (the kernel's
 * `meant`); a pick-up is meant to be as it was.
 */
import { readingQuestion, whiteQuestion } from "../questions/reading.js";
import { currentSetup, earlierOf, heroOf } from "./shoot.js";

/** @typedef {import("./book.js").Thing} Thing */

/**
 * The centre of a setup, as T. The light that the others match is measured against itself as it
 * was last read.
 * @param {Thing | undefined} [setup]
 * @returns {Record<string, any>}
 */
export function centreOf(setup = currentSetup()) {
  const hero = heroOf(setup);
  return hero ? readingQuestion(hero.reading.data) : whiteQuestion();
}

/**
 * What a light is meant to be beside the centre, as fields of a question: none where it is meant
 * to be the centre itself.
 * @param {string | null} light  its id, null for one that the book does not have yet
 * @returns {{meant?: Record<string, any>}}
 */
export function meantOf(light) {
  const then = earlierOf(light);
  return then ? { meant: { like: readingQuestion(then.reading.data) } } : {};
}

/**
 * The one colour that a light is to have, as T, for questions that know no `meant`.
 * @param {string | null} [light]
 * @returns {Record<string, any>}
 */
export function targetOf(light = null) {
  return meantOf(light).meant?.like ?? centreOf();
}

/**
 * A light of a set as the kernel's questions about sets take it: its reading, its name, and what it
 * is meant to be.
 * @param {{light: Thing, reading: Thing}} lit
 * @returns {Record<string, any>}
 */
export function litQuestion({ light, reading }) {
  return { ...readingQuestion(reading.data, light.data.name), ...meantOf(light.id) };
}

/**
 * What a light is measured against, to be told to people: itself as it was, another light, or
 * (null) the white the camera is set to.
 * @param {string | null} [light]
 * @returns {{itself: Thing} | {other: Thing} | null}  a reading, or a light
 */
export function measuredAgainst(light = null) {
  const then = earlierOf(light);
  if (then) return { itself: then.reading };
  const hero = heroOf(currentSetup());
  if (!hero) return null;
  return hero.light.id === light ? { itself: hero.reading } : { other: hero.light };
}
