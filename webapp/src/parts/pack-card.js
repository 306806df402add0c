/** One pack of gel: what to hang, where the light lands with it, and what that costs. */
import { html, nothing } from "lit";
import { figures } from "../charts/figures.js";
import { t } from "../words/index.js";
import { kelvin, kelvinRange, steps, stops } from "../words/numbers.js";
import { verdictMark } from "./verdict.js";
import { warningList } from "./warnings.js";

/** @typedef {any} Pack  see the kernel's "fix" */

/** What is to be done, when some gel is already on the light. @param {Pack} pack */
export function changeWords(pack) {
  const [on, off] = [pack.add ?? [], pack.take_off ?? []];
  if (on.length === pack.gels.length && !off.length) return ""; // nothing was on it
  const words = { on: on.join(" + "), off: off.join(" + ") };
  if (!off.length) return t("pack.add", words);
  if (!on.length) return t("pack.takeOff", words);
  return t(pack.work === "swap" ? "pack.swap" : "pack.anew", words);
}

/** What is on the light then, where that is not what is to be done. @param {Pack} pack */
export function inAll(pack) {
  if (!changeWords(pack) || pack.work === "hang anew") return nothing;
  return html`<p class="reason">${t("pack.inAll", { pack: packWords(pack) })}</p>`;
}

/** That a light near the white may be left, by its distance. @param {string} verdict @param {number} away */
export function goodEnough(verdict, away) {
  if (verdict !== "near") return nothing;
  return html`<p class="reason">${t("pack.goodEnough", { steps: steps(away) })}</p>`;
}

/** @param {Pack} pack */
export function packWords(pack) {
  return pack.words || pack.gels.join(" + ") || t("pack.bare");
}

/** Where it lands, whether that holds, what it costs. @param {Pack} pack */
export const packFigures = (pack) =>
  figures([
    [t("pack.lands"), kelvin(pack.lands.cct_K)],
    [t("pack.within"), verdictMark(pack.verdict)],
    [t("pack.costs"), stops(pack.stops_lost)],
  ]);

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
    <strong>${changeWords(pack) || packWords(pack)}</strong>
    ${inAll(pack)}
    ${packFigures(pack)} ${warningList(pack.warnings)}
  </li>`;
}
