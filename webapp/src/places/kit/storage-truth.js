/** What the browser really promises about storage, and which build this is. */
import { html, nothing } from "lit";
import { Page } from "../../base/page.js";
import { properties } from "../../base/properties.js";
import { askPersistence, storageState } from "../../store/persistence.js";
import { t } from "../../words/index.js";
import { size } from "../../words/numbers.js";

class StorageTruth extends Page {
  static properties = properties({ own: ["state", "asked"] });

  constructor() {
    super();
    /** @type {Awaited<ReturnType<typeof storageState>> | undefined} */
    this.state = undefined;
    this.asked = false;
  }

  connectedCallback() {
    super.connectedCallback();
    this.look();
  }

  async look() {
    this.state = await storageState();
  }

  async ask() {
    await askPersistence();
    this.asked = true;
    await this.look();
  }

  render() {
    if (!this.state) return nothing;
    const { persisted, usage, quota } = this.state;
    return html`
      <p>${t(persisted ? "storage.persisted" : "storage.mayGo")}</p>
      ${
        persisted
          ? nothing
          : html`<button type="button" @click=${this.ask}>${t("storage.ask")}</button>`
      }
      ${this.asked && !persisted ? html`<p role="status">${t("storage.askRefused")}</p>` : nothing}
      ${
        usage !== undefined && quota
          ? html`<p class="hint">
              ${t("storage.room", { used: size(usage), all: size(quota) })}
            </p>`
          : nothing
      }
    `;
  }
}
customElements.define("ek-storage-truth", StorageTruth);
