/** A pick-up's set in one look: which lights are no longer as they were, and by how much. */
import { html } from "lit";
import { figureTable } from "../../charts/figures.js";
import { verdictMark } from "../../parts/verdict.js";
import { measuredAgainst } from "../../store/log/target.js";
import { t } from "../../words/index.js";
import { dayOf, duv, kelvin, mired } from "../../words/numbers.js";

/** @typedef {{light: import("../../store/log/book.js").Thing}} Lit */

/**
 * The lights that are measured against themselves on an earlier day.
 * @param {Lit[]} lights  of the question
 * @param {any} answer    the kernel's "agree"
 * @returns {{before: import("../../store/log/book.js").Thing, one: any}[]}
 */
function pickedUp(lights, answer) {
  return lights.flatMap(({ light }, at) => {
    const against = measuredAgainst(light.id);
    const one = answer.lights[at];
    return against && "itself" in against && one?.target ? [{ before: against.itself, one }] : [];
  });
}

/** @param {Lit[]} lights @param {any} answer @returns {string} empty where nothing was read before */
export function driftedWords(lights, answer) {
  const all = pickedUp(lights, answer);
  if (!all.length) return "";
  const n = all.filter(({ one }) => one.verdict !== "holds").length;
  const [latest] = all.map(({ before }) => before.at).sort((a, b) => Date.parse(b) - Date.parse(a));
  return n
    ? t("drift.some", { n, all: all.length, day: dayOf(latest) })
    : t("drift.none", { n: all.length, day: dayOf(latest) });
}

/** @param {Lit[]} lights @param {any} answer */
export function driftedTable(lights, answer) {
  const rows = pickedUp(lights, answer).map(({ one }) => [
    one.name,
    kelvin(one.target.cct_K),
    kelvin(one.cct_K),
    html`${mired(one.offset.mired)}<br />${duv(one.offset.duv)}`,
    verdictMark(one.verdict),
  ]);
  return rows.length
    ? figureTable(
        t("drift.table"),
        [t("unmix.light"), t("drift.then"), t("drift.now"), t("drift.moved"), ""],
        rows,
      )
    : "";
}
