/** A button that opens the phone's file chooser or its camera. */
import { html, nothing } from "lit";

/**
 * @param {object} button
 * @param {string} button.id
 * @param {string} button.label
 * @param {(files: File[]) => void} button.onFiles
 * @param {string} [button.accept]
 * @param {boolean} [button.camera]  offer the camera first
 * @param {boolean} [button.main]
 * @param {boolean} [button.one]     a single file
 */
export function pickFile({ id, label, onFiles, accept, camera, main, one }) {
  return html`<span class="file-button">
    <input
      id=${id}
      type="file"
      ?multiple=${!one}
      accept=${accept ?? nothing}
      capture=${camera ? "environment" : nothing}
      @change=${(/** @type {Event} */ event) => {
        const input = /** @type {HTMLInputElement} */ (event.target);
        const files = [...(input.files ?? [])];
        input.value = "";
        if (files.length) onFiles(files);
      }}
    />
    <label class="button ${main ? "main" : ""}" for=${id}>${label}</label>
  </span>`;
}
