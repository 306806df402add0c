/**
 * A question to the kernel that follows what is on the screen: `put` it at every render; it is
 * asked when it changed and the typing paused, and an older one still waiting is dropped.
 */
import { ask, onStage } from "../kernel/client.js";

const PAUSE = 60; // ms without a keystroke

/** @typedef {import("lit").ReactiveController} ReactiveController */

/** @implements {ReactiveController} */
export class LiveQuestion {
  /** @param {import("lit").ReactiveControllerHost} host */
  constructor(host) {
    this.host = host;
    /** The last good answer to the present question, or to the one before while waiting. */
    this.answer = /** @type {any} */ (undefined);
    /** What is wrong with the present question. @type {{field: string, message: string} | undefined} */
    this.problem = undefined;
    this.waiting = false;
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
    this.#leave = onStage(({ stage }) => {
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

  /** @param {Record<string, any> | null} question null = nothing to ask */
  put(question) {
    const text = question ? JSON.stringify(question) : "";
    if (text === this.#asked) return;
    this.#stop();
    this.#asked = text;
    if (!question) {
      this.answer = undefined;
      this.problem = undefined;
      return;
    }
    this.waiting = true;
    this.#timer = setTimeout(() => this.#send(question), PAUSE);
  }

  /** @param {Record<string, any>} question */
  async #send(question) {
    const abort = new AbortController();
    this.#abort = abort;
    try {
      const answer = await ask(question, { signal: abort.signal });
      if (abort.signal.aborted) return;
      this.problem = this.#down ? undefined : answer.problem;
      this.answer = answer.problem ? undefined : answer;
    } catch (error) {
      if (abort.signal.aborted) return;
      const message = error instanceof Error ? error.message : String(error);
      this.problem = { field: "", message };
      this.answer = undefined;
    }
    this.waiting = false;
    this.host.requestUpdate();
  }
}
