/**
 * A spectrum as a curve over wavelength, and another beside it. A line that is dragged, tapped or
 * moved by the arrow keys reads both off. Values come from the kernel, here they are laid out.
 */
import { html, nothing, svg } from "lit";
import { Page } from "../base/page.js";
import { properties } from "../base/properties.js";
import { t } from "../words/index.js";
import { height, level, nanometres } from "../words/numbers.js";
import { paint } from "./patch.js";

const WIDTH = 340;
const HEIGHT = 220;
/** The band of wavelengths, between the curve and its scale. */
const BAND = 8;
const PAD = { left: 34, right: 8, top: 24, bottom: 34 + BAND };
const TICKS_NM = [400, 450, 500, 550, 600, 650, 700, 750];
/** Steps of the scale, the finest that gives few enough lines. */
const STEPS = [0.25, 0.5, 1, 2, 5, 10, 20, 50];
const MOST_LINES = 5;

/** Keys that move the line, by how many samples. @type {Record<string, number>} */
const KEYS = { ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1, PageDown: -10, PageUp: 10 };

class SpectrumCurve extends Page {
  static properties = properties({ given: ["curves", "name", "beside"], own: ["at"] });

  constructor() {
    super();
    /** @type {any} the kernel's "curves" */
    this.curves = undefined;
    this.name = "";
    /** @type {{name: string, values: (number | null)[]} | null} the other curve */
    this.beside = null;
    /** Index of the wavelength that is read off. @type {number | undefined} */
    this.at = undefined;
  }

  /** Where the line stands: where it was put, else at the highest peak. */
  get index() {
    const { wavelengths_nm: nm, light, peaks } = this.curves;
    if (this.at !== undefined) return Math.min(this.at, nm.length - 1);
    const places = peaks.map((/** @type {any} */ peak) => nm.indexOf(peak.wavelength_nm));
    const highest = places.sort(
      (/** @type {number} */ a, /** @type {number} */ b) => light[b] - light[a],
    )[0];
    return highest ?? Math.floor(nm.length / 2);
  }

  /** @param {PointerEvent} event */
  point(event) {
    if (event.type === "pointermove" && event.buttons === 0) return;
    const frame = /** @type {Element} */ (event.currentTarget).getBoundingClientRect();
    const nm = this.curves.wavelengths_nm;
    const across = ((event.clientX - frame.left) / frame.width) * WIDTH;
    const share = (across - PAD.left) / (WIDTH - PAD.left - PAD.right);
    this.at = Math.round(Math.min(1, Math.max(0, share)) * (nm.length - 1));
  }

  /** @param {KeyboardEvent} event */
  key(event) {
    const last = this.curves.wavelengths_nm.length - 1;
    const to =
      event.key === "Home"
        ? 0
        : event.key === "End"
          ? last
          : KEYS[event.key] === undefined
            ? undefined
            : this.index + KEYS[event.key];
    if (to === undefined) return;
    event.preventDefault();
    this.at = Math.min(last, Math.max(0, to));
  }

  /** What is read off at the line, as words. */
  reading() {
    const { index } = this;
    const { wavelengths_nm: nm, light } = this.curves;
    const own = t("spectrum.at", { nm: nanometres(nm[index]), value: height(light[index]) });
    return this.beside
      ? `${own}, ${t("spectrum.atBeside", { name: this.beside.name, value: height(this.beside.values[index]) })}`
      : own;
  }

  render() {
    if (!this.curves) return nothing;
    const { wavelengths_nm: nm, light, peaks, band } = this.curves;
    const { index } = this;
    const foot = HEIGHT - PAD.bottom + BAND;
    const half = (band.wavelengths_nm[1] - band.wavelengths_nm[0]) / 2;
    const within = (/** @type {number} */ at) => Math.min(nm[nm.length - 1], Math.max(nm[0], at));
    const known = [...light, ...(this.beside?.values ?? [])].filter((value) => value != null);
    const top = Math.max(1, ...known) * 1.04;
    const step = STEPS.find((one) => top / one <= MOST_LINES) ?? top;
    const lines = Array.from({ length: Math.floor(top / step) + 1 }, (_, i) => i * step);
    const x = (/** @type {number} */ at) =>
      PAD.left + ((at - nm[0]) / (nm[nm.length - 1] - nm[0])) * (WIDTH - PAD.left - PAD.right);
    const y = (/** @type {number} */ value) =>
      HEIGHT - PAD.bottom - (value / top) * (HEIGHT - PAD.top - PAD.bottom);
    const path = (/** @type {(number | null)[]} */ values) => {
      let pen = "M";
      return values
        .map((value, i) => {
          if (value == null) {
            pen = "M";
            return "";
          }
          const point = `${pen}${x(nm[i]).toFixed(1)} ${y(value).toFixed(1)}`;
          pen = "L";
          return point;
        })
        .join("");
    };
    const marks = [
      { values: light, kind: "own" },
      ...(this.beside ? [{ values: this.beside.values, kind: "beside" }] : []),
    ].filter(({ values }) => values[index] != null);
    return html`<figure class="chart spectrum">
      <svg
        viewBox="0 0 ${WIDTH} ${HEIGHT}"
        role="slider"
        tabindex="0"
        aria-label=${t("spectrum.line", { name: this.name })}
        aria-valuemin=${nm[0]}
        aria-valuemax=${nm[nm.length - 1]}
        aria-valuenow=${nm[index]}
        aria-valuetext=${this.reading()}
        @pointerdown=${this.point}
        @pointermove=${this.point}
        @keydown=${this.key}
      >
        ${svg`
          ${lines.map(
            (value) => svg`<line class=${value === 0 ? "zero" : "grid"} x1=${PAD.left}
                x2=${WIDTH - PAD.right} y1=${y(value)} y2=${y(value)}></line>
              <text x=${PAD.left - 6} y=${y(value) + 4} text-anchor="end">${level(value)}</text>`,
          )}
          ${band.wavelengths_nm.map((/** @type {number} */ at, /** @type {number} */ i) => {
            const [from, to] = [x(within(at - half)), x(within(at + half))];
            return svg`<rect class="pure" x=${from} width=${to - from} y=${foot - BAND}
                height=${BAND} fill=${paint({ srgb: band.srgb[i], p3: band.p3[i] })}></rect>`;
          })}
          ${TICKS_NM.map(
            (at, i) => svg`<line class="tick" x1=${x(at)} x2=${x(at)} y1=${foot}
                y2=${foot + (i % 2 ? 3 : 5)}></line>
              ${i % 2 ? nothing : svg`<text x=${x(at)} y=${foot + 16} text-anchor="middle">${at}</text>`}`,
          )}
          <text x=${WIDTH - PAD.right} y=${HEIGHT - 4} text-anchor="end">${t("spectrum.axisNm")}</text>
          <text x="4" y="12">${t("spectrum.axisPower")}</text>
          ${this.beside ? svg`<path class="beside" d=${path(this.beside.values)}></path>` : nothing}
          <path class="line" d=${path(light)}></path>
          <line class="reader" x1=${x(nm[index])} x2=${x(nm[index])} y1=${PAD.top} y2=${HEIGHT - PAD.bottom}></line>
          ${marks.map(
            ({ values, kind }) =>
              svg`<circle class="mark ${kind}" cx=${x(nm[index])} cy=${y(values[index])} r="4"></circle>`,
          )}
        `}
      </svg>
      <figcaption>
        <p class="read-off">${this.reading()}</p>
        <ul class="legend">
          <li><span class="swatch own" aria-hidden="true"></span> ${this.name}</li>
          ${
            this.beside
              ? html`<li>
                  <span class="swatch beside" aria-hidden="true"></span> ${this.beside.name}
                </li>`
              : nothing
          }
        </ul>
        ${
          peaks.length
            ? html`<div class="row" role="group" aria-label=${t("spectrum.peaks")}>
                <span class="hint">${t("spectrum.peaks")}</span>
                ${peaks.map((/** @type {any} */ peak) => {
                  const place = nm.indexOf(peak.wavelength_nm);
                  return html`<button
                    type="button"
                    class="chip"
                    aria-pressed=${place === index ? "true" : "false"}
                    @click=${() => {
                      this.at = place;
                    }}
                  >
                    ${nanometres(peak.wavelength_nm)}
                  </button>`;
                })}
              </div>`
            : nothing
        }
        <p class="hint">${t("spectrum.scale")}</p>
      </figcaption>
    </figure>`;
  }
}
customElements.define("ek-spectrum-curve", SpectrumCurve);
