/** What the kernel says, in German, as far as it is translated. */
import { inGerman } from "./in-german.js";

/** Fields of an answer that hold sentences; all others are data and stay as they are. */
const SAID = new Set([
  "message",
  "warnings",
  "words",
  "cautions",
  "collision",
  "cc_words",
  "ratio_words",
  "target_words",
  "lines",
  "unrated",
  "unreached",
  "title",
  "reference",
  "observer",
  "edition",
  "edition_rf",
  "edition_r15",
]);

/**
 * An answer of the kernel with its sentences translated.
 * @param {any} answer plain data, changed in place
 * @param {boolean} [said]
 * @returns {any}
 */
export function inOurWords(answer, said = false) {
  if (typeof answer === "string") return said ? inGerman(answer) : answer;
  if (answer === null || typeof answer !== "object") return answer;
  for (const key of Object.keys(answer)) {
    // What a person wrote into the book is theirs.
    if (key === "book" || key === "data") continue;
    answer[key] = inOurWords(answer[key], Array.isArray(answer) ? said : SAID.has(key));
  }
  return answer;
}
