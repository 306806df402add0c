/** How far the kernel has come, by stage, until it is ready. */
import { html, nothing } from "lit";
import { onStage } from "../kernel/client.js";
import { t } from "../words/index.js";
import { Page } from "./page.js";

class BootProgress extends Page {
  static properties = { state: { state: true } };

  constructor() {
    super();
    /** @type {{stage: string, part: number, words?: string}} */
    this.state = { stage: "runtime", part: 0 };
    this.leave = () => {};
  }

  connectedCallback() {
    super.connectedCallback();
    this.leave = onStage((/** @type {any} */ state) => {
      this.state = state;
    });
  }

  disconnectedCallback() {
    super.disconnectedCallback();
    this.leave();
  }

  render() {
    const { stage, part, words } = this.state;
    if (stage === "ready") return nothing;
    if (stage === "failed") {
      return html`<p class="problem block" role="alert">${t("boot.failed")} ${words ?? ""}</p>`;
    }
    return html`<div class="boot">
      <label for="boot-part">${words || t("boot.starting")}</label>
      <progress id="boot-part" max="1" .value=${part}></progress>
    </div>`;
  }
}
customElements.define("ek-boot-progress", BootProgress);
