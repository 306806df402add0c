/** The windows of a location: their gel and neutral density, and the cut list for them. */
import { html, nothing } from "lit";
import { cutPlan } from "../../charts/cut-plan.js";
import { LocationPage } from "./location-page.js";
import "../../parts/boot-progress.js";
import { LiveQuestion } from "../../base/live-question.js";
import { Watch } from "../../base/watch.js";
import { gelPicker } from "../../parts/gel-picker.js";
import { choice, optionsOf, segments, textField } from "../../parts/inputs.js";
import { lengthField } from "../../parts/length-field.js";
import { packWords } from "../../parts/pack-card.js";
import { rows } from "../../parts/rows.js";
import { shareText } from "../../parts/share-text.js";
import { fetchNote } from "../../parts/to-fetch.js";
import { problemNote, warningList } from "../../parts/warnings.js";
import { book, reportFault, settings } from "../../store/index.js";
import { gels } from "../../store/kit/gels.js";
import { tie } from "../../store/log/measured-gels.js";
import { lightsOf } from "../../store/log/shoot.js";
import { cuttingQuestion, glassSize, typedIn } from "../../store/questions/by-the-roll.js";
import { cameraQuestion } from "../../store/questions/camera.js";
import { readingQuestion, terms, whiteQuestion } from "../../store/questions/reading.js";
import { t } from "../../words/index.js";
import { area, percent, stops } from "../../words/numbers.js";
import { dayAt, holdQuestion, keptWindows, namedWindows, windowDay } from "./window-day.js";

const DIRECTIONS = /** @type {const} */ (["any", "upright", "across"]);

/**
 * Windows of one size and facing; `gels` where they hang something else than the others, by label.
 * @typedef {Record<string, any>} Row
 */

const BLANK = {
  windows: /** @type {Row[]} */ ([{}]),
  gels: /** @type {string[]} */ ([]),
  from: "", // id of the light whose fix the gel is taken from
  measured: "",
  ndAs: /** @type {"level" | "stop"} */ ("level"),
  wanted: "",
  stop: "",
  direction: /** @type {typeof DIRECTIONS[number]} */ ("any"),
  day: "",
  minute: "",
};

/** What a cut or a roll is of, where not all windows hang the same. @param {any} plan @param {any} of */
const gelsOf = (plan, of) =>
  plan.alike ? "" : of.gels.length ? of.gels.join(" + ") : t("hold.bare");

/** @extends {LocationPage<typeof BLANK>} */
class WindowsView extends LocationPage {
  constructor() {
    super({ name: "windows", blank: () => BLANK, inBook: ["windows", "gels"] });
    this.plan = /** @type {LiveQuestion<"windows">} */ (new LiveQuestion(this));
    this.fix = /** @type {LiveQuestion<"fix">} */ (new LiveQuestion(this));
    this.hold = /** @type {LiveQuestion<"hold">} */ (new LiveQuestion(this));
    this.light = /** @type {LiveQuestion<"expose">} */ (new LiveQuestion(this));
    this.nd = /** @type {LiveQuestion<"windows">} */ (
      new LiveQuestion(this, { after: [this.fix, this.light] })
    );
    this.watch = new Watch(this, book, settings, gels);
  }

  /** What the book keeps of this form. */
  get kept() {
    const kept = keptWindows(this.location?.data ?? {});
    return { ...kept, windows: kept.windows.length ? kept.windows : [{}] };
  }

  get changed() {
    const { windows, gels: names } = this.typed;
    const kept = this.kept;
    const plain = (/** @type {any} */ value) => JSON.stringify(value);
    return (
      plain(windows.filter(typedIn)) !== plain(kept.windows.filter(typedIn)) ||
      plain(names) !== plain(kept.gels)
    );
  }

  /** @param {import("../../store/log/book.js").Thing} location */
  async write(location) {
    const { windows, gels: names } = this.typed;
    /** @type {import("../../store/log/entries.js").Entry[]} */
    const made = [];
    const tied = tie(names, made);
    const rowsTied = windows.filter(typedIn).map((row) => {
      if (!row.gels) return row;
      const own = tie(row.gels, made);
      return { ...row, gels: own.names, gel_ids: own.ids };
    });
    if (made.length) await book.add(...made);
    await book.edit(location.id, {
      windows: rowsTied,
      window_gels: tied.names,
      window_gel_ids: tied.ids,
    });
    return t("windows.kept", { name: location.data.name });
  }

  /** The lights of this location with a reading, of every setup. */
  get lights() {
    return book.below(this.of, "setup").flatMap((setup) => lightsOf(setup));
  }

  get source() {
    return this.lights.find(({ light }) => light.id === this.typed.from);
  }

  /** The lines in use, each with a name. @returns {Row[]} */
  get named() {
    return namedWindows(this.typed.windows);
  }

  get day() {
    return dayAt(this.location, this.typed);
  }

  willUpdate() {
    if (!this.location) return;
    const { named } = this;
    const { windows, gels: names, direction, ndAs, wanted, stop, measured } = this.typed;
    const { source } = this;
    const unit = settings.get("illuminance");
    this.plan.put(
      windows.some(typedIn)
        ? {
            ask: "windows",
            windows: named.map((row) => ({
              ...glassSize(row),
              name: row.name,
              ...(row.gels ? { gels: row.gels } : {}),
            })),
            gels: names,
            direction,
            ...cuttingQuestion(),
          }
        : null,
    );
    this.fix.put(
      source
        ? {
            ask: "fix",
            reading: readingQuestion(source.reading.data),
            target: whiteQuestion(),
            ...terms(),
          }
        : null,
    );
    this.light.put(
      ndAs === "stop" && stop.trim()
        ? {
            ask: "expose",
            known: { ...cameraQuestion(), f_number: stop },
            solve: "illuminance_lx",
          }
        : null,
    );
    const goal =
      ndAs === "stop"
        ? { wanted_lx: this.light.answer?.illuminance_lx }
        : { [`wanted_${unit}`]: wanted.trim() || undefined };
    const lit = Object.values(goal)[0] !== undefined ? goal : {};
    this.hold.put(holdQuestion(this.location, named, names, this.day, lit));
    const { kit } = /** @type {{kit?: string[]}} */ (terms());
    const stock = kit ? { kit } : {};
    this.nd.put(
      measured.trim() && Object.values(goal)[0] !== undefined
        ? {
            ask: "windows",
            nd: { [`measured_${unit}`]: measured, ...goal, gel_stops: this.colourLoss, ...stock },
          }
        : null,
    );
  }

  get pack() {
    const { answer } = this.fix;
    return answer && answer.verdict !== "holds" ? answer.packs[0] : undefined;
  }

  /** What the colour takes, in stops, as the kernel said; 0 where it is not known. */
  get colourLoss() {
    return this.pack?.stops_lost ?? 0;
  }

  /** @param {string} from */
  takeFrom(from) {
    this.type({ from });
    const level = this.source?.reading.data[`illuminance_${settings.get("illuminance")}`];
    if (level) this.type({ measured: String(level) });
  }

  /** The problem of line `i`, which may have moved up past empty ones. @param {number} i */
  problemIn(i) {
    const asked = this.typed.windows.slice(0, i).filter(typedIn).length;
    return (/** @type {string} */ name) => this.plan.problemAt(`windows.${asked}.${name}`);
  }

  /**
   * @param {Row} row
   * @param {number} i
   * @param {(fields: Row) => void} change
   */
  renderRow(row, i, change) {
    const problemAt = this.problemIn(i);
    const number = (/** @type {string} */ name, /** @type {string} */ label) =>
      textField({
        id: `windows-${i}-${name}`,
        label,
        number: true,
        value: String(row[name] ?? "1"),
        problem: problemAt(name),
        onInput: (value) => change({ [name]: value }),
      });
    return html`
      ${textField({
        id: `windows-${i}-name`,
        label: t("windows.name"),
        value: row.name ?? "",
        onInput: (name) => change({ name }),
      })}
      <div class="pair">
        ${lengthField({
          id: `windows-${i}-width`,
          label: t("windows.width"),
          name: "width",
          data: row,
          problemAt,
          onInput: change,
        })}
        ${lengthField({
          id: `windows-${i}-height`,
          label: t("windows.height"),
          name: "height",
          data: row,
          problemAt,
          onInput: change,
        })}
      </div>
      <div class="pair">
        ${number("count", t("windows.count"))} ${number("panes_across", t("windows.panesAcross"))}
        ${number("panes_down", t("windows.panesDown"))}
      </div>
      ${this.renderOwn(row, i, change)}
    `;
  }

  /**
   * What tells these windows from the others: where they look, whose readings, their own gel.
   * @param {Row} row
   * @param {number} i
   * @param {(fields: Row) => void} change
   */
  renderOwn(row, i, change) {
    const asked = this.typed.windows.slice(0, i).filter(typedIn).length;
    const text = (/** @type {string} */ name, /** @type {string} */ label) =>
      textField({
        id: `windows-${i}-${name}`,
        label,
        unit: "°",
        value: String(row[name] ?? ""),
        problem: this.hold.problemAt(`windows.${asked}.${name}`),
        onInput: (value) => change({ [name]: value }),
      });
    const lights = this.lights.filter(({ light }) => light.data.lamp === "daylight");
    return html`<details class="more" ?open=${Boolean(row.facing_deg || row.light || row.gels)}>
      <summary>${t("hold.own")}</summary>
      <div class="pair">
        ${text("facing_deg", t("sun.facing"))} ${text("horizon_deg", t("sun.horizon"))}
      </div>
      ${choice({
        id: `windows-${i}-light`,
        label: t("hold.light"),
        value: row.light ?? "",
        options: [
          { value: "", label: t("hold.anyLight") },
          ...lights.map(({ light }) => ({ value: light.id, label: light.data.name })),
        ],
        onChange: (light) => change({ light: light || null }),
      })}
      ${segments({
        name: `windows-${i}-hangs`,
        legend: t("hold.hangs"),
        value: row.gels ? "own" : "all",
        options: { all: t("hold.asAll"), own: t("hold.asOwn") },
        onChange: (way) => change({ gels: way === "own" ? [...this.typed.gels] : undefined }),
      })}
      ${
        row.gels
          ? html`${gelPicker({
              id: `windows-${i}-gels`,
              label: t("hold.ownGel", { name: row.name || t("windows.nth", { n: i + 1 }) }),
              value: row.gels,
              problem: this.hold.problemAt(`windows.${asked}.gels.0`),
              onChange: (names) => change({ gels: names }),
            })}
            ${fetchNote(row.gels)}`
          : nothing
      }
    </details>`;
  }

  /** Hang something of its own on the nth window in use. @param {number} nth @param {string[]} names */
  hangOn(nth, names) {
    const { windows } = this.typed;
    const at = windows.flatMap((row, i) => (typedIn(row) ? [i] : []))[nth];
    this.type({ windows: windows.map((row, i) => (i === at ? { ...row, gels: names } : row)) });
  }

  renderDay() {
    return html`<section aria-busy=${this.hold.waiting}>
      <h2>${t("hold.title")}</h2>
      ${windowDay({
        day: this.day,
        answer: this.hold.answer,
        windows: this.named,
        onTime: (fields) => this.type(fields),
        onHang: (nth, names) => this.hangOn(nth, names),
      })}
      ${problemNote(this.hold.problemBeside(/^windows\.\d+\.(facing|horizon|gels)/))}
    </section>`;
  }

  renderGel() {
    const { typed, pack } = this;
    const name = this.source?.light.data.name ?? "";
    return html`<section class="no-print">
      <h2>${t("windows.gel")}</h2>
      ${gelPicker({
        id: "windows-gels",
        label: t("windows.gel"),
        value: typed.gels,
        onChange: (names) => this.type({ gels: names }),
      })}
      ${fetchNote(typed.gels)}
      ${choice({
        id: "windows-from",
        label: t("windows.from"),
        value: typed.from,
        options: [
          { value: "", label: t("windows.fromNone") },
          ...this.lights.map(({ light }) => ({ value: light.id, label: light.data.name })),
        ],
        onChange: (from) => this.takeFrom(from),
      })}
      ${
        this.fix.answer && !pack
          ? html`<p class="reason">${t("windows.fromHolds", { name })}</p>`
          : nothing
      }
      ${
        pack
          ? html`<p class="reason">
                ${t("windows.fromAt", { name, pack: packWords(pack), stops: stops(pack.stops_lost) })}
              </p>
              <div class="actions">
                <button type="button" @click=${() => this.type({ gels: pack.gels })}>
                  ${t("windows.hang", { gels: packWords(pack) })}
                </button>
              </div>`
          : nothing
      }
      ${problemNote(this.fix.problem?.message)} ${this.renderNd()}
    </section>`;
  }

  renderNd() {
    const { typed } = this;
    const unit = settings.get("illuminance");
    const nd = this.nd.answer?.nd;
    const problemAt = (/** @type {string} */ name) => this.nd.problemAt(`nd.${name}`);
    const fresh = nd?.gels.filter((/** @type {string} */ gel) => !typed.gels.includes(gel)) ?? [];
    return html`<details class="more">
      <summary>${t("windows.nd")}</summary>
      ${textField({
        id: "windows-measured",
        label: t("windows.measured"),
        unit,
        number: true,
        value: typed.measured,
        problem: problemAt(`measured_${unit}`),
        onInput: (measured) => this.type({ measured }),
      })}
      ${segments({
        name: "windows-nd-as",
        legend: t("windows.ndAs"),
        value: typed.ndAs,
        options: { level: t("windows.ndLevel"), stop: t("windows.ndStop") },
        onChange: (ndAs) => this.type({ ndAs: /** @type {"level"} */ (ndAs) }),
      })}
      ${
        typed.ndAs === "level"
          ? textField({
              id: "windows-wanted",
              label: t("windows.wanted"),
              unit,
              number: true,
              value: typed.wanted,
              problem: problemAt(`wanted_${unit}`),
              onInput: (wanted) => this.type({ wanted }),
            })
          : textField({
              id: "windows-stop",
              label: t("exposure.stop"),
              hint: t("exposure.stopHint"),
              value: typed.stop,
              problem: this.light.problem?.message,
              onInput: (stop) => this.type({ stop }),
            })
      }
      ${
        nd
          ? html`<p class="change" data-testid="nd-answer">
                ${t("windows.ndAnswer", { words: nd.words, stops: stops(this.colourLoss) })}
              </p>
              ${fetchNote(nd.fetch)}
              ${
                fresh.length
                  ? html`<div class="actions">
                      <button
                        type="button"
                        @click=${() => this.type({ gels: [...typed.gels, ...fresh] })}
                      >
                        ${t("windows.ndAdd", { gels: fresh.join(" + ") })}
                      </button>
                    </div>`
                  : nothing
              }`
          : nothing
      }
    </details>`;
  }

  renderCutting() {
    const order = settings.get("order");
    return html`<details class="more no-print">
      <summary>${t("windows.cutting")}</summary>
      ${segments({
        name: "windows-direction",
        legend: t("windows.direction"),
        value: this.typed.direction,
        options: optionsOf(DIRECTIONS, (one) => t(`windows.${one}`)),
        onChange: (direction) => this.type({ direction: /** @type {"any"} */ (direction) }),
      })}
      ${lengthField({
        id: "windows-overlap",
        label: t("windows.overlap"),
        name: "overlap",
        data: order.overlap,
        problemAt: (name) => this.plan.problemAt(name),
        onInput: (overlap) => settings.set("order", { ...order, overlap }).catch(reportFault),
      })}
      <p class="links"><a href="#rolls">${t("windows.rolls")}</a></p>
    </details>`;
  }

  /** @param {any} plan @returns {string[]} */
  facts(plan) {
    return [
      plan.alike && plan.layers > 1 ? t("windows.layers", { n: plan.layers }) : "",
      plan.bound ? t("windows.bound", { words: plan.bound.words }) : "",
      t("windows.waste", {
        percent: percent(plan.waste.percent / 100),
        area: area(plan.waste.area_m2),
      }),
    ].filter(Boolean);
  }

  /** @param {any} plan */
  cutLines(plan) {
    return plan.cuts.map((/** @type {any} */ cut) =>
      [t("windows.cut", { n: cut.count, size: cut.words, name: cut.name }), gelsOf(plan, cut)]
        .filter(Boolean)
        .join(": "),
    );
  }

  /** @param {any} plan */
  async share(plan) {
    const title = t("windows.shareTitle", { name: this.location?.data.name });
    const hang =
      plan.alike && plan.gels.length ? [t("windows.hang", { gels: plan.gels.join(" + ") })] : [];
    const text = [title, ...hang, plan.words, ...this.facts(plan), "", ...this.cutLines(plan), ""]
      .concat(plan.cautions)
      .join("\n");
    await shareText(title, text);
  }

  /** @param {any} plan */
  renderPlan(plan) {
    return html`
      <p class="headline small" data-testid="headline">${plan.words}</p>
      ${plan.alike && plan.gels.length ? html`<p class="change">${t("windows.hang", { gels: plan.gels.join(" + ") })}</p>` : nothing}
      <p class="reason">${this.facts(plan).join(" ")}</p>
      ${warningList(plan.warnings)}
      <details class="more">
        <summary>${t("windows.cuts")}</summary>
        <ul>
          ${this.cutLines(plan).map((/** @type {string} */ line) => html`<li>${line}</li>`)}
        </ul>
      </details>
      <details class="more">
        <summary>${t("windows.plan")}</summary>
        ${plan.rolls.length ? cutPlan(plan) : nothing}
      </details>
      <div class="actions">
        <button type="button" class="quiet" @click=${() => window.print()}>
          ${t("report.print")}
        </button>
        <button type="button" ?disabled=${this.plan.waiting} @click=${() => this.share(plan)}>
          ${t("windows.share")}
        </button>
      </div>
    `;
  }

  render() {
    const { location, typed } = this;
    if (!location) return this.renderGone(t("location.windows"));
    const { answer, problem } = this.plan;
    return html`
      <h1>${t("windows.title", { name: location.data.name })}</h1>
      <p class="links">
        <a href="#book">${t("back.book")}</a> <a href="#order/location">${t("order.title")}</a>
      </p>
      <section class="answer small" aria-busy=${this.plan.waiting} aria-label=${t("windows.answer")}>
        <ek-boot-progress></ek-boot-progress>
        ${answer ? this.renderPlan(answer) : nothing} ${problemNote(this.plan.problemBeside(/^(windows\.\d|overlap)/))}
        ${answer || problem ? nothing : html`<p class="hint">${t("windows.empty")}</p>`}
      </section>
      <section class="no-print">
        <h2>${t("location.windows")}</h2>
        ${rows({
          rows: typed.windows,
          addLabel: t("windows.add"),
          blank: {},
          removeLabel: (row, i) =>
            t("windows.remove", { name: row.name || t("windows.nth", { n: i + 1 }) }),
          show: (row, i, change) => this.renderRow(row, i, change),
          onChange: (windows) => this.type({ windows: windows.length ? windows : [{}] }),
        })}
        <p class="hint">${t("windows.panesHint")}</p>
      </section>
      ${this.renderDay()}
      ${this.renderGel()} ${this.renderCutting()}
      ${answer ? html`<ul class="cautions">${answer.cautions.map((/** @type {string} */ one) => html`<li class="caution">${one}</li>`)}</ul>` : nothing}
      ${this.renderKeep(t("windows.keep"))}
    `;
  }
}
customElements.define("ek-windows", WindowsView);
