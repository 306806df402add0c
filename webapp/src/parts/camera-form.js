/** What the camera is set to and what stands before its sensor: kept at every keystroke. */
import { html } from "lit";
import { LiveQuestion } from "../base/live-question.js";
import { Page } from "../base/page.js";
import { Watch } from "../base/watch.js";
import { reportFault, settings } from "../store/index.js";
import { cameraQuestion, cameraWords } from "../store/questions/camera.js";
import { t } from "../words/index.js";
import { choice, segments, textField } from "./inputs.js";
import { problemNote } from "./warnings.js";

class CameraForm extends Page {
  constructor() {
    super();
    this.check = /** @type {LiveQuestion<"levels">} */ (new LiveQuestion(this));
    this.watch = new Watch(this, settings);
  }

  willUpdate() {
    // No lights: only to be told what is wrong with the camera.
    this.check.put({ ask: "levels", lights: [], camera: cameraQuestion() });
  }

  /** @param {Partial<import("../store/settings.js").Camera>} some */
  set(some) {
    settings.set("camera", { ...settings.get("camera"), ...some }).catch(reportFault);
  }

  /** @param {string} name */
  problemAt(name) {
    return this.check.problemAt(`camera.${name}`);
  }

  renderShutter() {
    const camera = settings.get("camera");
    return html`
      ${segments({
        name: "shutter-way",
        legend: t("camera.shutter"),
        value: camera.way,
        options: { angle: t("camera.angle"), time: t("camera.time") },
        onChange: (way) => this.set({ way: /** @type {"angle" | "time"} */ (way) }),
      })}
      <div class="pair">
        ${textField({
          id: "camera-fps",
          label: t("camera.fps"),
          unit: "fps",
          number: true,
          value: camera.fps,
          problem: this.problemAt("fps"),
          onInput: (fps) => this.set({ fps }),
        })}
        ${
          camera.way === "angle"
            ? textField({
                id: "camera-angle",
                label: t("camera.angle"),
                unit: "°",
                number: true,
                value: camera.shutter_deg,
                problem: this.problemAt("shutter_deg"),
                onInput: (shutter_deg) => this.set({ shutter_deg }),
              })
            : textField({
                id: "camera-time",
                label: t("camera.time"),
                unit: "s",
                value: camera.time_s,
                problem: this.problemAt("time_s"),
                onInput: (time_s) => this.set({ time_s }),
              })
        }
      </div>
    `;
  }

  renderBefore() {
    const camera = settings.get("camera");
    const filter = camera.filterAs === "stops" ? "filter_stops" : "filter_factor";
    return html`
      <div class="pair">
        ${textField({
          id: "camera-filter",
          label: t("camera.filter"),
          unit: camera.filterAs === "stops" ? t("camera.stopsUnit") : "×",
          number: true,
          value: camera.filter,
          problem: this.problemAt(filter),
          onInput: (value) => this.set({ filter: value }),
        })}
        ${choice({
          id: "camera-filter-as",
          label: t("camera.filterAs"),
          value: camera.filterAs,
          options: [
            { value: "stops", label: t("camera.inStops") },
            { value: "factor", label: t("camera.asFactor") },
          ],
          onChange: (value) => this.set({ filterAs: /** @type {"stops"} */ (value) }),
        })}
      </div>
      ${textField({
        id: "camera-lens",
        label: t("camera.lens"),
        hint: t("camera.lensHint"),
        unit: t("camera.stopsUnit"),
        number: true,
        value: camera.lens_stops,
        problem: this.problemAt("lens_stops"),
        onInput: (lens_stops) => this.set({ lens_stops }),
      })}
      ${segments({
        name: "receptor",
        legend: t("camera.receptor"),
        value: camera.receptor,
        options: { flat: t("camera.flat"), dome: t("camera.dome") },
        onChange: (receptor) => this.set({ receptor: /** @type {"flat"} */ (receptor) }),
      })}
      ${textField({
        id: "camera-constant",
        label: t("camera.constant"),
        hint: t("camera.constantHint"),
        unit: "lx·s",
        number: true,
        value: camera.constant,
        problem: this.problemAt("constant"),
        onInput: (constant) => this.set({ constant }),
      })}
      ${segments({
        name: "say",
        legend: t("camera.say"),
        value: settings.get("say"),
        options: { thirds: t("camera.thirds"), tenths: t("camera.tenths") },
        onChange: (say) => settings.set("say", /** @type {"thirds"} */ (say)).catch(reportFault),
      })}
    `;
  }

  render() {
    return html`
      ${problemNote(this.check.problemBeside(/^camera\./))}
      ${textField({
        id: "camera-iso",
        label: t("camera.iso"),
        unit: "ISO",
        number: true,
        value: settings.get("camera").iso,
        problem: this.problemAt("iso"),
        onInput: (iso) => this.set({ iso }),
      })}
      ${this.renderShutter()}
      <details class="more">
        <summary>${t("camera.more")}</summary>
        ${this.renderBefore()}
      </details>
    `;
  }
}
customElements.define("ek-camera-form", CameraForm);

/** The camera in one line, and a way to change it in place. */
export function cameraDetails() {
  return html`<details class="more">
    <summary><span class="what">${t("camera.title")}</span> ${cameraWords()}</summary>
    <ek-camera-form></ek-camera-form>
  </details>`;
}
