/** Dim: what a dimmer does to the colour of a tungsten light, and the setting that brings it there. */
import { html, nothing } from "lit";
import { LiveQuestion } from "../../base/live-question.js";
import { Page } from "../../base/page.js";
import { properties } from "../../base/properties.js";
import { Watch } from "../../base/watch.js";
import { balanceField } from "../../charts/balance-field.js";
import "../../parts/boot-progress.js";
import "../../parts/meant-row.js";
import "../../parts/spoken.js";
import { slider } from "../../parts/slider.js";
import { sayWithUndo } from "../../parts/toast.js";
import { verdictMark } from "../../parts/verdict.js";
import { problemNote, warningList } from "../../parts/warnings.js";
import { route } from "../../router.js";
import { lightDraft } from "../../store/drafts/light-draft.js";
import { book, settings } from "../../store/index.js";
import { withOwnGels } from "../../store/kit/own-gels.js";
import { placeWords, sayMeant } from "../../store/log/shoot.js";
import { besideReading, centreOf, litQuestion, saidOf } from "../../store/log/target.js";
import { readingQuestion } from "../../store/questions/reading.js";
import { t } from "../../words/index.js";
import { kelvin, percent, steps } from "../../words/numbers.js";

/** @typedef {import("../../store/log/target.js").Said} Said */

/** How far down the slider goes, in stops. */
const DARKEST = -8;

class DimView extends Page {
  static properties = properties({ given: ["of"], own: ["stops"] });

  constructor() {
    super();
    /** Id of the light. */
    this.of = "";
    /** Where the slider was put; empty until then. */
    this.stops = "";
    /** @type {LiveQuestion<"fix">} */
    this.fix = new LiveQuestion(this);
    /** @type {LiveQuestion<"dim">} */
    this.aim = new LiveQuestion(this, { after: [this.fix] });
    /** @type {LiveQuestion<"dim">} */
    this.dim = new LiveQuestion(this, { after: [this.aim] });
    /** @type {LiveQuestion<"field">} */
    this.chart = new LiveQuestion(this, { after: [this.dim] });
    this.watch = new Watch(this, book, settings);
  }

  get light() {
    return book.standing(this.of);
  }

  /** The reading at full light: the latest, or the one that this was dimmed from. */
  get full() {
    const latest = book.latest(this.of);
    return book.standing(latest?.data.dimmed?.from) ?? latest;
  }

  /** What was read at settings that are known: it corrects the law. */
  get pairs() {
    const from = this.full?.id;
    return book
      .below(this.of, "reading")
      .filter(({ data }) => from && data.dimmed?.from === from)
      .map(({ data }) => ({
        percent_light: data.dimmed.percent_light,
        measured: readingQuestion(data),
      }));
  }

  /** The setting asked about, in stops as the slider has them. */
  get at() {
    if (this.stops) return this.stops;
    const found = this.aim.answer?.stops ?? 0;
    return String(Math.max(DARKEST, Math.round(found * 10) / 10) || 0);
  }

  willUpdate() {
    const { light, full: reading, pairs } = this;
    const lit = light && reading && litQuestion({ light, reading });
    const beside = lit && besideReading(lit);
    const terms = { tolerance: settings.get("tolerance"), ...withOwnGels() };
    this.fix.put(beside ? { ask: "fix", ...beside, target: centreOf(), depth: 1, ...terms } : null);
    const meant = this.fix.answer?.target;
    const target = meant ? { x: meant.x, y: meant.y } : null;
    const asked = beside && this.fix.answer && { reading: beside.reading, pairs, ...terms };
    this.aim.put(asked && target ? { ask: "dim", ...asked, to: target } : null);
    this.dim.put(
      asked ? { ask: "dim", ...asked, stops: this.at, ...(target ? { target } : {}) } : null,
    );
    const lands = this.dim.answer;
    this.chart.put(
      lit && lands
        ? {
            ask: "field",
            target: centreOf(),
            lights: [
              { ...lit, name: t("dim.asRead") },
              { ...lit, ...colourOf(lands), name: t("dim.dimmed") },
            ],
            ...terms,
          }
        : null,
    );
  }

  /** Read the light again at this setting. */
  readAgain() {
    const earlier = lightDraft.typed;
    if (lightDraft.unsaved) {
      sayWithUndo(t("light.setAside"), () => lightDraft.start(earlier));
    }
    lightDraft.measureAgain(this.of);
    const { percent_light } = /** @type {any} */ (this.dim.answer);
    const words = t("dim.setting", { percent: percent(percent_light / 100) });
    const from = this.full?.id ?? "";
    lightDraft.type({ dimmer: words, dimmed: { from, percent_light, words } });
    route.go("light");
  }

  /** @param {any} answer */
  renderAnswer(answer) {
    const unreached = this.aim.answer?.unreached;
    const taught = this.pairs.length;
    return html`
      <p class="headline" data-testid="headline">${kelvin(answer.cct_K)}</p>
      <p class="now">
        ${answer.verdict ? verdictMark(answer.verdict) : nothing} ${answer.words}
        ${answer.steps == null ? nothing : html`<span class="hint">${steps(answer.steps)}</span>`}
      </p>
      ${unreached ? html`<p class="reason">${unreached}</p>` : nothing}
      ${taught ? html`<p class="hint">${t("dim.taught", { n: taught })}</p>` : nothing}
      ${warningList(answer.warnings)}
    `;
  }

  render() {
    const { light, at } = this;
    if (!light || !this.full) {
      return html`<h1>${t("dim.title")}</h1><p class="empty">${t("book.gone")}</p>`;
    }
    const problem = this.fix.problem ?? this.dim.problem ?? this.aim.problem;
    const { answer } = this.dim;
    const found = this.aim.answer;
    return html`
      <h1 class="place">
        ${t("dim.name", { name: light.data.name })}
        <a href="#set">${placeWords(book.thing(light.parent))}</a>
      </h1>
      <section class="answer" aria-label=${t("dim.answer")} aria-busy=${this.dim.waiting}>
        <ek-boot-progress></ek-boot-progress>
        ${answer ? this.renderAnswer(answer) : nothing} ${problemNote(problem?.message)}
      </section>
      <ek-spoken .words=${answer?.words ?? ""}></ek-spoken>
      ${slider({
        id: "dim-stops",
        label: t("dim.by"),
        words: at === "0" ? t("mix.asRead") : t("mix.darker", { n: at.replace("-", "") }),
        min: DARKEST,
        max: 0,
        step: 0.1,
        value: at,
        problem: this.dim.problemAt("stops"),
        onInput: (stops) => {
          this.stops = stops;
        },
      })}
      <ek-meant
        .light=${light.id}
        .said=${saidOf(light.id)}
        .say=${(/** @type {Said} */ said) => sayMeant(light.id, said)}
      ></ek-meant>
      <div class="actions">
        ${
          this.stops && found && !found.unreached
            ? html`<button
                type="button"
                class="quiet"
                @click=${() => {
                  this.stops = "";
                }}
              >
                ${t("dim.back")}
              </button>`
            : nothing
        }
        <button type="button" class="main" ?disabled=${!answer} @click=${this.readAgain}>
          ${t("dim.read")}
        </button>
      </div>
      ${this.chart.answer ? balanceField(this.chart.answer, { title: t("dim.field") }) : nothing}
    `;
  }
}
customElements.define("ek-dim", DimView);

/**
 * Where a light lands, in place of what was read.
 * @param {any} lands
 */
function colourOf({ x, y }) {
  return { x, y, spectrum: undefined, cct_K: undefined, duv: undefined };
}
