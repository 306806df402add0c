/** A large pad for one number at a time, that a thumb works without looking. */
import { html } from "lit";
import { t } from "../../words/index.js";

/** The two keys that have a place of their own. @type {Record<string, string>} */
const KEY_NAMES = { 0: "nought", ".": "point" };
const DIGITS = [..."1234567890"];

/**
 * @param {object} pad
 * @param {string} pad.label   what is typed now
 * @param {string} pad.value
 * @param {string} pad.unit
 * @param {string} [pad.problem]
 * @param {(value: string) => void} pad.onInput
 * @param {() => void} pad.onNext
 */
export function sweepPad({ label, value, unit, problem, onInput, onNext }) {
  const press = (/** @type {string} */ key) =>
    html`<button type="button" class=${`key-${KEY_NAMES[key] ?? "digit"}`} @click=${() => onInput(value + key)}>
      ${key}
    </button>`;
  return html`<div class="pad">
    <div class="field large">
      <label for="sweep-level">${label}</label>
      <div class="entry">
        <input
          id="sweep-level"
          type="text"
          inputmode="none"
          enterkeyhint="next"
          maxlength="12"
          autocomplete="off"
          .value=${value}
          aria-invalid=${problem ? "true" : "false"}
          @input=${(/** @type {InputEvent} */ event) =>
            onInput(/** @type {HTMLInputElement} */ (event.target).value)}
          @keydown=${(/** @type {KeyboardEvent} */ event) => {
            if (event.key !== "Enter") return;
            event.preventDefault();
            onNext();
          }}
        />
        <span class="unit">${unit}</span>
      </div>
      ${problem ? html`<p class="problem">${problem}</p>` : ""}
    </div>
    <div
      class="keys"
      @pointerdown=${(/** @type {Event} */ event) => event.preventDefault() /* the number keeps the focus */}
    >
      ${DIGITS.map(press)}
      <button
        type="button"
        class="back"
        aria-label=${t("sweep.back")}
        @click=${() => onInput(value.slice(0, -1))}
      >
        ⌫
      </button>
      ${press(".")}
      <button type="button" class="main next" @click=${onNext}>${t("sweep.next")}</button>
    </div>
  </div>`;
}
