/**
 * One joined phone: what it has and lacks is found once, then each new entry goes over as soon as it
 * is written here, and counts as sent when it is durable there. Nothing is written here that the
 * kernel's "book_check" refuses. Fires "change".
 */
import { differences, isRange, rankOf, Shelf } from "./ranges.js";
import { Breach, LONGEST, Unable, Wire } from "./wire.js";

/**
 * @typedef {import("../log/entries.js").Entry} Entry
 *
 * @typedef {object} Home  what a peer needs of this phone
 * @property {() => Entry[]} shared          the entries that may leave
 * @property {(id: string) => Entry | undefined} entry  any entry of the book
 * @property {(entries: Entry[]) => Promise<string>} check  what the kernel says against them, or ""
 * @property {(entries: Entry[]) => Promise<void>} keep  resolves when they are durable
 * @property {() => string} who
 * @property {() => number} clock  milliseconds since 1970
 */

/** Of the talk between two phones: raised where an older app would not understand it. */
const TALK = 1;

/** Entries, and characters of theirs, that go in one message. */
const TOGETHER = 500;
const CHARACTERS = 400_000;

/** Entries may be dated so much later than this phone's clock: time zones are not the reason. */
const LATER = 24 * 60 * 60 * 1000;

/** Entries somebody may send in a second, and at once. */
const RATE = 5000;
const BURST = 40_000;

/** Milliseconds that a goodbye may take. */
const GOODBYE = 1000;

/** Until what the other could not keep is offered again. */
const AGAIN = 3000;

/**
 * The same fields with the same contents, in whatever order.
 * @param {unknown} value
 * @returns {string}
 */
const inOrder = (value) =>
  JSON.stringify(value, (_, each) =>
    each && typeof each === "object" && !Array.isArray(each)
      ? Object.fromEntries(Object.entries(each).sort(([a], [b]) => (a < b ? -1 : 1)))
      : each,
  );

/**
 * Slices that fit one message.
 * @param {Entry[]} entries
 */
export function* messages(entries) {
  /** @type {Entry[]} */
  let some = [];
  let characters = 0;
  for (const entry of entries) {
    const length = JSON.stringify(entry).length;
    if (some.length && (some.length === TOGETHER || characters + length > CHARACTERS)) {
      yield some;
      [some, characters] = [[], 0];
    }
    some.push(entry);
    characters += length;
  }
  if (some.length) yield some;
}

export class Peer extends EventTarget {
  /** Who it is, as that phone signs. */
  name = "";
  /** @type {"joining" | "joined" | "over"} */
  state = "joining";
  /** Entries that the other phone does not have yet. @type {Set<string>} */
  pending = new Set();
  /** Why the line ended. @type {Breach["why"] | ""} */
  why = "";
  /** What the kernel or the other phone says about that. */
  detail = "";
  /** Whether the other phone said that it leaves. */
  left = false;
  /** What is in the way of sending or keeping right now, as a sentence. */
  trouble = "";

  #arriving = new Set();
  #left = BURST;
  #since = 0;
  #flushing = false;
  /** Whether the other phone knows that it holds all that was to be had here. */
  #level = false;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  #again;

  /**
   * @param {import("./wire.js").Channel} channel
   * @param {Home} home
   * @param {object} [role]
   * @param {boolean} [role.leads]  whether this phone compares the books: one of two does
   * @param {(message: Record<string, any>) => Promise<Record<string, any>>} [role.besides]
   *   answers what is not about entries
   */
  constructor(channel, home, { leads = false, besides } = {}) {
    super();
    this.home = home;
    this.leads = leads;
    this.besides = besides;
    this.#since = home.clock();
    this.wire = new Wire(channel, {
      serve: (message) => this.#serve(message),
      over: (error) => this.#over(error),
    });
  }

  #change() {
    this.dispatchEvent(new Event("change"));
  }

  /** @param {Error} [error] */
  #over(error) {
    clearTimeout(this.#again);
    this.state = "over";
    if (error instanceof Breach) {
      this.why = error.why;
      this.detail = error.message === error.why ? "" : error.message;
    }
    this.#change();
  }

  /** The line is lost. */
  close() {
    this.wire.close();
  }

  /** Part for good: the other need not wait for this phone. */
  async leave() {
    const told = this.wire.ask({ ask: "bye" }).catch(() => {});
    await Promise.race([told, new Promise((resolve) => setTimeout(resolve, GOODBYE))]);
    this.wire.close();
  }

  /** Say hello and bring the two books in step. Never rejects: what went wrong is in `why`. */
  async begin() {
    try {
      const hello = await this.wire.ask({ ask: "hello", ...this.#hello() });
      this.#greeted(hello);
      if (this.leads) await this.bring();
    } catch (error) {
      this.#stuck(error);
    }
  }

  #hello = () => ({ talk: TALK, who: this.home.who() });

  /** @param {Record<string, any>} hello */
  #greeted({ talk, who }) {
    if (talk !== TALK) throw new Breach("version");
    this.name = typeof who === "string" ? who.slice(0, 80) : "";
    this.#change();
  }

  /** @param {unknown} error */
  #stuck(error) {
    if (this.state === "over") return;
    if (error instanceof Breach) this.wire.close(error);
    else {
      this.trouble = error instanceof Error ? error.message : String(error);
      this.#change();
      clearTimeout(this.#again);
      this.#again = setTimeout(() => this.#retry(), AGAIN);
    }
  }

  #retry() {
    if (this.state === "joining") this.begin();
    else this.#flush();
  }

  /** Compare the two books, take what is missing here and give what is missing there. */
  async bring() {
    const shelf = new Shelf(this.home.shared());
    const { theirs, ours } = await differences(shelf, async (ranges) => {
      const { found } = await this.wire.ask({ ask: "compare", ranges });
      return checkedFound(found, ranges.length);
    });
    for (const id of ours) this.pending.add(id);
    await this.#fetch(theirs.filter((id) => !this.home.entry(id)));
    this.state = "joined";
    this.trouble = "";
    this.#change();
    await this.#flush();
  }

  /** @param {string[]} ids */
  async #fetch(ids) {
    let missing = ids;
    while (missing.length) {
      const { entries } = await this.wire.ask({ ask: "give", ids: missing.slice(0, TOGETHER) });
      const wanted = new Set(missing);
      if (!Array.isArray(entries) || !entries.every((entry) => wanted.delete(entry?.id))) {
        throw new Breach("garbage");
      }
      // What it no longer shares.
      if (!entries.length) return;
      await this.#accept(entries);
      missing = [...wanted];
    }
  }

  /**
   * What was written here, or came from another phone.
   * @param {string[]} ids
   */
  added(ids) {
    if (this.state === "over") return;
    const fresh = ids.filter((id) => !this.#arriving.has(id));
    if (!fresh.length) return;
    const shared = new Set(this.home.shared().map((entry) => entry.id));
    for (const id of fresh) if (shared.has(id)) this.pending.add(id);
    this.#change();
    this.#flush();
  }

  async #flush() {
    if (this.#flushing || this.state !== "joined") return;
    this.#flushing = true;
    try {
      while (this.pending.size) {
        const entries = [...this.pending].flatMap((id) => this.home.entry(id) ?? []);
        const fitting = entries.filter((entry) => JSON.stringify(entry).length < LONGEST / 2);
        if (!fitting.length) break;
        fitting.sort((a, b) => rankOf(a) - rankOf(b));
        for (const some of messages(fitting)) {
          await this.wire.ask({ ask: "take", entries: some });
          for (const { id } of some) this.pending.delete(id);
          this.trouble = "";
          this.#change();
        }
      }
      if (this.leads && !this.#level) {
        await this.wire.ask({ ask: "level" });
        this.#level = true;
      }
    } catch (error) {
      this.#stuck(error);
    } finally {
      this.#flushing = false;
    }
  }

  /** @param {Record<string, any>} message @returns {Promise<Record<string, any>>} */
  async #serve(message) {
    switch (message.ask) {
      case "hello":
        this.#greeted(message);
        return this.#hello();
      case "compare": {
        const { ranges } = message;
        if (!Array.isArray(ranges) || ranges.length > 64 || !ranges.every(isRange)) {
          throw new Breach("garbage");
        }
        const shelf = new Shelf(this.home.shared());
        return { found: await Promise.all(ranges.map((range) => shelf.compare(range))) };
      }
      case "give":
        return { entries: this.#asked(message.ids) };
      case "take":
        await this.#accept(message.entries);
        return {};
      case "level":
        this.state = "joined";
        this.#change();
        this.#flush();
        return {};
      case "bye":
        this.left = true;
        setTimeout(() => this.wire.close());
        return {};
      default: {
        const answer = await this.besides?.(message);
        if (!answer) throw new Breach("garbage");
        return answer;
      }
    }
  }

  /** Only what is shared leaves, whatever is asked for. @param {unknown} ids */
  #asked(ids) {
    if (!Array.isArray(ids) || ids.length > TOGETHER) throw new Breach("garbage");
    const shared = new Map(this.home.shared().map((entry) => [entry.id, entry]));
    const [some = []] = messages(ids.flatMap((id) => shared.get(id) ?? []));
    return some;
  }

  /**
   * Write what came: all of it or nothing.
   * @param {unknown} entries
   * @throws {Breach} where it is no honest part of a book
   * @throws {Unable} where this phone cannot keep it
   */
  async #accept(entries) {
    if (!Array.isArray(entries) || entries.length > TOGETHER) throw new Breach("garbage");
    this.#spend(entries.length);
    /** @type {Entry[]} */
    const fresh = [];
    for (const entry of entries) {
      if (!entry || typeof entry !== "object" || typeof entry.id !== "string") {
        throw new Breach("garbage");
      }
      const own = this.home.entry(entry.id);
      if (!own) fresh.push(entry);
      else if (inOrder(own) !== inOrder(entry)) throw new Breach("twin");
      this.pending.delete(entry.id);
    }
    if (!fresh.length) return;
    if (fresh.some(({ at }) => Date.parse(at) > this.home.clock() + LATER)) {
      throw new Breach("clock");
    }
    const refused = await this.home.check(fresh);
    if (refused) throw new Breach("refused", refused);
    for (const { id } of fresh) this.#arriving.add(id);
    try {
      await this.home.keep(fresh);
    } finally {
      for (const { id } of fresh) this.#arriving.delete(id);
    }
    this.#change();
  }

  /** @param {number} amount */
  #spend(amount) {
    const now = this.home.clock();
    this.#left = Math.min(BURST, this.#left + (RATE * Math.max(0, now - this.#since)) / 1000);
    this.#since = now;
    this.#left -= amount;
    if (this.#left < 0) throw new Breach("flood");
  }
}

/** @param {unknown} found @param {number} count @returns {import("./ranges.js").Found[]} */
function checkedFound(found, count) {
  const sound = (/** @type {any} */ one) =>
    one?.same === true ||
    (Array.isArray(one?.parts) && one.parts.length <= 32 && one.parts.every(isRange)) ||
    (Array.isArray(one?.ids) &&
      one.ids.every(
        (/** @type {any} */ pair) =>
          Array.isArray(pair) && typeof pair[0] === "string" && Number.isInteger(pair[1]),
      ));
  if (!Array.isArray(found) || found.length !== count || !found.every(sound)) {
    throw new Breach("garbage");
  }
  return found;
}

export { Unable };
