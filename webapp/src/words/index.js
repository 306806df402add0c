/**
 * Every word on the screen comes from one catalogue, so that a translation is one file.
 */
import en from "./en.js";
import { isolated } from "./isolated.js";
import { said } from "./kernel.js";

/** @typedef {keyof typeof en} WordKey */
/** @typedef {string | {one: string, other: string}} Words */

/**
 * Another language: its words, the forms of the kernel's sentences, and how it writes a number.
 * Read when it is first spoken; where it lacks a word, that is said in English.
 * @typedef {{words: Partial<Record<WordKey, Words>>, forms: Record<string, string>,
 *            figure: (english: string) => string}} Translation
 */

/** @type {Record<string, () => Promise<Translation>>} */
const TRANSLATIONS = { de: () => import("./german.js") };

export const LANGUAGES = /** @type {const} */ (["en", "de"]);

/** @type {"en" | "de"} */
let spoken = "en";
/** The language that was chosen last, while its words are still on their way. */
let asked = "en";
let words = /** @type {Record<string, Words>} */ (en);
/** @type {Translation | undefined} */
let translation;
let plural = new Intl.PluralRules("en");

export const language = () => spoken;

/**
 * Speak a language from now on; English where its words cannot be read.
 * @param {"system" | "en" | "de"} wanted
 */
export async function speak(wanted) {
  const system = navigator.language.toLowerCase().startsWith("de") ? "de" : "en";
  const next = wanted === "system" ? system : wanted;
  asked = next;
  const found = await TRANSLATIONS[next]?.().catch(() => undefined);
  if (asked !== next) return; // another was chosen meanwhile
  translation = found;
  spoken = found ? next : "en";
  words = /** @type {Record<string, Words>} */ ({ ...en, ...translation?.words });
  plural = new Intl.PluralRules(spoken);
  document.documentElement.lang = spoken;
}

/**
 * An answer of the kernel that came as forms, in plain words of the language spoken now.
 * @param {any} answer
 */
export const inOurWords = (answer) => said(answer, translation);

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
  return text.replace(/\{(\w+)\}/g, (_, name) => isolated(String(values[name] ?? "")));
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
