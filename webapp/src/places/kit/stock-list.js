/** The gels, by family: which are in stock, and each one's curve on demand. */
import { html, nothing } from "lit";
import { gelCurve } from "../../charts/gel-curve.js";
import { patch } from "../../charts/patch.js";
import { t, tMaybe } from "../../words/index.js";
import { duv, kelvin, mired, stops } from "../../words/numbers.js";

/** @typedef {import("../../store/kit/gels.js").Gel} Gel */

/**
 * @param {object} list
 * @param {Map<string, Gel[]>} list.families
 * @param {string[]} list.without   names not in stock
 * @param {Record<string, string>} list.pieces  how many there are, as typed
 * @param {Map<string, import("../../charts/patch.js").Colour>} list.colours  of each gel, when known
 * @param {Set<string>} list.opened names whose curve is shown
 * @param {(without: string[]) => void} list.onStock
 * @param {(name: string, pieces: string) => void} list.onPieces
 * @param {(name: string) => void} list.onOpen
 */
export function stockList({
  families,
  without,
  pieces,
  colours,
  opened,
  onStock,
  onPieces,
  onOpen,
}) {
  const missing = new Set(without);
  const change = (/** @type {Gel[]} */ some, /** @type {boolean} */ inStock) => {
    const next = new Set(missing);
    for (const { name } of some) {
      if (inStock) next.delete(name);
      else next.add(name);
    }
    onStock([...next]);
  };
  return html`${[...families].map(([family, members]) => {
    const there = members.filter(({ name }) => !missing.has(name)).length;
    return html`<details class="family">
      <summary>
        <strong>${tMaybe(`family.${family}`, family)}</strong>
        <span class="hint">${t("stock.count", { n: there, all: members.length })}</span>
      </summary>
      <div class="actions">
        <button type="button" class="quiet" @click=${() => change(members, false)}>
          ${t("stock.none")}
        </button>
        <button type="button" class="quiet" @click=${() => change(members, true)}>
          ${t("stock.all")}
        </button>
      </div>
      <ul class="stock">
        ${members.map(
          (gel) => html`<li>
            <label class="check">
              <input
                type="checkbox"
                .checked=${!missing.has(gel.name)}
                @change=${(/** @type {Event} */ event) =>
                  change([gel], /** @type {HTMLInputElement} */ (event.target).checked)}
              />
              ${patch([colours.get(gel.name)])}
              <span
                >${gel.name}
                <span class="hint"
                  >${mired(gel.mired)}, ${stops(gel.stops)}</span
                ></span
              >
            </label>
            ${
              missing.has(gel.name)
                ? nothing
                : html`<input
                    class="pieces"
                    type="text"
                    inputmode="numeric"
                    autocomplete="off"
                    maxlength="6"
                    aria-label=${t("stock.pieces", { name: gel.name })}
                    placeholder=${t("stock.plenty")}
                    .value=${pieces[gel.name] ?? ""}
                    @input=${(/** @type {Event} */ event) =>
                      onPieces(gel.name, /** @type {HTMLInputElement} */ (event.target).value)}
                  />`
            }
            <button
              type="button"
              class="quiet"
              aria-expanded=${opened.has(gel.name) ? "true" : "false"}
              aria-label=${t("stock.curveOf", { name: gel.name })}
              @click=${() => onOpen(gel.name)}
            >
              ${t("stock.curve")}
            </button>
            ${
              opened.has(gel.name)
                ? html`${gelCurve(gel)}
                    <p class="hint">
                      ${t("gel.on", { duv: duv(gel.duv), cct: kelvin(gel.reference_K) })}
                    </p>`
                : nothing
            }
          </li>`,
        )}
      </ul>
    </details>`;
  })}`;
}
