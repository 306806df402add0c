/**
 * What the person set: held in memory, written on change. Fires "change".
 */
import { announce } from "./tabs.js";

/**
 * @typedef {object} Values
 * @property {{cct_K: string, duv: string}} white  the white the camera is set to, as typed
 * @property {"tight" | "normal" | "loose" | {steps: string}} tolerance
 * @property {"lx" | "fc"} illuminance
 * @property {"system" | "dark" | "daylight"} theme
 * @property {string[]} without    gels of the kit that are not in stock
 * @property {import("./own-gels.js").OwnGel[]} ownGels
 * @property {string | null} here  the setup we work in
 * @property {boolean} welcomed
 */

/** @type {Values} */
const FIRST = {
  white: { cct_K: "5600", duv: "0" },
  tolerance: "normal",
  illuminance: "lx",
  theme: "system",
  without: [],
  ownGels: [],
  here: null,
  welcomed: false,
};

export class Settings extends EventTarget {
  /** @param {import("./database.js").Database} database */
  constructor(database) {
    super();
    this.database = database;
    /** @type {Values} */
    this.values = { ...FIRST };
  }

  async load() {
    const kept = await this.database.run("settings", "readonly", async (store) => {
      const [keys, values] = await Promise.all([store.getAllKeys(), store.getAll()]);
      return Object.fromEntries(
        keys.map((/** @type {string} */ key, /** @type {number} */ i) => [key, values[i]]),
      );
    });
    this.values = { ...FIRST, ...kept };
    this.dispatchEvent(new Event("change"));
  }

  /**
   * @template {keyof Values} K
   * @param {K} key
   * @returns {Values[K]}
   */
  get(key) {
    return this.values[key];
  }

  /**
   * Takes effect at once; resolves when durable.
   * @template {keyof Values} K
   * @param {K} key
   * @param {Values[K]} value
   */
  async set(key, value) {
    this.values = { ...this.values, [key]: value };
    this.dispatchEvent(new Event("change"));
    await this.database.run("settings", "readwrite", (store) => store.put(value, key));
    announce({ database: this.database.name, setting: key });
  }
}
