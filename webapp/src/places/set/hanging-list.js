/** Who hangs what where, and what to fetch: on the screen, on paper, in a message. */
import { html, nothing } from "lit";
import { verdictMark } from "../../parts/verdict.js";
import { t } from "../../words/index.js";
import { isolated, joined } from "../../words/isolated.js";
import { kelvin, steps, stops } from "../../words/numbers.js";

/** @typedef {any} Plan  one of the front of the kernel's "balance" */

/** @param {any} row of the gel to fetch */
function fetchWords({ gel, cuts, lights }) {
  const names = joined(new Set(lights), ", ");
  return t("balance.fetch", { n: cuts, gel, lights: names });
}

/** @param {Plan} plan */
export function hangingList(plan) {
  return html`
    <ol class="hanging">
      ${plan.per_light.map(
        (/** @type {any} */ part) => html`<li>
          <strong>${part.name}</strong> ${verdictMark(part.verdict)}
          <span class="hang">${part.words}</span>
          <span class="hint">
            ${t("balance.lands", { cct: kelvin(part.lands.cct_K), steps: steps(part.steps) })}
            ${part.stops_lost ? t("balance.costs", { stops: stops(part.stops_lost) }) : nothing}
          </span>
        </li>`,
      )}
    </ol>
    ${
      plan.hang.length
        ? html`<h3>${t("balance.toFetch")}</h3>
            <ul class="fetch">
              ${plan.hang.map((/** @type {any} */ row) => html`<li>${fetchWords(row)}</li>`)}
            </ul>`
        : nothing
    }
  `;
}

/**
 * @param {Plan} plan
 * @param {string} place
 */
export function hangingText(plan, place) {
  const lines = plan.per_light.map(
    (/** @type {any} */ part) =>
      `${isolated(part.name)}: ${part.words}\n  ${t("balance.lands", {
        cct: kelvin(part.lands.cct_K),
        steps: steps(part.steps),
      })} ${t(`verdict.${/** @type {"out"} */ (part.verdict)}`)}.`,
  );
  const hang = plan.hang.map(fetchWords);
  return [
    t("balance.textTitle", { place, words: plan.words }),
    "",
    ...lines,
    ...(hang.length ? ["", `${t("balance.toFetch")}:`, ...hang] : []),
    "",
    t("caution.short"),
  ].join("\n");
}
