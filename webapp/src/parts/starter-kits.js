/** Kits to start from: one tap says what the truck carries, and can be taken back. */
import { html, nothing } from "lit";
import { reportFault, settings } from "../store/index.js";
import { gels } from "../store/kit/gels.js";
import { leftOut, STARTER_NAMES, starterNow } from "../store/kit/starters.js";
import { t } from "../words/index.js";
import { sayWithUndo } from "./toast.js";

/** @param {(typeof STARTER_NAMES)[number]} name */
async function take(name) {
  const before = settings.get("without");
  await settings.set("without", leftOut(name));
  sayWithUndo(t("starter.taken", { kit: t(`starter.${name}`) }), () =>
    settings.set("without", before),
  );
}

export function starterKits() {
  if (!gels.nominal.length) return nothing;
  const now = starterNow();
  return html`<div class="field">
    <p id="starter-kits">${t("starter.question")}</p>
    <ul class="starters" aria-labelledby="starter-kits">
      ${STARTER_NAMES.map(
        (name) => html`<li>
          <button
            type="button"
            aria-pressed=${now === name ? "true" : "false"}
            aria-describedby="starter-${name}"
            @click=${() => take(name).catch(reportFault)}
          >
            ${t(`starter.${name}`)}
          </button>
          <span class="hint" id="starter-${name}">${t(`starter.${name}Holds`)}</span>
        </li>`,
      )}
    </ul>
  </div>`;
}
