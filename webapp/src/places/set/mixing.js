/**
 * What is mixed on the screen: zones of lights, each with what changes its amount. Numbers are
 * places on a slider and pass to the kernel as they stand there.
 */

import { settings } from "../../store/index.js";
import { withOwnGels } from "../../store/kit/own-gels.js";
import { centreOf } from "../../store/log/target.js";
import { readingQuestion } from "../../store/questions/reading.js";

/** @typedef {{light: import("../../store/log/book.js").Thing, reading: import("../../store/log/book.js").Thing}} Lit */
/** @typedef {"stops" | "dimmer" | "share" | "distance"} By */

/**
 * @typedef {object} Part
 * @property {boolean} on
 * @property {By} by
 * @property {string} stops     + brighter than read
 * @property {string} dimmer    percent
 * @property {string} share     place in SHARES
 * @property {string} readAt    place in DISTANCES
 * @property {string} standsAt  place in DISTANCES
 */

/** @typedef {Record<string, Part>} Zone  by the light's id */

/** @type {Part} */
export const AS_READ = {
  on: false,
  by: "stops",
  stops: "0",
  dimmer: "100",
  share: "21",
  readAt: "6",
  standsAt: "6",
};

const decade = (/** @type {number[]} */ numbers, /** @type {number[]} */ powers) =>
  powers.flatMap((power) => numbers.map((n) => String(Number((n * power).toPrecision(3)))));

/** Illuminances to slide over, a third of a stop apart (preferred numbers, ISO 3), from none. */
export const SHARES = [
  "0",
  ...decade([1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8], [1, 10, 100, 1000, 10000]),
  "100000",
];

/** Distances to slide over, half a stop apart (preferred numbers, ISO 3). */
export const DISTANCES = decade([1, 1.18, 1.4, 1.7, 2, 2.36, 2.8, 3.35, 4, 4.75, 5.6, 6.7, 8], [1]);
DISTANCES.push("9.5", "11.2", "13.2", "16", "19", "22.4", "26.5", "32", "37.5", "45");

/** The place on the slider nearest to a level. @param {number} lx */
export function nearestShare(lx) {
  const above = SHARES.findIndex((share) => Number(share) >= lx);
  return String(above < 0 ? SHARES.length - 1 : above);
}

/** @param {Part} part */
function amount(part) {
  const { illuminance, length } = settings.values;
  switch (part.by) {
    case "stops":
      return { stops: part.stops };
    case "dimmer":
      return { dimmer: part.dimmer };
    case "share":
      return { [`share_${illuminance}`]: SHARES[Number(part.share)] };
    case "distance":
      return {
        [`measured_at_${length}`]: DISTANCES[Number(part.readAt)],
        [`distance_${length}`]: DISTANCES[Number(part.standsAt)],
      };
  }
}

/**
 * The lights of a zone that are in, in the order of the set.
 * @param {Lit[]} lights
 * @param {Zone} zone
 */
export const inZone = (lights, zone) => lights.filter(({ light }) => zone[light.id]?.on);

/** @param {Lit[]} lights @param {Zone} zone */
const zoneQuestion = (lights, zone) =>
  inZone(lights, zone).map(({ light, reading }) => ({
    reading: readingQuestion(reading.data),
    name: light.data.name,
    ...amount(zone[light.id]),
  }));

/** Places of the ribbon: as many as a thumb tells apart on a phone. */
const PLACES = 41;

/**
 * @param {Lit[]} lights
 * @param {Zone} zone
 * @param {Zone} [beside]
 * @returns {import("../../kernel/answers.js").Question<"mix"> | null}
 */
export function mixQuestion(lights, zone, beside) {
  if (!inZone(lights, zone).length) return null;
  return {
    ask: "mix",
    lights: zoneQuestion(lights, zone),
    ...(beside && inZone(lights, beside).length
      ? { beside: zoneQuestion(lights, beside), ribbon: PLACES, white: centreOf() }
      : {}),
    ...withOwnGels(),
  };
}

/**
 * How a mixture was reached, to be kept with it: lists side by side, as a book nests no deeper.
 * @param {Lit[]} lights
 * @param {Zone} zone
 */
export function howMixed(lights, zone) {
  const parts = inZone(lights, zone);
  return {
    lights: parts.map(({ light }) => light.id),
    names: parts.map(({ light }) => light.data.name),
    readings: parts.map(({ reading }) => reading.id),
    changed: parts.map(({ light }) =>
      Object.entries(amount(zone[light.id]))
        .map(([name, value]) => `${name} ${value}`)
        .join(", "),
    ),
  };
}
