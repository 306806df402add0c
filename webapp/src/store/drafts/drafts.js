/**
 * What is typed and not kept yet, written at every keystroke. Each tab has its own draft of a
 * form; the draft of a tab that was killed is taken over by the next one that opens. What the
 * database refuses, or has not written when the page is left, the tab remembers.
 */
import { session } from "../session.js";
import { openTabs } from "../tabs.js";

const BETWEEN = "|";

export class Drafts {
  /** @param {import("../database.js").Database} database */
  constructor(database) {
    this.database = database;
    this.tab = "";
    globalThis.addEventListener?.("pagehide", () => {
      for (const [form, value] of this.#unwritten) {
        if (value !== undefined) session.set(this.#refused(form), JSON.stringify(value));
      }
    });
  }

  /** What is on its way into the database, by form. @type {Map<string, any>} */
  #unwritten = new Map();

  /** @param {string} form */
  #refused(form) {
    return `evenkelvin.draft ${this.database.name} ${form}`;
  }

  /**
   * @param {string} form
   * @returns {Promise<any>} what was typed there, or undefined
   */
  async load(form) {
    const refused = session.get(this.#refused(form));
    if (refused !== undefined) return JSON.parse(refused);
    const isOpen = await openTabs();
    return this.database.run("drafts", "readwrite", async (store) => {
      const own = form + BETWEEN + this.tab;
      const kept = await store.get(own);
      if (kept !== undefined) return kept.value;
      const keys = await store.getAllKeys();
      const left = keys.filter((/** @type {string} */ key) => {
        const [name, tab] = key.split(BETWEEN);
        return name === form && !isOpen(tab);
      });
      const drafts = await Promise.all(left.map((/** @type {string} */ key) => store.get(key)));
      const newest = drafts
        .map((draft, i) => ({ ...draft, key: left[i] }))
        .sort((a, b) => b.at - a.at)[0];
      if (!newest) return undefined;
      await store.put({ value: newest.value, at: newest.at }, own);
      await store.delete(newest.key);
      return newest.value;
    });
  }

  /** @param {string} form @param {any} value undefined = nothing typed any more */
  async save(form, value) {
    const own = form + BETWEEN + this.tab;
    this.#unwritten.set(form, value);
    try {
      await this.database.run(
        "drafts",
        "readwrite",
        (store) =>
          value === undefined ? store.delete(own) : store.put({ value, at: Date.now() }, own),
        "relaxed",
      );
    } catch (error) {
      if (value !== undefined) session.set(this.#refused(form), JSON.stringify(value));
      throw error;
    } finally {
      if (this.#unwritten.get(form) === value) this.#unwritten.delete(form);
    }
    session.remove(this.#refused(form));
  }
}
