/**
 * A spectrum, or the three channels of a camera, at a glance: no scale, only the shape above the
 * zero line.
 */
import { html, nothing, svg } from "lit";

const WIDTH = 320;
const HEIGHT = 64;
const MOST = 400; // points; a phone has no more pixels across

/**
 * @param {{wavelengths_nm: number[], values: number[]} | import("../store/kit/cameras.js").CameraEyes} curve
 * @param {string} label
 */
export function sketch(curve, label) {
  const { wavelengths_nm: nm } = curve;
  const [first, last] = [nm[0], nm[nm.length - 1]];
  const lines = "values" in curve ? { "": curve.values } : channelsOf(curve);
  const every = Math.ceil(nm.length / MOST);
  const x = (/** @type {number} */ at) => ((at - first) / (last - first)) * WIDTH;
  const line = (/** @type {string} */ kind, /** @type {number[]} */ values) => {
    const top = Math.max(...values);
    const y = (/** @type {number} */ value) =>
      HEIGHT - 2 - (Math.max(value, 0) / top) * (HEIGHT - 6);
    const points = nm.flatMap((at, i) =>
      i % every ? [] : [`${x(at).toFixed(1)},${y(values[i]).toFixed(1)}`],
    );
    return svg`<polyline class="line ${kind}" points=${points.join(" ")}></polyline>
      ${kind ? svg`<text x=${x(nm[values.indexOf(top)])} y=${HEIGHT / 2} text-anchor="middle">${kind}</text>` : nothing}`;
  };
  return html`<svg class="sketch" viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-label=${label}>
    ${svg`<line class="grid" x1="0" x2=${WIDTH} y1=${HEIGHT - 2} y2=${HEIGHT - 2}></line>
      ${Object.entries(lines).map(([kind, values]) => line(kind, values))}`}
  </svg>`;
}

/** @param {import("../store/kit/cameras.js").CameraEyes} camera @returns {Record<string, number[]>} */
const channelsOf = ({ red, green, blue }) => ({ R: red, G: green, B: blue });
