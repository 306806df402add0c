/** One labelled input with its unit, its hint and, when the kernel refuses it, its sentence. */
import { html, nothing } from "lit";
import { asTyped } from "../words/numbers.js";

/**
 * @param {object} field
 * @param {string} field.id
 * @param {string} field.label
 * @param {string} field.value
 * @param {(value: string) => void} field.onInput
 * @param {string} [field.unit]
 * @param {string} [field.hint]
 * @param {string} [field.problem]
 * @param {string[]} [field.choices]  what may have been meant, each as it would be typed
 * @param {boolean} [field.number]   a number to be typed on a keypad
 * @param {boolean} [field.large]
 */
export function textField(field) {
  const { id, label, value, onInput, unit, hint, problem, choices = [], number, large } = field;
  const described = [unit && `${id}-unit`, hint && `${id}-hint`, problem && `${id}-problem`];
  return html`
    <div class="field ${large ? "large" : ""}">
      <label for=${id}>${label}</label>
      <div class="entry">
        <input
          id=${id}
          type="text"
          inputmode=${number ? "decimal" : "text"}
          enterkeyhint="done"
          maxlength="200"
          autocomplete="off"
          autocapitalize=${number ? "off" : "sentences"}
          spellcheck="false"
          .value=${value}
          aria-invalid=${problem ? "true" : "false"}
          aria-describedby=${described.filter(Boolean).join(" ") || nothing}
          @input=${(/** @type {InputEvent} */ event) =>
            onInput(/** @type {HTMLInputElement} */ (event.target).value)}
        />
        ${unit ? html`<span class="unit" id="${id}-unit">${unit}</span>` : nothing}
      </div>
      ${hint ? html`<p class="hint" id="${id}-hint">${hint}</p>` : nothing}
      ${problem ? html`<p class="problem" id="${id}-problem">${problem}</p>` : nothing}
      ${
        choices.length
          ? html`<div class="row">
              ${choices.map(
                (choice) => html`<button type="button" @click=${() => onInput(choice)}>
                  ${[asTyped(choice), unit].filter(Boolean).join(" ")}
                </button>`,
              )}
            </div>`
          : nothing
      }
    </div>
  `;
}

/**
 * @param {object} field
 * @param {string} field.id
 * @param {string} field.label
 * @param {string} field.value
 * @param {{value: string, label: string}[]} field.options
 * @param {(value: string) => void} field.onChange
 */
export function choice({ id, label, value, options, onChange }) {
  return html`
    <div class="field">
      <label for=${id}>${label}</label>
      <select
        id=${id}
        @change=${(/** @type {Event} */ event) =>
          onChange(/** @type {HTMLSelectElement} */ (event.target).value)}
      >
        ${options.map(
          (option) =>
            html`<option value=${option.value} ?selected=${option.value === value}>
              ${option.label}
            </option>`,
        )}
      </select>
    </div>
  `;
}

/**
 * A few choices side by side, one of which is taken.
 * @param {object} group
 * @param {string} group.name
 * @param {string} group.legend
 * @param {string} group.value
 * @param {{value: string, label: string}[]} group.options
 * @param {(value: string) => void} group.onChange
 * @param {boolean} [group.quiet]   the legend is only spoken
 */
export function segments({ name, legend, value, options, onChange, quiet }) {
  return html`
    <fieldset class="segments">
      <legend class=${quiet ? "spoken" : ""}>${legend}</legend>
      <div class="row">
        ${options.map(
          (option) => html`
            <label>
              <input
                type="radio"
                name=${name}
                value=${option.value}
                .checked=${option.value === value}
                @change=${() => onChange(option.value)}
              />
              <span>${option.label}</span>
            </label>
          `,
        )}
      </div>
    </fieldset>
  `;
}
