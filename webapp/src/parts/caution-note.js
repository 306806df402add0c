/** The short caution that stands wherever gel is advised. */
import { html } from "lit";
import { t } from "../words/index.js";

export function cautionNote() {
  return html`<p class="caution">
    ${t("caution.short")} <a href="#cautions">${t("caution.whole")}</a>
  </p>`;
}
