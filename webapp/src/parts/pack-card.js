/** One pack of gel: what to hang, where the light lands with it, and what that costs. */
import { html, nothing } from "lit";
import { t } from "../words/index.js";
import { kelvin, kelvinRange, steps, stops } from "../words/numbers.js";
import { verdictMark } from "./verdict.js";
import { warningList } from "./warnings.js";

/** @typedef {any} Pack  see the kernel's "fix" */

/** What changes on the light, when some gel is already on it. @param {Pack} pack */
export function changeWords(pack) {
  if (!pack.take_off?.length) return "";
  const off = t("pack.takeOff", { gels: pack.take_off.join(" + ") });
  const add = pack.add?.length ? t("pack.add", { gels: pack.add.join(" + ") }) : "";
  return [off, add].filter(Boolean).join(", ");
}

/** @param {Pack} pack */
export function packWords(pack) {
  return pack.words || pack.gels.join(" + ") || t("pack.bare");
}

/** Where it lands, whether that holds, what it costs. @param {Pack} pack */
export function packFigures(pack) {
  return html`
    <dl class="figures">
      <div>
        <dt>${t("pack.lands")}</dt>
        <dd>${kelvin(pack.lands.cct_K)}</dd>
      </div>
      <div>
        <dt>${t("pack.within")}</dt>
        <dd>${verdictMark(pack.verdict)}</dd>
      </div>
      <div>
        <dt>${t("pack.costs")}</dt>
        <dd>${stops(pack.stops_lost)}</dd>
      </div>
    </dl>
  `;
}

/** @param {Pack} pack */
export function packReasons(pack) {
  const [low, high] = pack.lands.cct_spread_K;
  // A measured spectrum has no spread: there is nothing to guess.
  const range = low === high ? "" : kelvinRange(pack.lands.cct_spread_K);
  return html`<p class="reason">
    ${t("pack.distance", { steps: steps(pack.steps) })}
    ${range ? html`<br />${t("pack.spread", { range })}` : nothing}
  </p>`;
}

/** A pack among the alternatives. @param {Pack} pack */
export function packRow(pack) {
  return html`<li class="pack">
    <strong>${packWords(pack)}</strong>
    ${changeWords(pack) ? html`<span class="reason">${changeWords(pack)}</span>` : nothing}
    ${packFigures(pack)} ${warningList(pack.warnings)}
  </li>`;
}
