/**
 * Every word on the screen comes from one catalogue, so that a translation is one file.
 */
import de from "./de.js";
import en from "./en.js";

/** @typedef {keyof typeof en} WordKey */
/** @typedef {string | {one: string, other: string}} Words */

/** What is spoken; a language that lacks a word says it in English. */
const CATALOGUES = /** @type {Record<"en" | "de", Partial<Record<WordKey, Words>>>} */ ({ en, de });

export const LANGUAGES = /** @type {const} */ (["en", "de"]);

/** @type {"en" | "de"} */
let spoken = "en";
let words = /** @type {Record<string, Words>} */ (en);
let plural = new Intl.PluralRules("en");

export const language = () => spoken;

/** Speak a language from now on. @param {"system" | "en" | "de"} wanted */
export function speak(wanted) {
  const system = navigator.language.toLowerCase().startsWith("de") ? "de" : "en";
  spoken = wanted === "system" ? system : wanted;
  words = /** @type {Record<string, Words>} */ ({ ...en, ...CATALOGUES[spoken] });
  plural = new Intl.PluralRules(spoken);
  document.documentElement.lang = spoken;
}

/**
 * The words for `key`, with `{name}` places filled from `values`. An entry with `one` and
 * `other` is chosen by `values.n`.
 * @param {WordKey} key
 * @param {Record<string, string | number>} [values]
 * @returns {string}
 */
export function t(key, values = {}) {
  const entry = words[key];
  if (entry === undefined) throw new Error(`No words for "${key}".`);
  const text =
    typeof entry === "string"
      ? entry
      : plural.select(Number(values.n)) === "one"
        ? entry.one
        : entry.other;
  return text.replace(/\{(\w+)\}/g, (_, name) => String(values[name] ?? ""));
}

/**
 * The same for a key that is put together at run time; `fallback` when there is no such entry.
 * @param {string} key
 * @param {string} fallback
 * @returns {string}
 */
export function tMaybe(key, fallback) {
  return key in words ? t(/** @type {WordKey} */ (key)) : fallback;
}

/** How tables are separated where this person is: by the sign for decimals. */
export function listStyle() {
  return new Intl.NumberFormat().format(1.5).includes(",") ? "semicolon" : "comma";
}
