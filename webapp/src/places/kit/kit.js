/** Kit: the white, the tolerance, the gels in stock, the units, the theme, and what is stored. */
import { html, nothing } from "lit";
import { QUICK_WHITES, setWhite } from "../../parts/against.js";
import "../../parts/camera-form.js";
import { optionsOf, segments, textField } from "../../parts/inputs.js";
import "./kit-lamps.js";
import { LiveQuestion } from "../../base/live-question.js";
import { Page } from "../../base/page.js";
import { properties } from "../../base/properties.js";
import { starterKits } from "../../parts/starter-kits.js";
import { meterForms } from "./meter-forms.js";
import "./own-kits.js";
import { ownGelList } from "./own-gel-list.js";
import { stockList } from "./stock-list.js";
import "./storage-truth.js";
import { Watch } from "../../base/watch.js";
import { problemNote } from "../../parts/warnings.js";
import { book, reportFault, settings } from "../../store/index.js";
import { gels } from "../../store/kit/gels.js";
import { offlineState } from "../../store/offline-state.js";
import { whiteQuestion } from "../../store/questions/reading.js";
import { THEMES } from "../../theme.js";
import { LANGUAGES, t } from "../../words/index.js";
import { coordinate, mired } from "../../words/numbers.js";
import { swatches } from "./swatches.js";

const PRESETS = /** @type {const} */ (["tight", "normal", "loose"]);

class KitView extends Page {
  static properties = properties({ own: ["opened", "colours"] });

  constructor() {
    super();
    /** Gels whose curve is on screen. @type {Set<string>} */
    this.opened = new Set();
    /** What a grey card looks like through each gel. @type {Awaited<ReturnType<typeof swatches>>} */
    this.colours = new Map();
    /** The gels that they are of. @type {typeof gels.all} */
    this.coloured = undefined;
    this.check = /** @type {LiveQuestion<"fix">} */ (new LiveQuestion(this));
    this.watch = new Watch(this, settings, gels, book, offlineState);
  }

  willUpdate() {
    const white = whiteQuestion();
    // The white measured against itself: says what is wrong with either setting, and its x y.
    this.check.put({
      ask: "fix",
      reading: white,
      target: white,
      tolerance: settings.get("tolerance"),
      depth: 1,
      ...(settings.get("gelScatter").trim()
        ? { gel_scatter_percent: settings.get("gelScatter") }
        : {}),
    });
    this.colour().catch(reportFault);
  }

  async colour() {
    const { all } = gels;
    if (!all || all === this.coloured) return;
    this.coloured = all;
    const colours = await swatches(all, (request) => this.askHere(request));
    if (this.coloured === all) this.colours = colours;
  }

  disconnectedCallback() {
    super.disconnectedCallback();
    this.coloured = undefined;
  }

  /**
   * @template {keyof import("../../store/settings.js").Values} K
   * @param {K} key
   * @param {import("../../store/settings.js").Values[K]} value
   */
  set(key, value) {
    settings.set(key, value).catch(reportFault);
  }

  /** @param {string} name */
  problemAt(name) {
    return this.check.problemAt(`target.${name}`) ?? this.check.problemAt(`reading.${name}`);
  }

  renderWhite() {
    const white = settings.get("white");
    const target = this.check.answer?.target;
    return html`<section>
      <h2>${t("kit.white")}</h2>
      <div class="row" role="group" aria-label=${t("against.whites")}>
        ${QUICK_WHITES.map(
          (cct) => html`<button
            type="button"
            class="chip"
            aria-pressed=${white.cct_K === cct ? "true" : "false"}
            @click=${() => setWhite(cct)}
          >
            ${t("white.plain", { cct })}
          </button>`,
        )}
      </div>
      <div class="pair">
        ${textField({
          id: "kit-cct",
          label: t("kit.cct"),
          unit: "K",
          number: true,
          value: white.cct_K,
          problem: this.problemAt("cct_K"),
          onInput: (cct_K) => this.set("white", { ...white, cct_K }),
        })}
        ${textField({
          id: "kit-duv",
          label: t("kit.duv"),
          hint: t("light.duvHint"),
          number: true,
          value: white.duv,
          signed: true,
          problem: this.problemAt("duv"),
          onInput: (duv) => this.set("white", { ...white, duv }),
        })}
      </div>
      ${
        target
          ? html`<p class="reason">
              ${t("kit.whiteIs", {
                x: coordinate(target.x),
                y: coordinate(target.y),
                mired: mired(target.mired).replace("+", ""),
              })}
            </p>`
          : nothing
      }
    </section>`;
  }

  renderTolerance() {
    const tolerance = settings.get("tolerance");
    const own = typeof tolerance === "object";
    const problem = this.check.problem?.field.startsWith("tolerance")
      ? this.check.problem.message
      : undefined;
    return html`<section>
      <h2>${t("kit.tolerance")}</h2>
      ${segments({
        name: "tolerance",
        legend: t("kit.tolerance"),
        quiet: true,
        value: own ? "own" : tolerance,
        options: optionsOf([...PRESETS, "own"], (preset) => t(`tolerance.${preset}`)),
        onChange: (value) =>
          this.set("tolerance", value === "own" ? { steps: "4" } : /** @type {"normal"} */ (value)),
      })}
      ${
        own
          ? textField({
              id: "kit-steps",
              label: t("kit.steps"),
              unit: t("kit.stepsUnit"),
              number: true,
              value: tolerance.steps,
              problem,
              onInput: (steps) => this.set("tolerance", { steps }),
            })
          : nothing
      }
      <p class="hint">${t("kit.toleranceHint")}</p>
    </section>`;
  }

  renderGels() {
    return html`<section>
      <h2>${t("kit.gels")}</h2>
      <p class="hint">${gels.note || t("kit.gelsHint")} ${t("stock.piecesHint")}</p>
      ${starterKits()}
      <ek-own-kits></ek-own-kits>
      <ul class="links row">
        <li><a href="#order">${t("kit.order")}</a></li>
        <li><a href="#rolls">${t("rolls.title")}</a></li>
        <li><a href="#tint">${t("tint.title")}</a></li>
      </ul>
      ${textField({
        id: "kit-scatter",
        label: t("kit.scatter"),
        hint: t("kit.scatterHint"),
        unit: "%",
        number: true,
        value: settings.get("gelScatter"),
        problem: this.check.problemAt("gel_scatter_percent"),
        onInput: (percent) => this.set("gelScatter", percent),
      })}
      ${
        gels.all
          ? stockList({
              families: gels.families(),
              without: settings.get("without"),
              pieces: settings.get("pieces"),
              colours: this.colours,
              opened: this.opened,
              onStock: (without) => this.set("without", without),
              onPieces: (name, pieces) =>
                this.set("pieces", { ...settings.get("pieces"), [name]: pieces }),
              onOpen: (name) => {
                const opened = new Set(this.opened);
                if (!opened.delete(name)) opened.add(name);
                this.opened = opened;
              },
            })
          : html`<ek-boot-progress></ek-boot-progress>`
      }
    </section>`;
  }

  renderOwnGels() {
    return html`<section>
      <h2>${t("own.title")}</h2>
      ${ownGelList()}
    </section>`;
  }

  renderCamera() {
    return html`<section>
      <h2>${t("camera.title")}</h2>
      <ek-camera-form></ek-camera-form>
      ${segments({
        name: "mains",
        legend: t("kit.mains"),
        value: settings.get("mains_hz"),
        options: { "": t("mains.unknown"), 50: "50 Hz", 60: "60 Hz" },
        onChange: (mains_hz) => this.set("mains_hz", mains_hz),
      })}
      <ul class="links">
        <li><a href="#cameras">${t("cameras.title")}</a></li>
        <li><a href="#flicker">${t("kit.flicker")}</a></li>
        <li><a href="#exposure">${t("exposure.title")}</a></li>
      </ul>
    </section>`;
  }

  renderHouse() {
    return html`
      ${meterForms()}
      <ek-kit-lamps></ek-kit-lamps>
      <section>
        <h2>${t("kit.units")}</h2>
        ${segments({
          name: "illuminance",
          legend: t("kit.illuminance"),
          value: settings.get("illuminance"),
          options: { lx: t("kit.lux"), fc: t("kit.fc") },
          onChange: (unit) => this.set("illuminance", /** @type {"lx" | "fc"} */ (unit)),
        })}
        ${segments({
          name: "length",
          legend: t("kit.length"),
          value: settings.get("length"),
          options: { m: t("kit.metres"), ft: t("kit.feet") },
          onChange: (unit) => this.set("length", /** @type {"m" | "ft"} */ (unit)),
        })}
        ${segments({
          name: "language",
          legend: t("kit.language"),
          value: settings.get("language"),
          options: {
            system: t("theme.system"),
            ...optionsOf(LANGUAGES, (one) => t(`language.${one}`)),
          },
          onChange: (one) => this.set("language", /** @type {"de"} */ (one)),
        })}
        ${segments({
          name: "theme",
          legend: t("kit.theme"),
          value: settings.get("theme"),
          options: optionsOf(THEMES, (theme) => t(`theme.${theme}`)),
          onChange: (theme) => this.set("theme", /** @type {"dark"} */ (theme)),
        })}
      </section>
      <section>
        <h2>${t("kit.storage")}</h2>
        <ek-storage-truth></ek-storage-truth>
      </section>
      <section>
        <h2>${t("kit.about")}</h2>
        <p>
          ${
            offlineState.build
              ? t("kit.offline", { build: offlineState.build })
              : t("kit.notOffline")
          }
        </p>
        <p>${t("kit.install")}</p>
        <ul class="links">
          <li><a href="#cautions">${t("cautions.title")}</a></li>
          <li><a href="#demo">${t("welcome.demo")}</a></li>
          <li><a href="#about">${t("about.title")}</a></li>
        </ul>
      </section>
    `;
  }

  render() {
    const other = this.check.problemBeside(/^(target|reading)\.(cct_K|duv)$|^tolerance/);
    return html`
      <h1>${t("place.kit")}</h1>
      ${problemNote(other)} ${this.renderWhite()}
      ${this.renderTolerance()} ${this.renderCamera()} ${this.renderGels()}
      ${this.renderOwnGels()} ${this.renderHouse()}
    `;
  }
}
customElements.define("ek-kit", KitView);
