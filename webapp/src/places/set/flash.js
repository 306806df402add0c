/** Flash and the light that is there already, on one frame: ratio, colour, gel for the flash. */
import { html, nothing } from "lit";
import "../../parts/boot-progress.js";
import { cautionNote } from "../../parts/caution-note.js";
import { choice, textField } from "../../parts/inputs.js";
import "./findings-list.js";
import { LiveQuestion } from "../../base/live-question.js";
import { Page } from "../../base/page.js";
import { Watch } from "../../base/watch.js";
import { packRow } from "../../parts/pack-card.js";
import { say } from "../../parts/toast.js";
import { verdictMark } from "../../parts/verdict.js";
import { problemNote, warningList } from "../../parts/warnings.js";
import { book, drafts, reportFault, settings } from "../../store/index.js";
import { keepFinding } from "../../store/log/findings.js";
import { currentSetup, lightsOf, placeWords } from "../../store/log/shoot.js";
import { levelField, levelUnit, shutterQuestion } from "../../store/questions/camera.js";
import { readingQuestion, terms } from "../../store/questions/reading.js";
import { t } from "../../words/index.js";
import { duv, kelvin, stopsChange } from "../../words/numbers.js";
import { complete, NOTHING, readingEntry, readingOf } from "./reading-entry.js";

const FORM = "flash";

/** @typedef {import("./reading-entry.js").Entered} Entered */
/** @typedef {{from: string, entered: Entered}} Side  from: id of a kept light, "" = typed here */

const SIDES = /** @type {const} */ (["flash", "ambient"]);

class FlashView extends Page {
  static properties = { typed: { state: true } };

  constructor() {
    super();
    /** @type {{flash: Side, ambient: Side, time_s: string}} */
    this.typed = {
      flash: { from: "", entered: NOTHING },
      ambient: { from: "", entered: NOTHING },
      time_s: "",
    };
    this.question = /** @type {Record<string, any> | null} */ (null);
    this.mix = new LiveQuestion(this);
    this.watch = new Watch(this, book, settings);
  }

  connectedCallback() {
    super.connectedCallback();
    drafts
      .load(FORM)
      .then((kept) => {
        if (kept) this.typed = { ...this.typed, ...kept };
      })
      .catch(reportFault);
  }

  /** @param {Partial<FlashView["typed"]>} fields */
  type(fields) {
    this.typed = { ...this.typed, ...fields };
    drafts.save(FORM, this.typed).catch(reportFault);
  }

  /** @param {"flash" | "ambient"} side */
  unit(side) {
    return levelField(side === "flash" ? "flash" : "unknown");
  }

  /** @param {"flash" | "ambient"} side @returns {Record<string, any> | null} R */
  reading(side) {
    const { from, entered } = this.typed[side];
    const kept = from && book.latest(from);
    if (kept) return readingQuestion(kept.data);
    if (!complete(entered)) return null;
    const lamp = side === "flash" ? { lamp: "flash" } : {};
    return { ...readingOf(entered, this.unit(side)), ...lamp };
  }

  willUpdate() {
    const [flash, ambient] = SIDES.map((side) => this.reading(side));
    const { time_s } = this.typed;
    const shutter = time_s.trim() ? { time_s } : shutterQuestion();
    this.question =
      flash && ambient ? { ask: "flash_mix", flash, ambient, ...shutter, ...terms() } : null;
    this.mix.put(this.question);
  }

  async keep() {
    const { answer } = this.mix;
    const { x, y, cct_K, duv: tint } = answer.mix;
    await keepFinding({
      by: "flash",
      words: `${t("flash.words", { ratio: answer.ratio_words })}. ${kelvin(cct_K)}, Duv ${duv(tint)}.`,
      from: {
        ...Object.fromEntries(
          SIDES.map((side) => {
            const kept = this.typed[side].from && book.latest(this.typed[side].from);
            return [side, kept ? { reading: kept.id } : this.reading(side)];
          }),
        ),
        time_s: answer.time_s,
      },
      found: { x, y, cct_K, duv: tint, ratio_stops: answer.ratio_stops },
    });
    say(t("finding.said"));
  }

  /** @param {any} answer */
  renderAnswer(answer) {
    const [best, ...others] = answer.packs;
    return html`
      <p class="headline" data-testid="headline">${t("flash.words", { ratio: answer.ratio_words })}</p>
      <p class="now">${verdictMark(answer.verdict)} ${t("flash.against", { words: answer.offset.words })}</p>
      <dl class="figures">
        <div>
          <dt>${t("flash.together")}</dt>
          <dd>${kelvin(answer.mix.cct_K)}</dd>
        </div>
        <div>
          <dt>Duv</dt>
          <dd>${duv(answer.mix.duv)}</dd>
        </div>
      </dl>
      ${warningList(answer.warnings)}
      ${
        answer.verdict !== "holds" && best
          ? html`<h2>${t("flash.gel")}</h2>
              <ul class="packs">${packRow(best)}</ul>
              <p class="reason">
                ${t("flash.then", {
                  ratio: stopsChange(best.ratio_stops),
                  cct: kelvin(best.mix.cct_K),
                })}
              </p>
              ${
                others.length
                  ? html`<details class="more">
                      <summary>${t("light.others", { n: others.length })}</summary>
                      <ul class="packs">
                        ${others.map(packRow)}
                      </ul>
                    </details>`
                  : nothing
              }
              ${cautionNote()}`
          : nothing
      }
      <table class="compare">
        <caption>
          ${t("flash.shutters")}
        </caption>
        <thead>
          <tr>
            <th scope="col">${t("flash.shutter")}</th>
            <th scope="col">${t("flash.ratio")}</th>
            <th scope="col">${t("flash.together")}</th>
          </tr>
        </thead>
        <tbody>
          ${answer.shutters.map(
            (/** @type {any} */ row) => html`<tr>
              <th scope="row">${row.words}</th>
              <td>${stopsChange(row.ratio_stops)}</td>
              <td>${kelvin(row.mix.cct_K)}</td>
            </tr>`,
          )}
        </tbody>
      </table>
      <div class="actions">
        <button
          type="button"
          class="main"
          ?disabled=${this.mix.waiting || !currentSetup()}
          @click=${() => this.keep().catch(reportFault)}
        >
          ${t("finding.keep")}
        </button>
      </div>
    `;
  }

  /** @param {"flash" | "ambient"} side */
  renderSide(side) {
    const lights = lightsOf(currentSetup());
    const { from, entered } = this.typed[side];
    const { problem } = this.mix;
    const unit = this.unit(side);
    const put = (/** @type {Partial<Side>} */ fields) =>
      this.type({ [side]: { ...this.typed[side], ...fields } });
    const problemAt = (/** @type {string} */ path) =>
      problem?.field === `${side}.${path}` ? problem.message : undefined;
    return html`<section>
      <h2>${t(`flash.${side}`)}</h2>
      ${
        lights.length
          ? choice({
              id: `${side}-from`,
              label: t(`flash.${side}From`),
              value: from,
              options: [
                { value: "", label: t("unmix.typed") },
                ...lights.map(({ light }) => ({ value: light.id, label: light.data.name })),
              ],
              onChange: (light) => put({ from: light }),
            })
          : nothing
      }
      ${
        from
          ? nothing
          : readingEntry({
              id: side,
              legend: t("light.way"),
              value: entered,
              amount: {
                name: unit,
                label: t(side === "flash" ? "flash.exposure" : "light.illuminance"),
                unit: levelUnit(unit),
              },
              problemAt: (path) =>
                problemAt(path) ?? (path === unit ? problemAt("illuminance_lx") : undefined),
              onInput: (fields) => put({ entered: { ...entered, ...fields } }),
            })
      }
    </section>`;
  }

  /** The sentence of a problem that no field on the screen shows. */
  get otherProblem() {
    const { problem } = this.mix;
    if (!problem || problem.field === "time_s") return undefined;
    const [side] = problem.field.split(".");
    const typedHere = side in this.typed && !this.typed[/** @type {"flash"} */ (side)].from;
    return typedHere ? undefined : problem.message;
  }

  render() {
    const { answer, problem } = this.mix;
    return html`
      <h1 class="place">${t("flash.heading")} <a href="#set">${placeWords(currentSetup())}</a></h1>
      <section class="answer" aria-label=${t("flash.answer")} aria-busy=${this.mix.waiting}>
        <ek-boot-progress></ek-boot-progress>
        ${answer ? this.renderAnswer(answer) : nothing} ${problemNote(this.otherProblem)}
        ${this.question ? nothing : html`<p class="hint">${t("flash.what")}</p>`}
      </section>
      ${SIDES.map((side) => this.renderSide(side))}
      ${textField({
        id: "flash-time",
        label: t("flash.shutter"),
        unit: "s",
        hint: t("flash.shutterHint"),
        value: this.typed.time_s,
        problem: problem?.field === "time_s" ? problem.message : undefined,
        onInput: (time_s) => this.type({ time_s }),
      })}
      <ek-findings></ek-findings>
    `;
  }
}
customElements.define("ek-flash", FlashView);
