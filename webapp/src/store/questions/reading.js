/**
 * Turns what is kept or typed into questions for the kernel. Numbers pass as the strings that
 * were typed: the kernel reads them, not we.
 */

import { book, settings } from "../index.js";
import { gels } from "../kit/gels.js";
import { withOwnGels } from "../kit/own-gels.js";
import { curves, gelsOn } from "../log/measured-gels.js";

/** What else a meter shows of a light, each optional: it tells what lamp it may be. */
export const FIGURES = /** @type {const} */ (["ra", "r9", "rf", "rg", "ssi"]);

/** The fields of a reading that the kernel knows. */
const READING = [
  "x",
  "y",
  "cct_K",
  "duv",
  "cct_mired",
  "tint_cc",
  "tint_cuts",
  "tint_says",
  "spectrum",
  "illuminance_lx",
  "illuminance_fc",
  "exposure_lx_s",
  "flash_f_number",
  "flash_iso",
  "flash_receptor",
  "flash_constant",
  "lamp",
  ...FIGURES,
];

/**
 * @param {Record<string, any>} data of a reading as kept
 * @param {string} [name]
 * @returns {Record<string, any>} R
 */
export function readingQuestion(data, name) {
  /** @type {Record<string, any>} */
  const reading = {};
  for (const field of READING) {
    const value = data[field];
    if (value !== undefined && value !== "") reading[field] = value;
  }
  if (name) reading.name = name;
  if (data.pack?.length) {
    reading.pack = gelsOn(data);
    const own = curves(data.pack, data.gel_ids);
    if (own.length) reading.own_gels = own;
  }
  return reading;
}

/** The person's own gels, and how far the others vary. */
export function gelTerms() {
  const scatter = settings.get("gelScatter").trim();
  return { ...withOwnGels(), ...(scatter ? { gel_scatter_percent: scatter } : {}) };
}

/** Tolerance and gels in stock, as every question about gel needs them. */
export function terms() {
  const tolerance = settings.get("tolerance");
  const without = new Set(settings.get("without"));
  const own = gelTerms();
  if (without.size === 0 || !gels.all) return { tolerance, ...own };
  const kit = gels.all.map((gel) => gel.name).filter((name) => !without.has(name));
  return { tolerance, kit, ...own };
}

/** The white the camera is set to, as T. */
export function whiteQuestion() {
  const { cct_K, duv } = settings.get("white");
  return { cct_K, duv: duv.trim() === "" ? "0" : duv };
}

/**
 * The book, or what belongs to some things of it, as the kernel's asks about books take it.
 * @param {...string} ids
 */
export function bookQuestion(...ids) {
  const parts = ids.length ? ids.flatMap((id) => book.part(id)) : book.part();
  return { format: "evenkelvin-book", version: 2, entries: [...new Set(parts)] };
}

/**
 * What the white of a setup was.
 * @param {string} setup its id
 * @returns {import("../../kernel/answers.js").Question<"continuity">}
 */
export function whiteOfSetup(setup) {
  return { ask: "continuity", book: bookQuestion(setup), setup };
}
