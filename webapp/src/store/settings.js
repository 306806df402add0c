/**
 * What the person set: held in memory, written on change. Fires "change".
 */
import { announce } from "./tabs.js";

/**
 * @typedef {object} Values
 * @property {{cct_K: string, duv: string}} white  the white the camera is set to, as typed
 * @property {"tight" | "normal" | "loose" | {steps: string}} tolerance
 * @property {string} gelScatter  how far nominal gels vary, in percent (1 σ), as typed
 * @property {"lx" | "fc"} illuminance
 * @property {"m" | "ft"} length    the unit new lengths are typed in
 * @property {Forms} forms
 * @property {Camera} camera
 * @property {"thirds" | "tenths"} say  how stops are told
 * @property {string} mains_hz     of places that name none; empty = not known
 * @property {Record<string, string>[]} rolls  sizes of rolls and sheets that can be bought
 * @property {Record<string, string>[]} stock  rolls and sheets at hand: gel, size, count
 * @property {{overlap: Record<string, string>, spare_percent: string, piece: Record<string, string>,
 *   advised: boolean}} order        how gel is cut and ordered
 * @property {"system" | "dark" | "daylight"} theme
 * @property {string[]} without    gels of the kit that are not in stock
 * @property {import("./kit/own-gels.js").OwnGel[]} ownGels
 * @property {Record<string, string>} pieces  how many pieces of a gel there are, as typed
 * @property {{from_K: string, to_K: string, step_K: string, duv_limit: string}} whites
 *   which whites the camera may be set to when the whole set is balanced, as typed
 * @property {import("./kit/lamps.js").Lamp[]} lamps  tunable lamps, and what was learned about each
 * @property {"observer" | "camera"} judge  by whom agreement is judged once spectra are known
 * @property {import("./kit/cameras.js").CameraEyes[]} cameras  whose sensitivities are known
 * @property {string} eyes         name of the camera that judges; "" = the standard one
 * @property {string | null} here  the setup we work in, or the location or production that has
 *   none yet
 * @property {boolean} welcomed
 * @property {string} who          signs what is written
 * @property {string} lamp         kind of the lamp that was read last
 * @property {number} digits       that the meter gives of x and y; 0 = not known
 * @property {"system" | "en" | "de"} language
 * @property {boolean} keys        whether single keys of a keyboard lead to places
 * @property {{at: string, count: number, sha256: string} | null} backup  the last file of it all
 */

/**
 * What stands between a light and the sensor, as typed.
 * @typedef {object} Camera
 * @property {string} iso
 * @property {string} fps
 * @property {"angle" | "time"} way  which of the two the shutter is set by
 * @property {string} shutter_deg
 * @property {string} time_s
 * @property {"stops" | "factor"} filterAs
 * @property {string} filter
 * @property {string} lens_stops     what a lens marked in f-numbers loses in its glass
 * @property {"flat" | "dome"} receptor of the meter
 * @property {string} constant       C of the meter; empty = usual for its receptor
 */

/**
 * In which form the meter gives its numbers (see questions/forms.js).
 * @typedef {object} Forms
 * @property {"cct_K" | "cct_mired"} cct
 * @property {"duv" | "tint_cc" | "tint_cuts"} tint
 * @property {"light" | "filter"} says  what a plus sign of CC or cuts tells of
 * @property {"exposure_lx_s" | "flash_f_number"} flash
 * @property {string} iso  that the f-number of a flash is shown at
 */

/** @type {Values} */
const FIRST = {
  white: { cct_K: "5600", duv: "0" },
  tolerance: "normal",
  gelScatter: "8",
  illuminance: "lx",
  length: "m",
  forms: { cct: "cct_K", tint: "duv", says: "light", flash: "exposure_lx_s", iso: "100" },
  camera: {
    iso: "800",
    fps: "24",
    way: "angle",
    shutter_deg: "180",
    time_s: "1/48",
    filterAs: "stops",
    filter: "",
    lens_stops: "",
    receptor: "flat",
    constant: "",
  },
  say: "thirds",
  mains_hz: "",
  rolls: [],
  stock: [],
  order: {
    overlap: { overlap_m: "0.05" },
    spare_percent: "15",
    piece: { width_m: "0.6", height_m: "0.6" },
    advised: true,
  },
  theme: "system",
  without: [],
  ownGels: [],
  pieces: {},
  whites: { from_K: "", to_K: "", step_K: "100", duv_limit: "0" },
  lamps: [],
  judge: "observer",
  cameras: [],
  eyes: "",
  here: null,
  welcomed: false,
  who: "",
  lamp: "unknown",
  digits: 0,
  language: "system",
  keys: true,
  backup: null,
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
