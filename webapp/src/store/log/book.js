/**
 * The book in memory: every entry of the log and the present state of every thing in it. What
 * the entries mean is told in the kernel's book/meaning.py; both run the cases of
 * tests/book_cases.
 * Fires "change" whenever that state moves, whichever tab moved it, and "added" with the ids of
 * entries that are new.
 */

import { announce } from "../tabs.js";
import { creation, replacement } from "./entries.js";
import { Log } from "./log.js";

/** @typedef {import("./entries.js").Entry} Entry */
/** @typedef {import("./entries.js").Kind} Kind */

/** @typedef {import("./log.js").Thing} Thing */

/** Entries that are read from the database at once. */
const TOGETHER = 2000;

/** Entries that are written to the database at once: each is copied on the page's own thread. */
const WRITTEN_TOGETHER = 250;

/** Gives the screen a turn. */
export const turn = () => new Promise((resolve) => setTimeout(resolve));

/**
 * A list cut into short ones.
 * @template T
 * @param {T[]} list
 * @param {number} length
 */
export function* slices(list, length) {
  for (let at = 0; at < list.length; at += length) yield list.slice(at, at + length);
}

export class Book extends Log {
  /** @param {import("../database.js").Database} database */
  constructor(database) {
    super();
    this.database = database;
    /** Who writes here, to sign every entry with. @type {() => string} */
    this.signature = () => "";
    /** Moves with every change, for whoever keeps something that was worked out from the book. */
    this.version = 0;
    /** Whether the log has been read: what stands here is then all there is. */
    this.read = false;
  }

  /** @param {string[]} [ids] of the entries that are new */
  #changed(ids = []) {
    this.version += 1;
    this.dispatchEvent(new Event("change"));
    if (ids.length) this.dispatchEvent(new CustomEvent("added", { detail: ids }));
  }

  /** Read the whole log, some at a time, so that no long book holds the screen up. */
  async load() {
    const entries = await this.database.run("entries", "readonly", async (store) => {
      /** @type {Entry[]} */
      const read = [];
      for (let from; ; from = IDBKeyRange.lowerBound(read[read.length - 1].id, true)) {
        const some = await store.getAll(from, TOGETHER);
        read.push(...some);
        if (some.length < TOGETHER) return read;
      }
    });
    this.forget();
    for (const entry of entries) this.take(entry);
    this.read = true;
    this.#changed();
  }

  /** Read what was added while nobody listened; the whole log only if it is another one. */
  async catchUp() {
    /** @type {string[]} */
    const ids = await this.database.run("entries", "readonly", (store) => store.getAllKeys());
    const fresh = ids.filter((id) => !this.entry(id));
    if (ids.length - fresh.length !== this.size) await this.load();
    else if (fresh.length) await this.refresh(fresh);
  }

  /** Read the entries that another tab wrote. @param {string[]} ids */
  async refresh(ids) {
    const entries = await this.database.run("entries", "readonly", (store) =>
      Promise.all(ids.map((id) => store.get(id))),
    );
    for (const entry of entries) if (entry) this.take(entry);
    this.#changed(ids);
  }

  /**
   * Write entries in one transaction. When this resolves they are durable.
   * @param {...Entry} entries
   */
  async add(...entries) {
    const who = this.signature().trim();
    await this.#put(who ? entries.map((entry) => ({ ...entry, who })) : entries);
  }

  /** @param {Entry[]} entries */
  async #put(entries) {
    // Some at a time, so that a long book does not hold the screen up; one transaction all the same.
    await this.database.run("entries", "readwrite", async (store) => {
      for (const some of slices(entries, WRITTEN_TOGETHER)) {
        await Promise.all(some.map((entry) => store.put(entry)));
      }
    });
    for (const some of slices(entries, TOGETHER)) {
      for (const entry of some) this.take(entry);
      if (some.length === TOGETHER) await turn();
    }
    const ids = entries.map((entry) => entry.id);
    this.#changed(ids);
    announce({ database: this.database.name, entries: ids });
  }

  /**
   * Take over entries that others wrote, as the kernel merged them: all of them or none.
   * @param {Entry[]} fresh     with ids that this book does not have
   * @param {Entry[]} [changed] which take the place of those with their ids
   */
  async takeOver(fresh, changed = []) {
    await this.#put([...fresh, ...changed]);
    if (changed.length) {
      await this.load();
      announce({ database: this.database.name, reload: true });
    }
  }

  /**
   * @param {Kind} kind
   * @param {string | null} parent
   * @param {Record<string, any>} data
   * @returns {Promise<string>} its id
   */
  async create(kind, parent, data) {
    const entry = creation(kind, parent, data);
    await this.add(entry);
    return entry.id;
  }

  /** Change some fields of a thing. @param {string} id @param {Record<string, any>} fields */
  async edit(id, fields) {
    const thing = this.thing(id);
    if (thing) await this.replace(id, { ...thing.data, ...fields });
  }

  /** Put other fields in place of a thing's. @param {string} id @param {Record<string, any>} data */
  async replace(id, data) {
    const thing = this.thing(id);
    if (!thing) return;
    const taken = thing.kind === "reading" ? { read_at: thing.at } : {};
    await this.add(replacement(thing.heads, { ...data, ...taken }));
  }

  /**
   * Delete a thing.
   * @param {string} id
   * @returns {Promise<() => Promise<void>>} undo: one more entry with the earlier data
   */
  async remove(id) {
    const thing = this.thing(id);
    if (!thing) return async () => {};
    const entry = replacement(thing.heads, thing.data, true);
    await this.add(entry);
    return () => this.add(replacement([entry], thing.data));
  }
}
