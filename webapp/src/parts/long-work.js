/** Work that takes more than a second: how far it is, as far as that can be counted, and a stop. */
import { html, nothing } from "lit";
import { Page } from "../base/page.js";
import { properties } from "../base/properties.js";
import { t } from "../words/index.js";

const SOON = 1000; // ms; what is done by then needs no bar

class LongWork extends Page {
  static properties = properties({ given: ["words", "done", "stop"], own: ["long"] });

  constructor() {
    super();
    /** What is being done, with its count. */
    this.words = "";
    /** How far it is, from 0 to 1; null where nobody can tell. @type {number | null} */
    this.done = null;
    this.stop = () => {};
    this.long = false;
    /** @type {ReturnType<typeof setTimeout> | undefined} */
    this.timer = undefined;
  }

  connectedCallback() {
    super.connectedCallback();
    this.timer = setTimeout(() => {
      this.long = true;
    }, SOON);
  }

  disconnectedCallback() {
    super.disconnectedCallback();
    clearTimeout(this.timer);
    this.long = false;
  }

  render() {
    if (!this.long) return nothing;
    return html`<div class="boot">
      <label for="long-work">${this.words}</label>
      <progress id="long-work" max="1" value=${this.done ?? nothing}></progress>
      <div class="actions">
        <button type="button" class="quiet" @click=${this.stop}>${t("longWork.stop")}</button>
      </div>
    </div>`;
  }
}
customElements.define("ek-long-work", LongWork);

/**
 * Shown while something is waited for.
 * @param {string} words @param {() => unknown} stop @param {number | null} [done]
 */
export const longWork = (words, stop, done = null) =>
  html`<ek-long-work .words=${words} .done=${done} .stop=${stop}></ek-long-work>`;

/** Work was stopped: what stands here may be old or nothing. @param {() => unknown} again */
export const stoppedNote = (again) => html`<div class="hint stopped" role="status">
  <p>${t("longWork.stopped")}</p>
  <div class="actions">
    <button type="button" @click=${again}>${t("longWork.again")}</button>
  </div>
</div>`;
