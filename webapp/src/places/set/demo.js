/** Opens the invented shoot in a book of its own, then goes to its set. */
import { html } from "lit";
import { Page } from "../../base/page.js";
import { lightDraft } from "../../store/drafts/light-draft.js";
import { enterDemo, reportFault } from "../../store/index.js";
import { t } from "../../words/index.js";

class Demo extends Page {
  connectedCallback() {
    super.connectedCallback();
    this.open().catch(reportFault);
  }

  async open() {
    const answer = await fetch("./demo_readings/night_ferry.json");
    if (!answer.ok) throw new Error(t("demo.missing"));
    await enterDemo(await answer.json());
    await lightDraft.load();
    location.replace("#set");
  }

  render() {
    return html`<h1>${t("demo.title")}</h1>
      <p>${t("demo.opening")}</p>`;
  }
}
customElements.define("ek-demo", Demo);
