/**
 * Gels that the person measured: kept in the settings of this book, sent with every question about
 * gel, and preferred to the nominal gel of the same name.
 */
import { book, settings } from "./index.js";

/** @typedef {import("./gels.js").Gel} Gel */

/**
 * @typedef {object} OwnGel
 * @property {string} name
 * @property {number[]} wavelengths_nm
 * @property {number[]} transmittance
 * @property {number} mired        on the light it was learned from, or on its reference
 * @property {number} duv
 * @property {number} stops
 * @property {number} reference_K
 * @property {string} [source]     how it was learned
 * @property {number[][]} [unknown]  ranges in nm that were not measured
 * @property {{mired: number, duv: number, stops: number}} [nominal]  its namesake on that light
 * @property {boolean} [retired]   removed, but old readings were taken through it
 */

/** Those that are in the kit. @returns {OwnGel[]} */
export function ownGels() {
  return settings.get("ownGels").filter((gel) => !gel.retired);
}

/** Names that old readings may use and no advice may. @returns {Set<string>} */
export function retiredNames() {
  return new Set(
    settings
      .get("ownGels")
      .filter((gel) => gel.retired)
      .map((gel) => gel.name),
  );
}

/** The part of a question that brings the own gels along. */
export function withOwnGels() {
  const own = settings
    .get("ownGels")
    .map(({ name, wavelengths_nm, transmittance, reference_K }) => ({
      name,
      wavelengths_nm,
      transmittance,
      reference_K,
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
  await settings.set("ownGels", [...before.filter(({ name }) => name !== gel.name), gel]);
  return () => settings.set("ownGels", before);
}

/**
 * Take a gel out of the kit. Where the book has readings through it and no nominal gel has its
 * name, its curve stays known, so that those readings can still be judged.
 * @param {string} name
 * @param {boolean} nominal  whether a nominal gel of this name takes over
 * @returns {Promise<() => Promise<void>>} undo
 */
export async function removeOwnGel(name, nominal) {
  const before = settings.get("ownGels");
  const used = book.entries().some(({ data }) => data.pack?.includes(name));
  const after =
    used && !nominal
      ? before.map((gel) => (gel.name === name ? { ...gel, retired: true } : gel))
      : before.filter((gel) => gel.name !== name);
  await settings.set("ownGels", after);
  return () => settings.set("ownGels", before);
}
