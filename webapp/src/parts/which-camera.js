/** Which camera judges, where the kit has more than the standard one, and what it rests on. */
import { html, nothing } from "lit";
import { reportFault, settings } from "../store/index.js";
import { cameraNamed } from "../store/kit/cameras.js";
import { t } from "../words/index.js";
import { choice } from "./inputs.js";

/** Cameras to choose from. @param {{name: string}[]} some */
export const cameraOptions = (some) => some.map(({ name }) => ({ value: name, label: name }));

/** The camera that every answer starts with. */
export const standardOption = () => ({ value: "", label: t("cameras.standard") });

/** @param {unknown} [more]  what leads to where cameras are kept */
export function whichCamera(more = html`<a href="#cameras">${t("cameras.title")}</a>`) {
  const { cameras, eyes } = settings.values;
  const name = cameraNamed(eyes)?.name ?? "";
  return html`
    ${
      cameras.length
        ? choice({
            id: "which-camera",
            label: t("cameras.judges"),
            value: name,
            options: [standardOption(), ...cameraOptions(cameras)],
            onChange: (one) => settings.set("eyes", one).catch(reportFault),
          })
        : nothing
    }
    <p class="hint">
      ${name ? t("judge.own", { name }) : t("judge.hint")} ${more}
    </p>
  `;
}
