/** Kits to start from, and the person's own: one tap says what the truck carries, and can be taken back. */
import { html, nothing } from "lit";
import { reportFault, settings } from "../store/index.js";
import { gels } from "../store/kit/gels.js";
import { gelsIn, isInStock, ownKits, takeKit } from "../store/kit/own-kits.js";
import { inStock, leftOut, STARTER_NAMES, starterGels } from "../store/kit/starters.js";
import { t } from "../words/index.js";
import { sayWithUndo } from "./toast.js";

/**
 * @typedef {object} Offer
 * @property {string} id
 * @property {string} name
 * @property {string} holds
 * @property {boolean} now       whether it is what is in stock
 * @property {() => Promise<() => Promise<void>>} take  gives back its undo
 */

/** @returns {Offer[]} */
const starters = () =>
  STARTER_NAMES.map((name) => ({
    id: name,
    name: t(`starter.${name}`),
    holds: t(`starter.${name}Holds`),
    now: inStock(starterGels(name)),
    take: async () => {
      const before = settings.get("without");
      await settings.set("without", leftOut(starterGels(name)));
      return () => settings.set("without", before);
    },
  }));

/** @returns {Offer[]} */
const owned = () =>
  ownKits().map((kit) => ({
    id: kit.id,
    name: String(kit.data.name ?? ""),
    holds: t("kits.holds", { n: gelsIn(kit).length }),
    now: isInStock(kit),
    take: () => takeKit(kit),
  }));

/** @param {Offer} offer */
async function take({ name, take: takeIt }) {
  const undo = await takeIt();
  sayWithUndo(t("starter.taken", { kit: name }), undo);
}

export function starterKits() {
  if (!gels.nominal.length) return nothing;
  return html`<div class="field">
    <p id="starter-kits">${t("starter.question")}</p>
    <ul class="starters" aria-labelledby="starter-kits">
      ${[...starters(), ...owned()].map(
        (offer) => html`<li>
          <button
            type="button"
            aria-pressed=${offer.now ? "true" : "false"}
            aria-describedby="starter-${offer.id}"
            @click=${() => take(offer).catch(reportFault)}
          >
            ${offer.name}
          </button>
          <span class="hint" id="starter-${offer.id}">${offer.holds}</span>
        </li>`,
      )}
    </ul>
  </div>`;
}
