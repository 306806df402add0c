/**
 * The phones that are joined to this one: a star around the phone that invited them. Whatever one
 * writes goes to all others. Fires "change".
 */
import { ask } from "../../kernel/client.js";
import { book, settings } from "../index.js";
import { accept, answer, hangUp, offer, opened, Trying, Waiting } from "./line.js";
import { Peer } from "./peer.js";

/** A line that does not open by then does not open: nets that part their guests, for one. */
const PATIENCE = 10_000;

/** The inviting phone waits so long for one that was lost. */
const COMING_BACK = 10 * 60_000;

/** Milliseconds of silence on the line until a spare one is tried. */
const SILENCE = 5000;

/**
 * @typedef {object} Member
 * @property {import("./peer.js").Peer | null} peer   null while it is away
 * @property {string} name
 * @property {"joining" | "joined" | "away" | "over"} state
 * @property {import("./line.js").Line} line
 * @property {Waiting | Trying} spares
 */

/** Resolves when this page is in front and in a net. */
async function back() {
  while (document.visibilityState !== "visible" || !navigator.onLine) {
    await new Promise((resolve) => {
      document.addEventListener("visibilitychange", resolve, { once: true });
      addEventListener("online", resolve, { once: true });
    });
  }
}

/** What the kernel says against entries, or "". @param {import("../log/entries.js").Entry[]} entries */
async function check(entries) {
  const given = { format: "evenkelvin-book", version: 2, entries };
  const { problem } = await ask({ ask: "book_check", book: given });
  return problem?.message ?? "";
}

class Joined extends EventTarget {
  /** @type {Set<Member>} */
  members = new Set();
  /** What may leave: the id of a thing of the book, or "" for all of it. */
  scope = "";
  /** Why the last one could not be joined, or was cut off. @type {Peer["why"] | "unreached" | ""} */
  why = "";
  detail = "";
  /**
   * The line that is being made, and whether its code invites or answers.
   * @type {(import("./line.js").Line & {code: string, invites: boolean}) | null}
   */
  making = null;

  constructor() {
    super();
    book.addEventListener("added", (event) => {
      const ids = /** @type {CustomEvent<string[]>} */ (event).detail;
      for (const { peer } of this.members) peer?.added(ids);
    });
  }

  #change() {
    this.dispatchEvent(new Event("change"));
  }

  /** Entries that some phone does not have yet. */
  get pending() {
    return new Set([...this.members].flatMap(({ peer }) => [...(peer?.pending ?? [])])).size;
  }

  /** @param {string} scope */
  share(scope) {
    this.scope = scope;
    this.#change();
  }

  /** Make a code that invites another phone. */
  async invite() {
    this.cancel();
    this.why = "";
    this.making = { ...(await offer()), invites: true };
    this.#change();
  }

  /** Take the code that the invited phone shows. @param {string} code */
  async welcome(code) {
    const { making } = this;
    if (!making) return;
    await accept(making, code);
    await this.#joining(making, new Waiting());
  }

  /** Answer an invitation. @param {string} code */
  async follow(code) {
    this.cancel();
    this.why = "";
    this.making = { ...(await answer(code)), invites: false };
    this.#change();
    // The other phone still has to read our code: no hurry until it has.
    this.#joining(this.making, new Trying(), COMING_BACK);
  }

  /** Put the code that is shown aside. */
  cancel() {
    if (this.making) hangUp(this.making);
    this.making = null;
    this.#change();
  }

  /** Part from everyone. */
  stop() {
    this.cancel();
    for (const member of this.members) this.part(member);
  }

  /** @param {Member} member */
  async part(member) {
    member.state = "over";
    this.members.delete(member);
    member.spares.drop();
    this.#change();
    if (member.peer?.state !== "over") await member.peer?.leave();
    hangUp(member.line);
  }

  /**
   * @param {import("./line.js").Line} line
   * @param {Waiting | Trying} spares
   * @param {number} [patience]
   */
  async #joining(line, spares, patience = PATIENCE) {
    const open = await opened(line, patience);
    if (this.making !== line) return;
    this.making = null;
    if (open) {
      /** @type {Member} */
      const member = { peer: null, name: "", state: "joining", line, spares };
      this.members.add(member);
      this.#talk(member);
    } else {
      this.why = "unreached";
      hangUp(line);
    }
    this.#change();
  }

  /** Begin to talk on a member's line. @param {Member} member */
  #talk(member) {
    const { spares, line } = member;
    const leads = spares instanceof Waiting;
    const peer = new Peer(
      line.channel,
      {
        shared: () => book.part(this.scope || undefined),
        entry: (id) => book.entry(id),
        check,
        keep: (entries) => book.takeOver(entries),
        who: () => settings.get("who"),
        clock: () => Date.now(),
      },
      {
        leads,
        besides: async ({ ask: asked, code }) =>
          asked === "spare" && spares instanceof Trying && typeof code === "string"
            ? { code: await spares.agree(code) }
            : {},
      },
    );
    member.peer = peer;
    peer.addEventListener("change", () => this.#moved(member, peer));
    this.#listen(member, peer);
    peer.begin().then(() => {
      if (spares instanceof Waiting && peer.state !== "over") {
        spares
          .agree(async (code) => String((await peer.wire.ask({ ask: "spare", code })).code))
          .catch(() => {}); // without spare lines a lost phone needs new codes: it is told then
      }
    });
  }

  /** Notice that the line is lost, before the browser gives it up. @param {Member} member @param {Peer} peer */
  #listen(member, peer) {
    const { connection } = member.line;
    /** @type {ReturnType<typeof setTimeout> | undefined} */
    let silence;
    connection.addEventListener("connectionstatechange", () => {
      clearTimeout(silence);
      const { connectionState } = connection;
      if (connectionState === "failed" || connectionState === "closed") peer.close();
      if (connectionState === "disconnected") silence = setTimeout(() => peer.close(), SILENCE);
    });
  }

  /** @param {Member} member @param {Peer} peer */
  #moved(member, peer) {
    if (member.peer !== peer || member.state === "over") return;
    if (peer.name) member.name = peer.name;
    if (peer.state !== "over") member.state = peer.state;
    else if (peer.left) this.part(member);
    else if (peer.why) {
      this.why = peer.why;
      this.detail = peer.detail;
      this.part(member);
    } else this.#away(member);
    this.#change();
  }

  /** Wait for, or look for, a phone that was lost. @param {Member} member */
  async #away(member) {
    member.state = "away";
    hangUp(member.line);
    const { spares } = member;
    const line =
      spares instanceof Waiting ? await spares.again(COMING_BACK) : await spares.again(back);
    if (/** @type {string} */ (member.state) === "over") {
      hangUp(line);
    } else if (line) {
      member.line = line;
      member.state = "joining";
      this.#talk(member);
    } else {
      this.why = "unreached";
      this.part(member);
    }
    this.#change();
  }
}

export const joined = new Joined();
