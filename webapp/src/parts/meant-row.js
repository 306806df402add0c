/**
 * What a light is meant to be beside the white: a chip that says it and opens the choices. What is
 * typed is said once it is whole.
 */
import { html, nothing } from "lit";
import { LiveQuestion } from "../base/live-question.js";
import { Page } from "../base/page.js";
import { properties } from "../base/properties.js";
import { Watch } from "../base/watch.js";
import { book, reportFault, settings } from "../store/index.js";
import { gels } from "../store/kit/gels.js";
import { withOwnGels } from "../store/kit/own-gels.js";
import { labels } from "../store/log/measured-gels.js";
import { currentSetup, earlierOf, lightsOf } from "../store/log/shoot.js";
import { aimed, centreOf } from "../store/log/target.js";
import { t } from "../words/index.js";
import { kelvin } from "../words/numbers.js";
import { againstWords } from "./against.js";
import { gelPicker } from "./gel-picker.js";
import { choice, segments, textField } from "./inputs.js";
import { likeName, meantWords } from "./meant-words.js";
import { problemNote } from "./warnings.js";

/** @typedef {import("../store/log/target.js").Said} Said */
/** @typedef {"white" | "warmer" | "cooler" | "through" | "own" | "like" | "found"} Way */

const WAYS = /** @type {const} */ ([
  "white",
  "warmer",
  "cooler",
  "through",
  "own",
  "like",
  "found",
]);

/** What an offset starts at, and by how much the stepper moves it, in mired. */
const FIRST = 50;
const STEP = 5;

/** How long choices in the book wait for the next tap, in ms: each is an entry there. */
const PAUSE = 500;

/** A light that is meant like itself as it was, in the list of those it may be like. */
const ITSELF = "itself";

/** @param {Said} said @returns {Way} */
function wayOf(said) {
  if (!said) return "white";
  if (said.as === "found") return "found";
  if ("warmer_mired" in said) return "warmer";
  if ("cooler_mired" in said) return "cooler";
  if ("as_through" in said) return "through";
  if ("like" in said) return "like";
  return said.as ? "white" : "own";
}

/** Whether nothing is left to be typed. @param {Said} said */
function whole(said) {
  if (!said) return true;
  const { warmer_mired, cooler_mired, as_through, like, as, cct_K, x, y } = said;
  const filled = (/** @type {unknown} */ value) => String(value ?? "").trim() !== "";
  return Boolean(
    as ||
      filled(warmer_mired ?? cooler_mired) ||
      as_through?.length ||
      like ||
      filled(cct_K) ||
      (filled(x) && filled(y)),
  );
}

class MeantRow extends Page {
  static properties = properties({
    given: ["light", "said", "atOnce", "say"],
    own: ["typed", "open"],
  });

  constructor() {
    super();
    /** Id of the light, null for one that the book does not have yet. @type {string | null} */
    this.light = null;
    /** What is said of it. @type {Said} */
    this.said = null;
    /** Whether it is kept in a draft, where no tap needs to wait for the next. */
    this.atOnce = false;
    /** @type {(said: Said) => unknown} */
    this.say = () => {};
    /** What is being typed; undefined once it is said. @type {Said | undefined} */
    this.typed = undefined;
    this.open = false;
    /** @type {LiveQuestion<"field">} */
    this.place = new LiveQuestion(this);
    this.watch = new Watch(this, book, settings, gels);
  }

  /** @type {ReturnType<typeof setTimeout> | undefined} */ #timer;

  disconnectedCallback() {
    this.#settle();
    super.disconnectedCallback();
  }

  /** What stands in the fields. @returns {Said} */
  get shown() {
    return this.typed === undefined ? this.said : this.typed;
  }

  /** @param {Said} said */
  type(said) {
    this.typed = said;
    clearTimeout(this.#timer);
    if (this.atOnce) this.#settle();
    else this.#timer = setTimeout(() => this.#settle(), PAUSE);
  }

  #settle() {
    clearTimeout(this.#timer);
    const { typed } = this;
    if (typed === undefined || !whole(typed)) return;
    Promise.resolve(this.say(typed))
      .then(() => {
        if (this.typed === typed) this.typed = undefined;
      })
      .catch(reportFault);
  }

  /** The lights that this one may be like. */
  get others() {
    const setup = book.standing(this.light)?.parent;
    const lights = lightsOf(setup ? book.thing(setup) : currentSetup());
    return lights.filter(({ light }) => light.id !== this.light);
  }

  willUpdate() {
    const { shown } = this;
    const asks = this.open && whole(shown) && !["white", "found"].includes(wayOf(shown));
    const target = centreOf();
    this.place.put(
      asks
        ? {
            ask: "field",
            target,
            lights: [aimed(target, this.light, shown)],
            ...withOwnGels(),
          }
        : null,
    );
  }

  /** @param {Way} way */
  choose(way) {
    const { shown } = this;
    if (wayOf(shown) === way) return;
    const offset = shown?.warmer_mired ?? shown?.cooler_mired ?? String(FIRST);
    const tint = wayOf(shown) !== "own" && shown?.duv ? { duv: shown.duv } : {};
    switch (way) {
      case "white":
        return this.type(earlierOf(this.light) ? { as: "white" } : null);
      case "warmer":
        return this.type({ warmer_mired: offset, ...tint });
      case "cooler":
        return this.type({ cooler_mired: offset, ...tint });
      case "through":
        return this.type({ as_through: [] });
      case "own":
        return this.type({ cct_K: "", duv: "" });
      case "like":
        return this.like(earlierOf(this.light) ? ITSELF : this.others[0].light.id);
      case "found":
        return this.type({ as: "found" });
    }
  }

  /** @param {string} light */
  like(light) {
    this.type(light === ITSELF ? null : { like: light });
  }

  /** The way that is marked: of a pick-up nothing said is as it was. @returns {Way} */
  get way() {
    const { shown } = this;
    return !shown && earlierOf(this.light) ? "like" : wayOf(shown);
  }

  renderOffset() {
    const { shown } = this;
    const name = shown?.warmer_mired === undefined ? "cooler_mired" : "warmer_mired";
    const offset = String(shown?.[name] ?? "");
    const to = (/** @type {string} */ value) => this.type({ ...shown, [name]: value });
    const step = (/** @type {number} */ by) => () =>
      to(String(Math.max(0, (Number(offset.replace(",", ".")) || 0) + by)));
    return html`<div class="stepper">
      <button type="button" aria-label=${t("meant.less", { n: STEP })} @click=${step(-STEP)}>
        −${STEP}
      </button>
      ${textField({
        id: `meant-offset-${this.light ?? "new"}`,
        label: t("meant.offset"),
        unit: "mired",
        number: true,
        value: offset,
        problem: this.problemAt(name),
        onInput: to,
      })}
      <button type="button" aria-label=${t("meant.more", { n: STEP })} @click=${step(STEP)}>
        +${STEP}
      </button>
    </div>
    ${textField({
      id: `meant-tint-${this.light ?? "new"}`,
      label: t("meant.tint"),
      hint: t("meant.tintHint"),
      number: true,
      value: String(shown?.duv ?? ""),
      signed: true,
      problem: this.problemAt("duv"),
      onInput: (duv) => this.type({ ...shown, duv }),
    })}`;
  }

  renderOwn() {
    const { shown } = this;
    const id = this.light ?? "new";
    const byXy = Boolean(shown && "x" in shown);
    const field = (/** @type {"x" | "y" | "cct_K" | "duv"} */ name, /** @type {string} */ label) =>
      textField({
        id: `meant-${name}-${id}`,
        label,
        unit: name === "cct_K" ? "K" : undefined,
        number: true,
        signed: name === "duv",
        value: String(shown?.[name] ?? ""),
        problem: this.problemAt(name),
        onInput: (value) => this.type({ ...shown, [name]: value }),
      });
    return html`
      ${segments({
        name: `meant-by-${id}`,
        legend: t("light.way"),
        quiet: true,
        value: byXy ? "xy" : "cct",
        options: { cct: t("light.wayCct"), xy: t("light.wayXy") },
        onChange: (by) => this.type(by === "xy" ? { x: "", y: "" } : { cct_K: "", duv: "" }),
      })}
      <div class="pair">
        ${
          byXy
            ? [field("x", "x"), field("y", "y")]
            : [field("cct_K", t("light.cct")), field("duv", t("light.duv"))]
        }
      </div>
    `;
  }

  renderLike() {
    const { shown } = this;
    const then = earlierOf(this.light);
    const { others } = this;
    const elsewhere =
      typeof shown?.like === "string" && !others.some(({ light }) => light.id === shown.like)
        ? [{ value: shown.like, label: likeName(this.light, shown.like) }]
        : [];
    return choice({
      id: `meant-like-${this.light ?? "new"}`,
      label: t("meant.likeWhich"),
      value: typeof shown?.like === "string" ? shown.like : ITSELF,
      options: [
        ...(then || typeof shown?.like === "object"
          ? [{ value: ITSELF, label: meantWords(this.light, shown?.like ? shown : null) }]
          : []),
        ...elsewhere,
        ...others.map(({ light }) => ({ value: light.id, label: light.data.name })),
      ],
      onChange: (light) => this.like(light),
    });
  }

  renderMore() {
    const { shown } = this;
    switch (this.way) {
      case "warmer":
      case "cooler":
        return this.renderOffset();
      case "through":
        return gelPicker({
          id: `meant-through-${this.light ?? "new"}`,
          label: t("meant.throughWhich"),
          value: labels(shown?.as_through, shown?.gel_ids),
          onChange: (names) => this.type({ as_through: names }),
        });
      case "own":
        return this.renderOwn();
      case "like":
        return this.renderLike();
      case "found":
        return html`<p class="hint">${t("meant.foundHint")}</p>`;
      case "white":
        return nothing;
    }
  }

  /** @param {string} name of a field of what is meant */
  problemAt(name) {
    const problem = this.place.answer?.lights[0].problem;
    return problem?.field === `meant.${name}` ? problem.message : undefined;
  }

  /** Where that is, beside the white of now. */
  renderPlace() {
    const { answer, problem } = this.place;
    if (!whole(this.shown)) return html`<p class="hint">${t("meant.open")}</p>`;
    const wrong = answer?.lights[0].problem ?? problem;
    const shown = ["warmer_mired", "cooler_mired", "x", "y", "cct_K", "duv"].some(
      (name) => this.problemAt(name) && this.shown && name in this.shown,
    );
    if (wrong) return shown ? nothing : problemNote(wrong.message);
    const [target] = answer?.targets ?? [];
    return target
      ? html`<p class="hint" data-testid="meant-at">
          ${t("meant.at", { cct: kelvin(target.cct_K), white: againstWords() })}
        </p>`
      : nothing;
  }

  renderPanel() {
    const ways = WAYS.filter(
      (way) => way !== "like" || this.way === "like" || earlierOf(this.light) || this.others.length,
    );
    return html`<div class="panel">
      <div class="row" role="group" aria-label=${t("meant.label")}>
        ${ways.map(
          (way) => html`<button
            type="button"
            class="chip"
            aria-pressed=${way === this.way ? "true" : "false"}
            @click=${() => this.choose(way)}
          >
            ${t(`meant.way.${way}`)}
          </button>`,
        )}
      </div>
      ${this.renderMore()} ${this.renderPlace()}
    </div>`;
  }

  render() {
    return html`<details
      class="meant"
      @toggle=${(/** @type {Event} */ event) => {
        this.open = /** @type {HTMLDetailsElement} */ (event.target).open;
        if (!this.open) this.#settle();
      }}
    >
      <summary class="chip">
        <span class="what">${t("meant.label")}:</span>
        <strong>${meantWords(this.light, this.said)}</strong>
      </summary>
      ${this.open ? this.renderPanel() : nothing}
    </details>`;
  }
}
customElements.define("ek-meant", MeantRow);
