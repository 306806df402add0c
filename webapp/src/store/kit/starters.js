/** What trucks usually carry: kits to start from by one tap. Common practice, no source. */
import { settings } from "../index.js";
import { gels } from "./gels.js";

/** @param {string} gel @param {...string} cuts */
const inCuts = (gel, ...cuts) => cuts.map((cut) => `${cut} ${gel}`);

const HALVES = ["full", "1/2", "1/4"];
const BASIC = [
  ...["CTO", "CTB", "minus green", "plus green"].flatMap((gel) => inCuts(gel, ...HALVES)),
  ...["ND 0.3", "ND 0.6", "ND 0.9"],
];

/** Names of gels. Sheets of CC are in none: few trucks carry them for lamps. */
const STARTERS = {
  basic: BASIC,
  big: [
    ...BASIC,
    ...["CTO", "CTB", "minus green", "plus green"].flatMap((gel) => inCuts(gel, "3/4", "1/8")),
    ...inCuts("CTS", ...HALVES, "3/4", "1/8"),
    ...["ND 0.15", "ND 0.45", "ND 1.2"],
  ],
  windows: [...inCuts("CTO", ...HALVES), "ND 0.3", "ND 0.6", "ND 0.9"],
};

export const STARTER_NAMES = /** @type {(keyof typeof STARTERS)[]} */ (Object.keys(STARTERS));

/** What a kit to start from holds. @param {keyof typeof STARTERS} name @returns {readonly string[]} */
export const starterGels = (name) => STARTERS[name];

/**
 * The gels that a kit leaves out. What a person measured is theirs and stays.
 * @param {readonly unknown[]} held  names of gels
 */
export function leftOut(held) {
  const kit = new Set(held);
  const own = new Set(settings.get("ownGels").map((gel) => gel.name));
  return gels.nominal.map((gel) => gel.name).filter((gel) => !kit.has(gel) && !own.has(gel));
}

/** Whether a kit is in stock just as it comes. @param {readonly unknown[]} held  names of gels */
export function inStock(held) {
  const without = new Set(settings.get("without"));
  const left = leftOut(held);
  return left.length === without.size && left.every((gel) => without.has(gel));
}
