/**
 * The kernel's kit of gels, asked once. Fires "change" when it is there.
 */
import { ask, onStage } from "../kernel/client.js";

/**
 * @typedef {object} Gel
 * @property {string} name
 * @property {string} family
 * @property {number} mired
 * @property {number} duv
 * @property {number} stops
 * @property {number} reference_K   black body on which mired, duv and stops are stated
 * @property {number[]} wavelengths_nm
 * @property {number[]} transmittance
 */

class Gels extends EventTarget {
  /** @type {Gel[] | undefined} */ all = undefined;
  /** @type {string} */ note = "";

  /** Ask as soon as the kernel can answer. */
  follow() {
    onStage(({ stage }) => {
      if (stage === "ready" && !this.all) this.#load();
    });
  }

  async #load() {
    const answer = await ask({ ask: "kit" });
    if (!answer.gels) return;
    this.all = answer.gels;
    this.note = answer.note ?? "";
    this.dispatchEvent(new Event("change"));
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
