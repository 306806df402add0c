/** Light: one reading, how far it is from the white, and what brings it there. */
import { html, nothing } from "lit";
import { keyed } from "lit/directives/keyed.js";
import { balanceField } from "../../charts/balance-field.js";
import { lookOf, patch } from "../../charts/patch.js";
import { sketch } from "../../charts/sketch.js";
import { Keeping } from "../../parts/keeping.js";
import { aimed, besideReading, centreOf, roleOf, saidOf } from "../../store/log/target.js";
import "../../parts/against.js";
import { answerCard, answerSentence, bestPack } from "./answer-card.js";
import "../../parts/boot-progress.js";
import { fileButton } from "../../parts/bring-files.js";
import { cautionNote } from "../../parts/caution-note.js";
import { gelPicker } from "../../parts/gel-picker.js";
import { choice, segments, textField } from "../../parts/inputs.js";
import { LAMPS } from "../../parts/lamp-kinds.js";
import "./learn-gel.js";
import { LiveQuestion } from "../../base/live-question.js";
import { logFields } from "../../parts/log-fields.js";
import { packRow } from "../../parts/pack-card.js";
import "../../parts/mains-warning.js";
import { Page } from "../../base/page.js";
import { properties } from "../../base/properties.js";
import "../../parts/meant-row.js";
import { patchLight } from "../../parts/patch-light.js";
import { smallPhoto } from "../../parts/photo.js";
import "../../parts/spoken.js";
import "./stop-line.js";
import { Watch } from "../../base/watch.js";
import { folded } from "../../parts/more.js";
import { sayWithUndo } from "../../parts/toast.js";
import { problemNote } from "../../parts/warnings.js";
import { lightDraft } from "../../store/drafts/light-draft.js";
import { book, bookRead, reportFault, settings } from "../../store/index.js";
import { gels } from "../../store/kit/gels.js";
import { withOwnGels } from "../../store/kit/own-gels.js";
import { gelsOn } from "../../store/log/measured-gels.js";
import { pastOf } from "../../store/log/past.js";
import {
  currentSetup,
  earlierOf,
  lightNamed,
  lightsOf,
  nextName,
  placeWords,
  sayMeant,
  targetToKeep,
} from "../../store/log/shoot.js";
import { offlineState } from "../../store/offline-state.js";
import { askPersistence } from "../../store/persistence.js";
import { levelOf, levelUnit } from "../../store/questions/camera.js";
import { cctWords, colourField, numbersOf } from "../../store/questions/forms.js";
import { FIGURES, gelTerms, readingQuestion, terms } from "../../store/questions/reading.js";
import { t } from "../../words/index.js";
import { flightMode } from "./flight-mode.js";
import { hungByNow } from "./hung-by-now.js";
import { justKept, keptWords } from "./just-kept.js";
import { welcome } from "./welcome.js";
import { nameOffers, whichLight } from "./which-light.js";

/** Whether the fields have been on the screen: until then only what can be typed into is drawn. */
let begun = false;

/** Ids of the fields of a light by name, in the order they are typed. */
const FIELDS = /** @type {const} */ ({
  x: "light-x",
  y: "light-y",
  cct_K: "light-cct",
  cct_mired: "light-cct",
  duv: "light-duv",
  tint_cc: "light-duv",
  tint_cuts: "light-duv",
  illuminance: "light-illuminance",
  name: "light-name",
});

/** @param {string} name of a field of the draft */
const typeInto = (name) => (/** @type {string} */ value) => lightDraft.type({ [name]: value });

class LightView extends Page {
  static properties = properties({ own: ["mapped"] });

  constructor() {
    super();
    this.keeping = new Keeping(this);
    this.fix = /** @type {LiveQuestion<"fix">} */ (new LiveQuestion(this));
    this.chart = /** @type {LiveQuestion<"field">} */ (
      new LiveQuestion(this, { after: [this.fix] })
    );
    this.earlier = /** @type {LiveQuestion<"fix">} */ (new LiveQuestion(this));
    this.seen = /** @type {LiveQuestion<"seen">} */ (new LiveQuestion(this, { after: [this.fix] }));
    /** Whether the map stands by the patch. */
    this.mapped = false;
    this.watch = new Watch(this, lightDraft, book, settings, gels, offlineState);
  }

  firstUpdated() {
    if (begun) return;
    requestAnimationFrame(() =>
      setTimeout(() => {
        begun = true;
        this.requestUpdate();
      }),
    );
  }

  updated() {
    if (!begun || !lightDraft.toType) return;
    lightDraft.toType = false;
    if (lightDraft.typed.way === "spectrum") return;
    // After the shell, which goes to the heading of a page that is opened.
    requestAnimationFrame(() => this.order[0]?.focus());
  }

  willUpdate() {
    const { typed, complete } = lightDraft;
    const target = centreOf();
    const aim = (/** @type {Record<string, any>} */ one) =>
      aimed(one, this.lightNow, this.meantNow);
    // Until the book is read it is not known what the light is measured against.
    const reading =
      (complete || this.last) && book.read
        ? {
            ...readingQuestion(this.readingNow),
            ...pastOf(this.lightNow, this.readingNow, this.last?.reading),
            ...roleOf(this.nameNow()),
          }
        : null;
    this.fix.put(reading && { ask: "fix", ...besideReading(aim(reading)), target, ...terms() });
    const best = this.fix.answer && bestPack(this.fix.answer)?.gels;
    const before = book.thing(typed.before)?.data;
    const shown = before ? [readingQuestion(before, t("light.before"))] : [];
    this.chart.put(
      reading && this.fix.answer
        ? {
            ask: "field",
            target,
            tolerance: settings.get("tolerance"),
            ...gelTerms(),
            lights: [...shown, { ...reading, name: this.nameNow() }].map(aim),
            packs: [...shown.map(() => null), best ?? null],
          }
        : null,
    );
    this.seen.put(
      reading && this.fix.answer
        ? {
            ask: "seen",
            white: target,
            ...withOwnGels(),
            lights: [{ ...besideReading(aim(reading)), pack: best ?? [] }],
          }
        : null,
    );
    this.earlier.put(
      before && reading
        ? {
            ask: "fix",
            ...besideReading(aim(readingQuestion(before))),
            target,
            depth: 1,
            ...terms(),
          }
        : null,
    );
  }

  /** What was kept last: its answer stays on the screen until the next light is begun. */
  get last() {
    return lightDraft.justKept;
  }

  /** The reading that is answered. @returns {Record<string, any>} */
  get readingNow() {
    const { last } = this;
    return last ? (book.thing(last.reading)?.data ?? {}) : lightDraft.reading;
  }

  /** Id of the light that is answered for, when the book has it. */
  get lightNow() {
    return this.last ? this.last.light : lightDraft.typed.light;
  }

  /** What the light that is answered for is meant to be. */
  get meantNow() {
    return this.last ? saidOf(this.last.light) : lightDraft.typed.meant;
  }

  /** The name of the light that is answered for: one that is typed would be kept under it. */
  nameNow() {
    if (this.last) return this.last.name;
    const typed = lightDraft.typed.name.trim();
    if (typed) return typed;
    const setup = currentSetup();
    const name = t("light.nth", { n: lightsOf(setup).length + 1 });
    return lightNamed(setup, name) ? nextName(setup, name) : name;
  }

  /** The light that has the typed name already, while it is not said which is meant. */
  get namesake() {
    const { light, name } = lightDraft.typed;
    return light ? undefined : lightNamed(currentSetup(), name);
  }

  /** A reading is kept unless it is known to be none; a kernel in trouble is no reason not to. */
  get keepable() {
    const wrong = this.fix.found?.field.startsWith("reading");
    return lightDraft.complete && !this.keeping.busy && !wrong;
  }

  /** @param {{typing?: boolean}} [how]  whether the keyboard is up, to go on in the next reading */
  keep({ typing = matchMedia("(hover: hover)").matches } = {}) {
    return this.keeping.run(async () => {
      await bookRead();
      if (this.namesake) return; // known only now that the book is read
      const target = await targetToKeep(centreOf());
      await lightDraft.keep(this.nameNow(), target);
      askPersistence();
      // A keyboard goes on in the next reading; a phone's would come up and hide the answer.
      if (typing) this.order[0]?.focus();
    });
  }

  /** One more light that is the same as the one kept last: kept with its reading, which says so. */
  twin() {
    const { last } = this;
    if (!last) return;
    this.keeping.run(async () => {
      const target = await targetToKeep(centreOf());
      await lightDraft.keepTwin(
        nextName(currentSetup(), last.name),
        t("light.twinNote", { name: last.name }),
        target,
      );
    });
  }

  /** The fields that the keyboard goes through, the first first. */
  get order() {
    return [...new Set(Object.values(FIELDS))]
      .map((id) => /** @type {HTMLInputElement | null} */ (this.querySelector(`#${id}`)))
      .filter((field) => field !== null);
  }

  /** @param {string} id of a field, to go on in at its end */
  async into(id) {
    // Only the first fields are there at first: the next is drawn a moment later.
    while (!begun) await new Promise((done) => setTimeout(done));
    await this.updateComplete;
    const field = /** @type {HTMLInputElement | null} */ (this.querySelector(`#${id}`));
    field?.focus();
    field?.setSelectionRange(field.value.length, field.value.length);
  }

  /**
   * A field of numbers was typed into: a line that holds several values goes to its fields, and a
   * coordinate that has all its digits hands over to the next field, if that is empty.
   * @param {import("../../store/questions/forms.js").ColourField | "illuminance"} name
   */
  number(name) {
    return (/** @type {string} */ value) => {
      const grown = value.length > lightDraft.typed[name].length;
      const last = lightDraft.typeNumber(name, value);
      if (last !== name) {
        this.into(FIELDS[/** @type {"x"} */ (last)]);
        return;
      }
      if ((name !== "x" && name !== "y") || !grown || !lightDraft.full(name)) return;
      const next = name === "x" ? "y" : "illuminance";
      lightDraft.settle(name);
      if (!lightDraft.typed[next].trim()) this.into(FIELDS[next]);
    };
  }

  /** Enter goes on to the next field; after the last one it keeps. @param {KeyboardEvent} event */
  enter(event) {
    const { target } = event;
    if (event.key !== "Enter" || event.isComposing || !(target instanceof HTMLInputElement)) return;
    const at = this.order.indexOf(target);
    if (at < 0) return;
    event.preventDefault();
    const next = this.order[at + 1];
    // A light that has its name needs no more.
    if (next && !(next.id === FIELDS.name && next.value.trim())) {
      next.focus();
      next.select();
    } else if (this.keepable && !this.namesake) {
      this.keep({ typing: true });
    }
  }

  /** Empty the form; what was half typed can be brought back. */
  next() {
    const earlier = lightDraft.typed;
    if (lightDraft.unsaved) {
      sayWithUndo(t("light.setAside"), () => lightDraft.start(earlier));
    }
    lightDraft.start();
    this.querySelector("input")?.focus();
  }

  /** Read the light that was just kept once more, with what is advised on it. */
  again() {
    const { last } = this;
    if (!last) return;
    lightDraft.measureAgain(last.light, this.fix.answer && bestPack(this.fix.answer)?.gels);
    this.closest(".pane")?.scrollTo(0, 0);
    window.scrollTo(0, 0);
    lightDraft.toType = true;
  }

  /** @param {string} name of a field in the question */
  problemAt(name) {
    return this.last ? undefined : this.fix.problemAt(`reading.${name}`);
  }

  /** @param {string} name of a field in the question */
  choicesAt(name) {
    return this.last ? [] : this.fix.choicesAt(`reading.${name}`);
  }

  /** The sentence of a problem that no field on this screen shows. */
  otherProblem() {
    const problem = this.fix.problem;
    if (!problem) return undefined;
    if (problem.field.startsWith("meant"))
      return t("light.meantProblem", { message: problem.message });
    if (problem.field.startsWith("target"))
      return t("light.targetProblem", { message: problem.message });
    if (problem.field.startsWith("reading.spectrum")) return undefined;
    const { way } = lightDraft.typed;
    const shown = way === "spectrum" ? [] : numbersOf(way, lightDraft.typed);
    const here = [...shown, ...FIGURES, lightDraft.levelField].some(
      (name) => problem.field === `reading.${name}`,
    );
    return here ? undefined : problem.message;
  }

  /** @param {import("../../store/questions/forms.js").ColourField} name */
  renderNumber(name) {
    const field = colourField(name, lightDraft.typed[name]);
    const choices = this.choicesAt(name);
    return textField({
      ...field,
      id: FIELDS[name],
      large: true,
      problem: this.problemAt(name),
      choices: choices.length ? choices : field.choices,
      enter: "next",
      onLeave: () => lightDraft.settle(name),
      onInput: this.number(name),
    });
  }

  renderNumbers() {
    const { typed } = lightDraft;
    return html`
      ${segments({
        name: "way",
        legend: t("light.way"),
        quiet: true,
        value: typed.way,
        options: { xy: t("light.wayXy"), cct: cctWords(typed), spectrum: t("light.waySpectrum") },
        onChange: (way) => lightDraft.type({ way: /** @type {"xy"} */ (way) }),
      })}
      ${typed.way === "spectrum" ? this.renderSpectrum() : nothing}
      <div class="pair">
        ${
          typed.way === "spectrum"
            ? nothing
            : numbersOf(typed.way, typed)
                .filter((name) => name !== "illuminance")
                .map((name) => this.renderNumber(name))
        }
      </div>
    `;
  }

  /** @param {Blob} picture of the display */
  async keepPicture(picture) {
    lightDraft.type({ photo: await smallPhoto(picture) });
  }

  /** The numbers off the meter's display, by the phone's camera. */
  renderDisplay() {
    return html`<ek-read-display
      id="light-display"
      .holds=${lightDraft.unsaved || lightDraft.typed.illuminance !== ""}
      .take=${(/** @type {Record<string, string>} */ reading) => lightDraft.takeDisplay(reading)}
      .keepPicture=${lightDraft.typed.photo ? null : this.keepPicture}
    ></ek-read-display>`;
  }

  renderDetails() {
    const { typed } = lightDraft;
    const level = lightDraft.levelField;
    const offers = book.read && !typed.light && !typed.name.trim();
    return html`
      ${this.renderMeant()}
      <div class="pair">
        ${textField({
          id: "light-illuminance",
          label: t(typed.lamp === "flash" ? "exposure.burst" : "light.illuminance"),
          unit: lightDraft.ownUnit ? undefined : levelUnit(level),
          value: typed.illuminance,
          number: true,
          problem: this.problemAt(level),
          choices: this.choicesAt(level),
          enter: "next",
          onInput: typeInto("illuminance"),
        })}
        ${choice({
          id: "light-lamp",
          label: t("light.lamp"),
          value: typed.lamp,
          options: LAMPS.map((lamp) => ({ value: lamp, label: t(`lamp.${lamp}`) })),
          onChange: typeInto("lamp"),
        })}
      </div>
      ${textField({
        id: "light-name",
        label: t("light.name"),
        hint: t("light.nameHint"),
        value: typed.name,
        onInput: (name) => lightDraft.call(name),
      })}
      ${
        offers
          ? nameOffers({
              setup: currentSetup(),
              last: typed.last?.name ?? "",
              onName: (name) => lightDraft.call(name),
            })
          : nothing
      }
      ${gelPicker({
        id: "light-pack",
        label: t("light.pack"),
        value: typed.pack,
        problem: this.problemAt("pack"),
        onChange: (pack) => lightDraft.type({ pack }),
      })}
      <details
        class="more"
        ?open=${Boolean((typed.light && typed.dimmer) || FIGURES.some((name) => typed[name]))}
      >
        <summary>${t("log.more")}</summary>
        ${this.renderFigures()}
        ${logFields({ id: "log", value: typed, onChange: (change) => lightDraft.type(change) })}
        ${textField({
          id: "log-who",
          label: t("log.who"),
          hint: t("log.whoHint"),
          value: settings.get("who"),
          onInput: (who) => settings.set("who", who).catch(reportFault),
        })}
      </details>
    `;
  }

  /** What else the meter shows: it tells what lamp this may be. */
  renderFigures() {
    const { typed } = lightDraft;
    if (typed.way === "spectrum") return nothing;
    return html`<div class="pair figures-typed">
        ${FIGURES.map((name) =>
          textField({
            id: `light-${name}`,
            label: t(`figure.${name}`),
            value: typed[name],
            number: true,
            signed: name === "r9",
            problem: this.problemAt(name),
            onInput: typeInto(name),
          }),
        )}
      </div>
      <p class="hint">${t("figure.hint")}</p>`;
  }

  renderSpectrum() {
    const { spectrum, source } = lightDraft.typed;
    const problem = this.fix.problem?.field.startsWith("reading.spectrum")
      ? this.fix.problem.message
      : undefined;
    return html`<div class="field loaded">
      ${
        spectrum
          ? html`<p class="hint">${t("light.spectrumFrom", { source })}</p>
              ${sketch(spectrum, t("files.sketch", { name: source }))}`
          : html`<p class="hint">${t("light.noSpectrum")}</p>`
      }
      ${problemNote(problem)}
      <div class="actions">
        ${
          spectrum
            ? html`<a class="button" href="#spectrum/draft">${t("spectrum.see")}</a>`
            : html`<a class="button" href="#files">${t("files.paste")}</a>`
        }
        ${fileButton({
          id: "light-file",
          label: t(spectrum ? "light.otherFile" : "light.loadFile"),
          main: !spectrum,
        })}
      </div>
    </div>`;
  }

  /** A light read again: what is on it by now. */
  renderHung() {
    const { light, before, offered, pack } = lightDraft.typed;
    if (!light || !book.read) return nothing;
    const then = book.thing(before) ?? earlierOf(light)?.reading;
    return hungByNow({
      offered,
      before: gelsOn(then?.data ?? {}),
      value: pack,
      onChange: (now) => lightDraft.type({ pack: now }),
    });
  }

  /** @param {import("../../store/log/book.js").Thing} light that has the typed name */
  renderWhich(light) {
    const other = nextName(currentSetup(), lightDraft.typed.name);
    return whichLight({
      light,
      other,
      disabled: !this.keepable,
      onSame: () => {
        lightDraft.isAgain(light.id);
        this.keep();
      },
      onOther: () => {
        lightDraft.type({ name: other });
        this.keep();
      },
    });
  }

  renderActions() {
    const { typed } = lightDraft;
    const { last, namesake } = this;
    const fault = this.keeping.note();
    // While a reading is being written its own light has its name already.
    if (namesake && !this.keeping.busy) return html`${fault} ${this.renderWhich(namesake)}`;
    return html`
      ${fault}
      ${
        last
          ? justKept(last, {
              onUndo: () => lightDraft.undo().catch(reportFault),
              onAgain: () => this.again(),
              twin: nextName(currentSetup(), last.name),
              onTwin: () => this.twin(),
            })
          : nothing
      }
      <div class="actions">
        ${
          lightDraft.unsaved || typed.light
            ? html`<button type="button" class="quiet" @click=${this.next}>
                ${t("light.clear")}
              </button>`
            : nothing
        }
        <button
          type="submit"
          class="main"
          ?disabled=${!this.keepable}
        >
          ${this.keeping.busy ? t("light.keeping") : t("light.keep")}
        </button>
      </div>
    `;
  }

  /** After a fix: the gel that hangs since the reading before. */
  renderLearning() {
    const { typed, reading } = lightDraft;
    const before = book.thing(typed.before)?.data;
    if (!before) return nothing;
    const fresh = [...typed.pack];
    for (const name of gelsOn(before)) {
      const place = fresh.indexOf(name);
      if (place >= 0) fresh.splice(place, 1);
    }
    if (!fresh.length) return nothing;
    return html`<ek-learn-gel
      .bare=${readingQuestion(before)}
      .gelled=${readingQuestion(reading)}
      .gels=${fresh}
    ></ek-learn-gel>`;
  }

  /** As read, with the gels, as meant; a touch opens the map. */
  renderPatch() {
    const look = lookOf(this.seen.answer?.lights[0]);
    if (!this.fix.answer || !look?.as_read) return nothing;
    const pack = bestPack(this.fix.answer) ? look.with_pack : null;
    const parts = /** @type {const} */ ([
      ["patch.read", look.as_read],
      ["patch.gelled", pack],
      ["patch.meant", look.as_meant],
    ]).filter(([, one]) => one);
    return html`<button
        type="button"
        class="seen"
        aria-expanded=${this.mapped ? "true" : "false"}
        aria-label=${t("patch.map", { parts: parts.map(([key]) => t(key)).join(" ") })}
        @click=${() => {
          this.mapped = !this.mapped;
          patchLight.put(this.mapped);
        }}
      >
        ${patch(
          parts.map(([, one]) => one?.grey),
          { kind: "large" },
        )}
        <span class="under">${parts.map(([key]) => html`<span>${t(key)}</span> `)}</span>
      </button>
      ${this.mapped ? this.renderMap() : nothing}`;
  }

  renderMap() {
    if (!this.chart.answer) return nothing;
    return balanceField(this.chart.answer, { title: t("field.title") });
  }

  renderMore() {
    const { answer } = this.fix;
    if (!answer) return nothing;
    const others = answer.packs.slice(bestPack(answer) ? 1 : 0);
    return html`
      ${this.mapped ? nothing : this.renderMap()}
      ${answer.packs.length ? cautionNote() : nothing}
      ${folded(t("light.others", { n: others.length }), "packs", others.map(packRow))}
      ${this.renderLearning()}
    `;
  }

  renderMeant() {
    const { last } = this;
    if (!book.read) return nothing;
    return keyed(
      last ? last.light : "draft",
      html`<ek-meant
        .light=${this.lightNow}
        .said=${this.meantNow}
        .atOnce=${!last}
        .say=${(/** @type {import("../../store/log/target.js").Said} */ said) =>
          last ? sayMeant(last.light, said) : lightDraft.type({ meant: said ?? null })}
      ></ek-meant>`,
    );
  }

  renderSaid() {
    const { last, readingNow } = this;
    return html`
      <ek-stop-line
        .level=${levelOf(readingNow)}
        .loss=${(this.fix.answer && bestPack(this.fix.answer)?.stops_lost) ?? 0}
      ></ek-stop-line>
      <ek-spoken
        .words=${last ? keptWords(last) : this.fix.answer ? answerSentence(this.fix.answer) : ""}
      ></ek-spoken>
    `;
  }

  render() {
    const { typed, complete } = lightDraft;
    const { last } = this;
    return html`
      <h1 class="place">
        ${typed.light ? t("light.titleAgain", { name: typed.name }) : t("light.title")}
        <a href="#book">${book.read ? placeWords(currentSetup()) : ""}</a>
      </h1>
      <ek-against .light=${this.lightNow} .said=${this.meantNow}></ek-against>
      <section class="answer" aria-label=${t("light.answer")} aria-busy=${this.fix.waiting}>
        <ek-boot-progress></ek-boot-progress>
        ${last ? html`<p class="whose">${last.name}</p>` : nothing} ${this.renderPatch()}
        ${
          this.fix.answer
            ? answerCard(this.fix.answer, this.earlier.answer)
            : html`${problemNote(this.otherProblem())}
                ${complete || last ? nothing : html`<p class="hint">${t("light.empty")}</p>`}`
        }
        ${this.fix.answer ? nothing : flightMode()}
      </section>
      ${begun ? this.renderSaid() : nothing}
      <form
        @keydown=${this.enter}
        @submit=${(/** @type {Event} */ event) => {
          event.preventDefault();
          if (this.keepable && !this.namesake) this.keep();
        }}
      >
        ${begun ? this.renderHung() : nothing} ${this.renderNumbers()} ${begun ? this.renderDisplay() : nothing}
        ${begun ? this.renderDetails() : nothing}
        <div class="bar">${this.renderActions()}</div>
      </form>
      ${
        begun
          ? html`<ek-mains-warning
              .lamps=${complete || last ? [this.readingNow.lamp] : []}
            ></ek-mains-warning>`
          : nothing
      }
      ${begun ? this.renderMore() : nothing} ${this.fix.answer ? flightMode() : nothing}
      ${!begun || !book.read || settings.get("welcomed") || currentSetup() ? nothing : welcome()}
    `;
  }
}
customElements.define("ek-light", LightView);
