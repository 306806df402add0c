/** About: what the app promises, which build this is, and the licences of all it is made of. */
import { html, nothing } from "lit";
import { Page } from "../../base/page.js";
import { properties } from "../../base/properties.js";
import { Watch } from "../../base/watch.js";
import { problemNote } from "../../parts/warnings.js";
import { offlineState } from "../../store/offline-state.js";
import { t } from "../../words/index.js";

/** @typedef {{title: string, text: string}} Licence */

/**
 * The parts of the text that the build ships: each a title and its licence.
 * @param {string} text
 * @returns {Licence[]}
 */
function parts(text) {
  const cut = text.split(/^=== (.+) ===$/m).slice(1);
  return cut.flatMap((title, i) => (i % 2 ? [] : [{ title, text: cut[i + 1].trim() }]));
}

class About extends Page {
  static properties = properties({ own: ["licences", "problem"] });

  constructor() {
    super();
    /** @type {Licence[]} */
    this.licences = [];
    this.problem = "";
    this.watch = new Watch(this, offlineState);
  }

  connectedCallback() {
    super.connectedCallback();
    this.load().catch(() => {
      this.problem = t("about.missing");
    });
  }

  async load() {
    const answer = await fetch("./pyodide/licences.txt");
    if (!answer.ok) throw new Error(answer.statusText);
    this.licences = parts(await answer.text());
  }

  render() {
    return html`
      <h1>${t("about.title")}</h1>
      <p>${t("about.promise")}</p>
      <p>
        ${
          offlineState.build ? t("kit.offline", { build: offlineState.build }) : t("kit.notOffline")
        }
      </p>
      <p><a class="button" href="./api.html">${t("about.api")}</a></p>
      <section>
        <h2>${t("about.licences")}</h2>
        <p class="hint">${t("about.licencesHint")}</p>
        ${problemNote(this.problem)}
        ${this.licences.map(
          ({ title, text }) => html`<details class="licence">
            <summary>${title}</summary>
            ${text ? html`<pre>${text}</pre>` : nothing}
          </details>`,
        )}
      </section>
    `;
  }
}
customElements.define("ek-about", About);
