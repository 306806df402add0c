/** One reading of the book: all that was logged, its earlier versions, and a way to mend it. */
import { html, nothing } from "lit";
import { LiveQuestion } from "../../base/live-question.js";
import { Page } from "../../base/page.js";
import { properties } from "../../base/properties.js";
import { Watch } from "../../base/watch.js";
import { patch } from "../../charts/patch.js";
import { gelPicker } from "../../parts/gel-picker.js";
import { choice, textField } from "../../parts/inputs.js";
import { LAMPS } from "../../parts/lamp-kinds.js";
import { logFields } from "../../parts/log-fields.js";
import { say } from "../../parts/toast.js";
import { verdictMark } from "../../parts/verdict.js";
import { assumed, problemNote, warningList } from "../../parts/warnings.js";
import { book, drafts, reportFault, settings } from "../../store/index.js";
import { gels } from "../../store/kit/gels.js";
import { gelsOn, tie } from "../../store/log/measured-gels.js";
import { verdicts } from "../../store/log/search.js";
import { readingQuestion } from "../../store/questions/reading.js";
import { t, tMaybe } from "../../words/index.js";
import { joined } from "../../words/isolated.js";
import {
  asTyped,
  coordinate,
  dateTime,
  duv,
  illuminance,
  kelvin,
  positionWords,
} from "../../words/numbers.js";
import { dialledWords, readingWords, whiteOf } from "../../words/reading.js";
import { deleteThing, versions } from "./versions.js";

const NUMBERS = /** @type {const} */ ([
  "x",
  "y",
  "cct_K",
  "duv",
  "cct_mired",
  "tint_cc",
  "tint_cuts",
  "illuminance_lx",
  "illuminance_fc",
  "exposure_lx_s",
  "flash_f_number",
  "flash_iso",
]);

const STAGES = /** @type {const} */ (["bare", "gelled", "re-checked", "repeat"]);

/** @typedef {import("../../store/log/book.js").Thing} Thing */

class ReadingView extends Page {
  static properties = properties({ given: ["id"], own: ["edited"] });

  constructor() {
    super();
    this.id = "";
    /** What is being changed; null while it is only read. @type {Record<string, any> | null} */
    this.edited = null;
    this.white = /** @type {LiveQuestion<"describe">} */ (new LiveQuestion(this));
    this.watch = new Watch(this, book, settings, gels, verdicts);
  }

  get form() {
    return `reading ${this.id}`;
  }

  async connectedCallback() {
    super.connectedCallback();
    // A half-done change outlives a killed tab.
    const kept = await drafts.load(this.form).catch(reportFault);
    if (kept) this.edited = kept;
  }

  /** @param {Record<string, any> | null} edited */
  change(edited) {
    this.edited = edited;
    drafts.save(this.form, edited ?? undefined).catch(reportFault);
  }

  willUpdate() {
    const reading = book.thing(this.id);
    const data = this.edited ?? reading?.data;
    this.white.put(data ? { ask: "describe", reading: readingQuestion(data) } : null);
  }

  updated() {
    const reading = book.standing(this.id);
    if (reading) verdicts.want([reading]).catch(reportFault);
  }

  async save() {
    const { edited } = this;
    if (!edited) return;
    const kept = Object.fromEntries(
      Object.entries(edited).filter(([, value]) => value !== "" && value !== null),
    );
    /** @type {import("../../store/log/entries.js").Entry[]} */
    const made = [];
    const { names, ids } = tie(kept.pack ?? [], made);
    if (made.length) await book.add(...made);
    await book.replace(this.id, { ...kept, pack: names, ...(ids.length ? { gel_ids: ids } : {}) });
    this.change(null);
    say(t("reading.changed"));
  }

  /** What it read and how a grey card looks in it, before all else. @param {Thing} reading */
  renderChief(reading) {
    const known = verdicts.whiteOf(reading);
    if (known?.cct_K == null) return nothing;
    return html`<div class="head">
      <p class="headline" data-testid="headline">${kelvin(known.cct_K)}</p>
      ${patch([known.grey])}
      ${known.verdict ? verdictMark(/** @type {"out"} */ (known.verdict)) : nothing}
    </div>`;
  }

  /** @param {Thing} reading */
  renderFacts(reading) {
    const { data } = reading;
    // While it is changed a gel goes by its label alone.
    const { gel_ids: _ids, ...rest } = data;
    const { answer, problem } = this.white;
    const unit = settings.get("illuminance");
    const facts = [
      [t("reading.taken"), dateTime(reading.at)],
      [t("answer.reads"), readingWords(data)],
      answer && [t("reading.is"), `${kelvin(answer.cct_K)}, Duv ${duv(answer.duv)}`],
      answer && ["x y", `${coordinate(answer.x)} ${coordinate(answer.y)}`],
      answer?.illuminance_lx && [t("light.illuminance"), illuminance(answer, unit)],
      [t("light.lamp"), tMaybe(`lamp.${data.lamp}`, data.lamp ?? "–")],
      [t("reading.stage"), tMaybe(`stage.${data.stage}`, "–")],
      data.pack?.length && [t("reading.gels"), joined(gelsOn(data), " + ")],
      data.dimmer && [t("log.dimmer"), data.dimmer],
      data.dialled && [t("log.dialled"), dialledWords(data.dialled)],
      data.target && [t("reading.target"), whiteOf(data.target)],
      data.place && [t("log.place"), data.place],
      data.position && [t("position.title"), positionWords(data.position)],
      data.note && [t("log.note"), html`<span class="note">${data.note}</span>`],
      data.integration_s && [t("reading.integration"), `${asTyped(String(data.integration_s))} s`],
      reading.heads[0].who && [t("log.who"), reading.heads[0].who],
    ].filter(Boolean);
    return html`
      <dl class="facts">
        ${facts.map(([label, words]) => html`<dt>${label}</dt><dd>${words}</dd>`)}
      </dl>
      ${data.follows ? html`<p class="hint">${t("reading.clockWords")}</p>` : nothing}
      ${assumed(answer)} ${warningList(answer?.warnings)} ${problemNote(problem?.message)}
      ${
        data.spectrum
          ? html`<p class="links"><a href="#spectrum/${reading.id}">${t("spectrum.see")}</a></p>`
          : nothing
      }
      ${
        data.photo
          ? html`<figure class="photo"><img src=${data.photo} alt=${t("photo.alt")} /></figure>`
          : nothing
      }
      <div class="actions">
        <button
          type="button"
          class="quiet"
          @click=${() => deleteThing(reading).catch(reportFault)}
        >
          ${t("book.delete")}
        </button>
        <button type="button" class="main" @click=${() => this.change({ ...rest, pack: gelsOn(data) })}>
          ${t("reading.change")}
        </button>
      </div>
    `;
  }

  renderForm(/** @type {Record<string, any>} */ edited) {
    const set = (/** @type {Record<string, any>} */ some) => this.change({ ...edited, ...some });
    const shown = NUMBERS.filter((name) => edited[name] !== undefined);
    // Dial keeps the colour that a lamp was set to; a display's own words are text.
    const ofColour = typeof edited.dialled === "object" && edited.dialled !== null;
    return html`<form
      @submit=${(/** @type {Event} */ event) => {
        event.preventDefault();
        this.save().catch(reportFault);
      }}
    >
      <div class="pair">
        ${shown.slice(0, 2).map((name) => this.renderNumber(name, edited, set))}
      </div>
      ${shown.slice(2).map((name) => this.renderNumber(name, edited, set))}
      ${choice({
        id: "edit-lamp",
        label: t("light.lamp"),
        value: edited.lamp ?? "unknown",
        options: LAMPS.map((lamp) => ({ value: lamp, label: t(`lamp.${lamp}`) })),
        onChange: (lamp) => set({ lamp }),
      })}
      ${choice({
        id: "edit-stage",
        label: t("reading.stage"),
        value: edited.stage ?? "bare",
        options: STAGES.map((stage) => ({ value: stage, label: t(`stage.${stage}`) })),
        onChange: (stage) => set({ stage }),
      })}
      ${gelPicker({
        id: "edit-pack",
        label: t("light.pack"),
        value: edited.pack ?? [],
        onChange: (pack) => set({ pack }),
      })}
      ${logFields({
        id: "edit",
        value: {
          note: edited.note ?? "",
          dialled: ofColour ? null : (edited.dialled ?? ""),
          dimmer: edited.dimmer ?? "",
          place: edited.place ?? "",
          position: edited.position ?? null,
          photo: edited.photo ?? "",
        },
        onChange: set,
      })}
      ${ofColour ? this.renderDialled(edited.dialled, set) : nothing}
      ${problemNote(this.white.problemBeside(NUMBERS.map((name) => `reading.${name}`)))}
      <div class="actions">
        <button type="button" class="quiet" @click=${() => this.change(null)}>
          ${t("cancel")}
        </button>
        <button type="submit" class="main">${t("save")}</button>
      </div>
    </form>`;
  }

  /**
   * @param {typeof NUMBERS[number]} name
   * @param {Record<string, any>} edited
   * @param {(some: Record<string, any>) => void} set
   */
  renderNumber(name, edited, set) {
    return textField({
      id: `edit-${name}`,
      label: t(`edit.${name}`),
      value: String(edited[name] ?? ""),
      number: true,
      problem: this.white.problemAt(`reading.${name}`),
      onInput: (value) => set({ [name]: value }),
    });
  }

  /**
   * @param {Record<string, string>} dialled
   * @param {(some: Record<string, any>) => void} set
   */
  renderDialled(dialled, set) {
    return html`<fieldset>
      <legend>${t("log.dialled")}</legend>
      <div class="pair">
        ${NUMBERS.filter((name) => dialled[name] !== undefined).map((name) =>
          textField({
            id: `edit-dialled-${name}`,
            label: t(`edit.${name}`),
            value: String(dialled[name]),
            number: true,
            onInput: (value) => set({ dialled: { ...dialled, [name]: value } }),
          }),
        )}
      </div>
    </fieldset>`;
  }

  /** @param {Thing} reading */
  renderHistory(reading) {
    const heads = new Set(reading.heads.map((head) => head.id));
    const earlier = book.history(reading.id).filter((entry) => !heads.has(entry.id));
    if (earlier.length === 0) return nothing;
    return html`<details class="more">
      <summary>${t("reading.history", { n: earlier.length })}</summary>
      <ul class="readings">
        ${earlier.reverse().map(
          (entry) => html`<li>
            <span>
              ${entry.gone ? t("book.versionGone") : readingWords(entry.data)}
              <span class="hint"
                >${joined([dateTime(entry.at), entry.who, entry.data.note])}</span
              >
            </span>
            <button
              type="button"
              class="quiet"
              @click=${() => book.replace(reading.id, entry.data).catch(reportFault)}
            >
              ${t("reading.restore")}
            </button>
          </li>`,
        )}
      </ul>
    </details>`;
  }

  render() {
    const reading = book.standing(this.id);
    if (!reading) return html`<h1>${t("place.book")}</h1><p class="empty">${t("book.gone")}</p>`;
    const light = book.thing(reading.parent);
    const setup = book.thing(light?.parent);
    return html`
      <h1>${light?.data.name} ${versions(reading)}</h1>
      <p class="hint">
        <a href="#setup/${setup?.id}">${setup?.data.name}</a> ·
        <a href="#since/${light?.id}">${t("since.title")}</a>
      </p>
      ${
        this.edited
          ? this.renderForm(this.edited)
          : [this.renderChief(reading), this.renderFacts(reading)]
      }
      ${this.renderHistory(reading)}
    `;
  }
}
customElements.define("ek-reading", ReadingView);
