/** Set: every light of the setup against one white, and what to hang where. */

import { html, nothing } from "lit";
import { balanceField, balanceFieldToCome } from "../../charts/balance-field.js";
import { figures } from "../../charts/figures.js";
import { lookOf } from "../../charts/patch.js";
import { strip } from "../../charts/strip.js";
import { centreOf, litQuestion, saidOf, withGels } from "../../store/log/target.js";
import "../../parts/against.js";
import { againstWords } from "../../parts/against.js";
import { dimsFirst } from "../../parts/dim-line.js";
import { meantBeside } from "../../parts/meant-words.js";
import "../../parts/boot-progress.js";
import { cautionNote } from "../../parts/caution-note.js";
import "./findings-list.js";
import { LiveQuestion } from "../../base/live-question.js";
import { keyChoice, keyOf, levelLine, levelsQuestion } from "./levels.js";
import "../../parts/mains-warning.js";
import { Page } from "../../base/page.js";
import { properties } from "../../base/properties.js";
import "./plan-note.js";
import { Watch } from "../../base/watch.js";
import { segments } from "../../parts/inputs.js";
import "../../parts/patch-light.js";
import { folded } from "../../parts/more.js";
import { shareText } from "../../parts/share-text.js";
import { say, sayWithUndo } from "../../parts/toast.js";
import { problemNote, warningList } from "../../parts/warnings.js";
import { whichCamera } from "../../parts/which-camera.js";
import { route } from "../../router.js";
import { lightDraft } from "../../store/drafts/light-draft.js";
import { book, reportFault, settings } from "../../store/index.js";
import { cameraCan, judging } from "../../store/kit/cameras.js";
import { gels } from "../../store/kit/gels.js";
import { withOwnGels } from "../../store/kit/own-gels.js";
import { curves, labels } from "../../store/log/measured-gels.js";
import { toDo } from "../../store/log/plan.js";
import {
  currentSetup,
  heroOf,
  keepTwinOf,
  lightsOf,
  nextName,
  openSetup,
  placeWords,
  takeBack,
  targetToKeep,
  unreadLights,
} from "../../store/log/shoot.js";
import { gelTerms, terms } from "../../store/questions/reading.js";
import { t } from "../../words/index.js";
import { listed } from "../../words/isolated.js";
import { kelvin, steps, stops } from "../../words/numbers.js";
import { driftedTable, driftedWords } from "./drifted.js";
import { setText } from "./set-text.js";
import { slip } from "./slip.js";

/** How much of the strip has to be on the screen to count as in sight. */
const LEAST_SEEN = 0.4;
/** Pairs of unlike lights that are told at once, the least alike first. */
const MOST_PAIRS = 3;

class SetView extends Page {
  static properties = { open: {}, ...properties({ own: ["gelled", "past"] }) };

  constructor() {
    super();
    this.agree = /** @type {LiveQuestion<"agree">} */ (new LiveQuestion(this));
    this.chart = /** @type {LiveQuestion<"field">} */ (
      new LiveQuestion(this, { after: [this.agree] })
    );
    this.levels = /** @type {LiveQuestion<"levels">} */ (
      new LiveQuestion(this, { after: [this.agree] })
    );
    this.seen = /** @type {LiveQuestion<"seen">} */ (
      new LiveQuestion(this, { after: [this.agree] })
    );
    /** Id of the setup to open; empty for where one works. */
    this.open = "";
    /** Whether the strip shows the lights with their gels on. */
    this.gelled = false;
    /** Whether the strip has been scrolled out of sight. */
    this.past = false;
    /** Tells when it is. @type {IntersectionObserver | undefined} */
    this.sight = undefined;
    /** @type {ReturnType<typeof lightsOf>} the lights of the present question, in its order */
    this.asked = [];
    /** The light that the levels of the others are told against. */
    this.key = /** @type {ReturnType<typeof keyOf> | undefined} */ (undefined);
    this.watch = new Watch(this, book, settings, gels);
  }

  connectedCallback() {
    super.connectedCallback();
    this.sight = new IntersectionObserver(
      (seen) => {
        const { intersectionRatio, boundingClientRect: box } = seen[seen.length - 1];
        this.past = box.height > 0 && intersectionRatio < LEAST_SEEN && box.top < innerHeight / 2;
      },
      { threshold: LEAST_SEEN },
    );
  }

  disconnectedCallback() {
    super.disconnectedCallback();
    this.sight?.disconnect();
  }

  updated(/** @type {Map<string, unknown>} */ changed) {
    // An address of its own, such as one pinned to the home screen, opens its setup.
    if (changed.has("open") && this.open) this.openPinned(this.open).catch(reportFault);
    const strip = this.querySelector(".strip:not(.low)");
    if (strip) this.sight?.observe(strip);
    else this.past = false;
  }

  /** @param {string} id */
  async openPinned(id) {
    const here = location.hash;
    if (book.standing(id)) await openSetup(id);
    else say(t("book.gone"));
    // Whoever opens another setup now is not brought back here by a reload.
    if (location.hash === here) location.replace("#set");
  }

  willUpdate() {
    const lights = lightsOf(currentSetup());
    this.asked = lights;
    const readings = lights.map(litQuestion);
    const hero = lights.findIndex(({ light }) => light.id === heroOf(currentSetup())?.light.id);
    const target = centreOf();
    this.agree.put(
      lights.length
        ? {
            ask: "agree",
            lights: readings,
            ...(hero >= 0 ? { hero } : { target }),
            ...terms(),
            ...judging(this.cameraCan),
          }
        : null,
    );
    this.key = keyOf(lights, currentSetup());
    const { hangs } = this;
    this.levels.put(levelsQuestion(lights, this.key, hangs));
    this.seen.put(
      this.answer
        ? {
            ask: "seen",
            white: target,
            ...judging(this.cameraCan),
            ...withOwnGels(),
            lights: readings.map(({ meant, ...reading }, i) => ({
              reading: withGels(reading, hangs[i]?.curves),
              ...(hangs[i] ? { pack: hangs[i].gels ?? [] } : {}),
              ...(meant ? { meant } : {}),
            })),
          }
        : null,
    );
    this.chart.put(
      this.answer
        ? {
            ask: "field",
            target,
            tolerance: settings.get("tolerance"),
            ...gelTerms(),
            lights: readings.map((reading, i) => withGels(reading, hangs[i]?.curves)),
            packs: hangs.map((pack) => pack?.gels ?? null),
          }
        : null,
    );
  }

  /**
   * What is to hang on each light: by the kept plan until the light is read again, else the advice.
   * @returns {({gels: string[] | null, stops_lost: number, curves?: {name: string}[]} | null)[]}
   */
  get hangs() {
    return this.asked.map(({ light, reading }, i) => {
      const one = this.answer?.lights[i];
      if (!toDo(light, reading)) {
        return one && !one.problem && !dimsFirst(one) ? one.pack : null;
      }
      const { does, gels: names, gel_ids: ids, stops_lost } = light.data.planned;
      if (does !== "gel") return { gels: null, stops_lost };
      return { gels: labels(names, ids), stops_lost, curves: curves(names, ids) };
    });
  }

  /** Whether the kept plan says what is to hang on some light. */
  get byPlan() {
    return this.asked.some(({ light, reading }) => toDo(light, reading));
  }

  get cameraCan() {
    return cameraCan(this.asked, heroOf(currentSetup()));
  }

  /** Who judges, once spectra are known, and where eye and camera differ. @param {any} answer */
  renderJudge(answer) {
    if (!this.asked.some(({ reading }) => reading.data.spectrum)) return nothing;
    if (!this.cameraCan) return html`<p class="hint">${t("judge.heroless")}</p>`;
    const differ = answer?.disagree?.map((/** @type {number} */ i) => answer.lights[i].name);
    return html`
      ${segments({
        name: "judge",
        legend: t("judge.by"),
        value: settings.get("judge"),
        options: { observer: t("judge.observer"), camera: t("judge.camera") },
        onChange: (judge) =>
          settings.set("judge", /** @type {"camera"} */ (judge)).catch(reportFault),
      })}
      ${
        differ
          ? html`<p class="judged">
                ${
                  differ.length
                    ? t("judge.differ", { n: differ.length, names: listed(differ) })
                    : t("judge.same")
                }
              </p>
              ${whichCamera()}`
          : nothing
      }
    `;
  }

  /** How a grey card looks under each light, in the order of the question. */
  get looks() {
    const { answer } = this.seen;
    return answer?.lights.length === this.asked.length ? answer.lights.map(lookOf) : [];
  }

  /** @param {any} answer */
  tiles(answer) {
    const { looks, gelled } = this;
    const levels = this.levels.answer?.lights ?? [];
    return this.asked.map((lit, i) => {
      const one = answer.lights[i];
      const look = looks[i];
      const level = levels[i]?.problem ? undefined : levels[i];
      const state = (gelled && level?.gelled) || level?.now;
      return {
        name: lit.light.data.name,
        colour: ((gelled && look?.with_pack) || look?.as_read)?.grey,
        meant: look?.as_meant?.grey,
        stops: lit === this.key ? 0 : (state?.stops_to_key ?? null),
        verdict: (gelled && this.verdictThen(i)) || one.verdict,
      };
    });
  }

  /** The strip above what is scrolled, so that it never leaves the screen. @param {any} answer */
  renderAbove(answer) {
    if (!answer || !this.past) return nothing;
    return html`<div class="above">
      <div>
        ${strip(this.tiles(answer), {
          title: "",
          low: true,
          onTouch: (index) => this.openSlip(index),
        })}
        <button
          type="button"
          class="chip"
          aria-pressed=${this.gelled ? "true" : "false"}
          @click=${() => {
            this.gelled = !this.gelled;
          }}
        >
          ${t("strip.gelled")}
        </button>
      </div>
    </div>`;
  }

  renderStrip(/** @type {any} */ answer) {
    return html`
      ${strip(this.tiles(answer), {
        title: t("strip.title"),
        onTouch: (index) => this.openSlip(index),
      })}
      <div class="strip-of">
        ${segments({
          name: "strip",
          legend: t("strip.show"),
          quiet: true,
          value: this.gelled ? "gelled" : "read",
          options: { read: t("strip.read"), gelled: t("strip.gelled") },
          onChange: (value) => {
            this.gelled = value === "gelled";
          },
        })}
        <ek-patch-light></ek-patch-light>
      </div>
    `;
  }

  /** Whether a light holds with what is to hang on it. @param {number} i */
  verdictThen(i) {
    const { light, reading } = this.asked[i];
    if (toDo(light, reading)) return light.data.planned.verdict;
    const one = this.answer?.lights[i];
    return one && !one.problem && this.hangs[i] ? one.pack?.verdict : undefined;
  }

  /** @param {number} index of a light */
  openSlip(index) {
    const details = this.querySelectorAll(".slip > details")[index];
    if (!details) return;
    /** @type {HTMLDetailsElement} */ (details).open = true;
    details.scrollIntoView({ block: "nearest" });
    details.querySelector("summary")?.focus({ preventScroll: true });
  }

  /** The answer, if it is about as many lights as stand here now. */
  get answer() {
    const { answer } = this.agree;
    return answer?.lights.length === this.asked.length ? answer : undefined;
  }

  /** @param {string} light @param {string[]} [advised] what the slip says is to hang */
  measure(light, advised) {
    const earlier = lightDraft.typed;
    if (lightDraft.unsaved) {
      sayWithUndo(t("light.setAside"), () => lightDraft.start(earlier));
    }
    lightDraft.measureAgain(light, advised);
    lightDraft.toType = true;
    route.go("light");
  }

  /** One more light that is the same as one here. @param {import("../../store/log/book.js").Thing} light */
  async twin(light) {
    const of = light.data.name;
    const kept = await keepTwinOf(light.id, {
      note: t("light.twinNote", { name: of }),
      target: await targetToKeep(centreOf()),
      meant: saidOf(light.id),
    });
    sayWithUndo(t("light.twinKept", { name: kept.name, of }), () => takeBack(kept));
  }

  async share() {
    const setup = currentSetup();
    const text = setText(this.answer, {
      place: placeWords(setup),
      against: againstWords(),
      levels: this.levels.answer?.lights,
      plans: this.asked.map(({ light, reading }) =>
        toDo(light, reading) ? light.data.planned : undefined,
      ),
      key: this.key?.light.data.name,
      meant: this.asked.map(({ light }) => meantBeside(light.id)),
    });
    await shareText(placeWords(setup), text);
  }

  /** @param {any} answer */
  renderSummary(answer) {
    if (!answer.spread) {
      return html`<p class="reason">${answer.work.words}</p>
        ${warningList(answer.warnings)}`;
    }
    const out = answer.odd_ones_out.length;
    const all = answer.lights.filter((/** @type {any} */ light) => light.verdict).length;
    const named = (/** @type {number[]} */ some) => listed(some.map((i) => answer.lights[i].name));
    const found = answer.found.length;
    return html`
      <p class="headline" data-testid="headline">
        ${
          driftedWords(this.asked, answer) ||
          (!all
            ? t("set.allFound")
            : out
              ? t("set.out", { n: out, all })
              : t("set.agrees", { n: all }))
        }
      </p>
      ${out ? html`<p class="now">${named(answer.odd_ones_out)}</p>` : nothing}
      ${
        found && all
          ? html`<p class="reason">${t("set.found", { n: found, names: named(answer.found) })}</p>`
          : nothing
      }
    `;
  }

  /** What stands behind the headline. @param {any} answer */
  renderFigures(answer) {
    if (!answer.spread) return nothing;
    return html`
      ${driftedTable(this.asked, answer)}
      ${figures([
        [t("set.target"), kelvin(answer.target.cct_K)],
        [t("set.spread"), steps(answer.spread.steps)],
        [t("set.cost"), stops(answer.work.stops_lost_max)],
      ])}
      <p class="reason">${answer.work.words}</p>
      ${warningList(answer.warnings)} ${this.renderUnlike(answer)}
    `;
  }

  renderField() {
    const { answer, waiting } = this.chart;
    if (answer) return balanceField(answer, { title: t("field.titleSet") });
    return waiting ? balanceFieldToCome(this.asked.map(({ light }) => light.data.name)) : nothing;
  }

  /** Lights that agree in x y but not in spectrum. @param {any} answer */
  renderUnlike(answer) {
    const lights = lightsOf(currentSetup());
    const line = (/** @type {any} */ { pair, words }) => {
      const [first, second] = pair.map((/** @type {number} */ k) => lights[k]?.light.id);
      return html`<li>${words} <a href="#pair/${first}/${second}">${t("set.unlike")}</a></li>`;
    };
    const [worst, others] = [
      answer.unlike_pairs.slice(0, MOST_PAIRS),
      answer.unlike_pairs.slice(MOST_PAIRS),
    ];
    if (!worst.length) return nothing;
    return html`<ul class="warnings">
        ${worst.map(line)}
      </ul>
      ${folded(t("set.unlikeMore", { n: others.length }), "warnings", others.map(line))}`;
  }

  /** Lights that wait for their first reading here, such as those of a pick-up. */
  renderUnread(/** @type {import("../../store/log/book.js").Thing | undefined} */ setup) {
    const lights = unreadLights(setup);
    if (lights.length === 0) return nothing;
    return html`<section>
      <h2>${t("set.unread", { n: lights.length })}</h2>
      <div class="row">
        ${lights.map(
          (light) => html`<button type="button" @click=${() => this.measure(light.id)}>
            ${t("set.readName", { name: light.data.name })}
          </button>`,
        )}
      </div>
    </section>`;
  }

  render() {
    const setup = currentSetup();
    const lights = lightsOf(setup);
    const { answer } = this;
    const { problem } = this.agree;
    return html`
      ${this.renderAbove(answer)}
      <h1 class="place">${t("place.set")} <a href="#book">${placeWords(setup)}</a></h1>
      <ek-against></ek-against>
      ${this.renderUnread(setup)}
      ${
        lights.length
          ? html`
              <section class="answer" aria-label=${t("set.summary")} aria-busy=${this.agree.waiting}>
                <ek-boot-progress></ek-boot-progress>
                ${answer ? this.renderSummary(answer) : nothing}
                ${problemNote(problem?.message)}
                ${answer ? this.renderStrip(answer) : nothing}
                ${this.renderField()}
              </section>
              <ek-plan-note></ek-plan-note>
              <ol class="slips">
                ${lights.map(({ light, reading }, index) => {
                  const one = answer?.lights[index];
                  return slip({
                    light,
                    reading,
                    answer: one?.problem ? undefined : one,
                    hero: light.id === setup?.data.hero,
                    number: String(index + 1),
                    level: levelLine(
                      this.levels.answer?.lights[index],
                      this.key?.light.data.name ?? "",
                      this.byPlan,
                    ),
                    problem: one?.problem?.message,
                    colours: colours(this.looks[index]),
                    twin: nextName(setup, light.data.name),
                    onTwin: () => this.twin(light).catch(reportFault),
                    onMeasure: () =>
                      this.measure(light.id, one && !one.problem ? one.pack?.gels : undefined),
                  });
                })}
              </ol>
              <section aria-label=${t("set.figures")}>
                ${answer ? this.renderFigures(answer) : nothing}
                ${problemNote(this.seen.problem?.message)}
                ${problemNote(
                  this.levels.problem &&
                    t("exposure.cameraProblem", { message: this.levels.problem.message }),
                )}
                <ek-mains-warning
                  .lamps=${lights.map(({ light }) => light.data.lamp)}
                ></ek-mains-warning>
              </section>
              ${this.renderJudge(answer)}
              <p class="row">
                <a class="button" href="#hang">${t("hang.title")}</a>
                <a class="button" href="#balance">${t("balance.open")}</a>
                <a class="button" href="#mix">${t("mix.heading")}</a>
                <a class="button" href="#sweep">${t("sweep.heading")}</a>
              </p>
              ${keyChoice(lights, setup)}
              <ek-findings></ek-findings>
              ${answer ? cautionNote() : nothing}
              <div class="actions">
                <button type="button" ?disabled=${!answer} @click=${this.share}>
                  ${t("set.share")}
                </button>
                <a class="button" href="#share/${setup?.id}">${t("hang.share")}</a>
                <a class="button main" href="#light" @click=${() => lightDraft.unsaved || lightDraft.start()}>
                  ${t("set.add")}
                </a>
              </div>
            `
          : html`<section class="empty">
              <p>${t("set.empty")}</p>
              <div class="actions">
                <a class="button" href="#sweep">${t("sweep.heading")}</a>
                <a class="button main" href="#light">${t("set.add")}</a>
              </div>
            </section>`
      }
    `;
  }
}
customElements.define("ek-set", SetView);

/** As read and with its gels, where those change it. @param {any} look */
function colours(look) {
  return [look?.as_read, look?.with_pack].flatMap((one) => one?.grey ?? []);
}
