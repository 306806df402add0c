/** How far the kernel has come, by stage, until it is ready. */
import { html, nothing } from "lit";
import { Page } from "../base/page.js";
import { properties } from "../base/properties.js";
import { onStage, restart } from "../kernel/client.js";
import { t } from "../words/index.js";

class BootProgress extends Page {
  static properties = properties({ own: ["state"] });

  constructor() {
    super();
    /** @type {import("../kernel/client.js").StageReport} */
    this.state = { stage: "runtime", part: 0, words: "" };
    this.leave = () => {};
  }

  connectedCallback() {
    super.connectedCallback();
    this.leave = onStage((state) => {
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
      return html`<div class="problem block" role="alert">
        <p>${t("boot.failed")}</p>
        <details>
          <summary>${t("boot.reason")}</summary>
          <p>${words}</p>
        </details>
        <button type="button" @click=${restart}>${t("boot.again")}</button>
      </div>`;
    }
    return html`<div class="boot">
      <label for="boot-part">${t(`boot.${stage}`)}</label>
      <progress id="boot-part" max="1" .value=${part}></progress>
    </div>`;
  }
}
customElements.define("ek-boot-progress", BootProgress);
