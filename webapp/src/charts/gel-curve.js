/** What a gel lets through, from violet to red, so that a person can judge it. */
import { html, svg } from "lit";
import { t } from "../words/index.js";
import { percent } from "../words/numbers.js";

const WIDTH = 320;
const HEIGHT = 120;
const PAD = { left: 40, right: 8, top: 8, bottom: 22 };

/** @param {import("../store/kit/gels.js").Gel} gel */
export function gelCurve(gel) {
  const { wavelengths_nm: nm, transmittance } = gel;
  const [first, last] = [nm[0], nm[nm.length - 1]];
  const x = (/** @type {number} */ at) =>
    PAD.left + ((at - first) / (last - first)) * (WIDTH - PAD.left - PAD.right);
  const y = (/** @type {number} */ share) =>
    HEIGHT - PAD.bottom - share * (HEIGHT - PAD.top - PAD.bottom);
  const points = nm.map((at, i) => `${x(at).toFixed(1)},${y(transmittance[i]).toFixed(1)}`);
  const at = (/** @type {number} */ wavelength) =>
    percent(
      transmittance[
        Math.max(
          0,
          nm.findIndex((one) => one >= wavelength),
        )
      ],
    );
  return html`
    <svg
      class="curve"
      viewBox="0 0 ${WIDTH} ${HEIGHT}"
      role="img"
      aria-label=${t("gel.curve", {
        name: gel.name,
        blue: at(450),
        green: at(550),
        red: at(650),
      })}
    >
      ${svg`
        ${[0, 0.5, 1].map(
          (share) => svg`
            <line class="grid" x1=${PAD.left} x2=${WIDTH - PAD.right} y1=${y(share)} y2=${y(share)}></line>
            <text x=${PAD.left - 6} y=${y(share) + 4} text-anchor="end">${percent(share)}</text>`,
        )}
        ${[400, 500, 600, 700].map(
          (wavelength) => svg`
            <text x=${x(wavelength)} y=${HEIGHT - 6} text-anchor="middle">${wavelength} nm</text>`,
        )}
        <polyline class="line" points=${points.join(" ")}></polyline>
      `}
    </svg>
  `;
}
