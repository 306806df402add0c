/** Spectrum: one light's curve and chief numbers, what they mean in words, and every number. */
import { html, nothing } from "lit";
import { colourVectors } from "../../charts/colour-vectors.js";
import { figureTable } from "../../charts/figures.js";
import { indexBars } from "../../charts/index-bars.js";
import "../../charts/spectrum-curve.js";
import { ask } from "../../kernel/client.js";
import "../../parts/boot-progress.js";
import "../../parts/patch-light.js";
import { LiveQuestion } from "../../base/live-question.js";
import { Page } from "../../base/page.js";
import { properties } from "../../base/properties.js";
import { Watch } from "../../base/watch.js";
import { stamp } from "../../clock.js";
import { choice } from "../../parts/inputs.js";
import { copyText } from "../../parts/share-text.js";
import { say } from "../../parts/toast.js";
import { problemNote, warningList } from "../../parts/warnings.js";
import { lightDraft } from "../../store/drafts/light-draft.js";
import { book, reportFault, settings } from "../../store/index.js";
import { withOwnGels } from "../../store/kit/own-gels.js";
import { t } from "../../words/index.js";
import { duv, height, index, kelvin, nanometres, whenRead } from "../../words/numbers.js";
import { flagList } from "./flags.js";
import { numberRows } from "./number-rows.js";
import { saveFiles } from "./save-files.js";
import { DRAFT, spectral, spectralElsewhere, spectralLights } from "./spectral.js";

const REFERENCE = "reference";
const NONE = "";
/** As many other lights as the kernel compares at once. */
const MOST_BESIDE = 50;

class SpectrumView extends Page {
  static properties = properties({ given: ["of"], own: ["beside", "tabled"] });

  constructor() {
    super();
    this.of = "";
    /** What is drawn beside it: REFERENCE, NONE, or the id of a light. */
    this.beside = REFERENCE;
    /** Whether the curve's table is on screen. */
    this.tabled = false;
    this.rendering = /** @type {LiveQuestion<"render">} */ (new LiveQuestion(this));
    this.watch = new Watch(this, book, settings, lightDraft);
  }

  willUpdate() {
    const light = spectral(this.of);
    const others = this.others();
    const against = others.map(({ question }) => question);
    this.rendering.put(
      light
        ? {
            ask: "render",
            reading: light.question,
            ...withOwnGels(),
            ...(against.length ? { against } : {}),
          }
        : null,
    );
  }

  /** Whether this is another light than the one shown. @param {{id: string}} light */
  isOther({ id }) {
    return id !== this.of && id !== book.thing(this.of)?.parent;
  }

  /** What it is compared with: the other lights of this setup, and the one that is drawn. */
  others() {
    const here = spectralLights().filter((light) => this.isOther(light));
    const drawn = spectralElsewhere().filter(({ id }) => id === this.beside);
    return [...drawn, ...here].slice(0, MOST_BESIDE);
  }

  /** The curve to draw beside the light's. */
  other() {
    const curves = this.rendering.answer?.curves;
    if (!curves || this.beside === NONE) return null;
    if (this.beside === REFERENCE) return curves.reference;
    return curves.against[this.others().findIndex(({ id }) => id === this.beside)] ?? null;
  }

  /** @param {"tm27" | "csv"} format */
  async save(format) {
    const light = spectral(this.of);
    if (!light) return;
    const { spectrum } = light.question;
    const answer = await ask({
      ask: "write",
      format,
      spectrum: { name: light.name, ...spectrum },
      ...(format === "tm27" ? { created: (light.at ?? stamp()).slice(0, 19) } : {}),
    });
    if (answer.problem) throw new Error(answer.problem.message);
    const how = await saveFiles(answer.files);
    if (how === "saved") say(t("spectrum.saved", { name: answer.files[0].name }));
  }

  async copy() {
    const light = spectral(this.of);
    const { answer } = this.rendering;
    if (!light || !answer) return;
    const copied = await copyText(tableText(light.name, answer));
    say(t(copied ? "set.copied" : "set.shareRefused"));
  }

  /** @param {any} answer */
  renderChief(answer) {
    const chief = /** @type {const} */ ([
      ["TLCI", answer.tlci.qa],
      ["Ra", answer.cri.ra],
      ["Rf", answer.tm30.rf],
      ["Rg", answer.tm30.rg],
      ["SSI", answer.ssi.value],
    ]);
    return html`
      <dl class="figures five">
        ${chief.map(
          ([name, value]) => html`<div>
            <dt>${name}</dt>
            <dd>${index(value)}</dd>
          </div>`,
        )}
      </dl>
      <p class="reason">${kelvin(answer.light.cct_K)}, Duv ${duv(answer.light.duv)}</p>
    `;
  }

  /** What the numbers mean. @param {any} answer */
  renderWords(answer) {
    return html`
      <h2 class="spoken">${t("spectrum.flags")}</h2>
      ${flagList(answer.flags)} ${warningList(answer.warnings)}
    `;
  }

  /** @param {import("./spectral.js").Spectral} light @param {any} answer */
  renderCurve(light, answer) {
    return html`
      <h2 class="spoken">${t("spectrum.curve")}</h2>
      <ek-spectrum-curve
        .curves=${answer.curves}
        .name=${light.name}
        .beside=${this.other()}
      ></ek-spectrum-curve>
    `;
  }

  /** What is drawn beside it, and the curve as a table. @param {import("./spectral.js").Spectral} light @param {any} answer */
  renderBeside(light, answer) {
    const others = this.others();
    const reference = answer.curves.reference;
    const compared = others.find(({ id }) => id === this.beside);
    return html`<section>
      ${choice({
        id: "beside",
        label: t("spectrum.beside"),
        value: this.beside,
        options: [
          ...(reference
            ? [
                {
                  value: REFERENCE,
                  label: t("spectrum.reference", { name: reference.name }),
                },
              ]
            : []),
          ...spectralLights()
            .filter((one) => this.isOther(one))
            .map(({ id, name }) => ({ value: id, label: name })),
          ...spectralElsewhere()
            .filter((one) => this.isOther(one))
            .map(({ id, name, place }) => ({ value: id, label: `${name}, ${place}` })),
          { value: NONE, label: t("spectrum.nothing") },
        ],
        onChange: (value) => {
          this.beside = value;
        },
      })}
      ${
        compared
          ? html`<ul class="links">
              <li>
                <a href="#pair/${compared.id}/${light.id}"
                  >${t("spectrum.compare", { first: compared.name, second: light.name })}</a
                >
              </li>
            </ul>`
          : nothing
      }
      <details
        class="more"
        @toggle=${(/** @type {Event} */ event) => {
          this.tabled = /** @type {HTMLDetailsElement} */ (event.currentTarget).open;
        }}
      >
        <summary>${t("spectrum.table")}</summary>
        ${this.tabled ? curveTable(light.name, answer.curves, this.other()) : nothing}
      </details>
    </section>`;
  }

  /** @param {any} answer */
  renderNumbers(answer) {
    const { cri, tm30 } = answer;
    const chief = answer.numbers.filter((/** @type {any} */ { name }) => !/^R\d/.test(name));
    const unrated = [answer.cri, answer.tm30, answer.tlci, answer.ssi]
      .map(({ unrated: why }) => why)
      .filter(Boolean);
    return html`
      <section>
        <h2>${t("spectrum.numbers")}</h2>
        ${numberRows(chief)} ${warningList([...new Set(unrated)])}
      </section>
      ${
        cri.r.length
          ? html`<section>
              <h2>${t("bars.heading")}</h2>
              ${indexBars(cri)} <ek-patch-light></ek-patch-light>
              <p class="hint">
                ${t("bars.rests", { reference: cri.reference, observer: cri.observer, edition: cri.edition, edition15: cri.edition_r15 })}
              </p>
            </section>`
          : nothing
      }
      ${
        tm30.graphic
          ? html`<section>
              <h2>${t("vectors.heading")}</h2>
              ${colourVectors(tm30)}
              <p class="hint">${t("number.rests", tm30)}</p>
            </section>`
          : nothing
      }
    `;
  }

  render() {
    const light = spectral(this.of);
    const { answer, problem } = this.rendering;
    if (!light) {
      return html`<h1>${t("spectrum.title")}</h1>
        <p class="empty">${t("spectrum.none")}</p>
        <div class="actions"><a class="button main" href="#light">${t("set.add")}</a></div>`;
    }
    return html`
      <h1 class="place">
        ${light.name}
        <span class="hint"
          >${this.of === DRAFT ? light.file : light.at ? t("slip.read", { time: whenRead(light.at) }) : ""}</span
        >
      </h1>
      <section class="answer" aria-label=${t("light.answer")} aria-busy=${this.rendering.waiting}>
        <ek-boot-progress></ek-boot-progress>
        ${problemNote(problem?.message)}
        ${
          answer
            ? [this.renderChief(answer), this.renderCurve(light, answer), this.renderWords(answer)]
            : nothing
        }
      </section>
      ${
        answer
          ? html`${this.renderBeside(light, answer)} ${this.renderNumbers(answer)}
              <div class="actions">
                <button type="button" @click=${() => this.copy().catch(reportFault)}>
                  ${t("spectrum.copy")}
                </button>
                <button type="button" @click=${() => this.save("csv").catch(reportFault)}>
                  ${t("spectrum.csv")}
                </button>
                <button type="button" @click=${() => this.save("tm27").catch(reportFault)}>
                  ${t("spectrum.tm27")}
                </button>
              </div>`
          : nothing
      }
    `;
  }
}
customElements.define("ek-spectrum", SpectrumView);

/**
 * @param {string} name
 * @param {any} curves
 * @param {{name: string, values: (number | null)[]} | null} beside
 */
function curveTable(name, curves, beside) {
  return figureTable(
    t("spectrum.scale"),
    [t("spectrum.axisNm"), name, ...(beside ? [beside.name] : [])],
    curves.wavelengths_nm.map((/** @type {number} */ nm, /** @type {number} */ i) => [
      nanometres(nm),
      height(curves.light[i]),
      ...(beside ? [height(beside.values[i])] : []),
    ]),
  );
}

/** Everything as rows of text with tabs between, for a spreadsheet. @param {string} name @param {any} answer */
function tableText(name, answer) {
  const { wavelengths_nm: nm, light, reference } = answer.curves;
  const rows = [
    [name],
    ...answer.words.map((/** @type {string} */ words) => [words]),
    [],
    [
      t("number.metric"),
      t("bars.value"),
      t("number.reference"),
      t("number.observer"),
      t("number.edition"),
    ],
    ...answer.numbers.map((/** @type {any} */ row) => [
      row.name,
      index(row.value),
      row.reference,
      row.observer,
      row.edition,
    ]),
    [],
    [t("spectrum.axisNm"), name, reference?.name ?? ""],
    ...nm.map((/** @type {number} */ at, /** @type {number} */ i) => [
      at,
      light[i] ?? "",
      reference?.values[i] ?? "",
    ]),
  ];
  return rows.map((row) => row.join("\t")).join("\n");
}
