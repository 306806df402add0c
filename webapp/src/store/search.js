/**
 * Finding readings in the book: one row for each reading that stands, worked out once for each
 * state of the book, so that a book of 20 000 readings is searched at every keystroke.
 */
import { ask } from "../kernel/client.js";
import { tMaybe } from "../words/index.js";
import { hung } from "./hung.js";
import { book, settings } from "./index.js";
import { readingQuestion } from "./questions.js";

/** @typedef {import("./book.js").Thing} Thing */

/**
 * @typedef {object} Row
 * @property {Thing} reading
 * @property {Thing} light
 * @property {Thing} setup
 * @property {Thing} location
 * @property {Thing} production
 * @property {string} lamp
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

let version = -1;
/** @type {Row[]} */
let rows = [];

/** @returns {Row[]} the newest first */
function allRows() {
  if (version === book.version) return rows;
  rows = [];
  for (const production of book.below(null, "production")) {
    for (const location of book.below(production.id, "location")) {
      for (const setup of book.below(location.id, "setup")) {
        for (const light of book.below(setup.id, "light")) {
          for (const reading of book.below(light.id, "reading")) {
            rows.push(rowOf({ reading, light, setup, location, production }));
          }
        }
      }
    }
  }
  const times = new Map(rows.map((row) => [row, Date.parse(row.reading.at)]));
  rows.sort((a, b) => Number(times.get(b)) - Number(times.get(a)));
  version = book.version;
  return rows;
}

/** @param {Omit<Row, "lamp" | "day" | "text">} row @returns {Row} */
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
    data.dialled,
    data.x,
    data.y,
    data.cct_K,
    ...hung(data),
    tMaybe(`lamp.${lamp}`, lamp),
    tMaybe(`stage.${data.stage}`, ""),
    ...row.reading.heads.map((head) => head.who),
  ];
  const text = words.filter(Boolean).join("\n").toLowerCase();
  return { ...row, lamp, day: row.reading.at.slice(0, 10), text };
}

/** @param {Wanted} wanted */
export const isAnything = (wanted) => Object.values(wanted).every((value) => !value.trim());

/**
 * @param {Wanted} wanted
 * @returns {Row[]} the newest first. A verdict that was not worked out yet matches nothing.
 */
export function findReadings(wanted) {
  const parts = wanted.text.toLowerCase().split(/\s+/).filter(Boolean);
  return allRows().filter(
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
    return this.want(allRows().map((row) => row.reading));
  }
}

export const verdicts = new Verdicts();
