/** Says the answer to a screen reader, once the typing has come to rest. */
import { html } from "lit";
import { Page } from "../base/page.js";
import { properties } from "../base/properties.js";

const REST = 1000; // ms

class Spoken extends Page {
  static properties = properties({ given: ["words"], own: ["said"] });

  constructor() {
    super();
    this.words = "";
    this.said = "";
    /** @type {ReturnType<typeof setTimeout> | undefined} */
    this.timer = undefined;
  }

  /** @param {Map<string, unknown>} changed */
  willUpdate(changed) {
    if (!changed.has("words")) return;
    clearTimeout(this.timer);
    this.timer = setTimeout(() => {
      this.said = this.words;
    }, REST);
  }

  render() {
    return html`<p class="spoken" role="status">${this.said}</p>`;
  }
}
customElements.define("ek-spoken", Spoken);
