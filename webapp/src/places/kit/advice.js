/** What hangs on the lights of a setup, and what would have to: the gel side of a whole setup. */
import { ask } from "../../kernel/client.js";
import { dimsFirst } from "../../parts/dim-line.js";
import { gelsOn, labels } from "../../store/log/measured-gels.js";
import { heroOf, lightsOf } from "../../store/log/shoot.js";
import { centreOf, litQuestion } from "../../store/log/target.js";
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
 * @param {boolean} withAdvice
 * @returns {Promise<{light: Thing, gels: string[], hangs: string[], unread?: boolean}[]>}  hangs: what
 *   hangs already; unread: its reading cannot
 *   be used, so that nothing could be advised
 */
export async function gelsOf(setup, withAdvice) {
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
  if (!withAdvice || !lights.length) return hanging;
  const hero = heroOf(setup);
  const packs = await packsOf(lights, hero ? centreOf(setup) : whiteOf(lights));
  return hanging.map(({ light, gels, hangs, planned }) => ({
    light,
    hangs,
    gels: planned ?? packs.get(light.id)?.gels ?? gels,
    unread: !packs.has(light.id),
  }));
}

/** Packs that were advised, by the question about one light: a shoot has many lights alike. */
const advised = new Map();
/** With more than these the memory begins anew. */
const MOST = 5000;

/**
 * @param {ReturnType<typeof lightsOf>} lights
 * @param {Record<string, any>} target
 * @returns {Promise<Map<string, any>>} by light; a light whose reading cannot be used has none
 */
async function packsOf(lights, target) {
  const rest = { target, ...terms() };
  const restWords = JSON.stringify(rest);
  const keyed = lights.map((lit) => {
    const { name: _, ...question } = litQuestion(lit);
    return { id: lit.light.id, question, key: JSON.stringify(question) + restWords };
  });
  if (advised.size > MOST) advised.clear();
  const unlike = new Map(keyed.map((each) => [each.key, each]));
  await advise(
    [...unlike.values()].filter(({ key }) => !advised.has(key)),
    rest,
  );
  return new Map(
    keyed.filter(({ key }) => advised.has(key)).map(({ id, key }) => [id, advised.get(key)]),
  );
}

/**
 * Have the kernel advise on lights, and remember it; not of one whose reading cannot be used.
 * @param {{question: Record<string, any>, key: string}[]} lights
 * @param {Record<string, any>} rest of the question
 */
async function advise(lights, rest) {
  if (!lights.length) return;
  const answer = await ask({
    ask: "agree",
    lights: lights.map(({ question }) => question),
    ...rest,
  });
  if (answer.problem) throw new Error(answer.problem.message);
  for (const [i, { key }] of lights.entries()) {
    const one = answer.lights[i];
    // A light that is better dimmed needs no gel.
    if (!one.problem) advised.set(key, dimsFirst(one) ? null : one.pack);
  }
}
