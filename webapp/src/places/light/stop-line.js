/** What a light's level means for the camera: its stop in one line, and the way to more. */
import { html, nothing } from "lit";
import { LiveQuestion } from "../../base/live-question.js";
import { Page } from "../../base/page.js";
import { properties } from "../../base/properties.js";
import { Watch } from "../../base/watch.js";
import { settings } from "../../store/index.js";
import { cameraQuestion, cameraWords, isFlash } from "../../store/questions/camera.js";
import { t } from "../../words/index.js";

class StopLine extends Page {
  static properties = properties({ given: ["level", "loss"] });

  constructor() {
    super();
    /** The brightness, as levelOf gives it. @type {Record<string, any>} */
    this.level = {};
    /** What the gel to be hung takes, in stops, as the kernel said. @type {number} */
    this.loss = 0;
    this.levels = /** @type {LiveQuestion<"levels">} */ (new LiveQuestion(this));
    this.watch = new Watch(this, settings);
  }

  willUpdate() {
    this.levels.put(
      Object.keys(this.level).length
        ? {
            ask: "levels",
            lights: [{ ...this.level, loss_stops: this.loss }],
            camera: cameraQuestion(),
            say: settings.get("say"),
          }
        : null,
    );
  }

  render() {
    if (!Object.keys(this.level).length) return nothing;
    const { answer, problem } = this.levels;
    if (problem) {
      return html`<p class="stop-line">
        <a href="#kit">${t("exposure.cameraProblem", { message: problem.message })}</a>
      </p>`;
    }
    if (!answer) return nothing;
    const [level] = answer.lights;
    // What is wrong with the level itself stands at its field.
    if (level.problem) return nothing;
    const { now, gelled } = level;
    if (!now.stop) {
      return html`<p class="stop-line"><a href="#kit">${t("exposure.setCamera")}</a></p>`;
    }
    return html`<p class="stop-line">
      <span>
        <strong>${now.stop}</strong>
        ${t("camera.at", { camera: cameraWords({ flash: isFlash(this.level) }) })}
        ${
          gelled?.stop && gelled.stop !== now.stop
            ? html`<span class="hint">${t("exposure.gelled", { stop: gelled.stop })}</span>`
            : nothing
        }
      </span>
      <a href="#exposure" aria-label=${t("exposure.moreLabel")}>${t("exposure.more")}</a>
    </p>`;
  }
}
customElements.define("ek-stop-line", StopLine);
