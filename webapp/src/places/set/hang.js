/** Hang cards: what to do at each lamp, place by place, and the reading that shows that it is done. */

import { html, nothing } from "lit";
import { LiveQuestion } from "../../base/live-question.js";
import { Page } from "../../base/page.js";
import { Watch } from "../../base/watch.js";
import { lookOf, patch } from "../../charts/patch.js";
import "../../parts/against.js";
import "../../parts/boot-progress.js";
import { cautionNote } from "../../parts/caution-note.js";
import { dimsFirst } from "../../parts/dim-line.js";
import { textField } from "../../parts/inputs.js";
import { Keeping } from "../../parts/keeping.js";
import { landsWords } from "../../parts/plan-line.js";
import { fetchNote } from "../../parts/to-fetch.js";
import { sayWithUndo } from "../../parts/toast.js";
import { verdictMark } from "../../parts/verdict.js";
import { problemNote } from "../../parts/warnings.js";
import { lightDraft } from "../../store/drafts/light-draft.js";
import { book, settings } from "../../store/index.js";
import { cameraCan, judging } from "../../store/kit/cameras.js";
import { gels } from "../../store/kit/gels.js";
import { withOwnGels } from "../../store/kit/own-gels.js";
import { curves, gelsOn, labels } from "../../store/log/measured-gels.js";
import { toDo } from "../../store/log/plan.js";
import { currentSetup, heroOf, lightsOf, placeWords, targetToKeep } from "../../store/log/shoot.js";
import { centreOf, litQuestion, withGels } from "../../store/log/target.js";
import { levelUnit } from "../../store/questions/camera.js";
import { colourField, numbersOf } from "../../store/questions/forms.js";
import { terms } from "../../store/questions/reading.js";
import { t } from "../../words/index.js";
import { joined } from "../../words/isolated.js";
import { duv, kelvin } from "../../words/numbers.js";
import { toDoWords } from "./slip.js";

/** @typedef {ReturnType<typeof lightsOf>[number]} Lit */

class HangCards extends Page {
  constructor() {
    super();
    this.agree = /** @type {LiveQuestion<"agree">} */ (new LiveQuestion(this));
    this.seen = /** @type {LiveQuestion<"seen">} */ (
      new LiveQuestion(this, { after: [this.agree] })
    );
    this.keeping = new Keeping(this);
    /** Where each light was to land when its gels were hung, by its id. @type {Record<string, any>} */
    this.wanted = {};
    this.watch = new Watch(this, book, settings, gels, lightDraft);
  }

  willUpdate() {
    const setup = currentSetup();
    const lights = lightsOf(setup);
    const hero = lights.findIndex(({ light }) => light.id === heroOf(setup)?.light.id);
    const readings = lights.map(litQuestion);
    const judge = judging(cameraCan(lights, lights[hero]));
    this.agree.put(
      lights.length
        ? {
            ask: "agree",
            lights: readings,
            ...(hero >= 0 ? { hero } : { target: centreOf() }),
            ...judge,
            ...terms(),
          }
        : null,
    );
    const parts = this.agree.answer?.lights;
    this.seen.put(
      parts?.length === lights.length
        ? {
            ask: "seen",
            white: centreOf(),
            ...judge,
            ...withOwnGels(),
            lights: readings.map(({ meant: _, ...reading }, at) => {
              const { pack, own } = this.wantedOf(lights[at], parts[at]) ?? {};
              return { reading: withGels(reading, own), ...(pack ? { pack } : {}) };
            }),
          }
        : null,
    );
  }

  /** The lights by where they stand, those that nobody placed last. */
  get places() {
    /** @type {Map<string, {lit: Lit, at: number}[]>} */
    const found = new Map();
    lightsOf(currentSetup()).forEach((lit, at) => {
      const place = lit.reading.data.place?.trim() ?? "";
      found.set(place, [...(found.get(place) ?? []), { lit, at }]);
    });
    return [...found].sort(
      ([one], [other]) => Number(!one) - Number(!other) || one.localeCompare(other),
    );
  }

  /** What is to hang and where that leads, by the plan or the advice. @param {Lit} lit @param {any} answer */
  wantedOf({ light, reading }, answer) {
    if (toDo(light, reading)) {
      const plan = light.data.planned;
      const { gels: names, gel_ids: ids } = plan;
      return {
        ...plan,
        pack: plan.does === "gel" ? labels(names, ids) : null,
        own: curves(names, ids),
      };
    }
    const pack = answer?.problem === null && !dimsFirst(answer) ? answer.pack : null;
    return pack ? { ...pack, pack: pack.gels } : null;
  }

  /** It hangs: the reading is typed right here. @param {Lit} lit @param {any} wanted */
  hung({ light }, wanted) {
    const earlier = lightDraft.typed;
    if (lightDraft.unsaved) sayWithUndo(t("light.setAside"), () => lightDraft.start(earlier));
    if (wanted) this.wanted = { ...this.wanted, [light.id]: wanted };
    lightDraft.measureAgain(light.id, wanted?.pack ?? undefined);
    this.into(this.names[0]);
  }

  get names() {
    const { typed } = lightDraft;
    return numbersOf(typed.way === "cct" ? "cct" : "xy", typed);
  }

  /** @param {string} name of a field to go on in */
  async into(name) {
    await this.updateComplete;
    /** @type {HTMLInputElement | null} */ (this.querySelector(`#hang-${name}`))?.focus();
  }

  keep() {
    return this.keeping.run(async () => {
      await lightDraft.keep(lightDraft.typed.name, await targetToKeep(centreOf()));
    });
  }

  /** Enter goes on, and keeps after the last. @param {KeyboardEvent} event @param {number} at */
  enter(event, at) {
    if (event.key !== "Enter" || event.isComposing) return;
    event.preventDefault();
    const next = this.names[at + 1];
    if (next) this.into(next);
    else if (lightDraft.complete) this.keep();
  }

  /** @param {import("../../store/questions/forms.js").ColourField | "illuminance"} name @param {number} at */
  renderNumber(name, at) {
    return html`<div @keydown=${(/** @type {KeyboardEvent} */ event) => this.enter(event, at)}>
      ${textField({
        ...(name === "illuminance"
          ? {
              label: t("light.illuminance"),
              unit: levelUnit(lightDraft.levelField),
              value: lightDraft.typed[name],
              number: true,
            }
          : colourField(name, lightDraft.typed[name])),
        id: `hang-${name}`,
        enter: this.names[at + 1] ? "next" : "done",
        onLeave: () => name !== "illuminance" && lightDraft.settle(name),
        onInput: (value) => {
          const grown = value.length > lightDraft.typed[name].length;
          const last = lightDraft.typeNumber(name, value);
          if (last !== name) this.into(last);
          else if (grown && (name === "x" || name === "y") && lightDraft.full(name)) {
            lightDraft.settle(name);
            this.into(this.names[at + 1]);
          }
        },
      })}
    </div>`;
  }

  renderReading() {
    if (lightDraft.typed.way === "spectrum") {
      return html`<a class="button main" href="#light">${t("hang.spectrum")}</a>`;
    }
    return html`<div class="hang-reading">
        ${this.names.map((name, at) => this.renderNumber(name, at))}
      </div>
      <ek-read-display
        id="hang-display"
        .holds=${lightDraft.unsaved}
        .take=${(/** @type {Record<string, string>} */ reading) => lightDraft.takeDisplay(reading)}
      ></ek-read-display>
      ${this.keeping.note()}
      <div class="actions">
        <button type="button" class="quiet" @click=${() => lightDraft.start()}>
          ${t("hang.notYet")}
        </button>
        <button
          type="button"
          class="main"
          ?disabled=${!lightDraft.complete || this.keeping.busy}
          @click=${() => this.keep()}
        >
          ${t("light.keep")}
        </button>
      </div>`;
  }

  /** What was wanted beside what is measured. @param {any} wanted @param {any} answer */
  renderBoth(wanted, answer) {
    return html`<p class="planned">
        <span class="what">${t("planned.plan")}</span>
        ${landsWords(wanted.lands, wanted)} ${verdictMark(wanted.promise ?? wanted.verdict)}
      </p>
      <p class="planned">
        <span class="what">${t("planned.measured")}</span>
        ${landsWords(answer, answer)} ${verdictMark(answer.verdict)}
      </p>`;
  }

  /** @param {Lit} lit @param {number} at */
  renderCard(lit, at) {
    const { light, reading } = lit;
    const part = this.agree.answer?.lights[at];
    const look = lookOf(this.seen.answer?.lights[at]);
    const answer = part?.problem ? undefined : part;
    const wanted = this.wantedOf(lit, answer);
    const before =
      this.wanted[light.id] ?? (light.data.planned?.from !== reading.id && light.data.planned);
    const here = lightDraft.typed.light === light.id;
    const on = gelsOn(reading.data);
    const { lamp } = light.data;
    return html`<li class="card" aria-label=${light.data.name}>
      <div class="head">
        ${this.places.length > 1 ? html`<h3>${light.data.name}</h3>` : html`<h2>${light.data.name}</h2>`}
        ${patch([look?.as_read?.grey, look?.with_pack?.grey])}
        ${answer ? verdictMark(answer.verdict) : nothing}
      </div>
      <p class="hint">
        ${joined(
          [
            lamp && lamp !== "unknown" ? t(`lamp.${/** @type {"led"} */ (lamp)}`) : "",
            answer ? `${kelvin(answer.cct_K)}, Duv ${duv(answer.duv)}` : "",
            on.length ? t("slip.on", { pack: on.join(" + ") }) : "",
          ].filter(Boolean),
        )}
      </p>
      ${answer ? html`<p class="hang">${toDoWords(light, reading, answer)}</p>` : nothing}
      ${wanted?.pack ? fetchNote(wanted.pack) : nothing} ${problemNote(part?.problem?.message)}
      ${answer && before && !here ? this.renderBoth(before, answer) : nothing}
      ${
        wanted && (!before || here)
          ? html`<p class="planned">
              <span class="what">${t("planned.plan")}</span>
              ${landsWords(wanted.lands, wanted)} ${verdictMark(wanted.promise ?? wanted.verdict)}
            </p>`
          : nothing
      }
      <p class="on-paper"><span class="box"></span> ${t("hang.hung")} · x ________ y ________ lx ________</p>
      ${
        here
          ? this.renderReading()
          : html`<button
              type="button"
              aria-label=${t(wanted ? "hang.hungName" : "slip.measureName", { name: light.data.name })}
              @click=${() => this.hung(lit, wanted)}
            >
              ${t(wanted ? "hang.hungRead" : "slip.measure")}
            </button>`
      }
    </li>`;
  }

  render() {
    const setup = currentSetup();
    const lights = lightsOf(setup);
    return html`
      <h1 class="place">${t("hang.title")} <a href="#set">${placeWords(setup)}</a></h1>
      <ek-against></ek-against>
      <ek-boot-progress></ek-boot-progress>
      ${problemNote(this.agree.problem?.message)}
      ${lights.length ? nothing : html`<p class="empty">${t("set.empty")}</p>`}
      <div aria-busy=${this.agree.waiting}>
        ${this.places.map(
          ([place, cards]) => html`
            ${this.places.length > 1 ? html`<h2>${place || t("hang.elsewhere")}</h2>` : nothing}
            <ul class="cards">${cards.map(({ lit, at }) => this.renderCard(lit, at))}</ul>
          `,
        )}
      </div>
      ${lights.length ? cautionNote() : nothing}
      ${
        lights.length
          ? html`<div class="actions">
              <button type="button" @click=${() => window.print()}>${t("report.print")}</button>
              <a class="button" href="#share/${setup?.id}/hang">${t("hang.shareCards")}</a>
            </div>`
          : nothing
      }
    `;
  }
}
customElements.define("ek-hang", HangCards);
