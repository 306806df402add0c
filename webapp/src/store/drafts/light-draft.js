/**
 * The reading that is being typed on Light: saved at every keystroke, kept by keepReading.
 * Fires "change".
 */

import { stamp } from "../../clock.js";
import { decimalsOf, spread, understood, withUnit } from "../../words/typed.js";
import { book, drafts, reportFault, settings } from "../index.js";
import { gelsOn, labels } from "../log/measured-gels.js";
import { toDo } from "../log/plan.js";
import { currentSetup, earlierOf, keepReading, takeBack, unreadLights } from "../log/shoot.js";
import { saidOf } from "../log/target.js";
import { levelField, levelOf, levelTyped, levelUnit } from "../questions/camera.js";
import { colourComplete, colourTyped, numbersOf, OTHER_FORMS } from "../questions/forms.js";
import { FIGURES } from "../questions/reading.js";

const FORM = "light";

/**
 * @typedef {object} Typed
 * @property {"xy" | "cct" | "spectrum"} way  which pair of numbers is typed, or a spectrum
 * @property {string} x
 * @property {string} y
 * @property {string} cct_K
 * @property {string} duv
 * @property {string} cct_mired      the same in the other forms of questions/forms.js
 * @property {string} tint_cc
 * @property {string} tint_cuts
 * @property {{wavelengths_nm: number[], values: number[]} | null} spectrum  as the file has it
 * @property {string} source         the file it came from
 * @property {string} ra             what else the meter shows of the colour, as typed
 * @property {string} r9
 * @property {string} rf
 * @property {string} rg
 * @property {string} ssi
 * @property {string} illuminance    in the unit of the settings
 * @property {string} name
 * @property {string} lamp
 * @property {string} note
 * @property {string} dialled        what is dialled on the lamp, as its display says it
 * @property {string} dimmer
 * @property {Dimmed | null} dimmed  how far it was dimmed, while the words in dimmer still say so
 * @property {string} place          where it was read
 * @property {{latitude: number, longitude: number, accuracy_m: number} | null} position
 * @property {string} photo          a small picture as a data address
 * @property {string[]} pack         labels of the gels on the light while it is read
 * @property {Record<string, any> | null} meant  what the light is meant to be, null = not said
 * @property {string | null} light   id of the light, when it was measured before
 * @property {string | null} before  id of the reading this one is compared with
 * @property {Offered | null} offered  what should hang by now, when a light is read again
 * @property {boolean} onward        whether this light follows by itself on the one kept last
 * @property {Last | null} last       what was kept last, until something else is kept
 */

/**
 * @typedef {object} Dimmed
 * @property {string} from           id of the reading at full light
 * @property {number} percent_light  of that
 * @property {string} words
 */

/**
 * @typedef {object} Offered
 * @property {"plan" | "advice"} by
 * @property {string[]} pack         labels of gels
 */

/**
 * @typedef {object} Last
 * @property {string} at
 * @property {string} name
 * @property {string} light          its id
 * @property {string} reading        its id
 * @property {boolean} fresh         whether the light came into the book with it
 * @property {Record<string, any> | null} [earlier]  what the light was before, where that changed
 * @property {Typed} typed           as it was typed, to be taken up again
 */

/** @type {Typed} */
const BLANK = {
  way: "xy",
  x: "",
  y: "",
  cct_K: "",
  duv: "",
  ...OTHER_FORMS,
  spectrum: null,
  source: "",
  ra: "",
  r9: "",
  rf: "",
  rg: "",
  ssi: "",
  illuminance: "",
  name: "",
  lamp: "unknown",
  note: "",
  dialled: "",
  dimmer: "",
  dimmed: null,
  place: "",
  position: null,
  photo: "",
  pack: [],
  meant: null,
  light: null,
  before: null,
  offered: null,
  onward: false,
  last: null,
};

/** Remembered for the page that opens before the store does (src/opening.js). @param {string} way */
function rememberWay(way) {
  try {
    if (localStorage.getItem("evenkelvin.way") !== way) localStorage.setItem("evenkelvin.way", way);
  } catch {
    // Every storage is forbidden here, or full.
  }
}

/** The CCT of a reading, in whichever form. @param {Record<string, any>} data */
const cctOf = (data) => data.cct_K ?? data.cct_mired;

class LightDraft extends EventTarget {
  /** @type {Typed} */ typed = { ...BLANK };
  /** Whether somebody comes to Light to type a reading at once. */ toType = false;

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

  /** A field changed. @param {Partial<Typed>} fields */
  type(fields) {
    this.typed = { ...this.typed, ...fields };
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
    for (const key of ["x", "y", "cct_K", "duv", "tint_cc", ...FIGURES]) {
      if (reading[key] !== undefined) typed[key] = String(reading[key]);
    }
    const [given] = Object.keys(levelOf(reading));
    if (given) {
      const other = given === unit ? "" : ` ${levelUnit(given)}`;
      typed.illuminance = `${reading[given]}${other}`;
    }
    this.type({ ...typed, ...fields });
  }

  /**
   * Take what a display shows as if it were typed.
   * @param {Record<string, string>} reading
   * @returns {() => void} the undo
   */
  takeDisplay(reading) {
    const earlier = this.typed;
    const flash = reading.exposure_lx_s !== undefined;
    this.typed = { ...this.typed, ...OTHER_FORMS, cct_K: "", duv: "" };
    this.typeReading(reading, flash ? { lamp: "flash" } : {});
    return () => this.start(earlier);
  }

  /**
   * What was typed or pasted into a field of numbers; a whole line of a meter fills several.
   * @param {import("../questions/forms.js").ColourField | "illuminance"} name
   * @param {string} text
   * @returns {string} the last field that was filled
   */
  typeNumber(name, text) {
    const { way } = this.typed;
    const line = way === "spectrum" ? null : spread(numbersOf(way, this.typed), name, text);
    this.type(line ?? { [name]: text });
    return line ? (Object.keys(line).at(-1) ?? name) : name;
  }

  /** A field is left: it shows what was understood. @param {import("../questions/forms.js").ColourField} name */
  settle(name) {
    const text = understood(name, this.typed[name]);
    if (text !== this.typed[name]) this.type({ [name]: text });
  }

  /** Whether a coordinate has as many digits as the meter gives. @param {"x" | "y"} name */
  full(name) {
    const digits = settings.get("digits");
    return digits > 0 && decimalsOf(this.typed[name]) === digits;
  }

  /** The unit that stands behind the brightness that was typed. */
  get ownUnit() {
    return withUnit(this.typed.illuminance).unit;
  }

  /** The field that the brightness belongs to: by its own unit, else by the settings. */
  get levelField() {
    const usual = levelField(this.typed.lamp);
    const { ownUnit } = this;
    if (usual.startsWith("illuminance"))
      return ["lx", "fc"].includes(ownUnit) ? `illuminance_${ownUnit}` : usual;
    return ownUnit === "lx·s" ? "exposure_lx_s" : usual;
  }

  /** What the next light begins with. @returns {Typed} */
  #next() {
    // Light after light of one kind is the rule; where we are does not change between them.
    const { way, place, last } = this.typed;
    return { ...BLANK, way, place, last, lamp: settings.get("lamp") };
  }

  /** Replace all of it. @param {Partial<Typed>} typed */
  start(typed = {}) {
    this.typed = { ...this.#next(), ...typed };
    this.#save();
  }

  /**
   * Read a light again, with what should hang on it by now: what its plan wants, else what was
   * advised, else what was on it.
   * @param {string} light
   * @param {string[]} [advised] labels of gels
   */
  measureAgain(light, advised) {
    const thing = book.thing(light);
    const before = book.latest(light);
    const then = before ?? earlierOf(light)?.reading;
    const plan = thing && before && toDo(thing, before) ? thing.data.planned : null;
    /** @type {Offered | null} */
    const offered =
      plan?.does === "gel"
        ? { by: "plan", pack: labels(plan.gels, plan.gel_ids) }
        : advised && !plan
          ? { by: "advice", pack: advised }
          : null;
    this.start({
      light,
      before: before?.id ?? null,
      name: thing?.data.name ?? "",
      lamp: thing?.data.lamp ?? "unknown",
      pack: offered?.pack ?? gelsOn(then?.data ?? {}),
      meant: saidOf(light),
      offered,
      way: then?.data.spectrum ? "spectrum" : then && cctOf(then.data) ? "cct" : "xy",
    });
  }

  /**
   * Call what is typed by a name. A light that followed by itself was nobody's choice: another name
   * is another light's, and takes nothing of it along.
   * @param {string} name
   */
  call(name) {
    const { light, onward, lamp, pack } = this.typed;
    const thing = light ? book.thing(light) : undefined;
    if (!onward || !thing || name === thing.data.name) {
      this.type({ name });
      return;
    }
    const hung = gelsOn(earlierOf(thing.id)?.reading.data ?? {});
    this.type({
      name,
      light: null,
      before: null,
      offered: null,
      onward: false,
      meant: BLANK.meant,
      lamp: lamp === (thing.data.lamp ?? "unknown") ? "unknown" : lamp,
      pack: pack.join() === hung.join() ? [] : pack,
    });
  }

  /** What is typed is a light that the book has already. @param {string} light its id */
  isAgain(light) {
    const { name, lamp } = book.thing(light)?.data ?? {};
    this.type({
      light,
      before: book.latest(light)?.id ?? null,
      name: name ?? this.typed.name,
      lamp: this.typed.lamp === "unknown" ? (lamp ?? "unknown") : this.typed.lamp,
      meant: this.typed.meant ?? saidOf(light),
    });
  }

  /** Whether something stands here that is nowhere else. */
  get unsaved() {
    const { x, y, cct_K, duv, cct_mired, tint_cc, tint_cuts, spectrum } = this.typed;
    const numbers = [x, y, cct_K, duv, cct_mired, tint_cc, tint_cuts];
    return Boolean(spectrum) || numbers.some((value) => value.trim() !== "");
  }

  /** Whether the numbers of the chosen way are all there. */
  get complete() {
    const { way, spectrum } = this.typed;
    return way === "spectrum" ? Boolean(spectrum) : colourComplete(way, this.typed);
  }

  /** @returns {Record<string, any>} */
  #colour() {
    const { way, spectrum, source } = this.typed;
    if (way === "spectrum") return { spectrum, ...(source ? { file: source } : {}) };
    return colourTyped(way, this.typed);
  }

  /** The reading as it is asked about and kept. @returns {Record<string, any>} */
  get reading() {
    const { illuminance, lamp, pack, position, dimmed, dimmer } = this.typed;
    /** @type {Record<string, any>} */
    const data = { ...this.#colour(), ...levelTyped(levelField(lamp), illuminance) };
    // A spectrum says it all.
    if (this.typed.way !== "spectrum") {
      for (const figure of FIGURES) {
        if (this.typed[figure].trim()) data[figure] = this.typed[figure].trim();
      }
    }
    for (const field of /** @type {const} */ (["note", "dialled", "dimmer", "place", "photo"])) {
      if (this.typed[field].trim()) data[field] = this.typed[field].trim();
    }
    if (position) data.position = position;
    if (dimmed && dimmed.words === dimmer) {
      const { from, percent_light } = dimmed;
      data.dimmed = { from, percent_light };
    }
    return { ...data, lamp, pack };
  }

  /** What was kept last, while it stands in the book and nothing new was begun. */
  get justKept() {
    const { last, light, onward } = this.typed;
    if (!last || (light && !onward) || this.unsaved || !book.standing(last.reading)) return null;
    return last;
  }

  /**
   * Put it in the book, and make room for the next. Resolves when durable.
   * @param {string} name   for a light that was given none
   * @param {Record<string, any>} target  what it was measured against
   */
  async keep(name, target) {
    const { typed } = this;
    const called = typed.name.trim() || name;
    const { light, reading, earlier } = await keepReading({
      light: typed.light,
      lightData: {
        name: called,
        lamp: typed.lamp,
        ...(typed.meant || saidOf(typed.light) ? { meant: typed.meant } : {}),
      },
      data: { ...this.reading, target },
    });
    /** @type {Last} */
    const last = {
      at: stamp(),
      name: called,
      light,
      reading,
      fresh: light !== typed.light,
      earlier,
      typed: { ...typed, last: null },
    };
    const digits = typed.way === "xy" ? Math.max(...[typed.x, typed.y].map(decimalsOf)) : 0;
    if (digits >= 4 && digits <= 6 && digits !== settings.get("digits")) {
      settings.set("digits", digits).catch(reportFault);
    }
    if (typed.lamp !== settings.get("lamp")) settings.set("lamp", typed.lamp).catch(reportFault);
    // The way back is offered once a tab that is killed would offer it too.
    if (this.typed === typed) await drafts.save(FORM, { ...this.#next(), last }).catch(reportFault);
    // Keystrokes that came while it was being written belong to the next reading.
    if (this.typed !== typed) this.type({ last });
    else if (typed.light && !typed.before) this.#goOn(last);
    else this.start({ last });
  }

  /** A light that waited for its reading has it: the next that waits is begun. @param {Last} last */
  #goOn(last) {
    const { way } = this.typed;
    const [next] = unreadLights(currentSetup());
    this.start({ last });
    if (!next) return;
    this.measureAgain(next.id);
    this.type({ way, onward: true });
  }

  /**
   * Keep another light with the reading that was kept last. Resolves when durable.
   * @param {string} name
   * @param {string} note   that says whose reading it is
   * @param {Record<string, any>} target
   */
  async keepTwin(name, note, target) {
    const { last } = this.typed;
    if (!last) return;
    const fresh = { light: null, before: null, offered: null, photo: "", name, note, last };
    this.typed = { ...last.typed, ...fresh };
    await this.keep(name, target);
  }

  /** Take back what was kept last, and have it as it was typed. Resolves when durable. */
  async undo() {
    const { last } = this.typed;
    if (!last) return;
    await takeBack(last);
    this.typed = { ...last.typed, last: null };
    this.#save();
  }
}

export const lightDraft = new LightDraft();
