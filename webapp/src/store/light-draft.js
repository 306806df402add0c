/**
 * The reading that is being typed on Light: saved at every keystroke, kept by keepReading.
 * Fires "change".
 */
import { stamp } from "./entries.js";
import { book, drafts, reportFault, settings } from "./index.js";
import { keepReading } from "./shoot.js";

const FORM = "light";

/**
 * @typedef {object} Typed
 * @property {"xy" | "cct"} way      which pair of numbers is being typed
 * @property {string} x
 * @property {string} y
 * @property {string} cct_K
 * @property {string} duv
 * @property {string} illuminance    in the unit of the settings
 * @property {string} name
 * @property {string} lamp
 * @property {string} note
 * @property {string[]} pack         gels on the light while it is read
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
  illuminance: "",
  name: "",
  lamp: "unknown",
  note: "",
  pack: [],
  light: null,
  before: null,
  kept: null,
};

class LightDraft extends EventTarget {
  /** @type {Typed} */ typed = { ...BLANK };

  /** Take up what was typed when this tab was last open. */
  async load() {
    const typed = await drafts.load(FORM).catch(reportFault);
    this.typed = { ...BLANK, ...typed };
    this.dispatchEvent(new Event("change"));
  }

  #save() {
    this.dispatchEvent(new Event("change"));
    drafts.save(FORM, this.typed).catch(reportFault);
  }

  /** A field changed: what was kept is no longer what stands here. @param {Partial<Typed>} fields */
  type(fields) {
    this.typed = { ...this.typed, ...fields, kept: null };
    this.#save();
  }

  /** Replace all of it. @param {Partial<Typed>} typed */
  start(typed = {}) {
    this.typed = { ...BLANK, way: this.typed.way, ...typed };
    this.#save();
  }

  /**
   * Read a light again, with `pack` on it by now.
   * @param {string} light
   * @param {string[]} [pack] by default what was on it at the last reading
   */
  measureAgain(light, pack) {
    const before = book.latest(light);
    this.start({
      light,
      before: before?.id ?? null,
      name: book.thing(light)?.data.name ?? "",
      lamp: book.thing(light)?.data.lamp ?? "unknown",
      pack: pack ?? before?.data.pack ?? [],
      way: before?.data.cct_K ? "cct" : "xy",
    });
  }

  /** Whether something stands here that is nowhere else. */
  get unsaved() {
    const { x, y, cct_K, duv, kept } = this.typed;
    return !kept && [x, y, cct_K, duv].some((value) => value.trim() !== "");
  }

  /** Whether the numbers of the chosen way are all there. */
  get complete() {
    const { way, x, y, cct_K } = this.typed;
    return way === "xy" ? Boolean(x.trim() && y.trim()) : Boolean(cct_K.trim());
  }

  /** The reading as it is asked about and kept. @returns {Record<string, any>} */
  get reading() {
    const { way, x, y, cct_K, duv, illuminance, lamp, pack, note } = this.typed;
    /** @type {Record<string, any>} */
    const data = way === "xy" ? { x, y } : duv.trim() ? { cct_K, duv } : { cct_K };
    if (illuminance.trim()) data[`illuminance_${settings.get("illuminance")}`] = illuminance;
    if (note.trim()) data.note = note;
    return { ...data, lamp, pack };
  }

  /**
   * Put it in the book. Resolves when durable.
   * @param {string} name   for a light that was given none
   * @param {Record<string, any>} target  what it was measured against
   */
  async keep(name, target) {
    const { typed } = this;
    const stage = typed.before ? (typed.pack.length ? "gelled" : "re-checked") : "bare";
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
  }
}

export const lightDraft = new LightDraft();
