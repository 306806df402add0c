/**
 * A question to the kernel that follows what is on the screen: `put` it at every render; it is
 * asked when it changed and the typing paused, and an older one still waiting is dropped. One that
 * is made from the answer to another waits for that answer, then is asked at once. What is wrong is
 * not told in the middle of typing: half a number often is.
 */
import * as client from "../kernel/client.js";

const PAUSE = 60; // ms without a keystroke
const LONG_PAUSE = 1200; // ms without a keystroke after which nobody is in the middle of a number

/** @typedef {import("lit").ReactiveController} ReactiveController */
/** @typedef {import("../kernel/answers.js").Problem} Problem */

/**
 * @template {import("../kernel/answers.js").Ask} A
 * @implements {ReactiveController}
 */
export class LiveQuestion {
  /**
   * @param {import("lit").ReactiveControllerHost & Partial<ParentNode>} host
   * @param {object} [options]
   * @param {{waiting: boolean}[]} [options.after]  those whose answers this one is made from
   * @param {Pick<typeof client, "ask" | "onStage">} [options.kernel]
   */
  constructor(host, { after = [], kernel = client } = {}) {
    this.host = host;
    this.after = after;
    this.kernel = kernel;
    /** The last good answer to the present question, or to the one before while waiting. */
    this.answer = /** @type {import("../kernel/answers.js").Answers[A] | undefined} */ (undefined);
    /** What is wrong with the present question. @type {Problem | undefined} */
    this.problem = undefined;
    /** The same as soon as it is known, told or not. @type {Problem | undefined} */
    this.found = undefined;
    this.waiting = false;
    /** Whether the person gave it up. */
    this.stopped = false;
    this.#asked = "";
    host.addController(this);
  }

  /** @type {string} */ #asked;
  /** @type {ReturnType<typeof setTimeout> | undefined} */ #timer;
  /** @type {AbortController | undefined} */ #abort;

  /** Whether the kernel could not start; that is told by the boot's own progress. */
  #down = false;
  #leave = () => {};

  hostConnected() {
    this.#leave = this.kernel.onStage(({ stage }) => {
      const back = this.#down && stage === "ready";
      this.#down = stage === "failed" || (this.#down && !back);
      if (!back) return;
      this.#asked = "";
      this.host.requestUpdate();
    });
  }

  hostDisconnected() {
    this.#leave();
    this.#stop();
    this.#asked = "";
  }

  #stop() {
    clearTimeout(this.#timer);
    this.#abort?.abort();
    this.waiting = false;
  }

  /** @param {import("../kernel/answers.js").Question<A> | null} question null = nothing to ask */
  put(question) {
    if (this.after.some(({ waiting }) => waiting)) {
      // What stands here is shown until then, but no more asked.
      if (this.waiting) this.#asked = "";
      this.#stop();
      return;
    }
    const text = question ? JSON.stringify(question) : "";
    if (text === this.#asked) return;
    this.#stop();
    this.#asked = text;
    this.stopped = false;
    this.found = undefined;
    if (!question) {
      this.answer = undefined;
      this.problem = undefined;
      return;
    }
    this.waiting = true;
    if (this.after.length) this.#send(question);
    else this.#timer = setTimeout(() => this.#send(question), PAUSE);
  }

  /** The person waits no longer: it is not asked again until it changes, or {@link again}. */
  giveUp = () => {
    this.#stop();
    this.stopped = true;
    this.host.requestUpdate();
  };

  /** Ask it once more. */
  again = () => {
    this.#asked = "";
    this.host.requestUpdate();
  };

  /**
   * What is wrong at one place of the question, as a sentence.
   * @param {string} path  such as "lights.0.x"
   */
  problemAt(path) {
    return this.problem?.field === path ? this.problem.message : undefined;
  }

  /**
   * What may have been meant at one place of the question, each as it would be typed.
   * @param {string} path
   * @returns {string[]}
   */
  choicesAt(path) {
    return (this.problem?.field === path && this.problem.choices) || [];
  }

  /**
   * What is wrong elsewhere than at the places that the screen has fields for.
   * @param {readonly string[] | RegExp} shown
   */
  problemBeside(shown) {
    if (!this.problem) return undefined;
    const { field, message } = this.problem;
    return (shown instanceof RegExp ? shown.test(field) : shown.includes(field))
      ? undefined
      : message;
  }

  /** @param {import("../kernel/answers.js").Question<A>} question */
  async #send(question) {
    const abort = new AbortController();
    this.#abort = abort;
    const answer = await this.#answerTo(question, abort.signal);
    if (abort.signal.aborted) return;
    this.found = answer.problem;
    if (answer.problem && !this.problem) {
      this.host.requestUpdate();
      await this.#typed(abort.signal);
      if (abort.signal.aborted) return;
    }
    this.problem = this.#down ? undefined : answer.problem;
    this.answer = answer.problem ? undefined : answer;
    this.waiting = false;
    this.host.requestUpdate();
  }

  /**
   * @param {import("../kernel/answers.js").Question<A>} question
   * @param {AbortSignal} signal
   * @returns {Promise<any>}  a question that could not be asked is one with a problem
   */
  async #answerTo(question, signal) {
    try {
      return await this.kernel.ask(question, { signal });
    } catch (error) {
      const message = error instanceof Error ? error.message : String(error);
      return { problem: { field: "", message } };
    }
  }

  /**
   * Resolves when nobody types here: at once, after a long pause, or as the field is left.
   * @param {AbortSignal} signal
   */
  async #typed(signal) {
    const field = this.host.querySelector?.("input:focus, textarea:focus");
    if (!field) return;
    await new Promise((resolve) => {
      setTimeout(resolve, LONG_PAUSE);
      field.addEventListener("blur", resolve, { once: true, signal });
    });
  }
}
