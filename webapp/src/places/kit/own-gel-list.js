/** The gels that the person measured, each with its numbers beside the nominal ones. */
import { html, nothing } from "lit";
import { fileButton } from "../../parts/bring-files.js";
import { gelNumbers } from "../../parts/gel-numbers.js";
import { sayWithUndo } from "../../parts/toast.js";
import { reportFault, settings } from "../../store/index.js";
import { gels } from "../../store/kit/gels.js";
import { adoptGel, removeOwnGel } from "../../store/kit/own-gels.js";
import { elsewhere } from "../../store/log/measured-gels.js";
import { t } from "../../words/index.js";
import { mired, stops } from "../../words/numbers.js";

/** @param {string} name */
async function remove(name) {
  const undo = await removeOwnGel(name);
  sayWithUndo(t("own.removed", { name }), undo);
}

/** @param {import("../../store/log/measured-gels.js").Known} gel */
async function adopt(gel) {
  const undo = await adoptGel(gel);
  sayWithUndo(t("own.adopted", { name: gel.name }), undo);
}

/** Gels that readings of the book were taken through, and the kit has not. */
function elsewhereList() {
  const known = elsewhere();
  if (!known.length) return nothing;
  return html`<details class="more">
    <summary>${t("own.elsewhere", { n: known.length })}</summary>
    <p class="hint">${t("own.elsewhereLead")}</p>
    <ul class="readings">
      ${known.map(
        (gel) => html`<li>
          <span>${gel.label}</span>
          <button
            type="button"
            class="quiet"
            ?disabled=${!gels.all}
            aria-label=${t("own.adoptName", { name: gel.label })}
            @click=${() => adopt(gel).catch(reportFault)}
          >
            ${t("own.adopt")}
          </button>
        </li>`,
      )}
    </ul>
  </details>`;
}

export function ownGelList() {
  return html`
    <p class="hint">${t("own.lead")}</p>
    ${settings.get("ownGels").map(
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
    ${elsewhereList()}
    <div class="actions">
      ${fileButton({ id: "gel-file", label: t("own.load"), choices: { quantity: "transmittance" } })}
    </div>
  `;
}
