/** A setup, a location or a production on paper: the browser prints it or saves it as PDF. */
import { html, nothing } from "lit";
import { guard } from "lit/directives/guard.js";
import { balanceField } from "../../charts/balance-field.js";
import { figureTable } from "../../charts/figures.js";
import { patch } from "../../charts/patch.js";
import { sketch } from "../../charts/sketch.js";
import "../../parts/boot-progress.js";
import { Page } from "../../base/page.js";
import { properties } from "../../base/properties.js";
import { Watch } from "../../base/watch.js";
import { stamp } from "../../clock.js";
import { longWork, stoppedNote } from "../../parts/long-work.js";
import { meantLine } from "../../parts/meant-words.js";
import { verdictMark } from "../../parts/verdict.js";
import { problemNote } from "../../parts/warnings.js";
import { book, reportFault, settings } from "../../store/index.js";
import { withOwnGels } from "../../store/kit/own-gels.js";
import { cameraWords } from "../../store/questions/camera.js";
import { bookQuestion } from "../../store/questions/reading.js";
import { t, tMaybe } from "../../words/index.js";
import { isolated, joined, listed } from "../../words/isolated.js";
import {
  coordinate,
  dateTime,
  duv,
  illuminance,
  kelvin,
  nanometres,
  positionWords,
  steps,
  whenRead,
} from "../../words/numbers.js";
import { dialledWords, whiteOf } from "../../words/reading.js";
import { surfaceSheet, surfacesOf } from "./surface-sheet.js";
import { placeLines, stopsOf } from "./surroundings.js";
import { heldLines, windowsHeld } from "./window-day.js";

/** So many readings, or the next setup if it has more, are drawn at a time. */
const TOGETHER = 200;

/** @param {any} setup of the report, whole or in outline */
const readingsOf = ({ slips, readings }) =>
  slips
    ? slips.reduce(
        (/** @type {number} */ n, /** @type {any} */ slip) => n + slip.readings.length,
        0,
      )
    : readings;

class ReportView extends Page {
  static properties = properties({
    given: ["id"],
    own: ["shown", "told", "report", "fields", "around", "held", "problem", "stopped"],
  });

  constructor() {
    super();
    this.id = "";
    /** @type {any} the kernel's "report" */
    this.report = null;
    /** The kernel's "field" of each setup, by its id. @type {Record<string, any>} */
    this.fields = {};
    /**
     * Stops, place and surfaces of each setup.
     * @type {Record<string, {stops: (string | null)[], lines: string[],
     *   surfaces: Awaited<ReturnType<typeof surfacesOf>>}>}
     */
    this.around = {};
    /**
     * How long the gel of the windows of each location holds; null where nothing tells it.
     * @type {Record<string, import("./window-day.js").Held | null>}
     */
    this.held = {};
    this.problem = "";
    this.asked = "";
    /** Whether the person gave it up before all was told. */
    this.stopped = false;
    /** How many of the setups are on the screen, and of how many all around is told. */
    this.shown = 0;
    this.told = 0;
    this.watch = new Watch(this, book, settings);
  }

  willUpdate() {
    const set = [settings.get("tolerance"), settings.get("camera"), settings.get("say")];
    const asked = `${this.id} ${book.version} ${JSON.stringify(set)}`;
    if (asked === this.asked || !book.thing(this.id)) return;
    this.asked = asked;
    this.stopped = false;
    this.make(asked).catch(reportFault);
  }

  /** @param {string} asked */
  async make(asked) {
    const tolerance = settings.get("tolerance");
    const report = await this.askHere({
      ask: "report",
      book: bookQuestion(this.id),
      of: this.id,
      tolerance,
      most: TOGETHER,
    });
    if (asked !== this.asked) return;
    this.problem = report.problem?.message ?? "";
    this.report = report.problem ? null : report;
    this.told = 0;
    this.held = {};
    this.shown = this.partAfter(0);
    await this.tellMore(asked);
  }

  /** The white of the last setup of a location that is told of here. @param {string} location */
  whiteOf(location) {
    const told = this.report.setups.filter(
      (/** @type {any} */ { id, target }) => target && book.thing(id)?.parent === location,
    );
    return told
      .sort((/** @type {any} */ a, /** @type {any} */ b) =>
        String(a.last).localeCompare(String(b.last)),
      )
      .at(-1)?.target;
  }

  /** What is not told yet is not told; what stands on the sheet stays. */
  stop() {
    this.stopAsking();
    this.stopped = true;
  }

  /** Tell the rest after all. */
  again() {
    this.stopped = false;
    if (this.report) this.tellMore(this.asked).catch(reportFault);
    else this.make(this.asked).catch(reportFault);
  }

  /** What stands around the setups on the screen. @param {string} asked */
  async tellMore(asked) {
    const ask = this.askHere.bind(this);
    while (this.report && this.told < this.shown) {
      const setup = this.report.setups[this.told];
      const around = {
        stops: await stopsOf(ask, setup),
        lines: await placeLines(ask, setup),
        surfaces: await surfacesOf(ask, setup.id),
      };
      const field = setup.field && (await ask({ ...setup.field, ...withOwnGels() }));
      if (asked !== this.asked || this.stopped) return;
      this.told += 1;
      this.around = { ...this.around, [setup.id]: around };
      if (field && !field.problem) this.fields = { ...this.fields, [setup.id]: field };
    }
    for (const { id } of this.report?.windows ?? []) {
      if (id in this.held) continue;
      const held = await windowsHeld(ask, id, this.whiteOf(id));
      if (asked !== this.asked || this.stopped) return;
      this.held = { ...this.held, [id]: held };
    }
  }

  /** How many setups are shown with the next part. @param {number} from */
  partAfter(from) {
    const { setups } = this.report ?? { setups: [] };
    let to = from;
    for (let room = TOGETHER; to < setups.length && (to === from || room > 0); to += 1) {
      room -= readingsOf(setups[to]);
    }
    return to;
  }

  /**
   * Of the setups after the first, the report of a long book says only what they are called; they
   * are reported on one by one, when they are to be shown.
   * @param {number} to
   */
  async fetchUpTo(to) {
    for (let at = this.shown; at < to; at += 1) {
      const { id, slips } = this.report.setups[at];
      if (slips) continue;
      const tolerance = settings.get("tolerance");
      const { tell_apart } = this.report;
      const book = bookQuestion(id);
      const whole = await this.askHere({ ask: "report", book, of: id, tolerance, tell_apart });
      if (whole.problem) throw new Error(whole.problem.message);
      this.report.setups[at] = whole.setups[0];
    }
  }

  /** @param {number} most setups */
  async showMore(most) {
    const { asked } = this;
    // Part by part, so that the screen stays alive under a long report.
    while (this.asked === asked && this.shown < most && !this.stopped) {
      const next = this.partAfter(this.shown);
      await this.fetchUpTo(next);
      if (this.asked === asked) this.shown = next;
      await this.updateComplete;
    }
    await this.tellMore(asked);
  }

  /** @param {any} reading */
  renderReading(reading) {
    const unit = settings.get("illuminance");
    const more = [
      reading.dimmer,
      dialledWords(reading.dialled),
      reading.place,
      reading.position && positionWords(reading.position),
      reading.note,
      reading.who,
      reading.edited_twice ? t("book.twice") : "",
    ].filter(Boolean);
    const gel = joined(reading.pack, " + ");
    return html`<tr>
        <th scope="row">
          ${whenRead(reading.at)}
          <span class="hint">${tMaybe(`stage.${reading.stage}`, "")}</span>
        </th>
        <td>${kelvin(reading.cct_K)}</td>
        <td>${duv(reading.duv)}</td>
        <td>${coordinate(reading.x)} ${coordinate(reading.y)}</td>
        <td>
          ${reading.exposure_lx_s ? `${reading.exposure_lx_s} lx·s` : illuminance(reading, unit)}
        </td>
      </tr>
      ${
        gel || more.length
          ? html`<tr class="beside">
              <td colspan="5">${joined([gel || t("report.noGel"), ...more])}</td>
            </tr>`
          : nothing
      }`;
  }

  /** @param {any} slip @param {number} index @param {string | null | undefined} stop */
  renderSlip(slip, index, stop) {
    const photos = slip.readings.filter((/** @type {any} */ reading) => reading.photo);
    // Where large letters push the table over the edge, it is scrolled by keyboard too.
    return html`<section class="slip" role="group" tabindex="0" aria-label=${slip.name}>
      <header>
        <span class="ordinal" aria-hidden="true">${index + 1}</span>
        <h3>${slip.name}</h3>
        ${patch([slip.grey])}
        ${slip.hero ? html`<span class="tag">${t("slip.hero")}</span>` : nothing}
        ${slip.verdict || slip.meant ? verdictMark(slip.verdict) : nothing}
      </header>
      <p>
        ${tMaybe(`lamp.${slip.lamp}`, slip.lamp)}${slip.role ? ` · ${isolated(slip.role)}` : ""} ·
        ${slip.hangs.length ? t("report.hangs", { pack: joined(slip.hangs, " + ") }) : t("report.noGel")}
      </p>
      ${meantLine(slip.meant)}
      ${
        slip.offset
          ? html`<p>
              ${slip.offset.words} (${steps(slip.offset.steps)})${
                slip.hero || !slip.ratio_words
                  ? ""
                  : ` · ${t("report.toHero", { ratio: slip.ratio_words })}`
              }
            </p>`
          : nothing
      }
      ${
        stop
          ? html`<p>
              ${stop}
              ${t("camera.at", { camera: cameraWords({ flash: slip.readings.at(-1)?.exposure_lx_s }) })}
            </p>`
          : nothing
      }
      ${slip.note ? html`<p>${slip.note}</p>` : nothing}
      <table class="compare">
        <thead>
          <tr>
            <th scope="col">${t("since.when")}</th>
            <th scope="col">CCT</th>
            <th scope="col">Duv</th>
            <th scope="col">x y</th>
            <th scope="col">${t("report.exposure")}</th>
          </tr>
        </thead>
        <tbody>
          ${slip.readings.map((/** @type {any} */ reading) => this.renderReading(reading))}
        </tbody>
      </table>
      ${photos.map(
        (/** @type {any} */ reading) => html`<figure class="photo">
          <img src=${reading.photo} alt=${t("photo.alt")} />
          <figcaption>${whenRead(reading.at)}</figcaption>
        </figure>`,
      )}
    </section>`;
  }

  /** @param {any} setup */
  renderSetup(setup) {
    const field = this.fields[setup.id];
    const around = this.around[setup.id];
    // Of a setup alone, the head of the sheet has said its name, place and note.
    const alone = setup.id === this.id;
    const span = setup.first
      ? t("since.span", { from: dateTime(setup.first), to: dateTime(setup.last) })
      : "";
    return html`<article class="sheet-setup">
      <h2>${alone ? t("report.lights") : setup.name}</h2>
      <p>${joined([...(alone ? [] : setup.path), span])}</p>
      ${setup.note && !alone ? html`<p>${setup.note}</p>` : nothing}
      <p>
        ${t("reading.target")}:
        <strong>${setup.target ? whiteOf(setup.target) : "–"}</strong>
        <span class="hint">${setup.target_words}</span>
      </p>
      ${around?.lines.map((line) => html`<p>${line}</p>`) ?? nothing}
      ${field ? balanceField(field, { title: t("field.titleSet") }) : nothing}
      ${setup.slips.map((/** @type {any} */ slip, /** @type {number} */ i) => this.renderSlip(slip, i, around?.stops[i]))}
      ${setup.slips.length ? nothing : html`<p>${t("book.noLights")}</p>`}
      ${around?.surfaces.map(surfaceSheet) ?? nothing}
      ${setup.spectra.map(
        (/** @type {any} */ spectrum) => html`<figure class="spectrum">
          <figcaption>
            ${t("report.spectrum", {
              name: spectrum.name,
              when: whenRead(spectrum.at),
              from: nanometres(spectrum.wavelengths_nm[0]),
              to: nanometres(spectrum.wavelengths_nm.at(-1)),
            })}
          </figcaption>
          ${sketch(spectrum, t("files.sketch", { name: spectrum.name }))}
        </figure>`,
      )}
    </article>`;
  }

  renderRest() {
    const { shown } = this;
    const all = this.report.setups.length;
    if (shown >= all) return nothing;
    const show = (/** @type {number} */ most) => () => this.showMore(most).catch(reportFault);
    return html`<p role="status">${t("report.part", { shown, n: all })}</p>
      <div class="actions no-print">
        <button type="button" class="quiet" @click=${show(all)}>
          ${t("report.all", { n: all })}
        </button>
        <button type="button" @click=${show(shown + 1)}>
          ${t("report.more", { n: this.partAfter(shown) - shown })}
        </button>
      </div>`;
  }

  renderSheet() {
    const { report } = this;
    const unit = settings.get("illuminance");
    return html`<div class="sheet">
      <h1>${report.name}</h1>
      <p>${joined(report.path)}</p>
      ${report.note ? html`<p>${report.note}</p>` : nothing}
      <p>
        ${[report.place, report.mains_hz ? t("report.mains", { hz: report.mains_hz }) : ""]
          .filter(Boolean)
          .join(" · ")}
      </p>
      ${report.setups
        .slice(0, this.shown)
        .map((/** @type {any} */ setup) =>
          guard([setup, this.fields[setup.id], this.around[setup.id], unit], () =>
            this.renderSetup(setup),
          ),
        )}
      ${this.renderRest()}
      ${
        report.gels.length
          ? html`<section>
              <h2>${t("report.gels")}</h2>
              ${figureTable(
                "",
                [t("report.gel"), t("report.pieces"), t("report.on")],
                report.gels.map((/** @type {any} */ gel) => [
                  html`${gel.name}
                    ${gel.measured ? html`<span class="hint">${t("report.measured")}</span>` : nothing}`,
                  gel.pieces,
                  listed(gel.lights),
                ]),
              )}
            </section>`
          : nothing
      }
      ${report.windows.map(
        (/** @type {any} */ place) => html`<section>
          <h2>${t("report.windows", { name: place.location })}</h2>
          ${place.gels.length ? html`<p>${t("report.hangs", { pack: joined(place.gels, " + ") })}</p>` : nothing}
          <ul class="plain">
            ${place.lines.map((/** @type {string} */ line) => html`<li>${line}</li>`)}
          </ul>
          ${this.held[place.id] ? heldLines(/** @type {any} */ (this.held[place.id])) : nothing}
        </section>`,
      )}
      <section>
        <h2>${t("cautions.title")}</h2>
        <ul class="plain">
          ${report.cautions.map((/** @type {string} */ words) => html`<li>${words}</li>`)}
        </ul>
      </section>
      <p class="hint hash">
        ${t("report.made", { when: dateTime(stamp()), steps: steps(report.tolerance.steps) })}
        ${t("copy.hash", { n: report.book.count, hash: report.book.sha256.slice(0, 12) })}
      </p>
    </div>`;
  }

  renderProgress() {
    const { report, told, shown, problem } = this;
    const stop = () => this.stop();
    if (!report) return problem ? nothing : longWork(t("report.making"), stop);
    return told < shown
      ? longWork(t("report.progress", { done: told, n: shown }), stop, told / shown)
      : nothing;
  }

  render() {
    const thing = book.standing(this.id);
    if (!thing) return html`<h1>${t("report.title")}</h1><p class="empty">${t("book.gone")}</p>`;
    return html`
      <div class="no-print">
        <p class="hint">${t("report.words")}</p>
        <ek-boot-progress></ek-boot-progress>
        ${problemNote(this.problem || undefined)}
        ${this.stopped ? stoppedNote(() => this.again()) : this.renderProgress()}
        <div class="actions">
          <button
            type="button"
            class="main"
            ?disabled=${!this.report}
            @click=${() => window.print()}
          >
            ${t("report.print")}
          </button>
        </div>
      </div>
      ${
        this.report
          ? this.renderSheet()
          : html`<h1>${t("report.title")}: ${thing.data.name}</h1>
              ${this.problem || this.stopped ? nothing : html`<p role="status" aria-busy="true">${t("report.making")}</p>`}`
      }
    `;
  }
}
customElements.define("ek-report", ReportView);
