/**
 * What a grey card looks like, as the kernel says it of each light ("seen"): a small patch, split
 * where there is a before and an after. It repeats what is said in words beside it.
 */
import { html, nothing, svg } from "lit";

/** @typedef {{srgb: number[], p3: number[], clipped: boolean, guess: boolean}} Colour */

/** @typedef {import("../kernel/answers.js").Answers["seen"]["lights"][number]} Seen */

/** How one light of the kernel's "seen" looks, if it can be shown. @param {Seen | undefined} light */
export function lookOf(light) {
  return light && "as_read" in light ? light : undefined;
}

/** A colour for this screen. @param {{srgb: number[], p3: number[]}} colour */
export function paint({ srgb, p3 }) {
  const wide = matchMedia("(color-gamut: p3)").matches;
  return wide
    ? `color(display-p3 ${p3.map((value) => (value / 255).toFixed(4)).join(" ")})`
    : `rgb(${srgb.join(", ")})`;
}

/**
 * @param {({srgb: number[], p3: number[]} | null | undefined)[]} colours  from start to end, of those that are known
 * @param {{label?: string, kind?: string}} [options]  without a label it is only for the eye
 */
export function patch(colours, { label, kind = "" } = {}) {
  const known = colours.flatMap((colour) => colour ?? []);
  if (!known.length) return nothing;
  return html`<svg
    class="patch ${kind}"
    viewBox="0 0 ${known.length} 1"
    preserveAspectRatio="none"
    role=${label ? "img" : nothing}
    aria-label=${label ?? nothing}
    aria-hidden=${label ? nothing : "true"}
  >
    ${known.map((colour, i) => svg`<rect x=${i} width="1" height="1" fill=${paint(colour)}></rect>`)}
  </svg>`;
}
