/** The gels that the person measured, each with its numbers beside the nominal ones. */
import { html } from "lit";
import { gels } from "../store/gels.js";
import { reportFault } from "../store/index.js";
import { ownGels, removeOwnGel } from "../store/own-gels.js";
import { t } from "../words/index.js";
import { mired, stops } from "../words/numbers.js";
import { fileButton } from "./bring-files.js";
import { gelNumbers } from "./gel-numbers.js";
import { say } from "./toast.js";

/** @param {string} name */
async function remove(name) {
  const undo = await removeOwnGel(name, Boolean(gels.nominalOf(name)));
  say(t("own.removed", { name }), { label: t("undo"), run: () => undo().catch(reportFault) });
}

export function ownGelList() {
  return html`
    <p class="hint">${t("own.lead")}</p>
    ${ownGels().map(
      (gel) => html`<details class="own-gel">
        <summary>
          <strong>${gel.name}</strong>
          <span class="hint">${mired(gel.mired)}, ${stops(gel.stops)}</span>
        </summary>
        ${gelNumbers(gel, gel.nominal ?? gels.nominalOf(gel.name))}
        <div class="actions">
          <button
            type="button"
            class="quiet"
            aria-label=${t("own.removeName", { name: gel.name })}
            @click=${() => remove(gel.name).catch(reportFault)}
          >
            ${t("own.remove")}
          </button>
        </div>
      </details>`,
    )}
    <div class="actions">
      ${fileButton({ id: "gel-file", label: t("own.load"), choices: { quantity: "transmittance" } })}
    </div>
  `;
}
