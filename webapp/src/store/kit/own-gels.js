/**
 * Gels that the person measured: kept in the settings of this book, sent with every question about
 * gel, and preferred to the nominal gel of the same name.
 */

import { stamp } from "../../clock.js";
import { ask } from "../../kernel/client.js";
import { settings } from "../index.js";

/** @typedef {import("./gels.js").Gel} Gel */

/**
 * @typedef {object} OwnGel
 * @property {string} name
 * @property {number[]} wavelengths_nm
 * @property {number[]} transmittance
 * @property {number | null} mired  on the light it was learned from, or on its reference
 * @property {number | null} duv
 * @property {number | null} stops
 * @property {number} reference_K
 * @property {string} [source]     how it was learned
 * @property {number[][]} [unknown]  ranges in nm that were not measured
 * @property {{mired: number | null, duv: number | null, stops: number | null}} [nominal]  its namesake on that light
 * @property {string} [at]         when it came into the kit
 */

/** The part of a question that brings the own gels along. */
export function withOwnGels() {
  const own = settings
    .get("ownGels")
    .map(({ name, wavelengths_nm, transmittance, reference_K, source }) => ({
      name,
      wavelengths_nm,
      transmittance,
      reference_K,
      // How it was learned says how surely.
      ...(source ? { source } : {}),
    }));
  return own.length ? { own_gels: own } : {};
}

/**
 * Put a gel into the kit; one of the same name is replaced.
 * @param {OwnGel} gel
 * @returns {Promise<() => Promise<void>>} undo, when durable
 */
export async function keepOwnGel(gel) {
  const before = settings.get("ownGels");
  const others = before.filter(({ name }) => name !== gel.name);
  await settings.set("ownGels", [...others, { ...gel, at: stamp() }]);
  return () => settings.set("ownGels", before);
}

/**
 * Put a gel that the book knows into the kit, under the name it has where it was measured.
 * @param {import("../log/measured-gels.js").Known} gel
 * @returns {Promise<() => Promise<void>>} undo
 */
export async function adoptGel({ name, data }) {
  const { wavelengths_nm, transmittance, reference_K, source, unknown } = data;
  const curve = { name, wavelengths_nm, transmittance, reference_K };
  const answer = await ask({ ask: "kit", own_gels: [curve] });
  if (answer.problem) throw new Error(answer.problem.message);
  const { mired, duv, stops } = /** @type {Gel} */ (answer.gels.find((gel) => gel.name === name));
  return keepOwnGel({ ...curve, mired, duv, stops, source, unknown });
}

/**
 * Take a gel out of the kit. Readings through it have its curve in the book.
 * @param {string} name
 * @returns {Promise<() => Promise<void>>} undo
 */
export async function removeOwnGel(name) {
  const before = settings.get("ownGels");
  await settings.set(
    "ownGels",
    before.filter((gel) => gel.name !== name),
  );
  return () => settings.set("ownGels", before);
}
