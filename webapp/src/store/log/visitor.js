/**
 * A book of somebody else that is being looked at: from a link, codes, a file or pasted text.
 * Nothing of it is in the own book until `add`. Fires "change".
 */
import { ask } from "../../kernel/client.js";
import { t } from "../../words/index.js";
import { book, settings } from "../index.js";
import { slices, turn } from "./book.js";
import { Log } from "./log.js";

/**
 * @typedef {object} Copy
 * @property {string} title
 * @property {Log} book       to look at; it is stored nowhere
 * @property {any} summary     the kernel's "book_check"
 * @property {number} fresh    entries that the own book does not have
 * @property {boolean} added
 * @property {Map<string, any>} slips  how each light stands, by its id; empty of a long book
 */

/** The most characters that are handed to the kernel; it says the same of larger files. */
const MOST = 64_000_000;

/** How the lights of a book stand is told of one that has no more entries, and of so many readings. */
const MOST_TOLD = 3000;
const MOST_READINGS = 300;

/** Entries that are compared with the own ones between two turns of the screen. */
const TOGETHER = 1000;

/**
 * What another book has that the own one lacks, and what both have under one id with different
 * contents. The screen gets a turn between the slices.
 * @param {import("./entries.js").Entry[]} theirs
 */
async function unlike(theirs) {
  /** @type {import("./entries.js").Entry[]} */
  const fresh = [];
  /** @type {import("./entries.js").Entry[]} */
  const clashing = [];
  for (const some of slices(theirs, TOGETHER)) {
    for (const entry of some) {
      const own = book.entry(entry.id);
      if (!own) fresh.push(entry);
      else if (JSON.stringify(own) !== JSON.stringify(entry)) clashing.push(entry);
    }
    await turn();
  }
  return { fresh, clashing };
}

/**
 * The entries of a long book. The screen gets a turn between the slices.
 * @param {string[]} slices
 */
async function entriesOf(slices) {
  const entries = [];
  for (const slice of slices) {
    entries.push(...JSON.parse(slice));
    await turn();
  }
  return entries;
}

class Visitor extends EventTarget {
  /** @type {Copy | null} */ copy = null;
  /** What is wrong with what came in, as a sentence. */
  problem = "";
  waiting = false;
  /** Codes of a series that were scanned so far. @type {string[]} */ parts = [];
  /** How far the series is, as a sentence. */
  progress = "";

  #change() {
    this.dispatchEvent(new Event("change"));
  }

  /** Given up with the screen that it was brought to. */
  #looking = new AbortController();

  /** The screen is left: what has not been looked at yet is not looked at. */
  leave() {
    this.#looking.abort();
    this.#looking = new AbortController();
  }

  /** The person waits no longer for what was brought. */
  stop() {
    this.leave();
    this.problem = t("copy.stopped");
    this.#change();
  }

  /** Put all of it aside. */
  drop() {
    this.leave();
    this.copy = null;
    this.problem = "";
    this.parts = [];
    this.progress = "";
    this.#change();
  }

  /**
   * @template {import("../../kernel/answers.js").Ask} A
   * @param {import("../../kernel/answers.js").Question<A>} request
   * @param {AbortSignal} [signal]
   */
  async #ask(request, signal = this.#looking.signal) {
    this.waiting = true;
    this.problem = "";
    this.#change();
    try {
      const answer = await ask(request, { signal });
      this.problem = answer.problem?.message ?? "";
      return answer.problem ? undefined : answer;
    } finally {
      this.waiting = false;
      this.#change();
    }
  }

  /** @param {any} answer with `book` or `slices` */
  async #show(answer) {
    if (!answer?.book && !answer?.slices) return;
    const shown = new Log(answer.book?.entries ?? (await entriesOf(answer.slices)));
    await turn();
    this.copy = {
      title: answer.title ?? t("copy.book"),
      book: shown,
      summary: answer,
      fresh: shown.part().filter((entry) => !book.entry(entry.id)).length,
      added: false,
      slips: new Map(),
    };
    this.#change();
    await this.#tell(this.copy);
  }

  /** What the crew wants to know first: how each light stands, and what hangs. @param {Copy} copy */
  async #tell(copy) {
    const entries = copy.book.part();
    if (entries.length > MOST_TOLD) return;
    const theirs = { format: "evenkelvin-book", version: 2, entries };
    const tolerance = settings.get("tolerance");
    for (const { id } of copy.book.below(null, "production")) {
      const report = await ask(
        { ask: "report", book: theirs, of: id, tolerance, most: MOST_READINGS },
        { signal: this.#looking.signal },
      );
      if (report.problem) continue; // the readings themselves are still to be seen
      for (const setup of report.setups) {
        for (const slip of "slips" in setup ? setup.slips : []) copy.slips.set(slip.light, slip);
      }
    }
    this.#change();
  }

  /** @param {string} problem  why it is not looked at */
  refuse(problem) {
    this.drop();
    this.problem = problem;
    this.#change();
  }

  /** What came in by another door, until this one is open. @type {File | string | null} */
  brought = null;

  /** @param {File | string} what */
  bring(what) {
    this.brought = what;
  }

  /** Look at what came in by another door. */
  async takeBrought() {
    const { brought } = this;
    this.brought = null;
    if (typeof brought === "string") await this.take(brought);
    else if (brought) await this.take(await brought.text());
  }

  /**
   * A link, a code of a series, or the text of a book's file: told by how it begins.
   * @param {string} text
   */
  async take(text) {
    if (text.length > MOST) {
      this.problem = t("receive.tooLarge");
      this.#change();
      return;
    }
    if (text.trim().startsWith("{")) {
      await this.#show(await this.#ask({ ask: "book_check", book: text, give: "slices" }));
    } else if (/p\d\d?\.\d\d?\.[\w-]{8}\./.test(text)) {
      await this.takeCode(text);
    } else {
      await this.#show(await this.#ask({ ask: "open_link", link: text }));
    }
  }

  /**
   * One code of a series, after those that came before it: each is joined to what they left.
   * @param {string} text
   * @returns {Promise<void>}
   */
  takeCode(text) {
    const taken = this.#taking.then(() => this.#takeCode(text));
    this.#taking = taken.catch(() => {});
    return taken;
  }

  /** @type {Promise<void>} */ #taking = Promise.resolve();

  /** @param {string} text */
  async #takeCode(text) {
    if (this.parts.includes(text)) return;
    const parts = [...this.parts, text];
    const answer = await this.#ask({ ask: "join_parts", parts });
    if (!answer) return;
    this.parts = parts;
    this.progress = answer.words;
    await this.#show(answer);
    this.#change();
  }

  /**
   * Put it into the own book. The kernel merges what clashes, and keeps both: the union of all
   * others is themselves.
   */
  async add() {
    const { copy } = this;
    if (!copy) return;
    const { fresh, clashing } = await unlike(copy.book.part());
    if (!clashing.length) {
      await this.#addAll(copy, fresh);
      return;
    }
    const own = clashing.flatMap((entry) => book.entry(entry.id) ?? []);
    const as = { format: "evenkelvin-book", version: 2 };
    const books = [
      { ...as, entries: own },
      { ...as, entries: clashing },
    ];
    // Adding was pressed: it is done wherever the person has gone meanwhile.
    const merged = await this.#ask({ ask: "book_merge", books }, new AbortController().signal);
    if (!merged) return;
    const { entries } = /** @type {{entries: import("./entries.js").Entry[]}} */ (merged.book);
    const byId = new Map(entries.map((entry) => [entry.id, entry]));
    const named = (/** @type {string[]} */ ids) =>
      ids.map((id) => /** @type {any} */ (byId.get(id)));
    await this.#addAll(copy, [...fresh, ...named(merged.new)], named(merged.changed));
  }

  /**
   * @param {Copy} copy
   * @param {import("./entries.js").Entry[]} fresh
   * @param {import("./entries.js").Entry[]} [changed]
   */
  async #addAll(copy, fresh, changed = []) {
    this.waiting = true;
    this.#change();
    try {
      await book.takeOver(fresh, changed);
      copy.added = true;
    } finally {
      this.waiting = false;
      this.#change();
    }
  }
}

export const visitor = new Visitor();
