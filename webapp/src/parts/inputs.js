/** One labelled input with its unit, its hint and, when the kernel refuses it, its sentence. */
import { html, nothing } from "lit";
import { t } from "../words/index.js";
import { asTyped } from "../words/numbers.js";

/** The other sign. @param {string} text */
const turned = (text) =>
  /^\s*[-−]/.test(text) ? text.replace(/^\s*[-−]/, "") : `-${text.replace(/^\s*\+/, "")}`;

/** The pad of a phone often lacks the minus. @param {string} label @param {string} value @param {(value: string) => void} onInput */
const signKey = (label, value, onInput) => html`<button
  type="button"
  class="sign"
  aria-label=${t("field.sign", { label })}
  @pointerdown=${(/** @type {Event} */ event) => event.preventDefault() /* the keyboard stays */}
  @click=${() => onInput(turned(value))}
>
  ±
</button>`;

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
 * @param {boolean} [field.signed]   a number that may be below nought
 * @param {number} [field.most]      characters
 * @param {() => void} [field.onLeave]
 * @param {"next" | "done"} [field.enter]  what the keyboard's own key says
 */
export function textField(field) {
  const {
    id,
    label,
    value,
    onInput,
    unit,
    hint,
    problem,
    choices = [],
    number,
    large,
    signed,
  } = field;
  const described = [unit && `${id}-unit`, hint && `${id}-hint`, problem && `${id}-problem`];
  return html`
    <div class="field ${large ? "large" : ""}">
      <label for=${id}>${label}</label>
      <div class="entry ${signed ? "signed" : ""}">
        <input
          id=${id}
          type="text"
          inputmode=${number ? "decimal" : "text"}
          enterkeyhint=${field.enter ?? "done"}
          maxlength=${field.most ?? 200}
          autocomplete="off"
          autocapitalize=${number ? "off" : "sentences"}
          spellcheck="false"
          .value=${value}
          aria-invalid=${problem ? "true" : "false"}
          aria-describedby=${described.filter(Boolean).join(" ") || nothing}
          @input=${(/** @type {InputEvent} */ event) =>
            onInput(/** @type {HTMLInputElement} */ (event.target).value)}
          @change=${field.onLeave}
        />
        ${unit ? html`<span class="unit" id="${id}-unit">${unit}</span>` : nothing}
        ${signed ? signKey(label, value, onInput) : nothing}
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
 * @param {Record<string, string>} group.options   what is said of each value
 * @param {(value: string) => void} group.onChange
 * @param {boolean} [group.quiet]   the legend is only spoken
 */
export function segments({ name, legend, value, options, onChange, quiet }) {
  return html`
    <fieldset class="segments">
      <legend class=${quiet ? "spoken" : ""}>${legend}</legend>
      <div class="row">
        ${Object.entries(options).map(
          ([option, label]) => html`
            <label>
              <input
                type="radio"
                name=${name}
                value=${option}
                .checked=${option === value}
                @change=${() => onChange(option)}
              />
              <span>${label}</span>
            </label>
          `,
        )}
      </div>
    </fieldset>
  `;
}

/**
 * Options for `segments` whose words follow from their values.
 * @template {string} V
 * @param {readonly V[]} values @param {(value: V) => string} words
 * @returns {Record<string, string>}
 */
export const optionsOf = (values, words) =>
  Object.fromEntries(values.map((value) => [value, words(value)]));
