/** The lamps on a surface: each read alone or left out, and what to dim and to move. */
import { html, nothing } from "lit";
import { figureTable } from "../../charts/figures.js";
import { cautionNote } from "../../parts/caution-note.js";
import { segments, textField } from "../../parts/inputs.js";
import { warningList } from "../../parts/warnings.js";
import { complete } from "../../store/log/surfaces.js";
import { t } from "../../words/index.js";
import { percent, stops } from "../../words/numbers.js";

/** @typedef {import("../../store/log/surfaces.js").Lamp} Lamp */

/**
 * @param {object} lamps
 * @param {import("../../store/log/surfaces.js").Surface} lamps.surface
 * @param {(path: string) => string | undefined} lamps.problemAt
 * @param {(lamps: Lamp[]) => void} lamps.onChange
 * @param {(index: number) => void} lamps.onRead
 */
export function sweepLamps({ surface, problemAt, onChange, onRead }) {
  const { lamps } = surface;
  const change = (/** @type {number} */ at, /** @type {Partial<Lamp>} */ fields) =>
    onChange(lamps.map((lamp, i) => (i === at ? { ...lamp, ...fields } : lamp)));
  return html`
    <ol class="lamps">
      ${lamps.map((lamp, i) => {
        const way = lamp.without ? "without" : "points";
        const levels = lamp[way] ?? [];
        const name = lamp.name || t("sweep.lampNth", { n: i + 1 });
        return html`<li>
          ${textField({
            id: `sweep-lamp-${i}`,
            label: t("sweep.lampNth", { n: i + 1 }),
            value: lamp.name,
            onInput: (typed) => change(i, { name: typed }),
          })}
          ${segments({
            name: `sweep-way-${i}`,
            legend: t("sweep.way", { name }),
            quiet: true,
            value: way,
            options: { points: t("sweep.alone"), without: t("sweep.without") },
            onChange: (to) =>
              onChange(
                lamps.map((one, k) => {
                  if (k !== i) return one;
                  const { points, without, ...rest } = one;
                  return { ...rest, [to]: points ?? without ?? [] };
                }),
              ),
          })}
          ${textField({
            id: `sweep-dimmer-${i}`,
            label: t("sweep.dimmer"),
            unit: "%",
            number: true,
            value: lamp.dimmer_now ?? "",
            problem: problemAt(`lamps.${i}.dimmer_now`),
            onInput: (dimmer_now) => change(i, { dimmer_now }),
          })}
          <div class="row">
            <button type="button" @click=${() => onRead(i)}>
              ${t(complete(surface, levels) ? "sweep.lampAgain" : "sweep.lampRead", { name })}
            </button>
            <button
              type="button"
              class="quiet"
              aria-label=${t("sweep.lampDrop", { name })}
              @click=${() => onChange(lamps.filter((_, k) => k !== i))}
            >
              ${t("book.delete")}
            </button>
          </div>
        </li>`;
      })}
    </ol>
    <button
      type="button"
      @click=${() => onChange([...lamps, { name: t("sweep.lampNth", { n: lamps.length + 1 }), points: [] }])}
    >
      ${t("sweep.lampAdd")}
    </button>
  `;
}

/**
 * What to set each dimmer to, and what that makes of the surface.
 * @param {object} trim
 * @param {any} trim.answer  the kernel's
 * @param {"steady" | "most_even"} trim.how
 * @param {(how: "steady" | "most_even") => void} trim.onHow
 * @param {() => void} trim.onAgain
 */
export function trimTable({ answer, how, onHow, onAgain }) {
  return html`
    ${answer.words.map((/** @type {string} */ words) => html`<p>${words}</p>`)}
    ${answer.moves.length ? cautionNote("moving") : nothing}
    ${figureTable(
      t("sweep.dimTo", {
        cost: stops(answer.cost_stops),
        least: stops(answer.least_spread_stops),
      }),
      [t("sweep.lamp"), t("sweep.ofLight"), t("sweep.setting")],
      answer.dimmers.map((/** @type {any} */ one) => [
        one.name,
        percent(one.percent / 100),
        one.setting_percent === null ? "–" : percent(one.setting_percent / 100),
      ]),
    )}
    ${warningList(answer.warnings)}
    ${segments({
      name: "sweep-how",
      legend: t("sweep.how"),
      value: how,
      options: { steady: t("sweep.steady"), most_even: t("sweep.mostEven") },
      onChange: (to) => onHow(/** @type {"steady"} */ (to)),
    })}
    <p class="hint">${t(how === "steady" ? "sweep.steadyHint" : "sweep.mostEvenHint")}</p>
    ${answer.dimmers.length ? html`<button type="button" class="main" @click=${onAgain}>${t("sweep.readAgain")}</button>` : nothing}
  `;
}
