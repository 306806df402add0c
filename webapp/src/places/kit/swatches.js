/** What a grey card looks like through each gel, on the white that the gel's figures are stated on. */
import { withOwnGels } from "../../store/kit/own-gels.js";

/** As many as the kernel shows at once. */
const MOST = 200;

/** @typedef {import("../../charts/patch.js").Colour} Colour */

/**
 * @param {import("../../store/kit/gels.js").Gel[]} gels
 * @param {(request: import("../../kernel/answers.js").Question<"seen">) => Promise<any>} ask
 * @returns {Promise<Map<string, Colour>>} by name; a gel that cannot be shown is not among them
 */
export async function swatches(gels, ask) {
  /** @type {Map<number, string[]>} */
  const names = new Map();
  for (const { name, reference_K: white } of gels) {
    names.set(white, [...(names.get(white) ?? []), name]);
  }
  /** @type {Map<string, Colour>} */
  const found = new Map();
  for (const [cct_K, all] of names) {
    const white = { cct_K, duv: 0 };
    for (let from = 0; from < all.length; from += MOST) {
      const some = all.slice(from, from + MOST);
      const lights = some.map((name) => ({ reading: white, pack: [name] }));
      const answer = await ask({ ask: "seen", white, lights, ...withOwnGels() });
      some.forEach((name, i) => {
        const colour = answer.lights?.[i].with_pack?.grey;
        if (colour) found.set(name, colour);
      });
    }
  }
  return found;
}
