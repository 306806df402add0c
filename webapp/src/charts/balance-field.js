/**
 * The balance field: the target at the centre, warm to cool across, magenta to green upward, the
 * tolerance true to scale, each light a numbered dot, each gel a stretch of the way from the
 * light towards the centre. Positions come from the kernel; here they are only laid out.
 */
import { html, nothing, svg } from "lit";
import { t } from "../words/index.js";
import { kelvin, steps } from "../words/numbers.js";
import { extent, place } from "./frame.js";

const WIDTH = 340;
const HEIGHT = 250;
const PAD = { left: 6, right: 6, top: 20, bottom: 20 };
const APART = 64; // least distance between two labels on the black-body line

const CLEAR = 26; // least distance from a label to a light

/** @typedef {[number, number]} Point */

/** @param {Point} one @param {Point} other */
const apart = (one, other) => Math.hypot(one[0] - other[0], one[1] - other[1]);

/**
 * @param {any} field the kernel's answer to "field"
 * @param {{title: string}} options
 */
export function balanceField(field, { title }) {
  const rings = ringsOf(field);
  const lights = shown(field);
  const points = [
    [0, 0],
    ...rings.flatMap(({ outline }) => outline),
    ...lights.flatMap(({ light }) => [[light.across, light.up], ...light.path, ...light.region]),
  ];
  const frame = place(extent(points), { width: WIDTH, height: HEIGHT, pad: PAD });
  const line = (/** @type {Point[]} */ list) => list.map((p) => frame.at(p).join(",")).join(" ");
  const [centreX, centreY] = frame.at([0, 0]);
  /** @type {Point[]} */
  const dots = lights.map(({ light }) => frame.at([light.across, light.up]));
  return html`
    <figure class="chart">
      <svg viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-label="${title} ${fieldWords(field)}">
        ${svg`
          ${sheet()}
          <g class="axes">
            <line x1=${PAD.left} x2=${WIDTH - PAD.right} y1=${centreY} y2=${centreY}></line>
            <line y1=${PAD.top} y2=${HEIGHT - PAD.bottom} x1=${centreX} x2=${centreX}></line>
            <text x="8" y="14">↑ ${t("field.axis.green")}</text>
            <text x="8" y=${HEIGHT - 7}>↓ ${t("field.axis.magenta")}</text>
            <text x=${WIDTH - 8} y="14" text-anchor="end">← ${t("field.axis.warm")} · ${t("field.axis.cool")} →</text>
            <text x=${WIDTH - 8} y=${HEIGHT - 7} text-anchor="end">${t("field.scale", {
              steps: steps(field.tolerance.steps),
            })}</text>
          </g>
          ${blackBodyLine(field.locus, frame, dots)}
          ${rings.map(
            ({ outline, across, up }) =>
              svg`<polygon class="tolerance ${across || up ? "beside" : ""}"
                points=${line(outline)}></polygon>`,
          )}
          ${lights.map(({ light }) => svg`<polygon class="region" points=${line(light.region)}></polygon>`)}
          ${lights.map(({ light }) => way(light, frame))}
          ${dots.map(([x, y], index) => {
            const judged = lights[index].light.target !== null;
            return svg`<circle class="light ${judged ? "" : "found"}" cx=${x} cy=${y} r="9"></circle>
              <text class="number" x=${x} y=${y + 4} text-anchor="middle">${lights[index].n}</text>`;
          })}
        `}
      </svg>
      <figcaption>
        ${keyOf(lights.map(({ light, n }) => ({ name: light.name, n })))}
        <span class="hint">
          ${t(rings.length > 1 ? "field.legendRings" : "field.legend")}
          ${lights.some(({ light }) => light.region.length) ? t("field.legendRegion") : nothing}
        </span>
      </figcaption>
    </figure>
  `;
}

/**
 * The room that the field of these lights will take: what stands below stays where it is.
 * @param {string[]} names
 */
export function balanceFieldToCome(names) {
  return html`
    <figure class="chart" aria-hidden="true">
      <svg viewBox="0 0 ${WIDTH} ${HEIGHT}">${sheet()}</svg>
      <figcaption>
        ${keyOf(names.map((name, index) => ({ name, n: index + 1 })))}
        <span class="hint">${t("field.legend")} ${t("field.legendRegion")}</span>
      </figcaption>
    </figure>
  `;
}

const sheet = () =>
  svg`<rect class="sheet" x="0.5" y="0.5" width=${WIDTH - 1} height=${HEIGHT - 1} rx="8"></rect>`;

/** @param {{name: string, n: number}[]} lights */
const keyOf = (lights) =>
  html`<ol class="key">
    ${lights.map(({ name, n }) => html`<li value=${n}>${name}</li>`)}
  </ol>`;

/**
 * The tolerance about each colour that lights are meant to be; about the white where none is judged.
 * @param {any} field
 * @returns {{outline: Point[], across: number, up: number}[]}
 */
function ringsOf({ targets, tolerance }) {
  return targets.length ? targets : [{ outline: tolerance.outline, across: 0, up: 0 }];
}

/**
 * The lights that have a place, each with its number in the set; one that cannot be used has none.
 * @param {any} field
 * @returns {{light: any, n: number}[]}
 */
function shown(field) {
  return field.lights
    .map((/** @type {any} */ light, /** @type {number} */ index) => ({ light, n: index + 1 }))
    .filter((/** @type {any} */ { light }) => !light.problem);
}

/**
 * The whites of a black body, with a CCT here and there.
 * @param {any[]} locus
 * @param {ReturnType<typeof place>} frame
 * @param {Point[]} lights  where no label may stand
 */
function blackBodyLine(locus, frame, lights) {
  const { across, up } = frame.box;
  const seen = locus
    .filter((one) => one.across >= across[0] && one.across <= across[1])
    .filter((one) => one.up >= up[0] && one.up <= up[1])
    .map((one) => ({ cct: one.cct_K, at: frame.at([one.across, one.up]) }));
  /** @type {typeof seen} */
  const labelled = [];
  for (const one of seen) {
    const last = labelled.at(-1);
    const clear = lights.every((light) => apart(light, one.at) > CLEAR);
    if (clear && (!last || apart(one.at, last.at) >= APART)) labelled.push(one);
  }
  return svg`<g class="locus">
    <polyline points=${seen.map((one) => one.at.join(",")).join(" ")}></polyline>
    ${labelled
      .filter(({ at }) => at[0] > 24 && at[0] < WIDTH - 24)
      .map(
        ({ cct, at: [x, y] }) => svg`<circle cx=${x} cy=${y} r="2"></circle>
          <text x=${x} y=${y + 14} text-anchor="middle">${kelvin(cct)}</text>`,
      )}
  </g>`;
}

/**
 * What each gel of its pack does to a light.
 * @param {any} light
 * @param {ReturnType<typeof place>} frame
 */
function way(light, frame) {
  if (light.path.length < 2) return svg``;
  /** @type {Point[]} */
  const stops = light.path.map((/** @type {Point} */ point) => frame.at(point));
  return svg`
    <polyline class="path" points=${stops.map((p) => p.join(",")).join(" ")}></polyline>
    ${stops.slice(1).map(([x, y]) => svg`<circle class="step" cx=${x} cy=${y} r="3"></circle>`)}
  `;
}

/** The chart as words. @param {any} field */
export function fieldWords(field) {
  return shown(field)
    .map(({ light, n }) => {
      const sideways = t(light.across < 0 ? "field.warmer" : "field.cooler", {
        steps: steps(Math.abs(light.across)),
      });
      const upward = t(light.up > 0 ? "field.greener" : "field.pinker", {
        steps: steps(Math.abs(light.up)),
      });
      const aim = field.targets[light.target];
      const words = { n, name: light.name, sideways, upward };
      return aim?.across || aim?.up
        ? t("field.lightMeant", { ...words, meant: aim.words })
        : t("field.light", words);
    })
    .join(" ");
}
