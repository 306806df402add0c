/** Unmix: from each light read alone and all of them together, whose share is whose. */
import { html, nothing } from "lit";
import { FormDraft } from "../../base/form-draft.js";
import { figureTable } from "../../charts/figures.js";
import { keptOf, readingSource, sourceQuestion } from "./reading-source.js";
import "../../parts/boot-progress.js";
import "./findings-list.js";
import { LiveQuestion } from "../../base/live-question.js";
import { Page } from "../../base/page.js";
import { properties } from "../../base/properties.js";
import { Watch } from "../../base/watch.js";
import { say } from "../../parts/toast.js";
import { problemNote, warningList } from "../../parts/warnings.js";
import { book, reportFault, settings } from "../../store/index.js";
import { withOwnGels } from "../../store/kit/own-gels.js";
import { keepFinding } from "../../store/log/findings.js";
import { currentSetup, lightsOf, placeWords } from "../../store/log/shoot.js";
import { readingQuestion } from "../../store/questions/reading.js";
import { t } from "../../words/index.js";
import { level, percent, steps } from "../../words/numbers.js";
import { NOTHING } from "./reading-entry.js";

class UnmixView extends Page {
  static properties = properties({ own: ["out", "from"] });

  constructor() {
    super();
    /** Lights that are not among those in the sum. @type {Set<string>} */
    this.out = new Set();
    /** The light whose kept reading is the sum; "" = it is typed here. */
    this.from = "";
    this.draft = new FormDraft(this, { name: () => "unmix", blank: () => NOTHING });
    this.unmix = /** @type {LiveQuestion<"unmix">} */ (new LiveQuestion(this));
    this.watch = new Watch(this, book, settings);
  }

  get unit() {
    return `illuminance_${settings.get("illuminance")}`;
  }

  /** The reading of the sum, and the lights in it. */
  get parts() {
    const all = lightsOf(currentSetup());
    const sum = { from: this.from, entered: this.draft.typed };
    const lights = all.filter(({ light }) => light.id !== this.from && !this.out.has(light.id));
    return { all, sum, lights };
  }

  willUpdate() {
    const { sum, lights } = this.parts;
    const total = sourceQuestion(sum, this.unit);
    this.unmix.put(
      total && lights.length
        ? {
            ask: "unmix",
            lights: lights.map(({ light, reading }) =>
              readingQuestion(reading.data, light.data.name),
            ),
            sum: total,
            ...withOwnGels(),
          }
        : null,
    );
  }

  async keep() {
    const { answer } = this.unmix;
    if (!answer) return;
    const { sum, lights } = this.parts;
    const kept = keptOf(sum);
    await keepFinding({
      by: "unmix",
      words: answer.words.join(" "),
      from: {
        lights: lights.map(({ light }) => light.id),
        names: lights.map(({ light }) => light.data.name),
        readings: lights.map(({ reading }) => reading.id),
        sum: kept ? { reading: kept.id } : sourceQuestion(sum, this.unit),
      },
      found: {
        parts: answer.shares.map((/** @type {any} */ { part }) => part),
        residual: answer.residual,
        certain: answer.certain,
      },
    });
    say(t("finding.said"));
  }

  /** @param {any} answer */
  renderAnswer(answer) {
    return html`
      <p class="headline" data-testid="headline">
        ${t(answer.missing ? "unmix.missing" : answer.certain ? "unmix.certain" : "unmix.uncertain")}
      </p>
      ${answer.words.map((/** @type {string} */ words) => html`<p>${words}</p>`)}
      ${figureTable(
        t("unmix.shares"),
        [t("unmix.light"), t("unmix.share"), t("unmix.could"), "lx"],
        answer.shares.map((/** @type {any} */ share) => [
          share.name,
          percent(share.part),
          t("unmix.range", { least: percent(share.least_part), most: percent(share.most_part) }),
          share.lx == null ? "–" : level(share.lx),
        ]),
      )}
      <p class="reason">
        ${t("unmix.residual", {
          steps: steps(answer.residual.steps),
          by: t(answer.by === "spectra" ? "unmix.bySpectra" : "unmix.byXy"),
        })}
      </p>
      ${warningList(answer.warnings)}
      <div class="actions">
        <button
          type="button"
          class="main"
          ?disabled=${this.unmix.waiting}
          @click=${() => this.keep().catch(reportFault)}
        >
          ${t("finding.keep")}
        </button>
      </div>
    `;
  }

  render() {
    const { all, sum } = this.parts;
    const { answer } = this.unmix;
    const other = this.unmix.problemBeside(this.from ? [] : /^sum\./);
    return html`
      <h1 class="place">${t("unmix.heading")} <a href="#mix">${t("mix.heading")}</a></h1>
      <p class="hint">${placeWords(currentSetup())}. ${t("unmix.what")}</p>
      <section class="answer" aria-label=${t("unmix.answer")} aria-busy=${this.unmix.waiting}>
        <ek-boot-progress></ek-boot-progress>
        ${answer ? this.renderAnswer(answer) : nothing}
        ${problemNote(other)}
      </section>
      ${
        all.length
          ? html`<section>
              <h2>${t("unmix.alone")}</h2>
              <ul class="stock">
                ${all
                  .filter(({ light }) => light.id !== this.from)
                  .map(
                    ({ light }) => html`<li>
                      <label class="check">
                        <input
                          type="checkbox"
                          .checked=${!this.out.has(light.id)}
                          @change=${() => {
                            const out = new Set(this.out);
                            if (!out.delete(light.id)) out.add(light.id);
                            this.out = out;
                          }}
                        />
                        <span>${light.data.name}</span>
                      </label>
                    </li>`,
                  )}
              </ul>
            </section>`
          : html`<p class="empty">${t("mix.empty")}</p>`
      }
      <section>
        <h2>${t("unmix.sum")}</h2>
        ${readingSource({
          id: "sum",
          label: t("unmix.sumFrom"),
          lights: all,
          value: sum,
          unit: this.unit,
          problemAt: (path) => this.unmix.problemAt(`sum.${path}`),
          onInput: ({ from, entered }) => {
            this.from = from ?? this.from;
            if (entered) this.draft.type(entered);
          },
        })}
      </section>
      <ek-findings></ek-findings>
    `;
  }
}
customElements.define("ek-unmix", UnmixView);
