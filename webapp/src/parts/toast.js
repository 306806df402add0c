/** A line above the thumb bar that says what was done and can take it back. */
import { html, nothing } from "lit";
import { Page } from "../base/page.js";
import { properties } from "../base/properties.js";
import { reportFault } from "../store/index.js";
import { t } from "../words/index.js";

const said = new EventTarget();

/**
 * @param {string} words
 * @param {{label: string, run: () => unknown}} [action]  such as undo
 */
export function say(words, action) {
  said.dispatchEvent(new CustomEvent("say", { detail: { words, action } }));
}

/** Say what was done, and offer to take it back. @param {string} words @param {() => unknown} undo */
export function sayWithUndo(words, undo) {
  const run = () => Promise.resolve(undo()).catch(reportFault);
  say(words, { label: t("undo"), run });
}

/** Room that the line takes above the thumb bar: what sticks to it moves up, and the page ends later. */
const ROOM = "--said";

const STAYS = 6000; // ms, for words that ask nothing; those with an action stay until dismissed

class Toast extends Page {
  static properties = properties({ own: ["shown"] });

  constructor() {
    super();
    /** @type {{words: string, action?: {label: string, run: () => unknown}} | null} */
    this.shown = null;
    /** @type {ReturnType<typeof setTimeout> | undefined} */
    this.timer = undefined;
    this.hear = (/** @type {Event} */ event) => {
      clearTimeout(this.timer);
      this.shown = /** @type {CustomEvent} */ (event).detail;
      if (!this.shown?.action) this.timer = setTimeout(() => this.dismiss(), STAYS);
    };
  }

  connectedCallback() {
    super.connectedCallback();
    said.addEventListener("say", this.hear);
  }

  disconnectedCallback() {
    super.disconnectedCallback();
    said.removeEventListener("say", this.hear);
    document.documentElement.style.removeProperty(ROOM);
  }

  updated() {
    const line = /** @type {HTMLElement} */ (this.querySelector(".toast"));
    const room = line.offsetHeight ? line.offsetHeight + 8 : 0;
    document.documentElement.style.setProperty(ROOM, `${room}px`);
  }

  dismiss() {
    this.shown = null;
  }

  render() {
    const { shown } = this;
    return html`<div role="status" class="toast ${shown ? "shown" : ""}">
      ${
        shown
          ? html`<span>${shown.words}</span>
              ${
                shown.action
                  ? html`<button
                      type="button"
                      @click=${() => {
                        this.dismiss();
                        shown.action?.run();
                      }}
                    >
                      ${shown.action.label}
                    </button>`
                  : nothing
              }
              <button type="button" class="quiet" @click=${this.dismiss}>
                ${t("dismiss")}
              </button>`
          : nothing
      }
    </div>`;
  }
}
customElements.define("ek-toast", Toast);
