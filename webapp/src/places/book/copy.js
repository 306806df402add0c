/** A visitor's copy: what a link holds, and the way to take it into the own book. */
import { html } from "lit";
import "../../parts/boot-progress.js";
import { Page } from "../../base/page.js";
import { properties } from "../../base/properties.js";
import { Watch } from "../../base/watch.js";
import { book, reportFault } from "../../store/index.js";
import { visitor } from "../../store/log/visitor.js";
import { t } from "../../words/index.js";
import { visitorCopy } from "./visitor-copy.js";

class CopyView extends Page {
  static properties = properties({ given: ["link"] });

  constructor() {
    super();
    this.link = "";
    this.taken = "";
    this.watch = new Watch(this, book, visitor);
  }

  disconnectedCallback() {
    super.disconnectedCallback();
    visitor.leave();
  }

  willUpdate() {
    if (!this.link || this.link === this.taken) return;
    this.taken = this.link;
    // The parts of a series come one by one, each as an address of its own.
    if (!/^p\d/.test(this.link)) visitor.drop();
    visitor.take(this.link).catch(reportFault);
  }

  render() {
    return html`
      <h1>${t("copy.title")}</h1>
      <ek-boot-progress></ek-boot-progress>
      ${visitor.progress ? html`<p role="status">${visitor.progress}</p>` : ""} ${visitorCopy()}
      <p class="links"><a href="#receive">${t("receive.title")}</a></p>
    `;
  }
}
customElements.define("ek-copy", CopyView);
