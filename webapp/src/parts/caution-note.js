/** The short cautions: wherever gel is advised, light flashes, or a lamp is to be moved. */
import { html } from "lit";
import { t } from "../words/index.js";

/** @param {"short" | "flashing" | "moving"} [which] */
export function cautionNote(which = "short") {
  return html`<p class="caution">
    ${t(`caution.${which}`)} <a href="#cautions">${t("caution.whole")}</a>
  </p>`;
}
