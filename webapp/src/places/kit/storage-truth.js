/** What the browser really promises about storage, and which build this is. */
import { html, nothing } from "lit";
import { Page } from "../../base/page.js";
import { properties } from "../../base/properties.js";
import { Watch } from "../../base/watch.js";
import { say } from "../../parts/toast.js";
import { readerPart } from "../../reader/reader-part.js";
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
    this.watch = new Watch(this, readerPart);
  }

  connectedCallback() {
    super.connectedCallback();
    this.look();
    readerPart.look();
  }

  async removeReader() {
    await readerPart.remove();
    say(t("display.removed"));
    await this.look();
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
      ${
        readerPart.got
          ? html`<div class="row kept-part">
              <p>${t("display.kept", { size: size(readerPart.bytes) })}</p>
              <button type="button" class="quiet" @click=${this.removeReader}>
                ${t("display.remove")}
              </button>
            </div>`
          : nothing
      }
    `;
  }
}
customElements.define("ek-storage-truth", StorageTruth);
