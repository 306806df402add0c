/** The page's side of the reader: a promise for each look at a picture. */
import { scriptAddress } from "../trusted.js";

/**
 * @typedef {{ text: string, box: number[], corners: [number, number][], confidence: number }} Seen
 * @typedef {{ words: Seen[], width: number, height: number, bars: number }} Look
 */

/** No honest look takes so long, the reader's start included. */
const MOST_WAIT = 30_000; // ms

export class DisplayReader {
  /** @type {Worker | undefined} */ #worker;
  /** @type {Map<number, (answer: any) => void>} */ #waiting = new Map();
  #lastId = 0;

  /**
   * @param {{picture: ImageBitmap} | {bars: true}} what
   * @returns {Promise<Look>}
   */
  #ask(what) {
    this.#worker ??= this.#start();
    const worker = this.#worker;
    this.#lastId += 1;
    const id = this.#lastId;
    return new Promise((resolve, reject) => {
      const overdue = setTimeout(() => this.#fail("overdue"), MOST_WAIT);
      this.#waiting.set(id, (answer) => {
        clearTimeout(overdue);
        if (answer.failed === undefined) resolve(answer);
        else reject(new Error(answer.failed));
      });
      worker.postMessage({ id, ...what }, "picture" in what ? [what.picture] : []);
    });
  }

  #start() {
    const worker = new Worker(scriptAddress("./reader.js"));
    worker.onmessage = ({ data }) => {
      this.#waiting.get(data.id)?.(data);
      this.#waiting.delete(data.id);
    };
    worker.onerror = (event) => {
      event.preventDefault();
      this.#fail(event.message || "");
    };
    return worker;
  }

  /** @param {string} failed */
  #fail(failed) {
    this.#worker?.terminate();
    this.#worker = undefined;
    for (const settle of this.#waiting.values()) settle({ failed });
    this.#waiting.clear();
  }

  /** Read a picture, which is given away. @param {ImageBitmap} picture */
  look(picture) {
    return this.#ask({ picture });
  }

  /** Look at the last picture once more, for digits made of bars. */
  lookForBars() {
    return this.#ask({ bars: true });
  }

  close() {
    this.#fail("closed");
  }
}
