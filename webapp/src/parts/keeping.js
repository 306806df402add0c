/** While something is kept: busy, then said, or refused with a sentence that stays by the button. */
import { html, nothing } from "lit";
import { say } from "./toast.js";

/** @param {unknown} error */
const sentence = (error) => (error instanceof Error ? error.message : String(error));

export class Keeping {
  /** @param {import("lit").ReactiveControllerHost} host */
  constructor(host) {
    this.host = host;
    this.busy = false;
    /** What storage or the kernel said against it. */
    this.fault = "";
  }

  /**
   * @param {() => Promise<string | void>} work  gives the words to say when all of it is durable
   * @returns {Promise<boolean>} whether it was kept
   */
  async run(work) {
    if (this.busy) return false;
    this.busy = true;
    this.fault = "";
    this.host.requestUpdate();
    try {
      const words = await work();
      if (words) say(words);
    } catch (error) {
      this.fault = sentence(error);
    }
    this.busy = false;
    this.host.requestUpdate();
    return !this.fault;
  }

  /** The refusal, to stand by the button that was pressed. */
  note() {
    return this.fault ? html`<p class="problem block" role="alert">${this.fault}</p>` : nothing;
  }
}
