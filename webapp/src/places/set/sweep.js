/** Sweep: a surface read point by point, how even it is, and which lamp makes it so. */
import { html, nothing } from "lit";
import { FormDraft } from "../../base/form-draft.js";
import { LiveQuestion } from "../../base/live-question.js";
import { Page } from "../../base/page.js";
import { properties } from "../../base/properties.js";
import { Watch } from "../../base/watch.js";
import { figures } from "../../charts/figures.js";
import { surfaceMap } from "../../charts/surface-map.js";
import "../../parts/boot-progress.js";
import { choice, segments, textField } from "../../parts/inputs.js";
import { Keeping } from "../../parts/keeping.js";
import { lengthField } from "../../parts/length-field.js";
import { smallPhoto } from "../../parts/photo.js";
import { pickFile } from "../../parts/pick-file.js";
import "../../parts/spoken.js";
import { sayWithUndo } from "../../parts/toast.js";
import { problemNote } from "../../parts/warnings.js";
import { route } from "../../router.js";
import { book, bookRead, drafts, reportFault, settings } from "../../store/index.js";
import { currentSetup, keepSurface, placeWords } from "../../store/log/shoot.js";
import {
  blankSurface,
  cellsOf,
  evenQuestion,
  GRIDS,
  gridOf,
  levelFieldOf,
  readPoints,
  trimQuestion,
  walkOf,
  withoutPoint,
} from "../../store/log/surfaces.js";
import { t } from "../../words/index.js";
import { level, percent, steps, stops } from "../../words/numbers.js";
import { saveFiles } from "./save-files.js";
import { sweepLamps, trimTable } from "./sweep-lamps.js";
import { sweepPad } from "./sweep-pad.js";

/** @typedef {import("../../store/log/surfaces.js").Surface} Surface */

/**
 * What the pad fills: the surface with all lamps on, one lamp, or the surface again.
 * @typedef {"together" | "again" | number} Round
 */

const PHOTO = "photo";

class SweepView extends Page {
  static properties = properties({
    given: ["id"],
    own: ["round", "step", "field", "how", "shown"],
  });

  constructor() {
    super();
    /** The surface of the book; "" = a new one. */
    this.id = "";
    /** @type {Round} */
    this.round = "together";
    /** How far along the walk we are. */
    this.step = 0;
    /** What of a point is typed: x and y come before its level where both are read. */
    /** @type {"x" | "y" | "level"} */
    this.field = "level";
    this.colour = false;
    /** @type {"steady" | "most_even"} */
    this.how = "steady";
    /** What the map shows. @type {"read" | "planned" | "again"} */
    this.shown = "read";
    this.draft = new FormDraft(this, {
      name: () => (this.id ? `sweep/${this.id}` : "sweep"),
      blank: () => this.kept ?? blankSurface(),
      from: (saved) => {
        // The walk goes on where it was left.
        const read = readPoints(saved);
        const left = walkOf(saved).findIndex((i) => !read.includes(i));
        this.step = left < 0 ? saved.points.length : left;
        this.colour ||= saved.points.some(({ x, y }) => x || y);
        this.field = this.first;
        return saved;
      },
    });
    this.keeping = new Keeping(this);
    this.even = /** @type {LiveQuestion<"even">} */ (new LiveQuestion(this));
    this.trim = /** @type {LiveQuestion<"trim">} */ (new LiveQuestion(this));
    this.measured = /** @type {LiveQuestion<"even">} */ (new LiveQuestion(this));
    this.watch = new Watch(this, book, settings);
  }

  connectedCallback() {
    super.connectedCallback();
    // What the book has is known only once it is read.
    bookRead().then(() => {
      if (this.id && !this.draft.typed.name) this.draft.hostConnected();
    });
  }

  /** @returns {Surface | undefined} as the book has it */
  get kept() {
    const thing = book.standing(this.id);
    return thing && /** @type {Surface} */ ({ ...blankSurface(), ...thing.data });
  }

  /** @returns {Surface} */
  get surface() {
    return /** @type {Surface} */ (this.draft.typed);
  }

  get walk() {
    return walkOf(this.surface);
  }

  /** The setup that the surface stands in: a new one is for that which we work in. */
  get setup() {
    return this.id ? book.thing(book.standing(this.id)?.parent) : currentSetup();
  }

  /** What is typed first at a point. @returns {"x" | "level"} */
  get first() {
    return this.round === "together" && this.colour ? "x" : "level";
  }

  /** The point that is typed into, undefined at the end of the walk. */
  get current() {
    return this.walk[this.step];
  }

  willUpdate() {
    const { surface } = this;
    this.even.put(evenQuestion(surface));
    this.trim.put(trimQuestion(surface, this.how));
    this.measured.put(surface.again.length ? evenQuestion(surface, surface.again) : null);
  }

  /** Where the pad writes: the levels of this round, and what they are called. */
  get levels() {
    const { surface, round } = this;
    const field = levelFieldOf(surface);
    if (round === "together") return surface.points.map((point) => String(point[field] ?? ""));
    if (round === "again") return surface.again;
    const lamp = surface.lamps[round];
    return lamp?.points ?? lamp?.without ?? [];
  }

  /** What stands in the pad now. */
  get value() {
    const { current, field, surface } = this;
    if (current === undefined) return "";
    if (field !== "level") return String(surface.points[current][field] ?? "");
    return String(this.levels[current] ?? "");
  }

  /** @param {string} typed */
  write(typed) {
    const { current, field, round, surface } = this;
    if (current === undefined) return;
    const clean = typed.replace(/[^\d.,]/g, "");
    if (round === "together") {
      const name = field === "level" ? levelFieldOf(surface) : field;
      // Four digits of a chromaticity stand behind its point.
      const value = field !== "level" && /^\d{4}$/.test(clean) ? `0.${clean}` : clean;
      const points = surface.points.map((point, i) =>
        i === current ? { ...point, [name]: value } : point,
      );
      this.draft.type({ points });
    } else if (round === "again") {
      this.draft.type({ again: this.#filled(surface.again, current, clean) });
    } else {
      const lamps = surface.lamps.map((lamp, i) => {
        if (i !== round) return lamp;
        const way = lamp.without ? "without" : "points";
        return { ...lamp, [way]: this.#filled(lamp[way] ?? [], current, clean) };
      });
      this.draft.type({ lamps });
    }
    if (this.#full(clean)) this.next();
  }

  /**
   * What a display shows at this point: its level, and its colour where that is read too.
   * @param {Record<string, string>} reading
   * @returns {() => void} the undo
   */
  takeDisplay(reading) {
    const { current, surface, step, field, round } = this;
    const name = levelFieldOf(surface);
    const other = name === "illuminance_lx" ? "illuminance_fc" : "illuminance_lx";
    if (!reading[name] && reading[other]) {
      const units = { other: other.slice(-2), unit: name.slice(-2) };
      throw new Error(t("display.otherUnit", units));
    }
    if (!reading[name]) throw new Error(t("display.noLevel"));
    if (current === undefined) return () => {};
    const values = round === "together" && this.colour ? ["x", "y", "level"] : ["level"];
    for (const each of values) {
      const value = each === "level" ? reading[name] : reading[each];
      if (!value || this.current !== current) break;
      this.field = /** @type {"x" | "y" | "level"} */ (each);
      this.write(value);
      // A number that has all its digits has gone on by itself.
      if (this.current === current && this.field === each) this.next();
    }
    return () => {
      this.draft.type(surface);
      Object.assign(this, { step, field, round });
    };
  }

  /** @param {string[]} levels @param {number} at @param {string} value */
  #filled(levels, at, value) {
    return this.surface.points.map((_, i) => (i === at ? value : (levels[i] ?? "")));
  }

  /**
   * Whether a number has all its digits: four for x and y; for a level as many as the others have,
   * unless it would be far below all of them, as 104 is where 1040 begins.
   * @param {string} typed
   */
  #full(typed) {
    if (this.field !== "level") return /^\d{4}$|^0?[.,]\d{4}$/.test(typed);
    if (/[.,]/.test(typed)) return false;
    const others = this.levels.filter((one, i) => one && i !== this.current);
    if (!others.length || others.some((one) => /[.,]/.test(one))) return false;
    const longest = Math.max(...others.map((one) => one.length));
    const least = Math.min(...others.map(Number));
    return typed.length >= longest && (typed.length > longest || Number(typed) * 3 > least);
  }

  /** On to the next number; at the end of a walk the surface is kept. */
  next() {
    if (this.current === undefined) return;
    if (this.round === "together" && this.colour && this.field !== "level") {
      this.field = this.field === "x" ? "y" : "level";
      return;
    }
    this.field = this.first;
    this.step += 1;
    if (this.current === undefined) {
      if (this.round === "again") this.shown = "again";
      this.round = "together";
      // Of free points nobody knows which is the last.
      if (this.surface.columns || this.id) this.keep().catch(reportFault);
    }
  }

  /** @param {Round} round */
  begin(round) {
    this.round = round;
    this.step = 0;
    this.shown = "read";
    this.field = this.first;
    this.updateComplete.then(() => {
      this.querySelector(".surface")?.scrollIntoView({ block: "start" });
      /** @type {HTMLElement | null} */ (this.querySelector("#sweep-level"))?.focus({
        preventScroll: true,
      });
    });
  }

  /** @param {number} index of a point */
  touch(index) {
    this.step = this.walk.indexOf(index);
    this.field = this.first;
  }

  async keep() {
    const onward = route.onward();
    await this.keeping.run(async () => {
      await bookRead();
      const { surface } = this;
      const name = surface.name.trim() || t("sweep.nth", { n: this.others.length + 1 });
      const id = await keepSurface(this.id, { ...surface, name });
      // What was typed while it was being kept goes on as its draft.
      const typed = this.surface;
      const newer = { ...typed, name: typed.name.trim() || name };
      const later = typed !== surface;
      await Promise.all([
        later && this.id ? undefined : this.draft.clear(newer),
        later ? drafts.save(`sweep/${id}`, newer) : undefined,
      ]);
      if (!this.id) onward("sweep", id);
      return t("sweep.kept", { name });
    });
  }

  /** The surfaces of its setup but this one. */
  get others() {
    const { setup } = this;
    return setup ? book.below(setup.id, "surface").filter(({ id }) => id !== this.id) : [];
  }

  async drop() {
    const onward = route.onward();
    const undo = await book.remove(this.id);
    sayWithUndo(t("book.deleted", { name: this.surface.name }), undo);
    onward("sweep");
  }

  /** The points as a table for a spreadsheet. */
  async table() {
    const entries = book.part(this.id);
    const table = await this.askHere({
      ask: "book_csv",
      book: { format: "evenkelvin-book", version: 2, entries },
      of: this.id,
    });
    if (table.problem) throw new Error(table.problem.message);
    const name = `${this.surface.name}.csv`;
    await saveFiles([{ name, media_type: "text/csv", text: table.text }]);
  }

  /** @param {string} grid "5×3", or a photo */
  regrid(grid) {
    const [columns, rows] = grid.split("×").map(Number);
    this.draft.type(
      grid === PHOTO
        ? { columns: null, rows: null, points: [] }
        : { columns, rows, points: gridOf(columns, rows), photo: undefined },
    );
    this.step = 0;
  }

  /** Put a point where the photo was touched. @param {MouseEvent} event */
  putPoint(event) {
    const { surface } = this;
    // A lamp is read at the points that there are.
    if (surface.columns || !surface.photo || this.round !== "together") return;
    const box = /** @type {Element} */ (event.currentTarget).getBoundingClientRect();
    const inside = (/** @type {number} */ part) =>
      Math.round(Math.min(1, Math.max(0, part)) * 1000) / 1000;
    const point = {
      across: inside((event.clientX - box.left) / box.width),
      up: inside(1 - (event.clientY - box.top) / box.height),
    };
    this.draft.type({ points: [...surface.points, point] });
    this.step = surface.points.length;
    this.field = this.first;
    this.shown = "read";
  }

  /** Take back a free point, such as one touched by mistake. @param {number} index */
  dropPoint(index) {
    const { points, lamps, again, aim } = this.surface;
    const put = (/** @type {Partial<Surface>} */ fields) => {
      this.draft.type(fields);
      this.shown = "read";
      this.step = this.surface.points.length;
    };
    put(withoutPoint(this.surface, index));
    sayWithUndo(t("sweep.pointDropped", { n: index + 1 }), () =>
      put({ points, lamps, again, aim }),
    );
  }

  /** @returns {import("../../charts/surface-map.js").Cell[]} */
  get cells() {
    const { surface, shown, round } = this;
    if (shown === "planned" && this.trim.answer) {
      const { points } = this.trim.answer.then;
      return surface.points.map(({ across, up }, i) => ({
        across: Number(across),
        up: Number(up),
        ...points[i],
        level: level(points[i].lx),
      }));
    }
    if (shown === "again") {
      const planned = this.trim.answer?.then.points;
      return cellsOf(surface, this.measured.answer, surface.again).map((cell, i) => ({
        ...cell,
        planned: planned && level(planned[i].lx),
      }));
    }
    if (round === "together") return cellsOf(surface, this.even.answer);
    // What one lamp gives is for no aim.
    return cellsOf(surface, undefined, this.levels);
  }

  renderMap() {
    const { surface, shown } = this;
    const source = shown === "again" ? this.measured.answer : this.even.answer;
    const map = surfaceMap({
      cells: this.cells,
      columns: surface.columns,
      lines: shown === "planned" ? null : (source?.map ?? null),
      title: t("sweep.map"),
      current: this.current,
      aim: surface.aim?.point,
      photo: surface.photo,
      onTouch: (index) => this.touch(index),
    });
    return html`<div @click=${(/** @type {MouseEvent} */ event) => this.putPoint(event)}>${map}</div>
      ${surface.photo ? html`<p class="hint">${t("sweep.tapPhoto")}</p>` : nothing}`;
  }

  renderAnswer() {
    const answer = {
      read: this.even.answer,
      again: this.measured.answer,
      planned: this.trim.answer?.then,
    }[this.shown];
    if (!answer || !readPoints(this.surface).length) return nothing;
    const { unit, colour } = { unit: "", colour: null, ...this.even.answer };
    return html`
      <p class="headline small" data-testid="headline">${answer.words}</p>
      ${figures([
        [t("sweep.spread"), stops(answer.spread_stops)],
        [t("sweep.uniformity"), percent(answer.uniformity)],
        [t("sweep.mean"), `${level(answer.mean_lx)} ${unit}`],
      ])}
      ${
        colour
          ? html`<p class="reason">${t("sweep.colour", { by: steps(colour.steps) })}</p>`
          : nothing
      }
    `;
  }

  renderPad() {
    const { current, surface } = this;
    if (!surface.points.length || current === undefined) return nothing;
    const cell = this.cells[current];
    const name = typeof this.round === "number" ? surface.lamps[this.round]?.name : "";
    const rounds = {
      together: () => t("sweep.typing", { n: this.step + 1, all: surface.points.length }),
      again: () => t("sweep.typingAgain", { n: this.step + 1, all: surface.points.length }),
    };
    const pad = sweepPad({
      label:
        typeof this.round === "number"
          ? t("sweep.typingLamp", {
              name: name || t("sweep.lampNth", { n: this.round + 1 }),
              n: this.step + 1,
              all: surface.points.length,
            })
          : rounds[this.round](),
      value: this.value,
      unit: this.field === "level" ? levelFieldOf(surface).slice(-2) : this.field,
      problem: (this.round === "together" && cell?.problem) || undefined,
      onInput: (typed) => this.write(typed),
      onNext: () => this.next(),
    });
    const display = html`<ek-read-display
      id="sweep-display"
      .many=${true}
      .holds=${true}
      .take=${(/** @type {Record<string, string>} */ reading) => this.takeDisplay(reading)}
    ></ek-read-display>`;
    if (surface.columns || this.round !== "together") return html`${pad} ${display}`;
    return html`${pad} ${display}
      <button type="button" class="quiet" @click=${() => this.dropPoint(current)}>
        ${t("book.deleteName", { name: t("sweep.aimPoint", { n: current + 1 }) })}
      </button>`;
  }

  renderAim() {
    const { surface } = this;
    const { aim } = surface;
    const field = levelFieldOf(surface);
    const point = this.current ?? this.walk[0];
    const way = !aim ? "mean" : aim.point === undefined ? "level" : "point";
    return html`
      ${segments({
        name: "aim",
        legend: t("sweep.aim"),
        value: way,
        options: {
          mean: t("sweep.aimMean"),
          point: t("sweep.aimPoint", { n: (aim?.point ?? point ?? 0) + 1 }),
          level: t("sweep.aimLevel"),
        },
        onChange: (to) =>
          this.draft.type({
            aim: to === "mean" ? null : to === "point" ? { point } : { [field]: "" },
          }),
      })}
      ${
        way === "point" && point !== undefined && point !== aim?.point
          ? html`<button type="button" @click=${() => this.draft.type({ aim: { point } })}>
              ${t("sweep.aimHere", { n: point + 1 })}
            </button>`
          : nothing
      }
      ${
        way === "level"
          ? textField({
              id: "sweep-aim",
              label: t("sweep.aimTyped"),
              unit: field.slice(-2),
              number: true,
              value: String(aim?.[/** @type {"illuminance_lx"} */ (field)] ?? ""),

              onInput: (typed) => this.draft.type({ aim: { [field]: typed } }),
            })
          : nothing
      }
    `;
  }

  /** Where the points are, until the first is read. */
  renderGrid() {
    const { surface } = this;
    const grid = surface.columns ? `${surface.columns}×${surface.rows}` : PHOTO;
    const grids = GRIDS.map(([columns, rows]) => `${columns}×${rows}`);
    const begun = readPoints(surface).length > 0;
    return html`
      ${
        begun
          ? nothing
          : choice({
              id: "sweep-grid",
              label: t("sweep.grid"),
              value: grid,
              options: [
                ...(grids.includes(grid) || grid === PHOTO ? grids : [grid, ...grids]).map(
                  (one) => ({
                    value: one,
                    label: one.replace("×", " × "),
                  }),
                ),
                { value: PHOTO, label: t("sweep.onPhoto") },
              ],
              onChange: (to) => this.regrid(to),
            })
      }
      ${
        surface.columns
          ? nothing
          : pickFile({
              id: "sweep-photo",
              label: t(surface.photo ? "sweep.otherPhoto" : "sweep.photo"),
              accept: "image/*",
              camera: true,
              one: true,
              onFiles: ([file]) =>
                smallPhoto(file)
                  .then((photo) => this.draft.type({ photo }))
                  .catch(reportFault),
            })
      }
    `;
  }

  renderAbout() {
    const { surface } = this;
    const problemAt = () => undefined;
    return html`<details class="more">
      <summary>${t("sweep.about")}</summary>
      ${textField({
        id: "sweep-name",
        label: t("sweep.name"),
        value: surface.name,
        onInput: (name) => this.draft.type({ name }),
      })}
      <label class="check">
        <input
          type="checkbox"
          .checked=${this.colour}
          @change=${() => {
            this.colour = !this.colour;
            this.field = this.first;
          }}
        />
        <span>${t("sweep.withColour")}</span>
      </label>
      <div class="pair">
        ${["width", "height"].map((name) =>
          lengthField({
            id: `sweep-${name}`,
            label: t(`sweep.${/** @type {"width"} */ (name)}`),
            name,
            data: surface,
            problemAt,
            onInput: (fields) => this.draft.type(fields),
          }),
        )}
      </div>
      ${
        this.id
          ? html`<div class="row">
              <button type="button" class="quiet" @click=${() => this.table().catch(reportFault)}>
                ${t("sweep.table")}
              </button>
              <button type="button" class="quiet" @click=${() => this.drop().catch(reportFault)}>
                ${t("book.delete")}
              </button>
            </div>`
          : nothing
      }
    </details>`;
  }

  renderTrim() {
    const { surface } = this;
    if (readPoints(surface).length < surface.points.length || !surface.points.length)
      return nothing;
    return html`<section>
      <h2>${t("sweep.which")}</h2>
      <p class="hint">${t("sweep.whichHint")}</p>
      ${sweepLamps({
        surface,
        problemAt: (path) => this.trim.problemAt(path),
        onChange: (lamps) => this.draft.type({ lamps }),
        onRead: (index) => this.begin(index),
      })}
      ${problemNote(this.trim.problemBeside(/^lamps\.\d+\.dimmer_now/))}
      ${
        this.trim.answer
          ? trimTable({
              answer: this.trim.answer,
              how: this.how,
              onHow: (how) => {
                this.how = how;
              },
              onAgain: () => this.begin("again"),
            })
          : nothing
      }
    </section>`;
  }

  renderShown() {
    const { surface } = this;
    const again = surface.again.some((typed) => typed);
    if (!this.trim.answer) return nothing;
    return segments({
      name: "sweep-shown",
      legend: t("sweep.shown"),
      quiet: true,
      value: this.shown,
      options: {
        read: t("sweep.shownRead"),
        planned: t("sweep.shownPlanned"),
        ...(again ? { again: t("sweep.shownAgain") } : {}),
      },
      onChange: (to) => {
        this.shown = /** @type {"read"} */ (to);
      },
    });
  }

  render() {
    const { surface, others } = this;
    if (this.id && book.read && !this.kept) {
      return html`<h1>${t("sweep.heading")}</h1><p class="empty">${t("book.gone")}</p>`;
    }
    const changed = this.id ? JSON.stringify(this.kept) !== JSON.stringify(surface) : true;
    return html`
      <h1 class="place">
        ${surface.name || t("sweep.heading")} <a href="#set">${placeWords(this.setup)}</a>
      </h1>
      <section class="answer" aria-label=${t("sweep.answer")} aria-busy=${this.even.waiting}>
        <ek-boot-progress></ek-boot-progress>
        ${this.renderAnswer()} ${this.renderGrid()}
        ${problemNote(this.even.problemBeside(/^aim/))}
        ${this.renderMap()} ${this.renderShown()}
      </section>
      ${this.renderPad()} ${this.keeping.note()}
      <div class="actions">
        <button
          type="button"
          class="main"
          ?disabled=${this.keeping.busy || !changed || !readPoints(surface).length}
          @click=${() => this.keep().catch(reportFault)}
        >
          ${t("sweep.keep")}
        </button>
      </div>
      ${readPoints(surface).length ? this.renderAim() : nothing} ${this.renderTrim()}
      ${this.renderAbout()}
      ${
        others.length || this.id
          ? html`<section>
              <h2>${t("sweep.others")}</h2>
              <ul class="links">
                ${others.map(({ id, data }) => html`<li><a href="#sweep/${id}">${data.name}</a></li>`)}
                ${this.id ? html`<li><a href="#sweep">${t("sweep.new")}</a></li>` : nothing}
              </ul>
            </section>`
          : nothing
      }
      <ek-spoken .words=${this.even.answer?.words ?? ""}></ek-spoken>
    `;
  }
}
customElements.define("ek-sweep", SweepView);
