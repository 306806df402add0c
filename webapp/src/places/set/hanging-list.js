/** Who hangs what where, and what to fetch: on the screen, on paper, in a message. */
import { html, nothing } from "lit";
import { landsWords } from "../../parts/plan-line.js";
import { verdictMark } from "../../parts/verdict.js";
import { t } from "../../words/index.js";
import { listed } from "../../words/isolated.js";
import { steps, stops } from "../../words/numbers.js";

/** @typedef {any} Plan  one of the front of the kernel's "balance" */

/** @param {any} row of the gel to fetch */
function fetchWords({ gel, cuts, lights }) {
  const names = listed(new Set(lights));
  return t("balance.fetch", { n: cuts, gel, lights: names });
}

/** How a light stands to the camera that judges, beside the eye. @param {any} part of a plan, or a light */
export const cameraWords = ({ camera, verdict, observer_verdict: eye = verdict }) =>
  t("slip.camera", {
    steps: steps(camera.steps),
    camera: t(`verdict.${/** @type {"out"} */ (camera.verdict)}`),
    eye: t(`verdict.${/** @type {"out"} */ (eye)}`),
  });

/**
 * The lights of a plan, those that are alike and hang one pack together, under all their names and
 * with the farther landing.
 * @param {Plan} plan
 * @returns {any[]}
 */
export function together({ per_light, twins = [] }) {
  const groups = new Map(twins.map((/** @type {number[]} */ group) => [group[0], group]));
  const others = new Set(twins.flatMap((/** @type {number[]} */ group) => group.slice(1)));
  return per_light.flatMap((/** @type {any} */ _part, /** @type {number} */ at) => {
    if (others.has(at)) return [];
    const alike = (groups.get(at) ?? [at]).map((/** @type {number} */ each) => per_light[each]);
    const farthest = alike.reduce((/** @type {any} */ a, /** @type {any} */ b) =>
      b.steps > a.steps ? b : a,
    );
    const name = listed(alike.map((/** @type {any} */ each) => each.name));
    return [{ ...farthest, name }];
  });
}

/** @param {Plan} plan */
export function hangingList(plan) {
  return html`
    <ol class="hanging">
      ${together(plan).map(
        (part) => html`<li>
          <strong>${part.name}</strong> ${verdictMark(part.promise)}
          <span class="hang">${part.words}</span>
          <span class="hint">
            ${landsWords(part.lands, part)} ${part.camera ? cameraWords(part) : nothing}
            ${part.stops_lost ? t("balance.costs", { stops: stops(part.stops_lost) }) : nothing}
            ${part.after}
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
  const lines = together(plan).map(
    (part) =>
      `${part.name}: ${part.words}\n  ${landsWords(part.lands, part)} ${t(
        `verdict.${/** @type {"out"} */ (part.promise ?? "found")}`,
      )}.`,
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
