/** What a person sees the first time: what this is for, and a way to look around. */
import { html } from "lit";
import { starterKits } from "../../parts/starter-kits.js";
import { reportFault, settings } from "../../store/index.js";
import { t } from "../../words/index.js";

export function welcome() {
  return html`
    <section class="welcome">
      <h2>${t("welcome.title")}</h2>
      <p>${t("welcome.job")}</p>
      <p>${t("welcome.keeps")}</p>
      ${starterKits()}
      <div class="actions">
        <a class="button" href="#demo">${t("welcome.demo")}</a>
        <button
          type="button"
          class="quiet"
          @click=${() => settings.set("welcomed", true).catch(reportFault)}
        >
          ${t("welcome.done")}
        </button>
      </div>
    </section>
  `;
}
