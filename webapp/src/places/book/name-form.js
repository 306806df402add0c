/** Asks for one name, in place. */
import { html } from "lit";
import { ref } from "lit/directives/ref.js";
import { t } from "../../words/index.js";

const focus = ref((element) => {
  if (element instanceof HTMLInputElement) {
    element.focus();
    element.select();
  }
});

/**
 * @param {object} form
 * @param {string} form.label
 * @param {string} form.value
 * @param {(name: string) => void} form.onSave
 * @param {() => void} form.onCancel
 */
export function nameForm({ label, value, onSave, onCancel }) {
  return html`
    <form
      class="name-form"
      @submit=${(/** @type {SubmitEvent} */ event) => {
        event.preventDefault();
        const form = /** @type {HTMLFormElement} */ (event.target);
        const name = String(new FormData(form).get("name")).trim();
        if (name) onSave(name);
      }}
    >
      <div class="field">
        <label for="new-name">${label}</label>
        <input id="new-name" name="name" type="text" .value=${value} required autocomplete="off" ${focus} />
      </div>
      <div class="actions">
        <button type="button" class="quiet" @click=${onCancel}>${t("cancel")}</button>
        <button type="submit" class="main">${t("save")}</button>
      </div>
    </form>
  `;
}
