/** Mix: what several lights make on one spot, the edge to the zone beside it, and whose share is whose. */

import { html, nothing } from "lit";
import { figures } from "../../charts/figures.js";
import { centreOf } from "../../store/log/target.js";
import "../../parts/boot-progress.js";
import { lookOf, patch } from "../../charts/patch.js";
import "../../charts/ribbon.js";
import { segments } from "../../parts/inputs.js";
import "../../parts/patch-light.js";
import "./findings-list.js";
import { LiveQuestion } from "../../base/live-question.js";
import { Page } from "../../base/page.js";
import { properties } from "../../base/properties.js";
import { slider } from "../../parts/slider.js";
import "../../parts/spoken.js";
import { Watch } from "../../base/watch.js";
import { say } from "../../parts/toast.js";
import { verdictMark } from "../../parts/verdict.js";
import { problemNote, warningList } from "../../parts/warnings.js";
import { book, reportFault, settings } from "../../store/index.js";
import { withOwnGels } from "../../store/kit/own-gels.js";
import { keepFinding } from "../../store/log/findings.js";
import { currentSetup, heroOf, lightsOf, placeWords } from "../../store/log/shoot.js";
import { levelOf } from "../../store/questions/camera.js";
import { t } from "../../words/index.js";
import { duv, index, kelvin, level, percent, steps } from "../../words/numbers.js";
import {
  AS_READ,
  DISTANCES,
  howMixed,
  inZone,
  mixQuestion,
  nearestShare,
  SHARES,
} from "./mixing.js";

/** @typedef {import("./mixing.js").Part} Part */

const WAYS = /** @type {const} */ (["stops", "dimmer", "share", "distance"]);

class MixView extends Page {
  static properties = properties({ given: ["of"], own: ["zones", "at"] });

  constructor() {
    super();
    /** The light it starts from; "" = all of them. */
    this.of = "";
    /** One zone, or two side by side. @type {import("./mixing.js").Zone[]} */
    this.zones = [];
    /** The zone under the sliders. */
    this.at = 0;
    this.mix = /** @type {LiveQuestion<"mix">} */ (new LiveQuestion(this));
    this.standing = /** @type {LiveQuestion<"fix">} */ (
      new LiveQuestion(this, { after: [this.mix] })
    );
    this.rendering = /** @type {LiveQuestion<"render">} */ (
      new LiveQuestion(this, { after: [this.mix] })
    );
    this.seen = /** @type {LiveQuestion<"seen">} */ (new LiveQuestion(this, { after: [this.mix] }));
    this.watch = new Watch(this, book, settings);
  }

  get lights() {
    return lightsOf(currentSetup());
  }

  /**
   * The light we came from with the hero or the first other one; without one, all. Where some
   * lights have a level, those without wait until they are given one.
   */
  start() {
    const { lights } = this;
    const hero = heroOf(currentSetup());
    const second =
      hero && hero.light.id !== this.of ? hero : lights.find(({ light }) => light.id !== this.of);
    const starts = lights.filter(
      ({ light }) => !this.of || light.id === this.of || light.id === second?.light.id,
    );
    const lit = starts.filter(({ reading }) =>
      Object.keys(levelOf(reading.data)).some((name) => name.startsWith("illuminance")),
    );
    return Object.fromEntries(
      (lit.length ? lit : starts).map(({ light }) => [light.id, { ...AS_READ, on: true }]),
    );
  }

  willUpdate() {
    const { lights } = this;
    if (!this.zones.length && lights.length) this.zones = [this.start()];
    const [first, second] = this.zones;
    this.mix.put(first ? mixQuestion(lights, first, second) : null);
    const made = this.shown;
    const reading =
      made && (made.spectrum ? { spectrum: made.spectrum } : { x: made.x, y: made.y });
    this.standing.put(
      made
        ? {
            ask: "fix",
            reading,
            target: centreOf(),
            tolerance: settings.get("tolerance"),
            depth: 1,
            ...withOwnGels(),
          }
        : null,
    );
    this.seen.put(
      reading && !this.ribbon ? { ask: "seen", white: centreOf(), lights: [reading] } : null,
    );
    this.rendering.put(made?.spectrum ? { ask: "render", reading } : null);
  }

  /** The mixture of the zone under the sliders. */
  get shown() {
    const { answer } = this.mix;
    return this.at === 0 ? answer : answer?.beside;
  }

  /** The edge between the two zones, where there are two. */
  get ribbon() {
    return this.zones.length > 1 ? this.mix.answer?.ribbon : undefined;
  }

  get zone() {
    return this.zones[this.at] ?? {};
  }

  /** @param {string} light @param {Partial<Part>} fields */
  change(light, fields) {
    const part = { ...(this.zone[light] ?? AS_READ), ...fields };
    this.zones = this.zones.map((zone, i) => (i === this.at ? { ...zone, [light]: part } : zone));
  }

  /**
   * Change a light by something else; its level starts where it stands.
   * @param {string} light
   * @param {Part["by"]} by
   * @param {number | undefined} lx
   */
  changeBy(light, by, lx) {
    const share = lx && settings.get("illuminance") === "lx" ? { share: nearestShare(lx) } : {};
    this.change(light, { by, ...(by === "share" ? share : {}) });
  }

  addZone() {
    this.zones = [this.zones[0], { ...this.zones[0] }];
    this.at = 1;
  }

  async keep() {
    const made = this.shown;
    if (!made) return;
    const words = t("mix.keptWords", {
      cct: kelvin(made.cct_K),
      lights: made.shares
        .map((/** @type {any} */ { name, part }) => `${name} ${percent(part)}`)
        .join(", "),
    });
    const { x, y, cct_K, duv: tint, illuminance_lx = null } = made;
    const boundary = this.mix.answer?.boundary ?? null;
    await keepFinding({
      by: "mix",
      words: boundary ? `${words}. ${boundary.words}` : words,
      from: howMixed(this.lights, this.zone),
      beside: this.zones[1] ? howMixed(this.lights, this.zones[1 - this.at]) : null,
      found: { x, y, cct_K, duv: tint, illuminance_lx, boundary },
    });
    say(t("finding.said"));
  }

  /** @param {string} light @param {Part} part @param {(path: string) => string | undefined} problemAt */
  renderSliders(light, part, problemAt) {
    const { illuminance, length } = settings.values;
    const one = (
      /** @type {"stops" | "dimmer" | "share" | "readAt" | "standsAt"} */ key,
      /** @type {string} */ words,
      /** @type {[number, number, number]} */ [min, max, step],
      /** @type {string} */ path,
    ) =>
      slider({
        id: `${key}-${light}`,
        label: t(`mix.${key}`),
        words,
        min,
        max,
        step,
        value: part[key],
        problem: problemAt(path),
        onInput: (value) => this.change(light, { [key]: value }),
      });
    const far = (/** @type {string} */ place) => `${DISTANCES[Number(place)]} ${length}`;
    switch (part.by) {
      case "stops":
        return one("stops", stopWords(part.stops), [-6, 6, 0.1], "stops");
      case "dimmer":
        return one("dimmer", t("mix.percent", { n: part.dimmer }), [0, 100, 1], "dimmer");
      case "share":
        return one(
          "share",
          `${SHARES[Number(part.share)]} ${illuminance}`,
          [0, SHARES.length - 1, 1],
          `share_${illuminance}`,
        );
      case "distance":
        return [
          one("readAt", far(part.readAt), [0, DISTANCES.length - 1, 1], `measured_at_${length}`),
          one("standsAt", far(part.standsAt), [0, DISTANCES.length - 1, 1], `distance_${length}`),
        ];
    }
  }

  /** @param {import("./mixing.js").Lit} lit */
  renderLight({ light }) {
    const part = this.zone[light.id] ?? AS_READ;
    const place = inZone(this.lights, this.zone).findIndex((one) => one.light.id === light.id);
    const list = this.at === 0 ? "lights" : "beside";
    const problemAt = (/** @type {string} */ path) =>
      this.mix.problemAt(`${list}.${place}.${path}`);
    const share = part.on ? this.shown?.shares[place] : undefined;
    return html`<li>
      <div class="mixed">
        <label class="check">
          <input
            type="checkbox"
            .checked=${part.on}
            @change=${(/** @type {Event} */ event) =>
              this.change(light.id, {
                on: /** @type {HTMLInputElement} */ (event.target).checked,
              })}
          />
          <span>
            ${light.data.name}
            ${
              share
                ? html`<span class="hint"
                    >${percent(share.part)}${share.lx == null ? "" : `, ${level(share.lx)} lx`}</span
                  >`
                : nothing
            }
          </span>
        </label>
        ${
          part.on
            ? html`<select
                aria-label=${t("mix.by", { name: light.data.name })}
                @change=${(/** @type {Event} */ event) =>
                  this.changeBy(
                    light.id,
                    /** @type {Part["by"]} */ (
                      /** @type {HTMLSelectElement} */ (event.target).value
                    ),
                    share?.lx ?? undefined,
                  )}
              >
                ${WAYS.map(
                  (way) => html`<option value=${way} ?selected=${way === part.by}>
                    ${t(`mix.by.${way}`)}
                  </option>`,
                )}
              </select>`
            : nothing
        }
      </div>
      ${part.on ? this.renderSliders(light.id, part, problemAt) : nothing}
      ${
        part.on && light.data.lamp === "tungsten" && ["stops", "dimmer"].includes(part.by)
          ? html`<a class="button quiet" href="#dim/${light.id}">
              ${t("mix.findDim", { name: light.data.name })}
            </a>`
          : nothing
      }
      ${
        part.on && part.by !== "share" && problemAt(`share_lx`)
          ? html`<p class="problem">${problemAt("share_lx")}</p>`
          : nothing
      }
    </li>`;
  }

  /** The sentence of a problem that no slider shows. */
  get otherProblem() {
    return this.mix.problemBeside(/^(lights|beside)\.\d+\.(share_|stops|dimmer|distance|measured)/);
  }

  /** @param {any} made */
  renderAnswer(made) {
    const standing = this.standing.answer;
    const boundary = this.mix.answer?.boundary;
    const metrics = this.rendering.answer;
    return html`
      ${
        standing
          ? html`<p class="now">
              ${standing.offset?.words}
              ${made.cc ? html`<span class="hint">(${made.cc_words})</span>` : nothing}
            </p>`
          : nothing
      }
      ${figures([
        ["Duv", duv(made.duv)],
        [t("mix.level"), levelWords(made)],
      ])}
      ${made.relative ? html`<p class="hint">${t("mix.relativeHint")}</p>` : nothing}
      ${
        metrics
          ? html`<dl class="figures five">
              ${
                /** @type {[string, number | null][]} */ ([
                  ["TLCI", metrics.tlci.qa],
                  ["Ra", metrics.cri.ra],
                  ["Rf", metrics.tm30.rf],
                  ["Rg", metrics.tm30.rg],
                  ["SSI", metrics.ssi.value],
                ]).map(
                  ([name, value]) => html`<div>
                  <dt>${name}</dt>
                  <dd>${index(value)}</dd>
                </div>`,
                )
              }
            </dl>`
          : html`<p class="hint">${t("mix.noSpectrum")}</p>`
      }
      ${
        boundary
          ? html`<p class="boundary">
              <strong>${t("mix.boundary")}</strong> ${boundary.words}
              <span class="hint">${steps(boundary.steps)}</span>
            </p>`
          : nothing
      }
      ${warningList(made.warnings)}
    `;
  }

  renderZones() {
    if (this.zones.length < 2) {
      return html`<div class="actions">
        <button type="button" class="quiet" @click=${this.addZone}>${t("mix.addZone")}</button>
      </div>`;
    }
    return html`
      ${segments({
        name: "zone",
        legend: t("mix.zones"),
        quiet: true,
        value: String(this.at),
        options: { 0: t("mix.zone", { n: 1 }), 1: t("mix.zone", { n: 2 }) },
        onChange: (zone) => {
          this.at = Number(zone);
        },
      })}
      <div class="actions">
        <button
          type="button"
          class="quiet"
          @click=${() => {
            this.zones = [this.zones[0]];
            this.at = 0;
          }}
        >
          ${t("mix.dropZone")}
        </button>
      </div>
    `;
  }

  render() {
    const { lights, shown } = this;
    if (!lights.length) {
      return html`<h1>${t("mix.heading")}</h1>
        <section class="empty">
          <p>${t("mix.empty")}</p>
          <div class="actions">
            <a class="button main" href="#light">${t("set.add")}</a>
          </div>
        </section>`;
    }
    return html`
      <h1 class="place">${t("mix.heading")} <a href="#set">${placeWords(currentSetup())}</a></h1>
      ${
        shown
          ? html`<div class="sum">
              <p class="headline" data-testid="headline">${kelvin(shown.cct_K)}</p>
              ${this.standing.answer?.verdict ? verdictMark(this.standing.answer.verdict) : nothing}
              ${levelWords(shown)}
              ${
                this.ribbon
                  ? patch(this.ribbon.colours, { kind: "band" })
                  : patch([lookOf(this.seen.answer?.lights[0])?.as_read?.grey])
              }
            </div>`
          : nothing
      }
      ${
        this.ribbon
          ? html`<ek-ribbon .ribbon=${this.ribbon}></ek-ribbon>
              <ek-patch-light></ek-patch-light>`
          : nothing
      }
      <section class="answer" aria-label=${t("mix.answer")} aria-busy=${this.mix.waiting}>
        <ek-boot-progress></ek-boot-progress>
        ${shown ? this.renderAnswer(shown) : nothing} ${problemNote(this.otherProblem)}
        ${inZone(lights, this.zone).length ? nothing : html`<p class="hint">${t("mix.pick")}</p>`}
      </section>
      <ek-spoken
        .words=${shown ? t("mix.spoken", { cct: kelvin(shown.cct_K), duv: duv(shown.duv) }) : ""}
      ></ek-spoken>
      ${this.renderZones()}
      <ul class="may">
        ${lights.map((lit) => this.renderLight(lit))}
      </ul>
      <div class="actions">
        <button
          type="button"
          class="main"
          ?disabled=${!shown || this.mix.waiting}
          @click=${() => this.keep().catch(reportFault)}
        >
          ${t("finding.keep")}
        </button>
      </div>
      <ek-findings></ek-findings>
      <ul class="links">
        <li><a href="#unmix">${t("unmix.heading")}</a></li>
        <li><a href="#flash">${t("flash.heading")}</a></li>
      </ul>
    `;
  }
}
customElements.define("ek-mix", MixView);

/** How bright a mixture is. @param {any} made */
function levelWords(made) {
  if (made.relative) return t("mix.relative");
  if (made.exposure_lx_s != null) return `${level(made.exposure_lx_s)} lx·s`;
  return settings.get("illuminance") === "fc"
    ? `${level(made.illuminance_fc)} fc`
    : `${level(made.illuminance_lx)} lx`;
}

/** @param {string} stops as the slider has it */
function stopWords(stops) {
  if (stops === "0") return t("mix.asRead");
  return t(stops.startsWith("-") ? "mix.darker" : "mix.brighter", { n: stops.replace("-", "") });
}
