/**
 * The reading that is being typed on Light: saved at every keystroke, kept by keepReading.
 * Fires "change".
 */

import { stamp } from "../../clock.js";
import { book, drafts, reportFault, settings } from "../index.js";
import { hung } from "../log/measured-gels.js";
import { earlierOf, keepReading } from "../log/shoot.js";
import { levelField } from "../questions/camera.js";

const FORM = "light";

/**
 * @typedef {object} Typed
 * @property {"xy" | "cct" | "spectrum"} way  which pair of numbers is typed, or a spectrum
 * @property {string} x
 * @property {string} y
 * @property {string} cct_K
 * @property {string} duv
 * @property {{wavelengths_nm: number[], values: number[]} | null} spectrum  as the file has it
 * @property {string} source         the file it came from
 * @property {string} illuminance    in the unit of the settings
 * @property {string} name
 * @property {string} lamp
 * @property {string} note
 * @property {string} dialled        what is dialled on the lamp, as its display says it
 * @property {string} dimmer
 * @property {string} place          where it was read
 * @property {{latitude: number, longitude: number, accuracy_m: number} | null} position
 * @property {string} photo          a small picture as a data address
 * @property {string[]} pack         labels of the gels on the light while it is read
 * @property {string | null} light   id of the light, when it was measured before
 * @property {string | null} before  id of the reading this one is compared with
 * @property {{at: string, reading: string} | null} kept  set once it is in the book
 */

/** @type {Typed} */
const BLANK = {
  way: "xy",
  x: "",
  y: "",
  cct_K: "",
  duv: "",
  spectrum: null,
  source: "",
  illuminance: "",
  name: "",
  lamp: "unknown",
  note: "",
  dialled: "",
  dimmer: "",
  place: "",
  position: null,
  photo: "",
  pack: [],
  light: null,
  before: null,
  kept: null,
};

/** Remembered for the page that opens before the store does (src/opening.js). @param {string} way */
function rememberWay(way) {
  try {
    if (localStorage.getItem("evenkelvin.way") !== way) localStorage.setItem("evenkelvin.way", way);
  } catch {
    // Every storage is forbidden here, or full.
  }
}

class LightDraft extends EventTarget {
  /** @type {Typed} */ typed = { ...BLANK };

  /** Take up what was typed when this tab was last open. */
  async load() {
    const typed = await drafts.load(FORM).catch(reportFault);
    this.typed = { ...BLANK, lamp: settings.get("lamp"), ...typed };
    this.dispatchEvent(new Event("change"));
  }

  #save() {
    rememberWay(this.typed.way);
    this.dispatchEvent(new Event("change"));
    drafts.save(FORM, this.typed).catch(reportFault);
  }

  /** A field changed: what was kept is no longer what stands here. @param {Partial<Typed>} fields */
  type(fields) {
    this.typed = { ...this.typed, ...fields, kept: null };
    this.#save();
  }

  /**
   * Take a reading's numbers from a file as if they were typed.
   * @param {Record<string, any>} reading
   * @param {Partial<Typed>} fields
   */
  typeReading(reading, fields) {
    const unit = levelField(fields.lamp ?? this.typed.lamp);
    /** @type {Record<string, any>} */
    const typed = { way: reading.cct_K === undefined ? "xy" : "cct" };
    for (const key of ["x", "y", "cct_K", "duv"]) {
      if (reading[key] !== undefined) typed[key] = String(reading[key]);
    }
    if (reading[unit] !== undefined) typed.illuminance = String(reading[unit]);
    this.type({ ...typed, ...fields });
  }

  /** Replace all of it. @param {Partial<Typed>} typed */
  start(typed = {}) {
    // Light after light of one kind is the rule; where we are does not change between them.
    const { way, place } = this.typed;
    this.typed = { ...BLANK, way, place, lamp: settings.get("lamp"), ...typed };
    this.#save();
  }

  /**
   * Read a light again, with `pack` on it by now.
   * @param {string} light
   * @param {string[]} [pack] by default what was on it at the last reading
   */
  measureAgain(light, pack) {
    const before = book.latest(light);
    const then = before ?? earlierOf(light)?.reading;
    this.start({
      light,
      before: before?.id ?? null,
      name: book.thing(light)?.data.name ?? "",
      lamp: book.thing(light)?.data.lamp ?? "unknown",
      pack: pack ?? hung(then?.data ?? {}),
      way: then?.data.spectrum ? "spectrum" : then?.data.cct_K ? "cct" : "xy",
    });
  }

  /** Whether something stands here that is nowhere else. */
  get unsaved() {
    const { x, y, cct_K, duv, spectrum, kept } = this.typed;
    if (spectrum && !kept) return true;
    return !kept && [x, y, cct_K, duv].some((value) => value.trim() !== "");
  }

  /** Whether the numbers of the chosen way are all there. */
  get complete() {
    const { way, x, y, cct_K, spectrum } = this.typed;
    if (way === "spectrum") return Boolean(spectrum);
    return way === "xy" ? Boolean(x.trim() && y.trim()) : Boolean(cct_K.trim());
  }

  /** @returns {Record<string, any>} */
  #colour() {
    const { way, x, y, cct_K, duv, spectrum, source } = this.typed;
    if (way === "spectrum") return { spectrum, ...(source ? { file: source } : {}) };
    if (way === "xy") return { x, y };
    return duv.trim() ? { cct_K, duv } : { cct_K };
  }

  /** The reading as it is asked about and kept. @returns {Record<string, any>} */
  get reading() {
    const { illuminance, lamp, pack, position } = this.typed;
    const data = this.#colour();
    if (illuminance.trim()) data[levelField(lamp)] = illuminance;
    for (const field of /** @type {const} */ (["note", "dialled", "dimmer", "place", "photo"])) {
      if (this.typed[field].trim()) data[field] = this.typed[field].trim();
    }
    if (position) data.position = position;
    return { ...data, lamp, pack };
  }

  /**
   * Put it in the book. Resolves when durable.
   * @param {string} name   for a light that was given none
   * @param {Record<string, any>} target  what it was measured against
   */
  async keep(name, target) {
    const { typed } = this;
    const stage = typed.pack.length ? "gelled" : typed.before ? "re-checked" : "bare";
    const { light, reading } = await keepReading({
      light: typed.light,
      lightData: { name: typed.name.trim() || name, lamp: typed.lamp },
      data: { ...this.reading, stage, target },
    });
    // Keystrokes that came while it was being written belong to the next reading.
    if (this.typed !== typed) return;
    this.typed = {
      ...typed,
      light,
      name: typed.name.trim() || name,
      kept: { at: stamp(), reading },
    };
    this.#save();
    if (typed.lamp !== settings.get("lamp")) settings.set("lamp", typed.lamp).catch(reportFault);
  }
}

export const lightDraft = new LightDraft();
