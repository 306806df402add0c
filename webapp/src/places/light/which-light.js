/** The name of the light that is typed: what it may be called, and which is meant when two share it. */
import { html } from "lit";
import { earlierNames, lightNamed, nextName, unreadLights } from "../../store/log/shoot.js";
import { t } from "../../words/index.js";

/** @typedef {import("../../store/log/book.js").Thing} Thing */

/** What lights are for, in the order they are usually read. */
const ROLES = /** @type {const} */ (["key", "fill", "back", "background", "practical", "window"]);

/** Names that are offered at once. */
const MOST = 6;

/**
 * Names for the next light: those that wait for their reading, the next number of the light kept
 * last, those of earlier setups, and what lights are for.
 * @param {Thing | undefined} setup
 * @param {string} last  name of the light kept last
 */
function names(setup, last) {
  const numbered = /\d\s*$/.test(last) ? [nextName(setup, last)] : [];
  const free = ROLES.map((role) => t(`role.${role}`)).filter((name) => !lightNamed(setup, name));
  const waiting = unreadLights(setup).map((light) => String(light.data.name));
  const earlier = earlierNames(setup, MOST);
  return [...new Set([...waiting, ...numbered, ...earlier, ...free])].slice(0, MOST);
}

/**
 * @param {object} options
 * @param {Thing | undefined} options.setup
 * @param {string} options.last
 * @param {(name: string) => void} options.onName
 */
export function nameOffers({ setup, last, onName }) {
  return html`<div class="row" role="group" aria-label=${t("which.offers")}>
    ${names(setup, last).map(
      (name) =>
        html`<button type="button" class="chip" @click=${() => onName(name)}>${name}</button>`,
    )}
  </div>`;
}

/**
 * In place of Keep, where the typed name is that of a light of this setup.
 * @param {object} question
 * @param {Thing} question.light      that has the name
 * @param {string} question.other     a name that none has
 * @param {boolean} question.disabled
 * @param {() => void} question.onSame
 * @param {() => void} question.onOther
 */
export function whichLight({ light, other, disabled, onSame, onOther }) {
  const { name } = light.data;
  return html`<div role="group" aria-labelledby="which-light">
    <p id="which-light" role="status">${t("which.question", { name })}</p>
    <div class="actions">
      <button type="button" ?disabled=${disabled} @click=${onOther}>
        ${t("which.other", { name: other })}
      </button>
      <button type="button" class="main" ?disabled=${disabled} @click=${onSame}>
        ${t("which.same", { name })}
      </button>
    </div>
  </div>`;
}
