/** The short cautions: one wherever gel is advised, one wherever light flashes. */
import { html } from "lit";
import { t } from "../words/index.js";

/** @param {"short" | "flashing"} [which] */
export function cautionNote(which = "short") {
  return html`<p class="caution">
    ${t(`caution.${which}`)} <a href="#cautions">${t("caution.whole")}</a>
  </p>`;
}
