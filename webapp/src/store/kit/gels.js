/**
 * The kernel's kit of gels with the person's own among them, asked again when those change. Fires
 * "change" when it is there.
 */
import { ask, onStage } from "../../kernel/client.js";
import { settings } from "../index.js";
import { withOwnGels } from "./own-gels.js";

/**
 * Its mired, duv and stops are stated on the black body of `reference_K`.
 * @typedef {import("../../kernel/answers.js").KitGel} Gel
 */

class Gels extends EventTarget {
  /** Every gel to choose from. @type {Gel[] | undefined} */ all = undefined;
  /** The built-in ones, whether or not an own gel took their place. @type {Gel[]} */ nominal = [];
  /** @type {string} */ note = "";
  /** What was asked last, so that only a change of the own gels asks again. */
  #asked = "";

  /** Ask as soon as the kernel can answer, and whenever the own gels change. */
  follow() {
    settings.addEventListener("change", () => this.#load());
    onStage(({ stage }) => {
      if (stage === "ready") this.#load();
    });
  }

  async #load() {
    const own = withOwnGels();
    const asked = JSON.stringify(own);
    if (asked === this.#asked) return;
    this.#asked = asked;
    if (!this.nominal.length) {
      const plain = await ask({ ask: "kit" });
      if (!plain.gels) return this.#forget(asked);
      this.nominal = plain.gels;
      this.note = plain.note ?? "";
    }
    const answer = own.own_gels ? await ask({ ask: "kit", ...own }) : { gels: this.nominal };
    if (this.#asked !== asked) return;
    if (!answer.gels) return this.#forget(asked);
    this.all = answer.gels;
    this.dispatchEvent(new Event("change"));
  }

  /** The kernel did not answer: ask again at the next chance. @param {string} asked */
  #forget(asked) {
    if (this.#asked === asked) this.#asked = "";
  }

  /** @param {string} name @returns {Gel | undefined} */
  nominalOf(name) {
    return this.nominal.find((gel) => gel.name === name);
  }

  /** @returns {Map<string, Gel[]>} by family, in the kit's own order */
  families() {
    /** @type {Map<string, Gel[]>} */
    const families = new Map();
    for (const gel of this.all ?? []) {
      families.set(gel.family, [...(families.get(gel.family) ?? []), gel]);
    }
    return families;
  }
}

export const gels = new Gels();
