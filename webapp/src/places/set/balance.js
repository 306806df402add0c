/** Balance everything: one white for the camera, and what to hang or dial on each light for it. */
import { html, nothing } from "lit";
import { figures } from "../../charts/figures.js";
import { Keeping } from "../../parts/keeping.js";
import "./before-after.js";
import "../../parts/boot-progress.js";
import { LiveQuestion } from "../../base/live-question.js";
import { Page } from "../../base/page.js";
import { properties } from "../../base/properties.js";
import { cautionNote } from "../../parts/caution-note.js";
import "../../parts/meant-row.js";
import { optionsOf, segments, textField } from "../../parts/inputs.js";
import { shareText } from "../../parts/share-text.js";
import { hangingList, hangingText } from "./hanging-list.js";
import "../../parts/spoken.js";
import { Watch } from "../../base/watch.js";
import { longWork, stoppedNote } from "../../parts/long-work.js";
import { sayWithUndo } from "../../parts/toast.js";
import { problemNote, warningList } from "../../parts/warnings.js";
import { whichCamera } from "../../parts/which-camera.js";
import { route } from "../../router.js";
import { book, reportFault, settings } from "../../store/index.js";
import { gels } from "../../store/kit/gels.js";
import { keepRange, rangeOf, typedSince } from "../../store/kit/lamps.js";
import { balanceQuestion, keepPlan, mayOf } from "../../store/log/plan.js";
import { currentSetup, lightsOf, placeWords, sayMeant } from "../../store/log/shoot.js";
import { litQuestion, saidOf } from "../../store/log/target.js";
import { t } from "../../words/index.js";
import { kelvin, stops } from "../../words/numbers.js";

/** @typedef {import("../../store/log/book.js").Thing} Thing */
/** @typedef {import("../../store/log/target.js").Said} Said */

/** What may be done to a light, as one choice. */
const MAY = /** @type {const} */ ({
  leave: [],
  gel: ["gel"],
  dial: ["dial"],
  either: ["gel", "dial"],
});

/** @param {string[]} may */
const choiceOf = (may) =>
  /** @type {(keyof typeof MAY)[]} */ (Object.keys(MAY)).find(
    (key) => MAY[key].length === may.length && MAY[key].every((word) => may.includes(word)),
  ) ?? "gel";

class BalanceView extends Page {
  static properties = properties({ own: ["chosen", "typed"] });

  constructor() {
    super();
    /** Which of the front is looked at. */
    this.chosen = 0;
    /** What is being typed about a light, by its id, until the field is left. */
    this.typed = /** @type {Record<string, Record<string, string>>} */ ({});
    this.keeping = new Keeping(this);
    this.balance = /** @type {LiveQuestion<"balance">} */ (new LiveQuestion(this));
    /** @type {ReturnType<typeof lightsOf>} the lights of the present question, in its order */
    this.lights = [];
    /** @type {ReturnType<typeof balanceQuestion> | null} */
    this.question = null;
    this.watch = new Watch(this, book, settings, gels);
  }

  willUpdate() {
    const lights = lightsOf(currentSetup());
    this.lights = lights;
    this.question = lights.length ? balanceQuestion(lights) : null;
    this.balance.put(this.question);
  }

  /** The answer, if it is about as many lights as stand here now. */
  get answer() {
    const { answer } = this.balance;
    return answer?.lights.length === this.lights.length ? answer : undefined;
  }

  /** The lights that the plans are about, in their order. */
  get balanced() {
    return this.lights.filter((_, index) => !this.answer?.lights[index].problem);
  }

  get plan() {
    const front = this.answer?.front ?? [];
    return front[this.chosen] ?? front[0];
  }

  /** @param {number} index of a light @param {string} path of a field of it */
  problemAt(index, path) {
    const problem = this.answer?.lights[index].problem;
    return problem?.field === path ? problem.message : undefined;
  }

  /** The sentence of a problem that no field on the screen shows. */
  get otherProblem() {
    const { problem } = this.balance;
    return problem?.field.startsWith("whites.") ? t("balance.lookBelow") : problem?.message;
  }

  /** @param {Record<string, string>} fields */
  bound(fields) {
    settings.set("whites", { ...settings.get("whites"), ...fields }).catch(reportFault);
  }

  keep() {
    const setup = currentSetup();
    const { balanced, plan, question } = this;
    if (!setup || !question || !plan) return;
    const onward = route.onward();
    this.keeping.run(async () => {
      const undo = await keepPlan(setup, balanced, plan, question);
      sayWithUndo(t("balance.kept", { white: kelvin(plan.white.cct_K) }), undo);
      onward("set");
    });
  }

  async share() {
    const place = placeWords(currentSetup());
    await shareText(place, hangingText(this.plan, place));
  }

  /** @param {Thing} light @param {number} index */
  renderLight(light, index) {
    const choice = choiceOf(mayOf(light));
    const typed = this.typed[light.id] ?? {};
    const dial = { ...rangeOf(light), ...typed };
    const type = (/** @type {string} */ key) => (/** @type {string} */ value) => {
      this.typed = { ...this.typed, [light.id]: { ...typed, [key]: value } };
    };
    const save = () => {
      const sent = this.typed[light.id] ?? {};
      const { cuts, ...range } = sent;
      const kept = cuts === undefined ? Promise.resolve() : book.edit(light.id, { cuts });
      const held = Object.keys(range).length
        ? keepRange(light, { ...rangeOf(light), ...range })
        : Promise.resolve();
      Promise.all([kept, held])
        .then(() => {
          const since = typedSince(this.typed[light.id] ?? {}, sent);
          this.typed = { ...this.typed, [light.id]: since };
        })
        .catch(reportFault);
    };
    const number = (
      /** @type {string} */ key,
      /** @type {string} */ label,
      /** @type {string} */ unit,
      /** @type {string} */ value,
      /** @type {string} */ path,
    ) =>
      textField({
        id: `${key}-${light.id}`,
        label,
        unit,
        number: true,
        value,
        problem: this.problemAt(index, path),
        onInput: type(key),
      });
    return html`<li>
      ${segments({
        name: `may-${light.id}`,
        legend: light.data.name,
        value: choice,
        options: optionsOf(/** @type {"gel"[]} */ (Object.keys(MAY)), (key) => t(`may.${key}`)),
        onChange: (key) =>
          book.edit(light.id, { may: [...MAY[/** @type {"gel"} */ (key)]] }).catch(reportFault),
      })}
      <ek-meant
        .light=${light.id}
        .said=${saidOf(light.id)}
        .say=${(/** @type {Said} */ said) => sayMeant(light.id, said)}
      ></ek-meant>
      <div class="pair" @change=${save}>
        ${
          choice === "dial" || choice === "either"
            ? [
                number("from_K", t("balance.dialFrom"), "K", dial.from_K ?? "", "dial.from_K"),
                number("to_K", t("balance.dialTo"), "K", dial.to_K ?? "", "dial.to_K"),
              ]
            : nothing
        }
      </div>
      <div class="beside" @change=${save}>
        ${
          choice === "gel" || choice === "either"
            ? number("cuts", t("balance.cuts"), "", typed.cuts ?? light.data.cuts ?? "", "cuts")
            : nothing
        }
      </div>
    </li>`;
  }

  renderWhites() {
    const whites = settings.get("whites");
    const { cct_K } = settings.get("white");
    const free = !whites.from_K.trim() && !whites.to_K.trim();
    const only = whites.from_K === cct_K && whites.to_K === cct_K;
    const bound = (
      /** @type {"from_K" | "to_K" | "step_K" | "duv_limit"} */ key,
      /** @type {string} */ unit,
    ) =>
      textField({
        id: `whites-${key}`,
        label: t(`balance.${key}`),
        unit,
        number: true,
        value: whites[key],
        problem: this.balance.problemAt(`whites.${key}`),
        onInput: (value) => this.bound({ [key]: value }),
      });
    return html`
      <h2>${t("balance.white")}</h2>
      <div class="row" role="group" aria-label=${t("balance.white")}>
        <button
          type="button"
          class="chip"
          aria-pressed=${free ? "true" : "false"}
          @click=${() => this.bound({ from_K: "", to_K: "" })}
        >
          ${t("balance.anyWhite")}
        </button>
        <button
          type="button"
          class="chip"
          aria-pressed=${only ? "true" : "false"}
          @click=${() => this.bound({ from_K: cct_K, to_K: cct_K })}
        >
          ${t("balance.onlyWhite", { cct: cct_K })}
        </button>
      </div>
      <div class="pair">${bound("from_K", "K")} ${bound("to_K", "K")}</div>
      <div class="pair">${bound("step_K", "K")} ${bound("duv_limit", "")}</div>
    `;
  }

  /** @param {any} plan @param {number} index */
  renderCard(plan, index) {
    const on = plan === this.plan;
    return html`<li class="plan ${on ? "on" : ""}">
      <label>
        <input
          type="radio"
          name="plan"
          .checked=${on}
          @change=${() => {
            this.chosen = index;
          }}
        />
        <span class="plan-words">${plan.words}</span>
      </label>
      ${figures([
        [t("balance.pieces"), plan.pieces],
        [t("balance.lost"), stops(plan.stops_lost)],
        [t("balance.out"), plan.out.length],
      ])}
      ${
        this.answer?.exact
          ? nothing
          : html`<p class="hint">
              ${
                plan.exact
                  ? t("balance.exact")
                  : t("balance.atLeast", { stops: stops(plan.at_least_stops) })
              }
            </p>`
      }
    </li>`;
  }

  /** @param {any} plan @param {any[]} lights */
  renderPlan(plan, lights) {
    const warnings = plan.per_light.flatMap((/** @type {any} */ part) =>
      (part.pack?.warnings ?? []).map((/** @type {string} */ words) => `${part.name}: ${words}`),
    );
    return html`<section class="sheet" aria-label=${t("balance.list")}>
      <h2>${t("balance.list")}</h2>
      <p class="reason">${placeWords(currentSetup())}. ${plan.words}</p>
      ${hangingList(plan)} ${warningList(warnings)} ${cautionNote()}
      ${this.keeping.note()}
      <div class="actions">
        <button type="button" class="quiet" @click=${() => window.print()}>
          ${t("balance.print")}
        </button>
        <button type="button" @click=${this.share}>${t("set.share")}</button>
        <button
          type="button"
          class="main"
          ?disabled=${this.keeping.busy || this.balance.waiting}
          @click=${this.keep}
        >
          ${t("balance.keep")}
        </button>
      </div>
      <ek-before-after
        .white=${plan.white}
        .parts=${plan.per_light}
        .lights=${lights.map(litQuestion)}
      ></ek-before-after>
    </section>`;
  }

  render() {
    const setup = currentSetup();
    const { answer, plan, lights } = this;
    if (!lights.length) {
      return html`<h1>${t("balance.heading")}</h1>
        <section class="empty">
          <p>${t("set.empty")}</p>
          <div class="actions">
            <a class="button main" href="#light">${t("set.add")}</a>
          </div>
        </section>`;
    }
    return html`
      <h1 class="place">${t("balance.heading")} <a href="#set">${placeWords(setup)}</a></h1>
      <section class="answer" aria-label=${t("balance.front")} aria-busy=${this.balance.waiting}>
        <ek-boot-progress></ek-boot-progress>
        ${problemNote(this.otherProblem)}
        ${
          answer
            ? html`<ol class="plans">
                  ${answer.front.map((/** @type {any} */ one, /** @type {number} */ index) =>
                    this.renderCard(one, index),
                  )}
                </ol>
                <p class="reason">
                  ${answer.words}
                  ${t("balance.tried", { n: answer.plans, whites: answer.whites })}
                </p>
                ${warningList(answer.warnings)}`
            : this.balance.waiting
              ? html`<p class="hint">${t("balance.working")}</p>`
              : nothing
        }
        ${answer?.camera ? whichCamera() : nothing}
        ${this.balance.waiting && !this.balance.found ? longWork(t("balance.longWork"), this.balance.giveUp) : nothing}
        ${this.balance.stopped ? stoppedNote(this.balance.again) : nothing}
      </section>
      <ek-spoken .words=${plan ? plan.words : ""}></ek-spoken>
      <details class="more" ?open=${Boolean(this.balance.problem ?? answer?.lights.some((one) => one.problem))}>
        <summary>${t("balance.terms")}</summary>
        <h2>${t("balance.may")}</h2>
        <p class="hint">${t("balance.mayHint")}</p>
        <ul class="may">
          ${lights.map(({ light }, index) => this.renderLight(light, index))}
        </ul>
        ${this.renderWhites()}
        <p class="hint">${t("balance.stockHint")} <a href="#kit">${t("place.kit")}</a></p>
      </details>
      ${plan ? this.renderPlan(plan, this.balanced) : nothing}
    `;
  }
}
customElements.define("ek-balance", BalanceView);
