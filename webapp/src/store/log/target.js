/**
 * What a light is measured against: decided here, and nowhere else. Every view, question and print
 * asks here, so that no two of them can say different things of one light.
 *
 * The lights of a setup stand around one centre: the light they match, when one is chosen, otherwise
 * the white the camera is set to. A light may be meant to be something else beside it: its `meant`
 * in the book, which is what the kernel takes, but that another light goes by its id there and
 * measured gels by theirs. A pick-up of which nothing is said is meant to be as it was.
 */
import { t } from "../../words/index.js";
import { book } from "../index.js";
import { withOwnGels } from "../kit/own-gels.js";
import { readingQuestion, whiteQuestion } from "../questions/reading.js";
import { curves, labels } from "./measured-gels.js";
import { pastOf } from "./past.js";
import { currentSetup, earlierOf, heroOf } from "./shoot.js";

/** @typedef {import("./book.js").Thing} Thing */
/** @typedef {Record<string, any> | null | undefined} Said  what a light is meant to be, as kept */
/** @typedef {{light: Thing, reading: Thing}} Lit */

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

/** What was said that a light is meant to be. @param {string | null} light @returns {Said} */
export const saidOf = (light) => book.thing(light)?.data.meant ?? null;

/**
 * What a light is meant to be beside the centre, as fields of a question: none where it is meant
 * to be the centre itself.
 * @param {string | null} light  its id, null for one that the book does not have yet
 * @param {Said} [said]
 * @param {readonly Lit[]} [among]  the lights of the question, in its order
 * @returns {{meant?: Record<string, any>}}
 */
export function meantOf(light, said = saidOf(light), among = []) {
  if (!said) {
    const then = earlierOf(light);
    return then
      ? { meant: { like: readingQuestion(then.reading.data, then.light.data.name) } }
      : {};
  }
  const { gel_ids: ids, ...meant } = said;
  if (meant.as_through) meant.as_through = labels(meant.as_through, ids);
  if (typeof meant.like === "string") meant.like = likeQuestion(meant.like, among);
  return { meant };
}

/**
 * Another light as the kernel takes it: by its place in the question, else by its latest reading.
 * Of one that has none only the name is left, and the kernel says what is wrong.
 * @param {string} id
 * @param {readonly Lit[]} among
 */
function likeQuestion(id, among) {
  const place = among.findIndex(({ light }) => light.id === id);
  if (place >= 0) return place;
  return readingQuestion(book.latest(id)?.data ?? {}, book.thing(id)?.data.name ?? id);
}

/**
 * A reading as the kernel's questions about sets take it: with what its light is meant to be, and
 * the measured gels that this names.
 * @param {Record<string, any>} reading  R
 * @param {string | null} light
 * @param {Said} [said]
 * @param {readonly Lit[]} [among]
 * @returns {Record<string, any>}
 */
export function aimed(reading, light, said = saidOf(light), among = []) {
  return {
    ...withGels(reading, curves(said?.as_through, said?.gel_ids)),
    ...meantOf(light, said, among),
  };
}

/**
 * A reading that brings more measured gels along.
 * @param {Record<string, any>} reading  R
 * @param {{name: string}[]} [more]
 * @returns {Record<string, any>}
 */
export function withGels(reading, more = []) {
  const known = reading.own_gels ?? [];
  const names = new Set(known.map((/** @type {{name: string}} */ { name }) => name));
  const fresh = more.filter(({ name }) => !names.has(name));
  return fresh.length ? { ...reading, own_gels: [...known, ...fresh] } : reading;
}

/**
 * A light of a set as the kernel's questions about sets take it: its reading, its name, and what it
 * is meant to be. To be mapped over the lights of the question.
 * @param {Lit} lit
 * @param {number} [_index]
 * @param {readonly Lit[]} [among]
 * @returns {Record<string, any>}
 */
export function litQuestion({ light, reading }, _index, among) {
  const { name } = light.data;
  const question = {
    ...readingQuestion(reading.data, name),
    ...pastOf(light.id, reading.data, reading.id),
    ...roleOf(name, light.data.role),
  };
  return aimed(question, light.id, saidOf(light.id), among);
}

/**
 * What a light is on the set, as a field of R, where its name tells it: a practical is dimmed before
 * it is gelled.
 * @param {string} [name]
 * @param {string} [role]  where the book says it
 */
export function roleOf(name = "", role = "") {
  const practical = [t("role.practical"), "practical"].some((word) =>
    name.toLocaleLowerCase().includes(word.toLocaleLowerCase()),
  );
  return role ? { role } : practical ? { role: "practical" } : {};
}

/**
 * The same as questions about one light take it, what it is meant to be beside its reading.
 * @param {Record<string, any>} lit  see aimed
 * @returns {{reading: Record<string, any>, meant?: Record<string, any>}}
 */
export function besideReading({ meant, ...reading }) {
  return { reading, ...(meant ? { meant } : {}) };
}

/**
 * The colour that a lamp is to be dialled or driven to, as fields of a question, with the gels that
 * it may name.
 * @param {string | null} [light]
 */
export function targetOf(light = null) {
  return { target: centreOf(), ...aimed(withOwnGels(), light) };
}

/**
 * What a light is measured against, to be told to people: itself as it was, the light that all
 * match, or (null) the white the camera is set to.
 * @param {string | null} [light]
 * @param {Said} [said]
 * @returns {{itself: Thing} | {other: Thing} | null}  a reading, or a light
 */
export function measuredAgainst(light = null, said = saidOf(light)) {
  const then = said ? undefined : earlierOf(light);
  if (then) return { itself: then.reading };
  const hero = heroOf(currentSetup());
  return hero ? { other: hero.light } : null;
}
