/** What a kept plan wants of a light, and where that leads. */
import { html } from "lit";
import { t } from "../words/index.js";
import { kelvin, steps } from "../words/numbers.js";
import { verdictMark } from "./verdict.js";

/**
 * Where a light lands, and how far from what it is meant to be; of one as found only where.
 * @param {any} lands
 * @param {{steps: number | null, verdict: string | null}} standing
 */
export function landsWords({ cct_K }, standing) {
  const cct = kelvin(cct_K);
  if (!standing.verdict || standing.steps == null) return cct;
  return t("balance.lands", { cct, steps: steps(standing.steps) });
}

/** @param {any} plan  of a light @param {boolean} [words]  whether to say what hangs */
export const planLine = (plan, words = true) => html`<p class="planned">
  <span class="what">${t("planned.plan")}</span>
  ${words ? `${plan.words},` : ""} ${landsWords(plan.lands, plan)} ${verdictMark(plan.verdict)}
</p>`;
