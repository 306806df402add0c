/** A spectrum at a glance, as the file has it: no scale, only its shape above its zero line. */
import { html, svg } from "lit";

const WIDTH = 320;
const HEIGHT = 64;
const MOST = 400; // points; a phone has no more pixels across

/**
 * @param {{wavelengths_nm: number[], values: number[]}} curve
 * @param {string} label
 */
export function sketch({ wavelengths_nm: nm, values }, label) {
  const [first, last] = [nm[0], nm[nm.length - 1]];
  const top = Math.max(...values);
  const every = Math.ceil(nm.length / MOST);
  const x = (/** @type {number} */ at) => ((at - first) / (last - first)) * WIDTH;
  const y = (/** @type {number} */ value) => HEIGHT - 2 - (Math.max(value, 0) / top) * (HEIGHT - 6);
  const points = nm.flatMap((at, i) =>
    i % every ? [] : [`${x(at).toFixed(1)},${y(values[i]).toFixed(1)}`],
  );
  return html`<svg class="sketch" viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-label=${label}>
    ${svg`<line class="grid" x1="0" x2=${WIDTH} y1=${HEIGHT - 2} y2=${HEIGHT - 2}></line>
      <polyline class="line" points=${points.join(" ")}></polyline>`}
  </svg>`;
}
