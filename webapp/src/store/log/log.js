/**
 * What the entries of a log mean: the present state of every thing in it. The kernel's
 * book/meaning.py tells the rules; both run the cases of tests/book_cases. Nothing here is stored.
 */

/** @typedef {import("./entries.js").Entry} Entry */
/** @typedef {import("./entries.js").Kind} Kind */

/**
 * @typedef {object} Thing
 * @property {string} id
 * @property {Kind} kind
 * @property {string | null} parent
 * @property {string} at           when it was first written
 * @property {Record<string, any>} data
 * @property {Entry[]} heads       more than one: edited in two places at once
 * @property {boolean} gone
 */

/** The measured gels that the data of a thing names, by their ids. @param {Record<string, any>} data */
const gelIds = ({ gel_ids, window_gel_ids, windows, planned, meant }) =>
  [gel_ids, window_gel_ids, planned?.gel_ids, meant?.gel_ids]
    .concat((windows ?? []).map((/** @type {any} */ one) => one?.gel_ids))
    .flatMap((ids) => ids ?? [])
    .filter(Boolean);

/** The lights that a light is meant to be like. @param {Record<string, any>} data */
const likeIds = ({ pickup_of, meant }) =>
  [pickup_of, meant?.like].filter((id) => typeof id === "string");

/** A light's place in its setup; those of books that kept none come first. @param {Thing} thing */
export const orderOf = ({ kind, data }) =>
  kind === "light" && typeof data.order === "number" ? data.order : 0;

export class Log extends EventTarget {
  /** @param {Iterable<Entry>} [entries] */
  constructor(entries = []) {
    super();
    for (const entry of entries) this.take(entry);
  }

  /** @type {Map<string, Entry>} */ #entries = new Map();
  /** @type {Map<string, Entry[]>} entries by thing */ #history = new Map();
  /** @type {Set<string>} ids named in some `after` */ #replaced = new Set();
  /** @type {Map<string, Set<string>>} things by parent ("" = none) */ #below = new Map();
  /** @type {Map<string, Thing>} */ #things = new Map();

  /** Begin again with no entries. */
  forget() {
    this.#entries = new Map();
    this.#history = new Map();
    this.#replaced = new Set();
    this.#below = new Map();
    this.#things = new Map();
  }

  /** Add an entry; one that is there already changes nothing. @param {Entry} entry */
  take(entry) {
    if (this.#entries.has(entry.id)) return;
    this.#entries.set(entry.id, entry);
    const history = this.#history.get(entry.of) ?? [];
    history.push(entry);
    this.#history.set(entry.of, history);
    for (const id of entry.after) this.#replaced.add(id);
    const above = entry.parent ?? "";
    if (!this.#below.has(above)) this.#below.set(above, new Set());
    this.#below.get(above)?.add(entry.of);
    this.#things.delete(entry.of);
  }

  get size() {
    return this.#entries.size;
  }

  /** @param {string} id @returns {Entry | undefined} */
  entry(id) {
    return this.#entries.get(id);
  }

  /** Every entry of a thing, the oldest first. @param {string} id @returns {Entry[]} */
  history(id) {
    return [...(this.#history.get(id) ?? [])].sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
  }

  /**
   * The entries of a thing, of all below it, of what it belongs to, of the measured gels that these
   * name and of the readings that its lights are meant to match; the whole log without one.
   * @param {string} [id]
   * @returns {Entry[]}
   */
  part(id) {
    if (!id) return [...this.#entries.values()];
    /** @type {Entry[]} */
    const entries = [];
    for (let up = this.thing(id)?.parent; up; up = this.thing(up)?.parent) {
      entries.push(...(this.#history.get(up) ?? []));
    }
    const queue = [id];
    const seen = new Set(queue);
    for (let next = queue.pop(); next; next = queue.pop()) {
      entries.push(...(this.#history.get(next) ?? []));
      for (const below of this.#below.get(next) ?? []) {
        if (!seen.has(below)) queue.push(below);
        seen.add(below);
      }
    }
    const lights = entries.filter((entry) => entry.thing === "light");
    for (const { data } of lights) {
      for (const like of likeIds(data)) {
        if (seen.has(like)) continue;
        seen.add(like);
        const matched = this.#matched(like);
        entries.push(...matched);
        // A pick-up of a pick-up that was never read goes on to the day before.
        lights.push(...matched.filter((entry) => entry.thing === "light"));
      }
    }
    const gels = new Set(entries.flatMap(({ data }) => gelIds(data)));
    return [...new Set(entries), ...[...gels].flatMap((gel) => this.#history.get(gel) ?? [])];
  }

  /**
   * A light with its latest reading, without the setup it stands in.
   * @param {string} light
   * @returns {Entry[]}
   */
  #matched(light) {
    const ids = [light, this.latest(light)?.id ?? ""];
    return ids.flatMap((id) => this.#history.get(id) ?? []);
  }

  /** @param {string | null | undefined} id @returns {Thing | undefined} */
  thing(id) {
    if (!id) return undefined;
    const known = this.#things.get(id);
    if (known) return known;
    const history = this.#history.get(id);
    if (!history) return undefined;
    const unreplaced = history.filter((entry) => !this.#replaced.has(entry.id));
    // Entries that replace each other in a circle, as only a made-up book has them, all count.
    const heads = (unreplaced.length ? unreplaced : [...history]).sort(
      (a, b) => Date.parse(b.at) - Date.parse(a.at) || (a.id < b.id ? 1 : -1),
    );
    const head = heads.find((entry) => !entry.gone) ?? heads[0];
    const first = this.#entries.get(id) ?? head;
    const thing = {
      id,
      kind: head.thing,
      parent: head.parent,
      // A book that came by a link holds no history: an edited reading says when it was taken.
      at: head.data.read_at ?? first.at,
      data: head.data,
      heads,
      gone: Boolean(head.gone),
    };
    this.#things.set(id, thing);
    return thing;
  }

  /**
   * What stands below `parent` and is not deleted, newest first; the lights of a setup by their
   * order in it, the last first, whatever their times became on the way here.
   * @param {string | null} parent
   * @param {Kind} [kind]
   * @returns {Thing[]}
   */
  below(parent, kind) {
    const ids = this.#below.get(parent ?? "") ?? [];
    return [...ids]
      .map((id) => /** @type {Thing} */ (this.thing(id)))
      .filter((thing) => !thing.gone && thing.parent === parent && (!kind || thing.kind === kind))
      .map((thing) => ({ thing, place: [orderOf(thing), ...this.#placeOf(thing)] }))
      .sort(
        (a, b) =>
          b.place[0] - a.place[0] ||
          b.place[1] - a.place[1] ||
          b.place[2] - a.place[2] ||
          (a.thing.id < b.thing.id ? 1 : -1),
      )
      .map(({ thing }) => thing);
  }

  /**
   * What a thing is sorted by: its time. A reading kept while the clock stood before the reading
   * it came after names that one in `follows`, and stands right behind it.
   * @param {Thing} thing
   * @returns {[number, number]}
   */
  #placeOf(thing) {
    /** @type {Thing[]} */
    const chain = [];
    for (
      let each = /** @type {Thing | undefined} */ (thing);
      each && !chain.includes(each);
      each = this.thing(each.data.follows)
    ) {
      chain.push(each);
    }
    /** @type {[number, number]} */
    let place = [Number.NEGATIVE_INFINITY, 0];
    for (const each of chain.reverse()) {
      const at = Date.parse(each.at);
      place = at > place[0] ? [at, 0] : [place[0], place[1] + 1];
    }
    return place;
  }

  /** The thing, if it and everything above it stands. @param {string | null | undefined} id */
  standing(id) {
    const thing = this.thing(id);
    for (let up = thing; up; up = this.thing(up.parent)) if (up.gone) return undefined;
    return thing;
  }

  /** The latest reading of a light. @param {string} light @returns {Thing | undefined} */
  latest(light) {
    return this.below(light, "reading")[0];
  }
}
