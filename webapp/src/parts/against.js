/**
 * What the lights are measured against: the camera's white, changed with one tap, or another
 * light of this setup.
 */

import { html, nothing } from "lit";
import { Page } from "../base/page.js";
import { properties } from "../base/properties.js";
import { Watch } from "../base/watch.js";
import { book, reportFault, settings } from "../store/index.js";
import { currentSetup, heroOf, lightsOf } from "../store/log/shoot.js";
import { measuredAgainst, saidOf } from "../store/log/target.js";
import { t } from "../words/index.js";
import { dayOf } from "../words/numbers.js";
import { readingWords } from "../words/reading.js";

/** Whites that cameras are usually set to. Common practice, no source. */
export const QUICK_WHITES = ["3200", "4300", "5600"];

/** @param {string} cct_K */
export function setWhite(cct_K) {
  settings.set("white", { cct_K, duv: "0" }).catch(reportFault);
}

/** The camera's white as words. */
export function whiteWords() {
  const { cct_K, duv } = settings.get("white");
  const plain = /^[-+−]?[0.,\s]*$/.test(duv);
  return plain ? t("white.plain", { cct: cct_K }) : t("white.tinted", { cct: cct_K, duv });
}

/**
 * What lights are measured against now, as words.
 * @param {string | null} [light] id of the light under the meter
 * @param {import("../store/log/target.js").Said} [said]  what it is meant to be
 */
export function againstWords(light = null, said = saidOf(light)) {
  const against = measuredAgainst(light, said);
  if (!against) return whiteWords();
  if ("other" in against) return t("against.light", { name: against.other.data.name });
  const { data, at } = against.itself;
  return t("against.then", { name: readingWords(data), day: dayOf(at) });
}

let made = 0;

class Against extends Page {
  static properties = properties({ given: ["light", "said"] });

  constructor() {
    super();
    /** Id of the light under the meter. @type {string | null} */
    this.light = null;
    /** What it is meant to be. @type {import("../store/log/target.js").Said} */
    this.said = null;
    this.watch = new Watch(this, book, settings);
    /** Set and Light may stand side by side. */
    this.field = `against-light-${++made}`;
  }

  /** @param {string} hero */
  choose(hero) {
    const setup = currentSetup();
    if (setup) book.edit(setup.id, { hero: hero || null }).catch(reportFault);
  }

  render() {
    const setup = currentSetup();
    const lights = lightsOf(setup);
    const hero = heroOf(setup)?.light.id ?? "";
    const { cct_K } = settings.get("white");
    return html`
      <details class="against">
        <summary>
          <span class="what">${t("against.label")}</span>
          <strong>${againstWords(this.light, this.said)}</strong>
        </summary>
        <div class="panel">
          <div class="row" role="group" aria-label=${t("against.whites")}>
            ${QUICK_WHITES.map(
              (white) => html`<button
                type="button"
                class="chip"
                aria-pressed=${!hero && white === cct_K ? "true" : "false"}
                @click=${() => {
                  this.choose("");
                  setWhite(white);
                }}
              >
                ${t("white.plain", { cct: white })}
              </button>`,
            )}
            <a class="chip" href="#kit">${t("against.other")}</a>
          </div>
          ${
            lights.length
              ? html`<div class="field">
                  <label for=${this.field}>${t("against.match")}</label>
                  <select
                    id=${this.field}
                    @change=${(/** @type {Event} */ event) =>
                      this.choose(/** @type {HTMLSelectElement} */ (event.target).value)}
                  >
                    <option value="" ?selected=${!hero}>${t("against.camera")}</option>
                    ${lights.map(
                      ({ light }) => html`<option
                        value=${light.id}
                        ?selected=${light.id === hero}
                      >
                        ${light.data.name}
                      </option>`,
                    )}
                  </select>
                </div>`
              : nothing
          }
        </div>
      </details>
    `;
  }
}
customElements.define("ek-against", Against);
