/**
 * Tunable lamps of the kit: what each can reach, its primaries, and what its own readings taught
 * about it, so that the next setup starts where the last one ended. A light is of the lamp that
 * bears its name, unless the book says otherwise (`fixture`).
 */

import { stamp } from "../../clock.js";
import { book, settings } from "../index.js";
import { gelsOn } from "../log/measured-gels.js";
import { targetOf } from "../log/target.js";
import { readingQuestion, terms } from "../questions/reading.js";

/** @typedef {import("../log/book.js").Thing} Thing */

/**
 * @typedef {object} Lamp
 * @property {string} name
 * @property {Record<string, string>} [range]  from_K, to_K, duv_limit as typed
 * @property {Record<string, any>[]} [primaries]  R of each alone at full level, with its name
 * @property {{matrix: number[][], offset: number[]}} [correction]  see the kernel's "dial"
 * @property {{matrix: number[][], offset: number[]}} [base]  the correction before `on` was dialled
 * @property {string} [on]  id of the light whose readings made the correction
 * @property {string} [at]  when
 */

/** @param {Thing} light */
export const fixtureOf = (light) => String(light.data.fixture || light.data.name);

/** @param {string} name @returns {Lamp} one that knows nothing yet, when the kit has none */
export const lampNamed = (name) =>
  settings.get("lamps").find((lamp) => lamp.name === name) ?? { name };

/** @param {Thing} light */
export const lampOf = (light) => lampNamed(fixtureOf(light));

/**
 * Put what is known about a lamp into the kit. Resolves when durable.
 * @param {Lamp} lamp
 */
export function keepLamp(lamp) {
  const others = settings.get("lamps").filter(({ name }) => name !== lamp.name);
  return settings.set("lamps", [...others, lamp]);
}

/**
 * @param {string} name
 * @returns {Promise<() => Promise<void>>} undo
 */
export async function dropLamp(name) {
  const before = settings.get("lamps");
  await settings.set(
    "lamps",
    before.filter((lamp) => lamp.name !== name),
  );
  return () => settings.set("lamps", before);
}

/** Forget what a lamp's readings taught. @param {Lamp} lamp */
export function forget({ correction: _c, base: _b, on: _o, at: _a, ...lamp }) {
  return keepLamp(lamp);
}

/** @param {Record<string, any>} data */
const given = (data) =>
  Object.fromEntries(Object.entries(data).filter(([, value]) => String(value ?? "").trim()));

/** What a light's lamp can be dialled to, as typed. @param {Thing} light */
export const rangeOf = (light) => lampOf(light).range ?? {};

/**
 * What was typed since something was sent off to be kept.
 * @param {Record<string, string>} typed
 * @param {Record<string, string>} sent
 */
export const typedSince = (typed, sent) =>
  Object.fromEntries(Object.entries(typed).filter(([key, value]) => value !== sent[key]));

/** @param {Thing} light @param {Record<string, string>} range */
export const keepRange = (light, range) => keepLamp({ ...lampOf(light), range });

/**
 * What a light can be dialled to, as the kernel takes it; null when that was not said.
 * @param {Thing} light
 * @returns {{gamut: Record<string, any>[]} | {range: Record<string, string>} | null}
 */
export function reachOf(light) {
  const { primaries = [] } = lampOf(light);
  if (primaries.length > 1) return { gamut: primaries };
  const range = given(rangeOf(light));
  return Object.keys(range).length ? { range } : null;
}

/** Whether a light is one to dial. @param {Thing} light */
export const tunable = (light) =>
  ["led", "led rgb"].includes(light.data.lamp) ||
  Boolean(light.data.may?.includes("dial")) ||
  settings.get("lamps").some(({ name }) => name === fixtureOf(light));

/**
 * The readings of a light at a dialled value, with the gel it has on now, oldest first.
 * @param {Thing} light
 */
export function dialHistory(light) {
  const pack = gelsOn(book.latest(light.id)?.data ?? {}).join();
  return (
    book
      .below(light.id, "reading")
      // What a lamp's display said is kept as text, and is no colour to learn from.
      .filter(
        ({ data }) =>
          typeof data.dialled === "object" && data.dialled && gelsOn(data).join() === pack,
      )
      .reverse()
  );
}

/** What an earlier setup taught about a light's lamp. @param {Thing} light */
export function taught(light) {
  const lamp = lampOf(light);
  return lamp.on === light.id ? lamp.base : lamp.correction;
}

/** @param {Thing} light @returns {import("../../kernel/answers.js").Question<"dial">} */
export function dialQuestion(light) {
  const correction = taught(light);
  const { lamp } = light.data;
  return {
    ask: "dial",
    history: dialHistory(light).map(({ data }) => ({
      dialled: data.dialled,
      measured: readingQuestion(data),
    })),
    ...reachOf(light),
    ...(correction ? { correction } : {}),
    ...(lamp && lamp !== "unknown" ? { lamp } : {}),
    ...terms(),
    ...targetOf(light.id),
  };
}

/**
 * Remember what the readings of a light taught about its lamp.
 * @param {Thing} light
 * @param {NonNullable<Lamp["correction"]>} correction
 */
export function remember(light, correction) {
  const lamp = lampOf(light);
  const base = taught(light);
  return keepLamp({ ...lamp, ...(base ? { base } : {}), correction, on: light.id, at: stamp() });
}
