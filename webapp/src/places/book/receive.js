/** Bring in what others shared: by camera, picture, file or paste. */
import { html } from "lit";
import "../../parts/boot-progress.js";
import { Page } from "../../base/page.js";
import { bringFiles, bringText } from "../../parts/bring-files.js";
import { pickFile } from "../../parts/pick-file.js";
import "./scanner.js";
import { Watch } from "../../base/watch.js";
import { doorOf, isBook } from "../../store/drafts/door.js";
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
    visitor.takeBrought().catch(reportFault);
  }

  disconnectedCallback() {
    super.disconnectedCallback();
    visitor.leave();
  }

  /** @param {string} text */
  take(text) {
    visitor.take(text).catch(reportFault);
  }

  /** Readings and spectra go on to their own door; what is neither is called by its kind. */
  async takeAny(/** @type {File | string} */ brought) {
    const door = await doorOf(brought);
    // Of a line that is no link the reader of links says what is wrong.
    const line = typeof brought === "string" && !brought.includes("\n");
    if (isBook(door) || line)
      this.take(typeof brought === "string" ? brought : await brought.text());
    else if (door.door === "none") visitor.refuse(t("receive.isNot", { what: door.what }));
    else if (typeof brought === "string") bringText(brought);
    else bringFiles([brought]);
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
          onFiles: ([file]) => this.takeAny(file).catch(reportFault),
        })}
      </section>
      <form
        @submit=${(/** @type {SubmitEvent} */ event) => {
          event.preventDefault();
          const form = /** @type {HTMLFormElement} */ (event.target);
          const text = String(new FormData(form).get("text") ?? "");
          if (text.trim()) this.takeAny(text.trim()).catch(reportFault);
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
