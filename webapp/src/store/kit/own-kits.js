/**
 * Kits of the person's own: what a truck carries, under a name. Each is a thing of the book, so that
 * it goes with the book's file, with a link where that is chosen, and to phones that are joined.
 */
import { book, settings } from "../index.js";
import { gels } from "./gels.js";
import { inStock, leftOut } from "./starters.js";

/** @typedef {import("../log/book.js").Thing} Thing */

/** Newest first. */
export const ownKits = () => book.below(null, "kit");

/** The names of the gels that a kit holds. @param {Thing} kit @returns {unknown[]} */
export const gelsIn = ({ data }) => (Array.isArray(data.gels) ? data.gels : []);

/** How many of each gel a kit holds, as typed. @param {Thing} kit @returns {Record<string, string>} */
function piecesIn(kit) {
  const counts = Array.isArray(kit.data.pieces) ? kit.data.pieces : [];
  const each = gelsIn(kit).map((gel, i) => [String(gel), String(counts[i] ?? "")]);
  return Object.fromEntries(each.filter(([, count]) => count));
}

/** Whether what is in stock is this kit, with its counts. @param {Thing} kit */
export function isInStock(kit) {
  const pieces = settings.get("pieces");
  const counted = piecesIn(kit);
  return (
    inStock(gelsIn(kit)) &&
    gelsIn(kit).every((gel) => (pieces[String(gel)] ?? "") === (counted[String(gel)] ?? ""))
  );
}

/**
 * Put what is in stock under a name; a kit that has it already is changed.
 * @param {string} name
 * @returns {Promise<void>} when durable
 */
export async function saveKit(name) {
  const without = new Set(settings.get("without"));
  const pieces = settings.get("pieces");
  const held = gels.nominal.map((gel) => gel.name).filter((gel) => !without.has(gel));
  const data = { name, gels: held, pieces: held.map((gel) => (pieces[gel] ?? "").trim()) };
  const namesake = ownKits().find((kit) => kit.data.name === name);
  if (namesake) await book.replace(namesake.id, data);
  else await book.create("kit", null, data);
}

/**
 * Have a kit in stock, with its counts.
 * @param {Thing} kit
 * @returns {Promise<() => Promise<void>>} undo
 */
export async function takeKit(kit) {
  const [without, pieces] = [settings.get("without"), settings.get("pieces")];
  const rest = Object.entries(pieces).filter(([gel]) => !gels.nominalOf(gel));
  await settings.set("without", leftOut(gelsIn(kit)));
  await settings.set("pieces", { ...Object.fromEntries(rest), ...piecesIn(kit) });
  return async () => {
    await settings.set("without", without);
    await settings.set("pieces", pieces);
  };
}
