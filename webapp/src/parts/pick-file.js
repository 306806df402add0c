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
 * @param {boolean} [button.folder]  all files of a folder
 */
export function pickFile({ id, label, onFiles, accept, camera, main, one, folder }) {
  return html`<span class="file-button">
    <input
      id=${id}
      type="file"
      ?multiple=${!one}
      ?webkitdirectory=${folder}
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
