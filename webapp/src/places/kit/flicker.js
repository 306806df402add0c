/** Flicker: which shutters and frame rates see every pulse of a light alike. */
import { html, nothing } from "lit";
import { FormDraft } from "../../base/form-draft.js";
import { LiveQuestion } from "../../base/live-question.js";
import { Page } from "../../base/page.js";
import { cameraDetails } from "../../parts/camera-form.js";
import { cautionNote } from "../../parts/caution-note.js";
import { segments, textField } from "../../parts/inputs.js";
import "../../parts/spoken.js";
import { Watch } from "../../base/watch.js";
import { problemNote, warningList } from "../../parts/warnings.js";
import { book, settings } from "../../store/index.js";
import { currentSetup } from "../../store/log/shoot.js";
import { cameraWords, shutterQuestion } from "../../store/questions/camera.js";
import { t } from "../../words/index.js";
import { frameRate, shutterAngle } from "../../words/numbers.js";

const BLANK = {
  light: /** @type {"mains" | "known" | "measured"} */ ("mains"),
  mains_hz: "",
  light_hz: "",
  duty_percent: "",
  modulation_percent: "",
  /** Two or more shutters and whether the light flickered at them. */
  results: [
    { time_s: "", flicker: false },
    { time_s: "", flicker: false },
  ],
};

class FlickerView extends Page {
  constructor() {
    super();
    this.draft = new FormDraft(this, { name: () => "flicker", blank: () => BLANK });
    this.flicker = /** @type {LiveQuestion<"flicker">} */ (new LiveQuestion(this));
    this.watch = new Watch(this, settings, book);
  }

  get typed() {
    return this.draft.typed;
  }

  /** @param {Partial<typeof BLANK>} fields */
  type(fields) {
    this.draft.type(fields);
  }

  get place() {
    return book.thing(currentSetup()?.parent);
  }

  /** Mains as chosen here, or of the place, or of the Kit. */
  get mains() {
    const { mains_hz } = this.typed;
    return mains_hz || String(this.place?.data.mains_hz || settings.get("mains_hz") || "50");
  }

  /** The light in question, or null while it is not told. */
  lightQuestion() {
    const { light, light_hz, duty_percent, modulation_percent, results } = this.typed;
    if (light === "mains") return { mains_hz: this.mains, modulation_percent };
    if (light === "known") {
      return light_hz.trim() ? { light_hz, duty_percent, modulation_percent } : null;
    }
    const measured = results.filter(({ time_s }) => time_s.trim());
    return measured.length > 1 ? { measured, duty_percent, modulation_percent } : null;
  }

  willUpdate() {
    const light = this.lightQuestion();
    this.flicker.put(light && { ask: "flicker", ...light, ...shutterQuestion() });
  }

  renderLight() {
    const { typed } = this;
    return html`
      ${segments({
        name: "flicker-light",
        legend: t("flicker.light"),
        value: typed.light,
        options: {
          mains: t("flicker.mains"),
          known: t("flicker.known"),
          measured: t("flicker.unknown"),
        },
        onChange: (light) => this.type({ light: /** @type {"mains"} */ (light) }),
      })}
      ${typed.light === "mains" ? this.renderMains() : nothing}
      ${
        typed.light === "known"
          ? textField({
              id: "flicker-hz",
              label: t("flicker.hz"),
              hint: t("flicker.hzHint"),
              unit: "Hz",
              number: true,
              value: typed.light_hz,
              problem: this.flicker.problemAt("light_hz"),
              onInput: (light_hz) => this.type({ light_hz }),
            })
          : nothing
      }
      ${typed.light === "measured" ? this.renderMeasured() : nothing}
    `;
  }

  renderMains() {
    const usual = ["50", "60"].includes(this.mains);
    return html`${segments({
      name: "flicker-mains",
      legend: t("flicker.mainsHz"),
      quiet: true,
      value: usual ? this.mains : "other",
      options: {
        50: "50 Hz",
        60: "60 Hz",
        ...(usual ? {} : { other: `${this.mains} Hz` }),
      },
      onChange: (mains_hz) => this.type({ mains_hz: mains_hz === "other" ? "" : mains_hz }),
    })}`;
  }

  renderMeasured() {
    const { results } = this.typed;
    const change = (/** @type {number} */ at, /** @type {object} */ fields) =>
      this.type({ results: results.map((one, i) => (i === at ? { ...one, ...fields } : one)) });
    return html`
      <p class="hint">${t("flicker.measuredHint")}</p>
      ${results.map(
        (result, i) => html`<div class="pair">
          ${textField({
            id: `flicker-result-${i}`,
            label: t("flicker.result", { n: i + 1 }),
            unit: "s",
            value: result.time_s,
            problem: this.flicker.problemAt(`measured.${i}.time_s`),
            onInput: (time_s) => change(i, { time_s }),
          })}
          <label class="check">
            <input
              type="checkbox"
              .checked=${result.flicker}
              @change=${(/** @type {Event} */ event) =>
                change(i, { flicker: /** @type {HTMLInputElement} */ (event.target).checked })}
            />
            <span>${t("flicker.seen")}</span>
          </label>
        </div>`,
      )}
      ${
        results.length < 8
          ? html`<div class="actions">
              <button
                type="button"
                class="quiet"
                @click=${() => this.type({ results: [...results, { time_s: "", flicker: false }] })}
              >
                ${t("flicker.addResult")}
              </button>
            </div>`
          : nothing
      }
    `;
  }

  renderDepth() {
    const { typed } = this;
    return html`<details class="more">
      <summary>${t("flicker.depth")}</summary>
      <div class="pair">
        ${textField({
          id: "flicker-modulation",
          label: t("flicker.modulation"),
          unit: "%",
          number: true,
          value: typed.modulation_percent,
          problem: this.flicker.problemAt("modulation_percent"),
          onInput: (modulation_percent) => this.type({ modulation_percent }),
        })}
        ${
          typed.light === "mains"
            ? nothing
            : textField({
                id: "flicker-duty",
                label: t("flicker.duty"),
                unit: "%",
                number: true,
                value: typed.duty_percent,
                problem: this.flicker.problemAt("duty_percent"),
                onInput: (duty_percent) => this.type({ duty_percent }),
              })
        }
      </div>
      <p class="hint">${t("flicker.depthHint")}</p>
    </details>`;
  }

  /** @param {any} answer */
  renderAnswer(answer) {
    const list = (/** @type {string} */ label, /** @type {string[]} */ values) =>
      values.length
        ? html`<dt>${label}</dt>
            <dd class="values">${values.map((value) => html`<span>${value}</span>`)}</dd>`
        : nothing;
    return html`
      <p class="headline small" data-testid="flicker-answer">${answer.words}</p>
      <p class="reason">${t("camera.at", { camera: cameraWords() })}</p>
      ${warningList(answer.warnings)}
      <dl class="facts">
        ${list(t("flicker.pulses"), [`${frameRate(answer.light_hz)} ${t("flicker.perSecond")}`])}
        ${list(t("flicker.angles"), answer.safe_shutter_deg.map(shutterAngle))}
        ${list(t("flicker.times"), answer.safe_time_words)}
        ${list(t("flicker.rates"), answer.safe_fps.map(frameRate))}
        ${list(
          t("flicker.ratesAtShutter", { angle: shutterAngle(answer.shutter_deg ?? 0) }),
          (answer.safe_fps_at_shutter ?? []).map(frameRate),
        )}
      </dl>
    `;
  }

  render() {
    const { answer, problem } = this.flicker;
    const shown = ["light_hz", "duty_percent", "modulation_percent"].concat(
      this.typed.results.map((_, i) => `measured.${i}.time_s`),
    );
    return html`
      <h1>${t("flicker.title")}</h1>
      <p class="links"><a href="#kit">${t("back.kit")}</a></p>
      <section class="answer small" aria-busy=${this.flicker.waiting} aria-label=${t("flicker.answer")}>
        <ek-boot-progress></ek-boot-progress>
        ${answer ? this.renderAnswer(answer) : nothing}
        ${answer || problem ? nothing : html`<p class="hint">${t("flicker.empty")}</p>`}
        ${problemNote(this.flicker.problemBeside(shown))}
      </section>
      <ek-spoken .words=${answer?.words ?? ""}></ek-spoken>
      ${this.renderLight()} ${cameraDetails()} ${this.renderDepth()}
      <p class="hint">${t("flicker.source")}</p>
      ${cautionNote("flashing")}
    `;
  }
}
customElements.define("ek-flicker", FlickerView);
