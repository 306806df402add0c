/** The state of a set as plain text, for a message to the department. */

import { dimsFirst } from "../../parts/dim-line.js";
import { changeWords, packWords } from "../../parts/pack-card.js";
import { t } from "../../words/index.js";
import { isolated } from "../../words/isolated.js";
import { kelvin, stops } from "../../words/numbers.js";
import { levelWords } from "./levels.js";

/**
 * @param {any} agree the kernel's answer to "agree"
 * @param {{place: string, against: string, levels?: any[], key?: string, plans?: any[],
 *         meant?: string[]}} context
 *   levels: of the kernel's "levels", with the name of the key light; plans: what the kept plan
 *   wants of each light that was not read since; meant: what each light is meant to be, in words,
 *   empty for those meant as the others
 */
export function setText(agree, { place, against, levels = [], key = "", plans = [], meant = [] }) {
  const byPlan = plans.some(Boolean);
  const lines = agree.lights.map((/** @type {any} */ light, /** @type {number} */ i) => {
    const { pack, problem } = light;
    if (problem) return `${light.name}: ${problem.message}`;
    const plan = plans[i];
    const found = !light.verdict;
    const act = found
      ? ""
      : plan
        ? t("text.plan", {
            plan: plan.words,
            cct: kelvin(plan.lands.cct_K),
            stops: stops(plan.stops_lost),
          })
        : dimsFirst(light)
          ? light.dim.words
          : pack
            ? t("text.hang", {
                pack: changeWords(pack) || t("slip.hang", { pack: packWords(pack) }),
                cct: kelvin(pack.lands.cct_K),
                stops: stops(pack.stops_lost),
              })
            : t(light.verdict === "holds" ? "answer.leave" : "answer.noGel");
    const verdict = t(`verdict.${/** @type {"out"} */ (light.verdict ?? "found")}`);
    const aim = meant[i] && !found ? t("text.meant", { words: meant[i] }) : "";
    // A line for each figure: in a message nothing else keeps them apart.
    return [
      `${isolated(light.name)}: ${kelvin(light.cct_K)}, ${verdict}`,
      ...[aim, light.offset?.words, act, ...levelWords(levels[i], key, byPlan)]
        .filter(Boolean)
        .map((one) => `  ${one}`),
    ].join("\n");
  });
  return [t("text.title", { place, against }), "", ...lines, "", t("caution.short")].join("\n");
}
