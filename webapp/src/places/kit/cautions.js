/** The cautions, whole. */
import { html } from "lit";
import { Page } from "../../base/page.js";
import { t } from "../../words/index.js";

const PARTS = /** @type {const} */ ([
  "heat",
  "glass",
  "power",
  "height",
  "wind",
  "sun",
  "flashing",
  "limits",
]);

class Cautions extends Page {
  render() {
    return html`
      <h1>${t("cautions.title")}</h1>
      <p class="lead">${t("cautions.lead")}</p>
      ${PARTS.map(
        (part) => html`<section>
          <h2>${t(`cautions.${part}`)}</h2>
          <p>${t(`cautions.${part}Words`)}</p>
        </section>`,
      )}
    `;
  }
}
customElements.define("ek-cautions", Cautions);
