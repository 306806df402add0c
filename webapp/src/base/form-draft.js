/**
 * What is typed into a form and not kept yet: saved at every keystroke under the form's own name,
 * and taken up again when the form is opened the next time.
 */
import { drafts, reportFault } from "../store/index.js";

/** @typedef {import("lit").ReactiveController} ReactiveController */

/**
 * @template {Record<string, any>} T
 * @implements {ReactiveController}
 */
export class FormDraft {
  /**
   * @param {import("lit").ReactiveControllerHost} host
   * @param {object} form
   * @param {() => string} form.name
   * @param {() => T} form.blank  what stands there when nothing was typed
   * @param {(saved: T) => T} [form.from]  what stands there when the form is opened again
   * @param {(typed: T) => Partial<T>} [form.toSave]  left out: all of it
   */
  constructor(host, { name, blank, from = (saved) => saved, toSave = (typed) => typed }) {
    this.host = host;
    this.name = name;
    this.blank = blank;
    this.from = from;
    this.toSave = toSave;
    this.typed = blank();
    host.addController(this);
  }

  /** What was typed before the saved text was read: it is newer; null once there is no such text. @type {Partial<T> | null} */
  #early = {};

  hostConnected() {
    this.#early = {};
    // Here the host knows what it is of, so that nothing is typed over what the book has.
    this.typed = this.blank();
    this.#load().catch(reportFault);
  }

  async #load() {
    const saved = await drafts.load(this.name());
    const early = this.#early;
    this.#early = null;
    if (!early) return;
    this.typed = { ...this.from({ ...this.blank(), ...saved }), ...early };
    this.host.requestUpdate();
    if (Object.keys(early).length) this.save();
  }

  /** @param {Partial<T>} fields */
  type(fields) {
    if (this.#early) Object.assign(this.#early, fields);
    this.typed = { ...this.typed, ...fields };
    this.save();
  }

  save() {
    this.host.requestUpdate();
    drafts.save(this.name(), this.toSave(this.typed)).catch(reportFault);
  }

  /**
   * It was kept: the form is as it was in the beginning. Resolves when durable.
   * @param {Partial<T>} [fields]  what stands there in place of what is blank
   */
  async clear(fields) {
    this.#early = null;
    this.typed = { ...this.blank(), ...fields };
    this.host.requestUpdate();
    await drafts.save(this.name(), undefined);
  }
}
