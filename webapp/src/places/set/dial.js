/** Dial: the next value for a tunable lamp, from what was dialled and what it gave. */
import { html, nothing } from "lit";
import { FormDraft } from "../../base/form-draft.js";
import { figureTable } from "../../charts/figures.js";
import { ask } from "../../kernel/client.js";
import { Keeping } from "../../parts/keeping.js";
import { centreOf, targetOf } from "../../store/log/target.js";
import "../../parts/against.js";
import "../../parts/boot-progress.js";
import { cautionNote } from "../../parts/caution-note.js";
import "./drive.js";
import { LiveQuestion } from "../../base/live-question.js";
import { Page } from "../../base/page.js";
import { properties } from "../../base/properties.js";
import { choice, textField } from "../../parts/inputs.js";
import { packRow } from "../../parts/pack-card.js";
import { colourOf, complete, NOTHING, readingEntry, readingOf } from "./reading-entry.js";
import "../../parts/spoken.js";
import { Watch } from "../../base/watch.js";
import { verdictMark } from "../../parts/verdict.js";
import { problemNote, warningList } from "../../parts/warnings.js";
import { book, reportFault, settings } from "../../store/index.js";
import { gels } from "../../store/kit/gels.js";
import {
  dialHistory,
  dialQuestion,
  fixtureOf,
  forget,
  keepRange,
  lampOf,
  rangeOf,
  reachOf,
  remember,
  typedSince,
} from "../../store/kit/lamps.js";
import { gelsOn } from "../../store/log/measured-gels.js";
import { keepReading, targetToKeep } from "../../store/log/shoot.js";
import { levelUnit } from "../../store/questions/camera.js";
import { t } from "../../words/index.js";
import { coordinate, duv, index, kelvin, steps, whenRead } from "../../words/numbers.js";
import { readingWords } from "../../words/reading.js";

/** @typedef {import("./reading-entry.js").Entered} Entered */
/** @typedef {import("../../store/log/book.js").Thing} Thing */

/** `dialled`: what was dialled, as typed; null = the next value. */
const BLANK = { dialled: /** @type {Entered | null} */ (null), measured: NOTHING };

class DialView extends Page {
  static properties = properties({ given: ["of"], own: ["range"] });

  constructor() {
    super();
    this.of = "";
    this.draft = new FormDraft(this, { name: () => `dial ${this.of}`, blank: () => BLANK });
    /** The reach while it is typed. @type {Record<string, string>} */
    this.range = {};
    this.keeping = new Keeping(this);
    this.dial = /** @type {LiveQuestion<"dial">} */ (new LiveQuestion(this));
    this.check = /** @type {LiveQuestion<"dial">} */ (new LiveQuestion(this));
    this.watch = new Watch(this, book, settings, gels);
  }

  get light() {
    return book.standing(this.of);
  }

  get unit() {
    return `illuminance_${settings.get("illuminance")}`;
  }

  willUpdate() {
    const { light } = this;
    const { measured } = this.draft.typed;
    this.dial.put(light ? dialQuestion(light) : null);
    // The pair in the form, asked about alone: says what is wrong with it before it is kept.
    const { dialledNow } = this;
    this.check.put(
      light && complete(measured) && complete(dialledNow)
        ? {
            ask: "dial",
            ...targetOf(light.id),
            history: [{ dialled: colourOf(dialledNow), measured: readingOf(measured, this.unit) }],
          }
        : null,
    );
  }

  /** What was dialled: as typed, or the next value taken over. @returns {Entered} */
  get dialledNow() {
    const { dialled, measured } = this.draft.typed;
    if (dialled) return dialled;
    const next = this.dial.answer?.next;
    if (!next) return NOTHING;
    return {
      ...NOTHING,
      way: measured.way,
      x: coordinate(next.x),
      y: coordinate(next.y),
      cct_K: next.cct_K == null ? "" : index(next.cct_K),
      duv: duv(next.duv),
    };
  }

  /** A pair is kept unless it is known to be none; a kernel in trouble is no reason not to. */
  get keepable() {
    const wrong = this.check.found?.field.startsWith("history");
    const whole = complete(this.draft.typed.measured) && complete(this.dialledNow);
    return whole && !wrong && !this.keeping.busy;
  }

  /** @param {Thing} light */
  keep(light) {
    const { measured } = this.draft.typed;
    return this.keeping.run(async () => {
      await keepReading({
        light: light.id,
        lightData: {},
        data: {
          ...readingOf(measured, this.unit),
          dialled: colourOf(this.dialledNow),
          lamp: light.data.lamp ?? "unknown",
          pack: gelsOn(book.latest(light.id)?.data ?? {}),
          target: await targetToKeep(centreOf()),
        },
      });
      await this.draft.clear({ measured: { ...NOTHING, way: measured.way } });
      const { correction } = await ask(dialQuestion(light));
      if (correction) await remember(light, correction);
      return t("dial.kept");
    });
  }

  /** @param {any} answer */
  renderAnswer(answer) {
    const { next } = answer;
    return html`
      <p class="headline" data-testid="headline">
        ${next.cct_K == null ? nothing : html`${kelvin(next.cct_K)} `}
        ${answer.next_green ? html`<span class="dial-xy">${answer.next_green}</span> ` : nothing}
        <span class="dial-xy">${t("dial.xy", { x: coordinate(next.x), y: coordinate(next.y) })}</span>
      </p>
      <p>${answer.words} <a href="#tint">${t("answer.terms")}</a></p>
      ${
        answer.verdict
          ? html`<p class="now">
              <span class="what">${t("dial.last")}</span> ${verdictMark(answer.verdict)}
              ${steps(answer.steps)}
            </p>`
          : nothing
      }
      ${
        answer.reachable
          ? nothing
          : html`<p class="reason">
                ${t("dial.nearest", {
                  cct: kelvin(answer.nearest.cct_K),
                  steps: steps(answer.remains_steps),
                })}
              </p>
              ${
                answer.gel
                  ? html`<h2>${t("dial.gel")}</h2>
                      <ul class="packs">
                        ${packRow(answer.gel)}
                      </ul>
                      ${cautionNote()}`
                  : nothing
              }`
      }
      ${warningList(answer.warnings)}
    `;
  }

  /** @param {Thing} light */
  renderForm(light) {
    const { dialled, measured } = this.draft.typed;
    const problemAt = (/** @type {string} */ side) => (/** @type {string} */ path) =>
      this.check.problemAt(`history.0.${side}.${path}`);
    return html`<form
      @submit=${(/** @type {Event} */ event) => {
        event.preventDefault();
        if (this.keepable) this.keep(light);
      }}
    >
      <h2>${t("dial.form")}</h2>
      ${readingEntry({
        id: "dialled",
        legend: t("dial.dialled"),
        value: this.dialledNow,
        problemAt: problemAt("dialled"),
        onInput: (fields) => this.draft.type({ dialled: { ...this.dialledNow, ...fields } }),
      })}
      ${
        dialled
          ? html`<button
              type="button"
              class="quiet"
              @click=${() => this.draft.type({ dialled: null })}
            >
              ${t("dial.useNext")}
            </button>`
          : nothing
      }
      ${readingEntry({
        id: "measured",
        legend: t("dial.measured"),
        value: measured,
        amount: { name: this.unit, label: t("light.illuminance"), unit: levelUnit(this.unit) },
        problemAt: problemAt("measured"),
        onInput: (fields) => this.draft.type({ measured: { ...measured, ...fields } }),
      })}
      ${this.keeping.note()}
      <div class="actions">
        <button
          type="submit"
          class="main"
          ?disabled=${!this.keepable}
        >
          ${t("dial.keep")}
        </button>
      </div>
    </form>`;
  }

  /** @param {Thing} light */
  renderHistory(light) {
    const history = dialHistory(light);
    const { answer } = this.dial;
    if (!history.length) return nothing;
    return figureTable(
      t("dial.history"),
      [t("dial.dialled"), t("dial.measured")],
      history.map(({ data, at }, place) => [
        html`${readingWords(data.dialled)} <span class="hint">${whenRead(at)}</span>`,
        html`${readingWords(data)}
          ${answer?.best === place ? html`<span class="tag">${t("dial.best")}</span>` : nothing}`,
      ]),
    );
  }

  /** @param {Thing} light */
  renderLamp(light) {
    const lamp = lampOf(light);
    const names = [
      ...new Set([light.data.name, fixtureOf(light), ...settings.get("lamps").map((l) => l.name)]),
    ];
    const range = { ...rangeOf(light), ...this.range };
    const reach = reachOf(light);
    const bound = (/** @type {"from_K" | "to_K"} */ key, /** @type {string} */ label) =>
      textField({
        id: `dial-${key}`,
        label,
        unit: "K",
        number: true,
        value: range[key] ?? "",
        problem: this.dial.problemAt(`range.${key}`),
        onInput: (value) => {
          this.range = { ...this.range, [key]: value };
        },
      });
    return html`<section>
      <h2>${t("dial.fixture")}</h2>
      ${choice({
        id: "dial-fixture",
        label: t("dial.fixture"),
        value: fixtureOf(light),
        options: names.map((name) => ({ value: name, label: name })),
        onChange: (fixture) => book.edit(light.id, { fixture }).catch(reportFault),
      })}
      ${
        lamp.at
          ? html`<p class="hint">
              ${t("dial.learned", { name: lamp.name, time: whenRead(lamp.at) })}
            </p>`
          : nothing
      }
      ${
        lamp.correction
          ? html`<button
              type="button"
              class="quiet"
              @click=${() => forget(lamp).catch(reportFault)}
            >
              ${t("dial.forget")}
            </button>`
          : nothing
      }
      <h3>${t("dial.reach")}</h3>
      ${
        reach && "gamut" in reach
          ? html`<p class="hint">${t("dial.reachPrimaries")}</p>`
          : html`<div class="pair" @change=${() =>
              keepRange(light, range)
                .then(() => {
                  this.range = typedSince(this.range, range);
                })
                .catch(reportFault)}>
                ${bound("from_K", t("balance.dialFrom"))} ${bound("to_K", t("balance.dialTo"))}
              </div>
              <p class="hint">${t("dial.reachHint")}</p>`
      }
      <ek-drive .light=${light}></ek-drive>
    </section>`;
  }

  render() {
    const { light } = this;
    if (!light) {
      return html`<h1>${t("dial.title")}</h1>
        <section class="empty">
          <p>${t("dial.gone")}</p>
          <div class="actions"><a class="button main" href="#set">${t("place.set")}</a></div>
        </section>`;
    }
    const { answer } = this.dial;
    return html`
      <h1 class="place">
        ${t("dial.heading", { name: light.data.name })} <a href="#set">${t("place.set")}</a>
      </h1>
      <ek-against></ek-against>
      <section class="answer" aria-label=${t("dial.answer")} aria-busy=${this.dial.waiting}>
        <ek-boot-progress></ek-boot-progress>
        ${answer ? this.renderAnswer(answer) : nothing}
        ${problemNote(this.dial.problemBeside(/^range\.(from|to)_K$/))}
      </section>
      <ek-spoken .words=${answer ? answer.words : ""}></ek-spoken>
      ${this.renderForm(light)} ${this.renderHistory(light)} ${this.renderLamp(light)}
    `;
  }
}
customElements.define("ek-dial", DialView);
