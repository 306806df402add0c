/** The gels on one light: each a chip that can be taken off, and a list to put more on. */
import { html, nothing } from "lit";
import { gels } from "../store/kit/gels.js";
import { t, tMaybe } from "../words/index.js";

/**
 * @param {object} picker
 * @param {string} picker.id
 * @param {string} picker.label
 * @param {string[]} picker.value
 * @param {string} [picker.problem]
 * @param {(gels: string[]) => void} picker.onChange
 */
export function gelPicker({ id, label, value, problem, onChange }) {
  const without = (/** @type {number} */ index) => value.filter((_, i) => i !== index);
  return html`
    <div class="field">
      <label for=${id}>${label}</label>
      ${
        value.length
          ? html`<ul class="chips">
              ${value.map(
                (name, index) => html`<li>
                  <button
                    type="button"
                    class="chip"
                    aria-label=${t("gel.takeOff", { name })}
                    @click=${() => onChange(without(index))}
                  >
                    ${name} <span aria-hidden="true">×</span>
                  </button>
                </li>`,
              )}
            </ul>`
          : nothing
      }
      <select
        id=${id}
        ?disabled=${!gels.all}
        @change=${(/** @type {Event} */ event) => {
          const select = /** @type {HTMLSelectElement} */ (event.target);
          if (select.value) onChange([...value, select.value]);
          select.value = "";
        }}
      >
        <option value="">${gels.all ? t("gel.putOn") : t("gel.loading")}</option>
        ${[...gels.families()].map(
          ([family, members]) => html`<optgroup label=${tMaybe(`family.${family}`, family)}>
            ${members.map((gel) => html`<option value=${gel.name}>${gel.name}</option>`)}
          </optgroup>`,
        )}
      </select>
      ${problem ? html`<p class="problem">${problem}</p>` : nothing}
    </div>
  `;
}
