/** What hangs on the lights of a setup, and what would have to: the gel side of a whole setup. */
import { ask } from "../../kernel/client.js";
import { gelsOn, labels } from "../../store/log/measured-gels.js";
import { heroOf, lightsOf } from "../../store/log/shoot.js";
import { litQuestion } from "../../store/log/target.js";
import { terms, whiteQuestion } from "../../store/questions/reading.js";

/** @typedef {import("../../store/log/book.js").Thing} Thing */

/** The white that a setup was read against. @param {ReturnType<typeof lightsOf>} lights */
function whiteOf(lights) {
  const targets = lights
    .map(({ reading }) => reading)
    .sort((a, b) => Date.parse(b.at) - Date.parse(a.at))
    .map((reading) => reading.data.target)
    // A reading names its lamp, a white has none.
    .filter((target) => target?.cct_K && !target.lamp);
  return targets[0] ?? whiteQuestion();
}

/**
 * What shall hang on each light of a setup: what the kept plan wants until the light is read again,
 * else the advised pack where the kernel has one, otherwise what hangs.
 * @param {Thing} setup
 * @param {boolean} advised
 * @returns {Promise<{light: Thing, gels: string[], hangs: string[], unread?: boolean}[]>}  hangs: what
 *   hangs already; unread: its reading cannot
 *   be used, so that nothing could be advised
 */
export async function gelsOf(setup, advised) {
  const lights = lightsOf(setup);
  const hanging = lights.map(({ light, reading }) => ({
    light,
    gels: gelsOn(reading.data),
    hangs: gelsOn(reading.data),
    planned:
      light.data.planned?.from === reading.id
        ? labels(light.data.planned.gels, light.data.planned.gel_ids)
        : undefined,
  }));
  if (!advised || !lights.length) return hanging;
  const packs = await packsOf(lights, heroOf(setup)?.light.id);
  return hanging.map(({ light, gels, hangs, planned }) => ({
    light,
    hangs,
    gels: planned ?? packs.get(light.id)?.gels ?? gels,
    unread: !packs.has(light.id),
  }));
}

/**
 * @param {ReturnType<typeof lightsOf>} lights
 * @param {string | undefined} hero
 * @returns {Promise<Map<string, any>>} by light; a light whose reading cannot be used has none
 */
async function packsOf(lights, hero) {
  const index = lights.findIndex(({ light }) => light.id === hero);
  const answer = await ask({
    ask: "agree",
    lights: lights.map(litQuestion),
    ...(index >= 0 ? { hero: index } : { target: whiteOf(lights) }),
    ...terms(),
  });
  if (answer.problem) throw new Error(answer.problem.message);
  return new Map(
    lights.flatMap(({ light }, i) =>
      answer.lights[i].problem ? [] : [[light.id, answer.lights[i].pack]],
    ),
  );
}
