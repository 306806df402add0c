/**
 * The ribbon: the crossing from one zone of light to the one beside it, as a grey card looks along
 * it, with the place marked where it changes fastest. A finger, or the arrow keys, read a place off.
 * Colours and figures come from the kernel's "mix"; here they are laid out.
 */
import { html, nothing, svg } from "lit";
import { Page } from "../base/page.js";
import { properties } from "../base/properties.js";
import { t } from "../words/index.js";
import { kelvin, steps } from "../words/numbers.js";
import { paint } from "./patch.js";

const WIDTH = 340;
const HEIGHT = 96;

/** Keys that move the place, by how many of them. @type {Record<string, number>} */
const KEYS = { ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1, PageDown: -5, PageUp: 5 };

class Ribbon extends Page {
  static properties = properties({ given: ["ribbon"], own: ["at"] });

  constructor() {
    super();
    /** @type {any} the kernel's "ribbon" */
    this.ribbon = undefined;
    /** Index of the place that is read off. @type {number | undefined} */
    this.at = undefined;
  }

  /** Where it was put, else where the edge is. */
  get index() {
    const { colours, worst } = this.ribbon;
    return Math.min(this.at ?? worst?.index ?? 0, colours.length - 1);
  }

  /** @param {PointerEvent} event */
  point(event) {
    if (event.type === "pointermove" && event.buttons === 0) return;
    const frame = /** @type {Element} */ (event.currentTarget).getBoundingClientRect();
    const share = Math.min(1, Math.max(0, (event.clientX - frame.left) / frame.width));
    this.at = Math.round(share * (this.ribbon.colours.length - 1));
  }

  /** @param {KeyboardEvent} event */
  key(event) {
    const last = this.ribbon.colours.length - 1;
    const ends = /** @type {Record<string, number>} */ ({ Home: 0, End: last });
    const to = ends[event.key] ?? (KEYS[event.key] && this.index + KEYS[event.key]);
    if (to === undefined) return;
    event.preventDefault();
    this.at = Math.min(last, Math.max(0, to));
  }

  /** What is read off, as words. */
  reading() {
    const { cct_K, steps: away } = this.ribbon.colours[this.index];
    return t("ribbon.here", {
      cct: cct_K == null ? t("ribbon.noCct") : kelvin(cct_K),
      steps: steps(away),
    });
  }

  render() {
    if (!this.ribbon) return nothing;
    const { colours, worst } = this.ribbon;
    const last = colours.length - 1;
    const x = (/** @type {number} */ at) => at * WIDTH;
    const wide = WIDTH / colours.length;
    const at = Math.min(1 - 7 / WIDTH, Math.max(7 / WIDTH, colours[this.index].at));
    return html`<figure class="ribbon">
      <svg
        viewBox="0 0 ${WIDTH} ${HEIGHT}"
        preserveAspectRatio="none"
        role="slider"
        tabindex="0"
        aria-label=${t("ribbon.title")}
        aria-valuemin="0"
        aria-valuemax=${last}
        aria-valuenow=${this.index}
        aria-valuetext=${this.reading()}
        @pointerdown=${this.point}
        @pointermove=${this.point}
        @keydown=${this.key}
      >
        ${colours.map(
          (/** @type {any} */ colour, /** @type {number} */ i) => svg`<rect class="place"
            x=${i * wide} width=${wide} y="0" height=${HEIGHT} fill=${paint(colour)}></rect>`,
        )}
        ${worst ? svg`<line class="edge" x1=${x(worst.at)} x2=${x(worst.at)} y1="0" y2=${HEIGHT}></line>` : nothing}
        ${svg`<path class="here" d="M${x(at) - 7} 0h14l-7 11z M${x(at) - 7} ${HEIGHT}h14l-7 -11z"></path>
          <rect class="frame" x="0.5" y="0.5" width=${WIDTH - 1} height=${HEIGHT - 1}></rect>`}
      </svg>
      <figcaption>
        <p class="ends hint">
          <span>${t("mix.zone", { n: 1 })} · ${ends(colours[0])}</span>
          <span>${t("mix.zone", { n: 2 })} · ${ends(colours[last])}</span>
        </p>
        <p class="read-off">${this.reading()}</p>
        ${worst ? html`<p class="reason">${worst.words}</p>` : nothing}
      </figcaption>
    </figure>`;
  }
}
customElements.define("ek-ribbon", Ribbon);

/** @param {any} colour */
const ends = ({ cct_K }) => (cct_K == null ? t("ribbon.noCct") : kelvin(cct_K));
