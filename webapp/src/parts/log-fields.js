/** What else belongs to a reading: note, dimmer, dialled value, place, photo, who. */
import { html, nothing } from "lit";
import { reportFault } from "../store/index.js";
import { t } from "../words/index.js";
import { positionWords } from "../words/numbers.js";
import { textField } from "./inputs.js";
import { smallPhoto } from "./photo.js";
import { pickFile } from "./pick-file.js";
import { whereAmI } from "./position.js";

/**
 * @typedef {object} Logged
 * @property {string} note
 * @property {string | null} dialled  null where a colour was dialled, which is no text
 * @property {string} dimmer
 * @property {string} place
 * @property {import("./position.js").Position | null} position
 * @property {string} photo
 */

/**
 * @param {object} fields
 * @param {string} fields.id      begins the ids of the inputs
 * @param {Logged} fields.value
 * @param {(change: Partial<Omit<Logged, "dialled">> & {dialled?: string}) => void} fields.onChange
 */
export function logFields({ id, value, onChange }) {
  const text = (/** @type {"dialled" | "dimmer" | "place"} */ name) =>
    textField({
      id: `${id}-${name}`,
      label: t(`log.${name}`),
      value: value[name] ?? "",
      onInput: (typed) => onChange({ [name]: typed }),
    });
  return html`
    <div class="field">
      <label for="${id}-note">${t("log.note")}</label>
      <textarea
        id="${id}-note"
        rows="2"
        maxlength="4000"
        .value=${value.note ?? ""}
        @input=${(/** @type {Event} */ event) =>
          onChange({ note: /** @type {HTMLTextAreaElement} */ (event.target).value })}
      ></textarea>
    </div>
    <div class="pair">${text("dimmer")} ${value.dialled === null ? nothing : text("dialled")}</div>
    ${text("place")}
    <div class="row">
      ${
        value.position
          ? html`<span class="hint">${positionWords(value.position)}</span>
              <button type="button" class="quiet" @click=${() => onChange({ position: null })}>
                ${t("position.forget")}
              </button>`
          : html`<button
              type="button"
              @click=${() =>
                whereAmI()
                  .then((position) => onChange({ position }))
                  .catch(reportFault)}
            >
              ${t("position.ask")}
            </button>`
      }
      ${
        value.photo
          ? nothing
          : pickFile({
              id: `${id}-photo`,
              label: t("photo.add"),
              accept: "image/*",
              camera: true,
              one: true,
              onFiles: ([file]) =>
                smallPhoto(file)
                  .then((photo) => onChange({ photo }))
                  .catch(reportFault),
            })
      }
    </div>
    ${
      value.photo
        ? html`<figure class="photo">
            <img src=${value.photo} alt=${t("photo.alt")} />
            <button type="button" class="quiet" @click=${() => onChange({ photo: "" })}>
              ${t("photo.remove")}
            </button>
          </figure>`
        : nothing
    }
  `;
}
