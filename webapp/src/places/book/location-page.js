/** What the pages of a location share: what is typed there, what the book keeps of it, and keeping. */
import { html } from "lit";
import { FormDraft } from "../../base/form-draft.js";
import { Page } from "../../base/page.js";
import { Keeping } from "../../parts/keeping.js";
import { book } from "../../store/index.js";
import { t } from "../../words/index.js";

/**
 * @template {Record<string, any>} T  what is typed
 */
export class LocationPage extends Page {
  static properties = { of: {} };

  /**
   * @param {object} form
   * @param {string} form.name   begins the name of its draft
   * @param {() => T} form.blank
   * @param {readonly (keyof T & string)[]} form.inBook  what the book keeps of it
   */
  constructor({ name, blank, inBook }) {
    super();
    /** Id of the location. */
    this.of = "";
    this.inBook = inBook;
    this.keeping = new Keeping(this);
    /** @type {FormDraft<T>} */
    this.draft = new FormDraft(this, {
      name: () => `${name} ${this.of}`,
      blank: () => ({ ...blank(), ...this.kept }),
      // What the book has already is left out, so that the draft never hides a later edit there.
      toSave: (typed) => (this.changed ? typed : this.#without(typed)),
    });
  }

  /** @param {T} typed @returns {Partial<T>} */
  #without(typed) {
    const names = /** @type {readonly string[]} */ (this.inBook);
    return /** @type {Partial<T>} */ (
      Object.fromEntries(Object.entries(typed).filter(([name]) => !names.includes(name)))
    );
  }

  get location() {
    return book.standing(this.of);
  }

  get typed() {
    return this.draft.typed;
  }

  /** @param {Partial<T>} fields */
  type(fields) {
    this.draft.type(fields);
  }

  /** What the book has of this form, as it is typed. @returns {Partial<T>} */
  get kept() {
    return {};
  }

  /** Whether something is typed that the book has not. */
  get changed() {
    return false;
  }

  /**
   * Put what was typed into the book. Resolves when durable.
   * @param {import("../../store/log/book.js").Thing} _location
   * @returns {Promise<string>} what to say then
   */
  async write(_location) {
    return "";
  }

  keep() {
    const { location } = this;
    if (!location) return;
    this.keeping.run(async () => {
      const said = await this.write(location);
      this.draft.save();
      return said;
    });
  }

  /** @param {string} label */
  renderKeep(label) {
    return html`${this.keeping.note()}
      <div class="bar">
        <div class="actions">
          <button
            type="button"
            class="main"
            ?disabled=${!this.changed || this.keeping.busy}
            @click=${this.keep}
          >
            ${label}
          </button>
        </div>
      </div>`;
  }

  /** @param {string} title */
  renderGone(title) {
    return html`<h1>${title}</h1>
      <p class="empty">${t("location.gone")} <a href="#book">${t("back.book")}</a></p>`;
  }
}
