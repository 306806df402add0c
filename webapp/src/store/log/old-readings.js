/**
 * Readings, plans and windows that were kept when the book held no gels yet: they named the own
 * gels of this kit, and are tied to them once.
 */
import { stamp } from "../../clock.js";
import { book, bookRead, settings } from "../index.js";
import { oneAtATime } from "../tabs.js";
import { replacement } from "./entries.js";
import { tie } from "./measured-gels.js";

/** @typedef {import("./entries.js").Entry} Entry */

/**
 * @param {Record<string, any>} data
 * @param {Set<string>} names  of the gels to tie
 * @param {Entry[]} made
 * @returns {Record<string, any> | undefined} undefined when there is nothing to tie
 */
function tiedData(data, names, made) {
  const loose = (/** @type {any} */ list, /** @type {any} */ ids) =>
    !ids && list?.some((/** @type {string} */ name) => names.has(name));
  const { pack, window_gels, planned } = data;
  if (loose(pack, data.gel_ids)) return { ...data, gel_ids: tie(pack, made).ids };
  if (loose(window_gels, data.window_gel_ids)) {
    return { ...data, window_gel_ids: tie(window_gels, made).ids };
  }
  if (loose(planned?.gels, planned?.gel_ids)) {
    return { ...data, planned: { ...planned, gel_ids: tie(planned.gels, made).ids } };
  }
  return undefined;
}

/** The own gels that were kept before the book held any. */
const oldGels = () => settings.get("ownGels").filter((gel) => !gel.at);

/** Tie them, in one tab; gels that were removed from the kit live on in the book alone. */
export async function tieOldReadings() {
  if (!oldGels().length) return;
  await bookRead();
  await oneAtATime("old readings", async () => {
    // Another tab may have done it while this one waited.
    await Promise.all([settings.load(), book.catchUp()]);
    if (oldGels().length) await tieAll(new Set(oldGels().map(({ name }) => name)));
  });
}

/** @param {Set<string>} old  names of the gels */
async function tieAll(old) {
  /** @type {Entry[]} */
  const made = [];
  /** @type {Entry[]} */
  const tied = [];
  const mine = settings.get("who").trim();
  for (const id of new Set(book.part().map((entry) => entry.of))) {
    const thing = book.thing(id);
    if (!thing || thing.gone) continue;
    const { who } = thing.heads[0];
    // Somebody else's reading was taken through a gel of theirs.
    if (who && who !== mine) continue;
    const data = tiedData(thing.data, old, made);
    if (!data) continue;
    const taken = thing.kind === "reading" ? { read_at: thing.at } : {};
    const entry = replacement(thing.heads, { ...data, ...taken });
    tied.push(who ? { ...entry, who } : entry);
  }
  if (tied.length) await book.takeOver([...made, ...tied]);
  await settings.set(
    "ownGels",
    settings
      .get("ownGels")
      .filter((gel) => !(/** @type {any} */ (gel).retired))
      .map((gel) => ({ ...gel, at: gel.at ?? stamp() })),
  );
}
