/**
 * One row for each reading that stands, worked out once for each state of the book, so that a book
 * of 20 000 readings is searched at every keystroke.
 */

/** @typedef {import("./log.js").Thing} Thing */

/**
 * @typedef {object} Row
 * @property {Thing} reading
 * @property {Thing} light
 * @property {Thing} setup
 * @property {Thing} location
 * @property {Thing} production
 * @property {string} lamp
 * @property {number} time   when it was read
 * @property {string} day    as the clock on the wall had it, 2026-11-25
 * @property {string} text   all its words in lower case
 */

/**
 * @typedef {object} Wanted   an empty field asks for nothing
 * @property {string} text
 * @property {string} location
 * @property {string} setup
 * @property {string} lamp
 * @property {string} verdict
 * @property {string} from    a day
 * @property {string} to      a day
 */

/** @type {Wanted} */
export const ANYTHING = {
  text: "",
  location: "",
  setup: "",
  lamp: "",
  verdict: "",
  from: "",
  to: "",
};

/** @param {Wanted} wanted */
export const isAnything = (wanted) => Object.values(wanted).every((value) => !value.trim());

/** What is written in a reading and above it, and in which words it shows. */
const WRITTEN = /** @type {const} */ ([
  ["production", "name"],
  ["location", "name"],
  ["location", "place"],
  ["setup", "name"],
  ["setup", "note"],
  ["light", "name"],
  ["light", "note"],
  ["reading", "note"],
  ["reading", "place"],
  ["reading", "x"],
  ["reading", "y"],
  ["reading", "cct_K"],
  ["reading", "cct_mired"],
]);

/** @typedef {(data: Record<string, any>, lamp: string) => string[]} WordsOf  more that can be looked for */

/**
 * @param {Omit<Row, "lamp" | "time" | "day" | "text">} row
 * @param {WordsOf} wordsOf
 * @returns {Row}
 */
function rowOf(row, wordsOf) {
  const { data, at, heads } = row.reading;
  const lamp = data.lamp ?? row.light.data.lamp ?? "unknown";
  const words = [
    ...WRITTEN.map(([thing, field]) => row[thing].data[field]),
    ...wordsOf(data, lamp),
    ...heads.map((head) => head.who),
  ];
  const text = words.filter(Boolean).join("\n").toLowerCase();
  return { ...row, lamp, time: Date.parse(at), day: at.slice(0, 10), text };
}

/**
 * Every reading that stands.
 * @param {import("./log.js").Log} log
 * @param {WordsOf} wordsOf
 * @returns {Generator<Row>}
 */
function* standing(log, wordsOf) {
  for (const production of log.below(null, "production")) {
    for (const location of log.below(production.id, "location")) {
      for (const setup of log.below(location.id, "setup")) {
        for (const light of log.below(setup.id, "light")) {
          for (const reading of log.below(light.id, "reading")) {
            yield rowOf({ reading, light, setup, location, production }, wordsOf);
          }
        }
      }
    }
  }
}

/**
 * The test that a row must pass. Every word looked for must be in it somewhere.
 * @param {Wanted} wanted
 * @param {(reading: Thing) => string | undefined} verdictOf  one not worked out yet matches nothing
 * @returns {(row: Row) => boolean}
 */
export function matching(wanted, verdictOf) {
  const parts = wanted.text.toLowerCase().split(/\s+/).filter(Boolean);
  return (row) =>
    (!wanted.location || row.location.id === wanted.location) &&
    (!wanted.setup || row.setup.id === wanted.setup) &&
    (!wanted.lamp || row.lamp === wanted.lamp) &&
    (!wanted.from || row.day >= wanted.from) &&
    (!wanted.to || row.day <= wanted.to) &&
    parts.every((part) => row.text.includes(part)) &&
    (!wanted.verdict || verdictOf(row.reading) === wanted.verdict);
}

/** How long rows are worked out before the screen gets a turn, in ms. */
const SLICE = 25;

/** The rows of the book as it stands, a long one in slices. Fires "change" when they are there. */
export class Rows extends EventTarget {
  /** @param {import("./book.js").Book} book @param {WordsOf} wordsOf */
  constructor(book, wordsOf) {
    super();
    this.book = book;
    this.wordsOf = wordsOf;
  }

  #version = -1;
  #ready = false;
  /** @type {Row[]} */ #rows = [];

  /** @returns {Row[] | undefined} the newest first; undefined while they are being worked out */
  get all() {
    if (this.#version !== this.book.version) {
      this.#version = this.book.version;
      this.#ready = false;
      this.#rows = [];
      this.#ready = this.#work(standing(this.book, this.wordsOf), this.#rows);
    }
    return this.#ready ? this.#rows : undefined;
  }

  /**
   * @param {Iterator<Row>} walk
   * @param {Row[]} rows as far as they are
   * @returns {boolean} whether they are all there
   */
  #work(walk, rows) {
    const end = performance.now() + SLICE;
    for (let next = walk.next(); !next.done; next = walk.next()) {
      rows.push(next.value);
      if (performance.now() < end) continue;
      setTimeout(() => {
        // The book may have moved on meanwhile.
        if (this.#rows !== rows || !this.#work(walk, rows)) return;
        this.#ready = true;
        this.dispatchEvent(new Event("change"));
      });
      return false;
    }
    rows.sort((a, b) => b.time - a.time);
    return true;
  }
}
