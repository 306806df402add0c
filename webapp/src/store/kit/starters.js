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

/**
 * The gels that a kit leaves out. What a person measured is theirs and stays.
 * @param {keyof typeof STARTERS} name
 */
export function leftOut(name) {
  const kit = new Set(STARTERS[name]);
  const own = new Set(settings.get("ownGels").map((gel) => gel.name));
  return gels.nominal.map((gel) => gel.name).filter((gel) => !kit.has(gel) && !own.has(gel));
}

/** The kit that is in stock just as it comes. */
export function starterNow() {
  const without = new Set(settings.get("without"));
  return STARTER_NAMES.find((name) => {
    const left = leftOut(name);
    return left.length === without.size && left.every((gel) => without.has(gel));
  });
}
