/** Bring in what others shared: by camera, picture, file or paste. */
import { html } from "lit";
import "../../parts/boot-progress.js";
import { Page } from "../../base/page.js";
import { pickFile } from "../../parts/pick-file.js";
import "./scanner.js";
import { Watch } from "../../base/watch.js";
import { book, reportFault } from "../../store/index.js";
import { visitor } from "../../store/log/visitor.js";
import { t } from "../../words/index.js";
import { visitorCopy } from "./visitor-copy.js";

class ReceiveView extends Page {
  constructor() {
    super();
    this.watch = new Watch(this, book, visitor);
  }

  connectedCallback() {
    super.connectedCallback();
    visitor.drop();
  }

  disconnectedCallback() {
    super.disconnectedCallback();
    visitor.leave();
  }

  /** @param {string} text */
  take(text) {
    visitor.take(text).catch(reportFault);
  }

  render() {
    return html`
      <h1>${t("receive.title")}</h1>
      <p class="hint">${t("receive.words")}</p>
      <ek-boot-progress></ek-boot-progress>
      ${visitor.progress ? html`<p role="status">${visitor.progress}</p>` : ""} ${visitorCopy()}
      <section>
        <h2>${t("receive.codes")}</h2>
        <ek-scanner
          @code=${(/** @type {CustomEvent} */ event) => this.take(event.detail)}
        ></ek-scanner>
      </section>
      <section>
        <h2>${t("receive.file")}</h2>
        ${pickFile({
          id: "receive-file",
          label: t("receive.choose"),
          one: true,
          onFiles: ([file]) => file.text().then((text) => this.take(text), reportFault),
        })}
      </section>
      <form
        @submit=${(/** @type {SubmitEvent} */ event) => {
          event.preventDefault();
          const form = /** @type {HTMLFormElement} */ (event.target);
          const text = String(new FormData(form).get("text") ?? "");
          if (text.trim()) this.take(text);
        }}
      >
        <div class="field">
          <label for="receive-text">${t("receive.paste")}</label>
          <textarea
            id="receive-text"
            name="text"
            rows="3"
            autocomplete="off"
            spellcheck="false"
          ></textarea>
        </div>
        <div class="actions"><button type="submit">${t("receive.open")}</button></div>
      </form>
    `;
  }
}
customElements.define("ek-receive", ReceiveView);
