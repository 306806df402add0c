/** Flash and the light that is there already, on one frame: ratio, colour, gel for the flash. */
import { html, nothing } from "lit";
import { FormDraft } from "../../base/form-draft.js";
import { figures, figureTable } from "../../charts/figures.js";
import { keptOf, readingSource, sourceQuestion, TYPED_HERE } from "./reading-source.js";
import "../../parts/boot-progress.js";
import { cautionNote } from "../../parts/caution-note.js";
import { textField } from "../../parts/inputs.js";
import "./findings-list.js";
import { LiveQuestion } from "../../base/live-question.js";
import { Page } from "../../base/page.js";
import { Watch } from "../../base/watch.js";
import { folded } from "../../parts/more.js";
import { packRow } from "../../parts/pack-card.js";
import { say } from "../../parts/toast.js";
import { verdictMark } from "../../parts/verdict.js";
import { problemNote, warningList } from "../../parts/warnings.js";
import { book, reportFault, settings } from "../../store/index.js";
import { keepFinding } from "../../store/log/findings.js";
import { currentSetup, lightsOf, placeWords } from "../../store/log/shoot.js";
import { levelField, shutterQuestion } from "../../store/questions/camera.js";
import { terms } from "../../store/questions/reading.js";
import { t } from "../../words/index.js";
import { duv, kelvin, stopsChange } from "../../words/numbers.js";

const BLANK = { flash: TYPED_HERE, ambient: TYPED_HERE, time_s: "" };

const SIDES = /** @type {const} */ (["flash", "ambient"]);

class FlashView extends Page {
  constructor() {
    super();
    this.draft = new FormDraft(this, { name: () => "flash", blank: () => BLANK });
    this.question = /** @type {import("../../kernel/answers.js").Question<"flash_mix"> | null} */ (
      null
    );
    this.mix = /** @type {LiveQuestion<"flash_mix">} */ (new LiveQuestion(this));
    this.watch = new Watch(this, book, settings);
  }

  /** @param {"flash" | "ambient"} side */
  unit(side) {
    return levelField(side === "flash" ? "flash" : "unknown");
  }

  /** @param {"flash" | "ambient"} side @returns {Record<string, any> | null} R */
  reading(side) {
    const reading = sourceQuestion(this.draft.typed[side], this.unit(side));
    return reading && side === "flash" ? { lamp: "flash", ...reading } : reading;
  }

  willUpdate() {
    const [flash, ambient] = SIDES.map((side) => this.reading(side));
    const { time_s } = this.draft.typed;
    const shutter = time_s.trim() ? { time_s } : shutterQuestion();
    this.question =
      flash && ambient
        ? { ask: /** @type {const} */ ("flash_mix"), flash, ambient, ...shutter, ...terms() }
        : null;
    this.mix.put(this.question);
  }

  async keep() {
    const { answer } = this.mix;
    if (!answer) return;
    const { x, y, cct_K, duv: tint } = answer.mix;
    await keepFinding({
      by: "flash",
      words: `${t("flash.words", { ratio: answer.ratio_words })}. ${kelvin(cct_K)}, Duv ${duv(tint)}.`,
      from: {
        ...Object.fromEntries(
          SIDES.map((side) => {
            const kept = keptOf(this.draft.typed[side]);
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
      ${figures([
        [t("flash.together"), kelvin(answer.mix.cct_K)],
        ["Duv", duv(answer.mix.duv)],
      ])}
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
              ${folded(t("light.others", { n: others.length }), "packs", others.map(packRow))}
              ${cautionNote()}`
          : nothing
      }
      ${figureTable(
        t("flash.shutters"),
        [t("flash.shutter"), t("flash.ratio"), t("flash.together")],
        answer.shutters.map((/** @type {any} */ row) => [
          row.words,
          stopsChange(row.ratio_stops),
          kelvin(row.mix.cct_K),
        ]),
      )}
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
    const value = this.draft.typed[side];
    return html`<section>
      <h2>${t(`flash.${side}`)}</h2>
      ${readingSource({
        id: side,
        label: t(`flash.${side}From`),
        lights: lightsOf(currentSetup()),
        value,
        unit: this.unit(side),
        amount: t(side === "flash" ? "flash.exposure" : "light.illuminance"),
        problemAt: (path) => this.mix.problemAt(`${side}.${path}`),
        onInput: (fields) => this.draft.type({ [side]: { ...value, ...fields } }),
      })}
    </section>`;
  }

  /** The sentence of a problem that no field on the screen shows. */
  get otherProblem() {
    const typedHere = SIDES.filter((side) => !this.draft.typed[side].from);
    return this.mix.problemBeside(new RegExp(`^(time_s$|(${typedHere.join("|") || "-"})\\.)`));
  }

  render() {
    const { answer } = this.mix;
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
        value: this.draft.typed.time_s,
        problem: this.mix.problemAt("time_s"),
        onInput: (time_s) => this.draft.type({ time_s }),
      })}
      <ek-findings></ek-findings>
      ${cautionNote("flashing")}
    `;
  }
}
customElements.define("ek-flash", FlashView);
