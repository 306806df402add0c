/** What the kernel says, in German, as far as it is translated. */
import sentences, { PHRASES } from "./kernel-de.js";

/** Fields of an answer that hold sentences; all others are data and stay as they are. */
const SAID = new Set(["message", "warnings", "note", "words", "cautions"]);
/** What an offset or a drift says, and nothing that only looks like it, such as a pack of gels. */
const OFFSET =
  /^(\d+ mired (too (warm|cool)|warmer|cooler)|as warm as the target|no CCT to compare|same colour|[\d.]+ stops? (brighter|darker)|(a hair|a touch|clearly|strongly) (green|magenta))/;

const patterns = sentences.map(([english, german]) => ({
  form: new RegExp(
    `^${english
      .split("{}")
      .map((part) => part.replace(/[.*+?^$()|[\]\\{}]/g, "\\$&"))
      .join("(.+?)")}$`,
    "s",
  ),
  german,
}));

/** @param {string} sentence */
function inGerman(sentence) {
  for (const { form, german } of patterns) {
    const found = form.exec(sentence);
    if (found) {
      let place = 0;
      return german.replace(/\{\}/g, () => {
        place += 1;
        return found[place];
      });
    }
  }
  if (!OFFSET.test(sentence)) return sentence;
  return PHRASES.reduce((words, [english, german]) => words.replace(english, german), sentence);
}

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
