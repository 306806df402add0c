/** Kits of the person's own: what is in stock, saved under a name, to be taken up and to be shared. */
import { html, nothing } from "lit";
import { Page } from "../../base/page.js";
import { properties } from "../../base/properties.js";
import { Watch } from "../../base/watch.js";
import { textField } from "../../parts/inputs.js";
import { Keeping } from "../../parts/keeping.js";
import { say, sayWithUndo } from "../../parts/toast.js";
import { book, bookRead, reportFault } from "../../store/index.js";
import { gels } from "../../store/kit/gels.js";
import { ownKits, saveKit } from "../../store/kit/own-kits.js";
import { t } from "../../words/index.js";

class OwnKits extends Page {
  static properties = properties({ own: ["name"] });

  constructor() {
    super();
    this.name = "";
    this.keeping = new Keeping(this);
    this.watch = new Watch(this, book, gels);
  }

  save() {
    return this.keeping.run(async () => {
      await bookRead();
      const name = this.name.trim();
      await saveKit(name);
      this.name = "";
      say(t("kits.saved", { name }));
    });
  }

  /** @param {import("../../store/log/book.js").Thing} kit */
  async drop(kit) {
    const undo = await book.remove(kit.id);
    sayWithUndo(t("book.deleted", { name: kit.data.name }), undo);
  }

  /** @param {import("../../store/log/book.js").Thing} kit */
  renderKit(kit) {
    const { name } = kit.data;
    return html`<li>
      <span>${name}</span>
      <a class="button" href="#share/${kit.id}" aria-label=${t("kits.shareName", { name })}
        >${t("share.title")}</a
      >
      <button
        type="button"
        class="quiet"
        aria-label=${t("book.deleteName", { name })}
        @click=${() => this.drop(kit).catch(reportFault)}
      >
        ${t("book.delete")}
      </button>
    </li>`;
  }

  render() {
    const kits = ownKits();
    const name = this.name.trim();
    const namesake = kits.some((kit) => kit.data.name === name);
    return html`<details class="more">
      <summary>${t("kits.title")}</summary>
      <p class="hint">${t("kits.lead")}</p>
      ${kits.length ? html`<ul class="readings">${kits.map((kit) => this.renderKit(kit))}</ul>` : nothing}
      <form
        @submit=${(/** @type {Event} */ event) => {
          event.preventDefault();
          if (name) this.save();
        }}
      >
        ${textField({
          id: "kits-name",
          label: t("kits.name"),
          value: this.name,
          hint: namesake ? t("kits.replaces", { name }) : undefined,
          onInput: (typed) => {
            this.name = typed;
          },
        })}
        ${this.keeping.note()}
        <div class="actions">
          <button type="submit" ?disabled=${!name || this.keeping.busy || !gels.nominal.length}>
            ${t("kits.save")}
          </button>
        </div>
      </form>
    </details>`;
  }
}
customElements.define("ek-own-kits", OwnKits);
