/**
 * What the kernel says, in words of a language: the one place where its forms become text, so that
 * views deal with plain strings.
 *
 * A text for people comes as `{said: form, with: {place: value}}`. A value is another such text, a
 * number as English writes it (`{number}`), or a plain string: people's own words or a name, which
 * stay as they are.
 */

import { isolated } from "./isolated.js";

/**
 * @typedef {Pick<import("./index.js").Translation, "forms" | "figure">} Language
 * @type {Language}
 */
const ENGLISH = { forms: {}, figure: String };

/**
 * @param {any} value
 * @param {Language} language
 * @returns {string}
 */
function text(value, language) {
  if (typeof value === "string") return isolated(value);
  if (value.number !== undefined) return language.figure(value.number);
  const form = language.forms[value.said] ?? value.said;
  return form.replace(/\{(\w+)\}/g, (/** @type {string} */ _, /** @type {string} */ place) => {
    const said = text(value.with[place], language);
    // A place with a capital begins a sentence; people's own words stay.
    return /^[A-Z]/.test(place) && value.with[place].said !== undefined
      ? said.slice(0, 1).toUpperCase() + said.slice(1)
      : said;
  });
}

/**
 * An answer with its texts in words of a language.
 * @param {any} answer plain data
 * @param {Language} [language] English unless given
 * @returns {any}
 */
export function said(answer, language = ENGLISH) {
  if (answer === null || typeof answer !== "object") return answer;
  if (Array.isArray(answer)) return answer.map((inner) => said(inner, language));
  if (typeof answer.said === "string") return text(answer, language);
  // A group that has a field of that name of its own comes wrapped.
  return Object.fromEntries(
    Object.entries(answer.said === null ? answer.plain : answer).map(([key, inner]) => [
      key,
      said(inner, language),
    ]),
  );
}
