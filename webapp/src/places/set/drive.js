/** A lamp's primaries, each read alone, and how far to drive each for the white. */
import { html, nothing } from "lit";
import { LiveQuestion } from "../../base/live-question.js";
import { Page } from "../../base/page.js";
import { properties } from "../../base/properties.js";
import { Watch } from "../../base/watch.js";
import { figures, figureTable } from "../../charts/figures.js";
import { segments, textField } from "../../parts/inputs.js";
import { say } from "../../parts/toast.js";
import { verdictMark } from "../../parts/verdict.js";
import { problemNote, warningList } from "../../parts/warnings.js";
import { book, reportFault, settings } from "../../store/index.js";
import { keepLamp, lampOf } from "../../store/kit/lamps.js";
import { keepFinding } from "../../store/log/findings.js";
import { currentSetup, lightsOf } from "../../store/log/shoot.js";
import { targetOf } from "../../store/log/target.js";
import { terms } from "../../store/questions/reading.js";
import { t } from "../../words/index.js";
import { index, kelvin, level, percent, steps } from "../../words/numbers.js";
import { NOTHING } from "./reading-entry.js";
import { readingSource, sourceQuestion, TYPED_HERE } from "./reading-source.js";

class Drive extends Page {
  static properties = properties({ given: ["light"], own: ["prefer", "name", "source"] });

  constructor() {
    super();
    /** @type {import("../../store/log/book.js").Thing | undefined} */
    this.light = undefined;
    this.prefer = "light";
    this.name = "";
    this.source = TYPED_HERE;
    this.drive = /** @type {LiveQuestion<"drive">} */ (new LiveQuestion(this));
    this.check = /** @type {LiveQuestion<"drive">} */ (new LiveQuestion(this));
    this.watch = new Watch(this, book, settings);
  }

  get lamp() {
    return lampOf(/** @type {import("../../store/log/book.js").Thing} */ (this.light));
  }

  get unit() {
    return `illuminance_${settings.get("illuminance")}`;
  }

  willUpdate() {
    const { primaries = [] } = this.lamp;
    this.drive.put(
      primaries.length
        ? {
            ask: "drive",
            primaries,
            prefer: this.prefer,
            ...terms(),
            ...targetOf(this.light?.id),
          }
        : null,
    );
    // One primary alone: says what is wrong with what is typed before it is added.
    const primary = this.primary();
    this.check.put(
      primary ? { ask: "drive", primaries: [primary], ...targetOf(this.light?.id) } : null,
    );
  }

  /** The primary that stands in the form, as R. @returns {Record<string, any> | null} */
  primary() {
    const count = this.lamp.primaries?.length ?? 0;
    const typed = this.name.trim() || t("light.nth", { n: count + 1 });
    const primary = sourceQuestion(this.source, this.unit);
    const kept = book.thing(this.source.from);
    return primary && { ...primary, name: kept ? kept.data.name : typed };
  }

  /** @param {Record<string, any>[]} primaries */
  put(primaries) {
    return keepLamp({ ...this.lamp, primaries }).catch(reportFault);
  }

  async add() {
    const primary = this.primary();
    if (!primary) return;
    await this.put([...(this.lamp.primaries ?? []), primary]);
    this.source = { from: "", entered: { ...NOTHING, way: this.source.entered.way } };
    this.name = "";
  }

  async keep() {
    const { answer } = this.drive;
    if (!answer) return;
    const levels = answer.primaries
      .map((/** @type {any} */ one) => `${one.name} ${percent(one.level)}`)
      .join(", ");
    const { x, y, cct_K, duv } = answer.lands;
    await keepFinding({
      by: "drive",
      words: t("drive.keptWords", {
        lamp: this.lamp.name,
        levels,
        lands: kelvin(cct_K),
        lux: level(answer.lux),
      }),
      from: {
        lamp: this.lamp.name,
        prefer: this.prefer,
        names: answer.primaries.map((/** @type {any} */ { name }) => name),
      },
      found: { levels: answer.levels, x, y, cct_K, duv, illuminance_lx: answer.lux },
    });
    say(t("finding.said"));
  }

  renderAnswer() {
    const { answer, problem } = this.drive;
    if (problem) return problemNote(problem.message);
    if (!answer) return nothing;
    return html`
      ${figureTable(
        t("drive.levels"),
        [t("drive.primary"), t("drive.level"), "lx", ""],
        answer.primaries.map((/** @type {any} */ one, /** @type {number} */ place) => [
          one.name,
          percent(one.level),
          level(one.lx),
          html`<button
            type="button"
            class="quiet"
            aria-label=${t("drive.remove", { name: one.name })}
            @click=${() => this.put((this.lamp.primaries ?? []).filter((_, i) => i !== place))}
          >
            ×
          </button>`,
        ]),
      )}
      ${figures([
        [t("drive.lands"), kelvin(answer.lands.cct_K)],
        [t("pack.within"), verdictMark(answer.verdict)],
        [t("drive.gives"), `${level(answer.lux)} lx`],
        ...(answer.ssi == null ? [] : [[t("drive.ssi"), index(answer.ssi)]]),
      ])}
      ${
        answer.reachable
          ? nothing
          : html`<p>
              ${t("drive.reachNot", { steps: steps(answer.remains_steps) })}
              ${answer.gel ? t("slip.hang", { pack: answer.gel.words }) : nothing}
            </p>`
      }
      ${warningList(answer.warnings)}
      <div class="actions">
        <button
          type="button"
          ?disabled=${this.drive.waiting}
          @click=${() => this.keep().catch(reportFault)}
        >
          ${t("finding.keep")}
        </button>
      </div>
    `;
  }

  renderForm() {
    const others = lightsOf(currentSetup()).filter(({ light }) => light.id !== this.light?.id);
    const { problem } = this.check;
    const { source } = this;
    return html`
      ${readingSource({
        id: "primary",
        label: t("drive.from"),
        lights: others,
        value: source,
        unit: this.unit,
        above: textField({
          id: "primary-name",
          label: t("drive.name"),
          value: this.name,
          onInput: (name) => {
            this.name = name;
          },
        }),
        problemAt: (path) => this.check.problemAt(`primaries.0.${path}`),
        onInput: (fields) => {
          this.source = { ...source, ...fields };
        },
      })}
      ${source.from ? problemNote(problem?.message) : nothing}
      <div class="actions">
        <button
          type="button"
          ?disabled=${!this.primary() || Boolean(problem)}
          @click=${() => this.add().catch(reportFault)}
        >
          ${t("drive.add")}
        </button>
      </div>
    `;
  }

  render() {
    if (!this.light) return nothing;
    return html`<details class="more">
      <summary>${t("drive.heading")}</summary>
      <p class="hint">${t("drive.hint")}</p>
      ${
        (this.lamp.primaries ?? []).length > 1
          ? segments({
              name: "prefer",
              legend: t("drive.prefer"),
              value: this.prefer,
              options: { light: t("drive.light"), similarity: t("drive.similarity") },
              onChange: (prefer) => {
                this.prefer = prefer;
              },
            })
          : nothing
      }
      ${this.renderAnswer()} ${this.renderForm()}
    </details>`;
  }
}
customElements.define("ek-drive", Drive);
