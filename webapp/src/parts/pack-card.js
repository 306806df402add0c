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
export function orLeave(verdict, away) {
  if (verdict !== "near") return nothing;
  return html`<p class="reason">${t("pack.orLeave", { steps: steps(away) })}</p>`;
}

/** @param {Pack} pack */
export function packWords(pack) {
  return pack.words || pack.gels.join(" + ") || t("pack.bare");
}

/** The best guess, and between what 9 in 10 such lights land. @param {Pack} pack */
function landsAt(pack) {
  const range = guessed(pack);
  return html`${kelvin(pack.lands.cct_K)}
  ${range ? html`<span class="range">${range}</span>` : nothing}`;
}

/** Nothing is guessed of a measured spectrum behind a measured gel. @param {Pack} pack */
function guessed(pack) {
  const [low, high] = pack.lands.cct_spread_K;
  const range = low === high ? "" : kelvinRange(pack.lands.cct_spread_K);
  return range.includes("–") ? range : "";
}

/** Where it lands, whether that holds, what it costs. @param {Pack} pack */
export const packFigures = (pack) =>
  figures([
    [t("pack.lands"), landsAt(pack)],
    [t("pack.within"), verdictMark(pack.promise)],
    [t("pack.costs"), stops(pack.stops_lost)],
  ]);

/** @param {Pack} pack */
export function packReasons(pack) {
  const range = guessed(pack);
  const [least, most] = pack.steps_spread;
  return html`<p class="reason">
    ${t("pack.distance", { steps: steps(pack.steps) })}
    ${range ? html`<br />${t("pack.spread", { range, least: steps(least), most: steps(most) })}` : nothing}
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
