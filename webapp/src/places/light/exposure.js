/**
 * Exposure: one figure from the others, how light falls off with distance, and flash. Trying
 * here changes nothing in the Kit.
 */
import { html, nothing } from "lit";
import { FormDraft } from "../../base/form-draft.js";
import { LiveQuestion } from "../../base/live-question.js";
import { Page } from "../../base/page.js";
import { cameraDetails } from "../../parts/camera-form.js";
import { cautionNote } from "../../parts/caution-note.js";
import { choice, segments, textField } from "../../parts/inputs.js";
import { lengthField } from "../../parts/length-field.js";
import "../../parts/spoken.js";
import { Watch } from "../../base/watch.js";
import { problemNote, warningList } from "../../parts/warnings.js";
import { lightDraft } from "../../store/drafts/light-draft.js";
import { settings } from "../../store/index.js";
import {
  cameraQuestion,
  cameraWords,
  levelField,
  levelTyped,
  levelUnit,
} from "../../store/questions/camera.js";
import { t } from "../../words/index.js";

const UNKNOWNS = /** @type {const} */ ([
  "f_number",
  "light",
  "iso",
  "time_s",
  "filter_stops",
  "over",
]);
const WISHES = /** @type {const} */ (["wanted", "lose_stops", "at"]);

/** @typedef {typeof UNKNOWNS[number]} Unknown */
/** @typedef {typeof WISHES[number]} Wish */

const BLANK = {
  solve: /** @type {Unknown} */ ("f_number"),
  kind: /** @type {"steady" | "flash"} */ ("steady"),
  light: "",
  bursts: "1",
  stop: "",
  wish: /** @type {Wish} */ ("wanted"),
  distance: /** @type {Record<string, string>} */ ({}),
  wanted: "",
  lose_stops: "1",
  at: /** @type {Record<string, string>} */ ({}),
  source: /** @type {Record<string, string>} */ ({}),
};

/**
 * What was typed here before, with the level of the reading that stands on Light.
 * @param {typeof BLANK} typed
 * @returns {typeof BLANK}
 */
function withLevel(typed) {
  const { illuminance, lamp } = lightDraft.typed;
  const light = illuminance.trim();
  return light ? { ...typed, light, kind: lamp === "flash" ? "flash" : "steady" } : typed;
}

class ExposureView extends Page {
  constructor() {
    super();
    this.draft = new FormDraft(this, {
      name: () => "exposure",
      blank: () => BLANK,
      from: (typed) => withLevel(typed),
    });
    this.expose = /** @type {LiveQuestion<"expose">} */ (new LiveQuestion(this));
    this.falloff = /** @type {LiveQuestion<"falloff">} */ (new LiveQuestion(this));
    this.watch = new Watch(this, settings);
  }

  get typed() {
    return this.draft.typed;
  }

  /** @param {Partial<typeof BLANK>} fields */
  type(fields) {
    this.draft.type(fields);
  }

  get lightField() {
    if (this.typed.kind !== "flash") return levelField("");
    // What is asked for is the light itself.
    return this.typed.solve === "light" ? "exposure_lx_s" : levelField("flash");
  }

  willUpdate() {
    const { solve, light, stop, kind, bursts } = this.typed;
    /** @type {Record<string, any>} */
    const known = { ...cameraQuestion() };
    if (solve !== "light") Object.assign(known, levelTyped(this.lightField, light));
    if (kind === "flash") known.bursts = bursts;
    if (solve !== "f_number") known.f_number = stop;
    if (solve === "iso") delete known.iso;
    if (solve === "time_s") {
      delete known.time_s;
      delete known.shutter_deg;
    }
    if (solve === "filter_stops") {
      delete known.filter_stops;
      delete known.filter_factor;
    }
    // How far over is asked with everything given: no filter is a filter of no stops.
    if (solve === "over" && !known.filter_stops && !known.filter_factor) known.filter_stops = "0";
    const unknown = solve === "light" ? this.lightField.replace("_fc", "_lx") : solve;
    const ready =
      (solve === "light" || light.trim()) && (solve === "f_number" || stop.trim() !== "");
    this.expose.put(
      ready
        ? {
            ask: "expose",
            known,
            ...(solve === "over" ? {} : { solve: unknown }),
            say: settings.get("say"),
          }
        : null,
    );
    this.falloff.put(this.distanceQuestion());
  }

  /** @returns {import("../../kernel/answers.js").Question<"falloff"> | null} */
  distanceQuestion() {
    const { kind, light, wish, distance, wanted, lose_stops, at, source } = this.typed;
    const asked =
      wish === "wanted"
        ? { [`wanted_${settings.get("illuminance")}`]: wanted }
        : wish === "lose_stops"
          ? { lose_stops }
          : at;
    const typed = (/** @type {Record<string, string>} */ fields) =>
      Object.values(fields).some((value) => value.trim());
    if (!typed(distance) || !typed(asked)) return null;
    const steady = kind === "steady" && light.trim() ? { [this.lightField]: light } : {};
    return {
      ask: "falloff",
      ...steady,
      ...distance,
      ...asked,
      ...source,
      say: settings.get("say"),
    };
  }

  /** @param {LiveQuestion<"expose" | "falloff">} question @param {string} name */
  problemAt(question, name) {
    return question.problemAt(name) ?? question.problemAt(`known.${name}`);
  }

  renderLight() {
    const { typed } = this;
    const name = this.lightField;
    return html`
      ${segments({
        name: "light-kind",
        legend: t("exposure.kind"),
        quiet: true,
        value: typed.kind,
        options: { steady: t("exposure.steady"), flash: t("exposure.flash") },
        onChange: (kind) => this.type({ kind: /** @type {"flash"} */ (kind) }),
      })}
      <div class="pair">
        ${textField({
          id: "exposure-light",
          label: t(typed.kind === "flash" ? "exposure.burst" : "exposure.light"),
          unit: levelUnit(name),
          number: true,
          value: typed.light,
          problem: this.problemAt(this.expose, name) ?? this.problemAt(this.falloff, name),
          onInput: (light) => this.type({ light }),
        })}
        ${
          typed.kind === "flash"
            ? textField({
                id: "exposure-bursts",
                label: t("exposure.bursts"),
                number: true,
                value: typed.bursts,
                problem: this.problemAt(this.expose, "bursts"),
                onInput: (bursts) => this.type({ bursts }),
              })
            : nothing
        }
      </div>
    `;
  }

  renderSolve() {
    const { typed } = this;
    const { answer, problem } = this.expose;
    const here = [this.lightField, "bursts", "f_number"].some((name) =>
      this.problemAt(this.expose, name),
    );
    return html`<section>
      <section class="answer small" aria-busy=${this.expose.waiting} aria-label=${t("exposure.answer")}>
        ${
          answer
            ? html`<p class="headline" data-testid="exposure-answer">${answer.words}</p>
                <p class="reason">
                  ${t("camera.at", { camera: cameraWords({ flash: typed.kind === "flash" }) })}
                </p>
                ${
                  answer.bursts_needed && answer.bursts_needed > 1
                    ? html`<p>${t("exposure.burstsNeeded", { n: answer.bursts_needed })}</p>`
                    : nothing
                }
                ${warningList(answer.warnings)}`
            : problem
              ? nothing
              : html`<p class="hint">${t("exposure.empty")}</p>`
        }
        ${here ? nothing : problemNote(problem?.message)}
      </section>
      ${choice({
        id: "exposure-solve",
        label: t("exposure.solve"),
        value: typed.solve,
        options: UNKNOWNS.filter((one) => !(typed.kind === "flash" && one === "time_s")).map(
          (one) => ({ value: one, label: t(`exposure.solve.${one}`) }),
        ),
        onChange: (solve) => this.type({ solve: /** @type {Unknown} */ (solve) }),
      })}
      ${
        typed.solve === "f_number"
          ? nothing
          : textField({
              id: "exposure-stop",
              label: t("exposure.stop"),
              hint: t("exposure.stopHint"),
              value: typed.stop,
              problem: this.problemAt(this.expose, "f_number"),
              onInput: (stop) => this.type({ stop }),
            })
      }
      ${cameraDetails()}
    </section>`;
  }

  renderDistance() {
    const { typed } = this;
    const { answer, problem } = this.falloff;
    const problemAt = (/** @type {string} */ name) => this.problemAt(this.falloff, name);
    const unit = settings.get("illuminance");
    const known = ["wanted_lx", "wanted_fc", "lose_stops", "at_m", "at_ft", "distance_m"]
      .concat("distance_ft", "source_m", "source_ft", this.lightField)
      .some(problemAt);
    return html`<section>
      <h2>${t("falloff.title")}</h2>
      ${lengthField({
        id: "falloff-distance",
        label: t("falloff.distance"),
        name: "distance",
        data: typed.distance,
        problemAt,
        onInput: (distance) => this.type({ distance }),
      })}
      ${choice({
        id: "falloff-wish",
        label: t("falloff.wish"),
        value: typed.wish,
        options: WISHES.map((wish) => ({ value: wish, label: t(`falloff.wish.${wish}`) })),
        onChange: (wish) => this.type({ wish: /** @type {Wish} */ (wish) }),
      })}
      ${
        typed.wish === "at"
          ? lengthField({
              id: "falloff-at",
              label: t("falloff.at"),
              name: "at",
              data: typed.at,
              problemAt,
              onInput: (at) => this.type({ at }),
            })
          : textField({
              id: "falloff-wanted",
              label: t(`falloff.${typed.wish}`),
              unit: typed.wish === "wanted" ? unit : t("camera.stopsUnit"),
              number: true,
              value: typed[typed.wish],
              problem: problemAt(typed.wish === "wanted" ? `wanted_${unit}` : "lose_stops"),
              onInput: (value) => this.type({ [typed.wish]: value }),
            })
      }
      ${lengthField({
        id: "falloff-source",
        label: t("falloff.source"),
        name: "source",
        data: typed.source,
        problemAt,
        onInput: (source) => this.type({ source }),
      })}
      ${answer ? html`<p class="change" data-testid="falloff-answer">${answer.words}</p>` : nothing}
      ${warningList(answer?.warnings)} ${known ? nothing : problemNote(problem?.message)}
    </section>`;
  }

  render() {
    return html`
      <h1>${t("exposure.title")}</h1>
      <p class="links"><a href="#light">${t("back.light")}</a></p>
      <ek-boot-progress></ek-boot-progress>
      ${this.renderLight()} ${this.renderSolve()} ${this.renderDistance()}
      <ek-spoken .words=${this.expose.answer?.words ?? ""}></ek-spoken>
      <ek-spoken .words=${this.falloff.answer?.words ?? ""}></ek-spoken>
      <p class="hint">${t("exposure.source")}</p>
      ${this.typed.kind === "flash" ? cautionNote("flashing") : nothing}
    `;
  }
}
customElements.define("ek-exposure", ExposureView);
