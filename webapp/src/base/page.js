/** What every view is: a custom element that renders into the page itself, under one stylesheet. */
import { LitElement } from "lit";
import { ask } from "../kernel/client.js";

export class Page extends LitElement {
  #here = new AbortController();

  createRenderRoot() {
    return this;
  }

  connectedCallback() {
    super.connectedCallback();
    this.#here = new AbortController();
  }

  disconnectedCallback() {
    super.disconnectedCallback();
    this.#here.abort();
  }

  /** Nobody waits any longer for what was asked here. */
  stopAsking() {
    this.#here.abort();
    this.#here = new AbortController();
  }

  /**
   * Ask the kernel what only this view wants to know: once it is left, or {@link stopAsking} is
   * called, nobody waits for the answer, and the promise rejects with an AbortError.
   * @template {import("../kernel/answers.js").Ask} A
   * @param {import("../kernel/answers.js").Question<A>} request
   */
  askHere(request) {
    return ask(request, { signal: this.#here.signal });
  }
}
