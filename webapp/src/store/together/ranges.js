/**
 * Which entries two books do not share, found by comparing ids: a range of ids that both hold alike
 * is told by its count and its hash, one that differs is cut into smaller ones until their ids are
 * few enough to be named. 20 000 entries that both know cost one hash.
 */

import { Breach } from "./wire.js";

/**
 * Ids from `from` up to, but without, `to`; the ends are open where they are null.
 * @typedef {[from: string | null, to: string | null, count: number, hash: string]} Range
 *
 * @typedef {{ids: [id: string, rank: number][]} | {parts: Range[]} | {same: true}} Found
 */

/** Ids that are named rather than cut into ranges. */
const FEW = 64;
/** Of a range that the other holds next to nothing of, so many are named at once. */
const MANY = 2000;
/** Ranges that one is cut into. */
const CUT = 16;

/** Ranges that are compared at most: two books of 200 000 entries, unlike throughout, need half. */
const MOST_RANGES = 10_000;

/** What stands above comes first, so that what has arrived when a line is cut hangs together. */
const RANKS = ["production", "location", "setup", "gel", "kit", "light", "surface", "reading"];

/** @param {import("../log/entries.js").Entry} entry */
export const rankOf = ({ thing }) => {
  const rank = RANKS.indexOf(thing);
  return rank < 0 ? RANKS.length : rank;
};

/** @param {string[]} ids */
async function hashOf(ids) {
  const bytes = new TextEncoder().encode(ids.join(" "));
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return Array.from(digest.subarray(0, 16), (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** The entries that one side shares, by id. */
export class Shelf {
  /** @param {import("../log/entries.js").Entry[]} entries */
  constructor(entries) {
    this.entries = new Map(entries.map((entry) => [entry.id, entry]));
    this.ids = [...this.entries.keys()].sort();
  }

  /** @param {string | null} from @param {string | null} to */
  within(from, to) {
    const { ids } = this;
    const place = (/** @type {string} */ id) => {
      let [low, high] = [0, ids.length];
      while (low < high) {
        const middle = (low + high) >> 1;
        if (ids[middle] < id) low = middle + 1;
        else high = middle;
      }
      return low;
    };
    return ids.slice(from === null ? 0 : place(from), to === null ? ids.length : place(to));
  }

  /** @param {string | null} from @param {string | null} to @returns {Promise<Range>} */
  async range(from, to) {
    const ids = this.within(from, to);
    return [from, to, ids.length, await hashOf(ids)];
  }

  /** What the other's range is beside ours. @param {Range} range @returns {Promise<Found>} */
  async compare([from, to, count, hash]) {
    const ids = this.within(from, to);
    if (ids.length === count && (await hashOf(ids)) === hash) return { same: true };
    if (ids.length <= FEW || (count <= FEW && ids.length <= MANY)) {
      return {
        ids: ids.map((id) => [id, rankOf(/** @type {any} */ (this.entries.get(id)))]),
      };
    }
    const size = Math.ceil(ids.length / CUT);
    const starts = ids.filter((_, at) => at > 0 && at % size === 0);
    const ends = [from, ...starts, to];
    return {
      parts: await Promise.all(
        starts.concat("").map((_, at) => this.range(ends[at], ends[at + 1])),
      ),
    };
  }
}

/** @param {unknown} range @returns {range is Range} */
export function isRange(range) {
  if (!Array.isArray(range) || range.length !== 4) return false;
  const end = (/** @type {unknown} */ id) => id === null || typeof id === "string";
  const [from, to, count, hash] = range;
  return end(from) && end(to) && Number.isInteger(count) && typeof hash === "string";
}

/**
 * What they have and we have not, and the other way round.
 * @param {Shelf} shelf  ours
 * @param {(ranges: Range[]) => Promise<Found[]>} compare  asks the other
 * @returns {Promise<{theirs: string[], ours: string[]}>} ids, what stands above first
 * @throws {Breach} where there is no end of ranges
 */
export async function differences(shelf, compare) {
  /** @type {[string, number][]} */
  const theirs = [];
  /** @type {string[]} */
  const ours = [];
  let open = [await shelf.range(null, null)];
  for (let all = 0; open.length; all += CUT) {
    if (all + open.length > MOST_RANGES) throw new Breach("flood");
    const asked = open.slice(0, CUT);
    open = open.slice(CUT);
    const found = await compare(asked);
    for (const [at, one] of found.entries()) {
      if ("parts" in one) {
        for (const part of one.parts) {
          const own = await shelf.range(part[0], part[1]);
          if (own[2] !== part[2] || own[3] !== part[3]) open.push(own);
        }
      } else if ("ids" in one) {
        const here = new Set(shelf.within(asked[at][0], asked[at][1]));
        for (const [id, rank] of one.ids) if (!here.delete(id)) theirs.push([id, rank]);
        ours.push(...here);
      }
    }
  }
  const rank = (/** @type {string} */ id) => rankOf(/** @type {any} */ (shelf.entries.get(id)));
  return {
    theirs: theirs.sort((a, b) => a[1] - b[1]).map(([id]) => id),
    ours: ours.sort((a, b) => rank(a) - rank(b)),
  };
}
