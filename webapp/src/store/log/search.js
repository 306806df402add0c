/**
 * Finding readings in the book: one row for each reading that stands, worked out once for each
 * state of the book, so that a book of 20 000 readings is searched at every keystroke.
 */
import { ask } from "../../kernel/client.js";
import { tMaybe } from "../../words/index.js";
import { dialledWords } from "../../words/reading.js";
import { book, settings } from "../index.js";
import { readingQuestion } from "../questions/reading.js";
import { gelsOn } from "./measured-gels.js";

/** @typedef {import("./book.js").Thing} Thing */

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

/** How long rows are worked out before the screen gets a turn, in ms. */
const SLICE = 25;

/** @returns {Generator<Row>} every reading that stands */
function* standing() {
  for (const production of book.below(null, "production")) {
    for (const location of book.below(production.id, "location")) {
      for (const setup of book.below(location.id, "setup")) {
        for (const light of book.below(setup.id, "light")) {
          for (const reading of book.below(light.id, "reading")) {
            yield rowOf({ reading, light, setup, location, production });
          }
        }
      }
    }
  }
}

/** The rows of the book as it stands, a long one in slices. Fires "change" when they are there. */
class Rows extends EventTarget {
  #version = -1;
  #ready = false;
  /** @type {Row[]} */ #rows = [];

  /** @returns {Row[] | undefined} the newest first; undefined while they are being worked out */
  get all() {
    if (this.#version !== book.version) {
      this.#version = book.version;
      this.#ready = false;
      this.#rows = [];
      this.#ready = this.#work(standing(), this.#rows);
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

export const rows = new Rows();

/** @param {Omit<Row, "lamp" | "time" | "day" | "text">} row @returns {Row} */
function rowOf(row) {
  const { data } = row.reading;
  const lamp = data.lamp ?? row.light.data.lamp ?? "unknown";
  const words = [
    row.production.data.name,
    row.location.data.name,
    row.location.data.place,
    row.setup.data.name,
    row.setup.data.note,
    row.light.data.name,
    row.light.data.note,
    data.note,
    data.place,
    dialledWords(data.dialled),
    data.x,
    data.y,
    data.cct_K,
    ...gelsOn(data),
    tMaybe(`lamp.${lamp}`, lamp),
    tMaybe(`stage.${data.stage}`, ""),
    ...row.reading.heads.map((head) => head.who),
  ];
  const text = words.filter(Boolean).join("\n").toLowerCase();
  const { at } = row.reading;
  return { ...row, lamp, time: Date.parse(at), day: at.slice(0, 10), text };
}

/** @param {Wanted} wanted */
export const isAnything = (wanted) => Object.values(wanted).every((value) => !value.trim());

/**
 * @param {Wanted} wanted
 * @returns {Row[] | undefined} the newest first, undefined while they are being worked out. A
 *   verdict that was not worked out yet matches nothing.
 */
export function findReadings(wanted) {
  const parts = wanted.text.toLowerCase().split(/\s+/).filter(Boolean);
  return rows.all?.filter(
    (row) =>
      (!wanted.location || row.location.id === wanted.location) &&
      (!wanted.setup || row.setup.id === wanted.setup) &&
      (!wanted.lamp || row.lamp === wanted.lamp) &&
      (!wanted.from || row.day >= wanted.from) &&
      (!wanted.to || row.day <= wanted.to) &&
      parts.every((part) => row.text.includes(part)) &&
      (!wanted.verdict || verdicts.of(row.reading) === wanted.verdict),
  );
}

/** How many readings go to the kernel at once. */
const TOGETHER = 1000;

/**
 * How readings stood against the white they were meant for, within the present tolerance. The
 * kernel works it out; it is kept here until the tolerance changes. Fires "change".
 */
class Verdicts extends EventTarget {
  /** @type {Map<string, string>} by id of the head entry */ #known = new Map();
  #tolerance = "";
  #asking = false;

  /** @param {Thing} reading @returns {string | undefined} "" = cannot be told */
  of(reading) {
    return this.#known.get(reading.heads[0].id);
  }

  /**
   * Work out those that are not known yet.
   * @param {readonly Thing[]} readings
   */
  async want(readings) {
    const tolerance = settings.get("tolerance");
    if (this.#tolerance !== JSON.stringify(tolerance)) {
      this.#known.clear();
      this.#tolerance = JSON.stringify(tolerance);
    }
    const open = readings.filter((one) => this.of(one) === undefined);
    if (this.#asking || open.length === 0) return;
    this.#asking = true;
    try {
      for (let start = 0; start < open.length; start += TOGETHER) {
        const some = open.slice(start, start + TOGETHER);
        const answer = await ask({
          ask: "judge",
          tolerance,
          readings: some.map(({ data }) => ({ ...readingQuestion(data), target: data.target })),
        });
        if (answer.problem) return;
        some.forEach((one, i) => {
          this.#known.set(one.heads[0].id, answer.verdicts[i] ?? "");
        });
        this.dispatchEvent(new Event("change"));
      }
    } finally {
      this.#asking = false;
    }
  }

  /** Work out all readings of the book. */
  wantAll() {
    return this.want(rows.all?.map((row) => row.reading) ?? []);
  }
}

export const verdicts = new Verdicts();
