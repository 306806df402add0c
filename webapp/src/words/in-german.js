/** What the kernel says, on German, as far as it is known; pure text, without app or browser. */
import { COMPOSED, SENTENCES, WORDS } from "./patterns-de.js";

/** A name or number in a sentence; it does not reach over the end of another sentence. */
const PLACE = "((?:(?!\\. [A-Z“]).)*?)";

/** @type {{form: RegExp, german: string}[] | undefined} made when the first sentence is asked for */
let made;

function patterns() {
  const letters = (/** @type {[string, string]} */ [english]) =>
    english.replaceAll("{}", "").length;
  made ??= [...SENTENCES]
    // The most particular first: what is nearly all places fits much that it does not mean.
    .sort((a, b) => letters(b) - letters(a))
    .map(([english, german]) => ({
      form: new RegExp(
        `^${english
          .split("{}")
          .map((part) => part.replace(/[.*+?^$()|[\]\\{}]/g, "\\$&"))
          .join(PLACE)}$`,
        "s",
      ),
      german,
    }));
  return made;
}

/** Numbers as German writes them; marks on a lens stay. @param {string} text */
const numbers = (text) => text.replace(/(?<![\w/.,])(\d+)\.(\d+)(?![\w.])/g, "$1,$2");

/** What stands in a place of a sentence. @param {string} text */
function inPlace(text) {
  if (/^\d{1,3}(,\d{3})+$/.test(text)) return text.replaceAll(",", ".");
  const list = text.split(/(, | and )/);
  if (list.length > 1 && list.every((part, i) => i % 2 || WORDS.has(part))) {
    return list.map((part) => WORDS.get(part) ?? part.replace(" and ", " und ")).join("");
  }
  return known(text) ?? numbers(text);
}

/** @param {string} text */
function whole(text) {
  const word = WORDS.get(text);
  if (word) return word;
  const composed = COMPOSED.find(({ known: form }) => form.test(text));
  if (composed) {
    return numbers(composed.pieces.reduce((said, [from, to]) => said.replace(from, to), text));
  }
  for (const { form, german } of patterns()) {
    const found = form.exec(text);
    if (!found) continue;
    let place = 0;
    return german.replace(/\{(\d?)\}/g, (_, number) => {
      place += 1;
      return inPlace(found[number === "" ? place : Number(number) + 1]);
    });
  }
  return undefined;
}

/**
 * A text on German; undefined when nothing of it is known.
 * @param {string} text
 * @returns {string | undefined}
 */
function known(text) {
  const said = whole(text);
  if (said !== undefined) return said;
  if (text.endsWith(".")) {
    const open = whole(text.slice(0, -1));
    if (open !== undefined) return `${open}.`;
  }
  // A sentence that begins what elsewhere goes on.
  const small = /^[A-Z][a-z]/.test(text) && whole(text[0].toLowerCase() + text.slice(1));
  if (small) return small[0].toUpperCase() + small.slice(1);
  const noted = /^(.+) \(([^()]*)\)(\.?)$/s.exec(text);
  const stated = noted && whole(noted[1]);
  if (noted && stated !== undefined) {
    return `${stated} (${inPlace(noted[2].replace(/^line (?=\d)/, "Zeile "))})${noted[3] ?? ""}`;
  }
  // Several sentences, each by itself.
  const sentences = text?.split(/(?<=[.?!]) (?=[A-Z“])/);
  if (sentences.length > 1) {
    const each = sentences.map(known);
    if (each.some((one) => one !== undefined)) {
      return each.map((one, i) => one ?? sentences[i]).join(" ");
    }
  }
  // A name, and what is said of it.
  const named = /^([^:]{1,200}): (.+)$/s.exec(text);
  const rest = named && known(named[2]);
  return named && rest !== undefined ? `${whole(named[1]) ?? named[1]}: ${rest}` : undefined;
}

/** @param {string} text of the kernel @returns {string} the same in German, or as it is */
export function inGerman(text) {
  return known(text) ?? text;
}
