/**
 * What was worked out about a setup and kept with how it was reached: mixtures, shares, flash.
 * They stand in the setup's data as `findings`, the newest first.
 */
import { stamp } from "../../clock.js";
import { book } from "../index.js";
import { currentSetup } from "./shoot.js";

/**
 * @typedef {object} Finding
 * @property {string} at
 * @property {"mix" | "unmix" | "flash" | "drive"} by   the question it answers
 * @property {string} words
 * @property {Record<string, any>} from   what went in
 * @property {Record<string, any> | null} [beside]  what went into the zone beside it
 * @property {Record<string, any>} found  what came out
 */

/** @param {import("./book.js").Thing | undefined} setup @returns {Finding[]} */
export const findingsOf = (setup) => setup?.data.findings ?? [];

/**
 * Keep a finding in the setup we work in. Resolves when durable.
 * @param {Omit<Finding, "at">} finding
 */
export async function keepFinding(finding) {
  const setup = currentSetup();
  if (!setup) return;
  await book.edit(setup.id, { findings: [{ at: stamp(), ...finding }, ...findingsOf(setup)] });
}

/**
 * @param {Finding} finding
 * @returns {Promise<() => Promise<void>>} undo
 */
export async function dropFinding(finding) {
  const setup = currentSetup();
  if (!setup) return async () => {};
  const before = findingsOf(setup);
  await book.edit(setup.id, { findings: before.filter((one) => one !== finding) });
  return () => book.edit(setup.id, { findings: before });
}
