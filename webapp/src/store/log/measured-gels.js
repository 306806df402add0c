/**
 * The gels that things of the book hang. A thing names its gels and, beside each measured one, the
 * id of the gel in the book that is meant: so it keeps its gel when it travels, and whatever this
 * kit or another has under that name. On screen and in questions a gel goes by its label: its
 * name, or where that would mean another gel here, its name with who measured it and when.
 */

import { book, settings } from "../index.js";
import { gels } from "../kit/gels.js";
import { creation } from "./entries.js";

/** @typedef {import("./book.js").Thing} Thing */
/** @typedef {import("./entries.js").Entry} Entry */

/**
 * @typedef {object} Known   a measured gel
 * @property {string} name   as it is called where it was measured
 * @property {string} label
 * @property {any} data      what a question to the kernel needs of it, and what was measured
 * @property {string} [id]   of the gel in the book; only the kit has it without one
 */

/** Digits kept of a transmittance: well below what a meter can tell, and short in a link. */
const DIGITS = 5;

/** @param {any} list */
const rounded = (list) =>
  (Array.isArray(list) ? list : []).map((value) => Number(Number(value).toFixed(DIGITS)));

/** What tells two gels of one name apart. @param {any} gel */
const curveOf = ({ wavelengths_nm, transmittance }) =>
  JSON.stringify([wavelengths_nm, rounded(transmittance)]);

/** @param {Thing} gel */
const nameOf = (gel) => String(gel.data.name ?? "");

/** A name that says which: as the kernel's report has it. @param {Thing} gel */
function fullName(gel) {
  const when = gel.heads[0].at.slice(0, 16).replace("T", " ");
  return `${nameOf(gel)} (${[gel.heads[0].who, when].filter(Boolean).join(", ")})`;
}

/** @type {{byId: Map<string, Known>, byLabel: Map<string, Known>}} */
let known = { byId: new Map(), byLabel: new Map() };
/** What `known` was made from. @type {unknown[]} */
let madeFrom = [];

/** Every measured gel of kit and book. */
function measured() {
  const own = settings.get("ownGels");
  const from = [book, book.version, own, gels.nominal];
  if (from.every((each, i) => each === madeFrom[i])) return known;
  madeFrom = from;
  known = { byId: new Map(), byLabel: new Map() };
  const kit = new Map(own.map((gel) => [gel.name, gel]));
  const all = book.below(null, "gel");
  /** @type {Map<string, Set<string>>} */
  const curves = new Map();
  for (const gel of all) {
    const name = nameOf(gel);
    curves.set(name, (curves.get(name) ?? new Set()).add(curveOf(/** @type {any} */ (gel.data))));
  }
  for (const gel of all) {
    const name = nameOf(gel);
    const mine = kit.get(name);
    const same = mine && curveOf(mine) === curveOf(/** @type {any} */ (gel.data));
    const only = !mine && !gels.nominalOf(name) && curves.get(name)?.size === 1;
    const label = same || only ? name : fullName(gel);
    const data = same ? mine : gel.data;
    const one = { name, label, data, id: gel.id };
    known.byId.set(gel.id, one);
    known.byLabel.set(fullName(gel), one).set(label, one);
  }
  for (const data of own) {
    const { name } = data;
    const id = known.byLabel.get(name)?.id;
    known.byLabel.set(name, { name, label: name, data, id });
  }
  return known;
}

/** @param {string} name or label @param {string | null} [id] @returns {Known | undefined} */
function find(name, id) {
  const { byId, byLabel } = measured();
  return (id ? byId.get(id) : undefined) ?? byLabel.get(name);
}

/**
 * The labels of gels that are named.
 * @param {string[] | undefined} names  or labels
 * @param {(string | null)[]} [ids]     of those that were measured
 * @returns {string[]}
 */
export function labels(names = [], ids = []) {
  return names.map((name, i) => find(name, ids[i])?.label ?? name);
}

/** What hung when a reading was taken, by label. @param {Record<string, any>} data */
export const gelsOn = (data) => labels(data.pack, data.gel_ids);

/**
 * The measured gels among those named, as the kernel takes them.
 * @param {string[] | undefined} names  or labels
 * @param {(string | null)[]} [ids]
 */
export function curves(names = [], ids = []) {
  const found = new Map(names.map((name, i) => [find(name, ids[i])?.label, find(name, ids[i])]));
  return [...found.values()].flatMap((gel) => {
    if (!gel) return [];
    const { wavelengths_nm, transmittance, reference_K } = gel.data;
    return [{ name: gel.label, wavelengths_nm, transmittance, reference_K }];
  });
}

/**
 * Names and ids to keep of gels that go by their labels.
 * @param {string[]} chosen  labels
 * @param {Entry[]} made     takes the gels that the book lacks yet, to be written along
 * @returns {{names: string[], ids: (string | null)[]}} no ids where none of them was measured
 */
export function tie(chosen, made) {
  const found = chosen.map((label) => find(label));
  const ids = found.map((gel) => gel && (gel.id ?? inBook(gel, made)));
  return {
    names: chosen.map((label, i) => found[i]?.name ?? label),
    ids: ids.some(Boolean) ? ids.map((id) => id ?? null) : [],
  };
}

/**
 * What a light is meant to be as it is kept: gels by name and id.
 * @param {Record<string, any> | null} said  gels by their labels
 * @param {Entry[]} made  see tie
 */
export function tieMeant(said, made) {
  if (!said?.as_through) return said;
  const { gel_ids: before, ...meant } = said;
  const { names, ids } = tie(labels(meant.as_through, before), made);
  return { ...meant, as_through: names, ...(ids.length ? { gel_ids: ids } : {}) };
}

/** The id of a gel of the kit in the book. @param {Known} gel @param {Entry[]} made */
function inBook({ name, data }, made) {
  const known = made.find((entry) => entry.thing === "gel" && entry.data.name === name);
  if (known) return known.id;
  const { wavelengths_nm, transmittance, reference_K, mired, duv, stops, source, unknown } = data;
  const whole = {
    name,
    wavelengths_nm,
    transmittance: rounded(transmittance),
    reference_K,
    mired,
    duv,
    stops,
    source,
    unknown,
  };
  const given = Object.entries(whole).filter(([, value]) => value !== undefined);
  const entry = creation("gel", null, Object.fromEntries(given));
  made.push(entry);
  return entry.id;
}

/** What a gel is ordered by: the trade's name where it has one. @param {string} label */
export function tradeName(label) {
  const name = find(label)?.name ?? label;
  return gels.nominalOf(name) ? name : label;
}

/** The gels that the book knows and the kit has not. @returns {Known[]} */
export function elsewhere() {
  const kit = new Set(settings.get("ownGels").map(({ name }) => name));
  const found = new Map([...measured().byId.values()].map((gel) => [gel.label, gel]));
  return [...found.values()].filter(({ label }) => !kit.has(label));
}
