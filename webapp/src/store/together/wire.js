/**
 * Questions and answers between two phones over a channel that carries texts in order. What comes
 * in is not trusted: it is bounded in size, in rate and in what waits, and whoever breaks the rules
 * is cut off with a sentence.
 */

/**
 * @typedef {object} Channel  a data channel of WebRTC, or a port of a test
 * @property {(text: string) => void} send
 * @property {() => void} close
 * @property {number} [bufferedAmount]
 * @property {(type: string, hear: (event: any) => void, options?: any) => void} addEventListener
 *
 * @typedef {Record<string, any>} Message
 */

/** Characters sent at once: at most three bytes each, below what every browser takes. */
const PIECE = 16_000;

/** Characters of one message: some entries with their photos and spectra. */
export const LONGEST = 2_000_000;

/** Bytes that wait to be sent before more is given to the browser. */
const ENOUGH_WAITING = 1_000_000;

/** What may come in a second, and how many seconds' worth at once. */
const RATE = { characters: 4_000_000, messages: 2000 };
const BURST = 5;

/** Questions that may wait for our answer. */
const MOST_ASKED = 32;

/** Milliseconds until somebody who does not answer counts as gone. */
const PATIENCE = 60_000;

/** What breaks the rules, as a word for the sentence that the person sees. */
export class Breach extends Error {
  /** @param {"garbage" | "flood" | "large" | "silent" | "twin" | "clock" | "refused" | "version"} why */
  constructor(why, detail = "") {
    super(detail || why);
    this.why = why;
  }
}

/** What the other phone could not do, in its own words: never a reason to part. */
export class Unable extends Error {}

export class Wire {
  /** @type {Map<number, {resolve: (answer: Message) => void, reject: (error: Error) => void, timer: any}>} */
  #waiting = new Map();
  #count = 0;
  #asked = 0;
  #coming = "";
  #left = { characters: RATE.characters * BURST, messages: RATE.messages * BURST };
  #since;
  #sending = Promise.resolve();
  closed = false;

  /**
   * @param {Channel} channel
   * @param {object} owner
   * @param {(message: Message) => Promise<Message>} owner.serve  answers what the other asks
   * @param {(error: Error | undefined) => void} owner.over  once, with the breach if it was one
   * @param {() => number} [owner.now]  milliseconds
   */
  constructor(channel, { serve, over, now = () => performance.now() }) {
    this.channel = channel;
    this.serve = serve;
    this.over = over;
    this.now = now;
    this.#since = now();
    channel.addEventListener("message", (event) => this.#hear(event.data));
    channel.addEventListener("close", () => this.close());
  }

  /** @param {Error} [error] */
  close(error) {
    if (this.closed) return;
    this.closed = true;
    for (const { reject, timer } of this.#waiting.values()) {
      clearTimeout(timer);
      reject(error ?? new Error("closed"));
    }
    this.#waiting.clear();
    this.channel.close();
    this.over(error);
  }

  /**
   * @param {Message} message
   * @returns {Promise<Message>}
   * @throws {Unable} with the other's sentence
   */
  ask(message) {
    const n = ++this.#count;
    return new Promise((resolve, reject) => {
      const timer = setTimeout(() => this.close(new Breach("silent")), PATIENCE);
      this.#waiting.set(n, { resolve, reject, timer });
      this.#send({ ...message, n }).catch((error) => {
        clearTimeout(timer);
        this.#waiting.delete(n);
        reject(error);
      });
    });
  }

  /** @param {Message} message */
  #send(message) {
    const text = JSON.stringify(message);
    if (text.length > LONGEST) return Promise.reject(new Breach("large"));
    const sent = this.#sending.then(async () => {
      for (let at = 0; at < text.length && !this.closed; at += PIECE) {
        await this.#room();
        const last = at + PIECE >= text.length;
        if (!this.closed) this.channel.send((last ? "." : "+") + text.slice(at, at + PIECE));
      }
      if (this.closed) throw new Error("closed");
    });
    this.#sending = sent.catch(() => {});
    return sent;
  }

  /** Resolves when the browser has sent most of what it was given. */
  async #room() {
    const { channel } = this;
    if ((channel.bufferedAmount ?? 0) < ENOUGH_WAITING) return;
    await new Promise((resolve) => {
      channel.addEventListener("bufferedamountlow", resolve, { once: true });
      channel.addEventListener("close", resolve, { once: true });
    });
  }

  /** @param {unknown} piece */
  #hear(piece) {
    if (this.closed) return;
    try {
      this.#take(piece);
    } catch (error) {
      this.close(error instanceof Breach ? error : new Breach("garbage"));
    }
  }

  /** @param {unknown} piece */
  #take(piece) {
    if (typeof piece !== "string" || !/^[.+]/.test(piece)) throw new Breach("garbage");
    this.#spend("messages", 1);
    this.#spend("characters", piece.length);
    this.#coming += piece.slice(1);
    if (this.#coming.length > LONGEST) throw new Breach("large");
    if (piece[0] === "+") return;
    const text = this.#coming;
    this.#coming = "";
    const message = JSON.parse(text);
    if (typeof message !== "object" || message === null) throw new Breach("garbage");
    if (typeof message.re === "number") this.#answered(message);
    else if (typeof message.n === "number") this.#answer(message);
    else throw new Breach("garbage");
  }

  /** @param {keyof typeof RATE} what @param {number} amount */
  #spend(what, amount) {
    const now = this.now();
    const seconds = Math.max(0, now - this.#since) / 1000;
    this.#since = now;
    for (const each of /** @type {(keyof typeof RATE)[]} */ (Object.keys(RATE))) {
      this.#left[each] = Math.min(RATE[each] * BURST, this.#left[each] + RATE[each] * seconds);
    }
    this.#left[what] -= amount;
    if (this.#left[what] < 0) throw new Breach("flood");
  }

  /** @param {Message} message */
  #answered({ re, unable, ...answer }) {
    const waiting = this.#waiting.get(re);
    if (!waiting) throw new Breach("garbage");
    this.#waiting.delete(re);
    clearTimeout(waiting.timer);
    if (typeof unable === "string") waiting.reject(new Unable(unable.slice(0, 300)));
    else waiting.resolve(answer);
  }

  /** @param {Message} message */
  async #answer({ n, ...message }) {
    if (++this.#asked > MOST_ASKED) throw new Breach("flood");
    try {
      await this.#send({ ...(await this.serve(message)), re: n });
    } catch (error) {
      if (error instanceof Breach) this.close(error);
      else if (!this.closed) {
        const unable = error instanceof Error ? error.message : String(error);
        await this.#send({ re: n, unable }).catch(() => {});
      }
    } finally {
      this.#asked -= 1;
    }
  }
}
