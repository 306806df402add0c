/**
 * Balancing the whole set: what may be done to each light, the question, and the plan that is
 * kept. A plan lives in the setup (`plan`: the white and how it was reached) and in its lights
 * (`planned`: what to hang or dial, and where that should land).
 */
import { stamp } from "../../clock.js";
import { book, settings } from "../index.js";
import { cameraCan, judging } from "../kit/cameras.js";
import { gels } from "../kit/gels.js";
import { reachOf } from "../kit/lamps.js";
import { terms } from "../questions/reading.js";
import { replacement } from "./entries.js";
import { tie } from "./measured-gels.js";
import { besideReading, litQuestion } from "./target.js";

/** @typedef {import("./book.js").Thing} Thing */
/** @typedef {{light: Thing, reading: Thing}} Lit */

/** What may be done to a light: gel unless the book says otherwise. @param {Thing} light */
export function mayOf(light) {
  return /** @type {string[]} */ (light.data.may ?? ["gel"]);
}

/** No more digits than anybody reads, for a plan goes along in links. @param {any} value @param {number} digits */
const short = (value, digits = 5) =>
  typeof value === "number" ? Number(value.toFixed(digits)) : value;

/** @param {Record<string, any>} data */
const given = (data) =>
  Object.fromEntries(Object.entries(data).filter(([, value]) => String(value ?? "").trim()));

/** How many pieces of each gel there are, where that was counted and the gel is in stock. */
export function countedPieces() {
  const without = new Set(settings.get("without"));
  const known = new Set(gels.all?.map((gel) => gel.name));
  return Object.fromEntries(
    Object.entries(given(settings.get("pieces"))).filter(
      ([name]) => known.has(name) && !without.has(name),
    ),
  );
}

/** @param {Lit[]} lights */
export function balanceQuestion(lights) {
  return {
    ask: /** @type {const} */ ("balance"),
    lights: lights.map((lit, index) => {
      const { light } = lit;
      const may = mayOf(light);
      const reach = may.includes("dial") ? reachOf(light) : null;
      return {
        ...besideReading(litQuestion(lit, index, lights)),
        may,
        ...(reach ? { dial: "gamut" in reach ? reach : reach.range } : {}),
        ...given({ cuts: light.data.cuts }),
      };
    }),
    whites: given(settings.get("whites")),
    stock: countedPieces(),
    ...judging(cameraCan(lights)),
    ...terms(),
  };
}

/**
 * Keep a plan: the setup gets the white and how it was reached, each light what is planned for it,
 * and the camera's white becomes the plan's. Resolves when durable.
 * @param {Thing} setup
 * @param {Lit[]} lights  in the order of the question
 * @param {any} plan      one of the front
 * @param {Record<string, any>} question
 * @returns {Promise<() => Promise<void>>} undo
 */
export async function keepPlan(setup, lights, plan, question) {
  const { white, words, exact, at_least_stops, stops_lost, pieces } = plan;
  const camera = { cct_K: String(white.cct_K), duv: String(white.duv) };
  const before = settings.get("white");
  const { whites, tolerance } = question;
  const out = plan.out.map((/** @type {number} */ index) => lights[index].light.id);
  const pieceCounts = Object.entries(question.stock).map(([gel, count]) => ({ gel, count }));
  const setupEntry = replacement(setup.heads, {
    ...setup.data,
    hero: null,
    plan: {
      at: stamp(),
      white: camera,
      words,
      exact,
      at_least_stops,
      stops_lost,
      pieces,
      out,
      reached: { by: "balance", whites, tolerance, stock: pieceCounts, kit: question.kit ?? null },
    },
  });
  /** @type {import("./entries.js").Entry[]} */
  const made = [];
  const lightEntries = lights.map(({ light, reading }, index) => {
    const part = plan.per_light[index];
    const { names, ids } = tie(part.gels, made);
    const { cct_K, duv, x, y } = part.lands;
    return replacement(light.heads, {
      ...light.data,
      planned: {
        does: part.does,
        words: part.words,
        gels: names,
        ...(ids.length ? { gel_ids: ids } : {}),
        dial: part.dial && {
          x: short(part.dial.x),
          y: short(part.dial.y),
          cct_K: short(part.dial.cct_K, 1),
        },
        lands: { x: short(x), y: short(y), cct_K: short(cct_K, 1), duv: short(duv) },
        steps: short(part.steps, 2),
        verdict: part.promise,
        stops_lost: short(part.stops_lost, 3),
        from: reading.id,
      },
    });
  });
  await book.add(...made, setupEntry, ...lightEntries);
  await settings.set("white", camera);
  return async () => {
    await book.add(
      replacement([setupEntry], setup.data),
      ...lights.map(({ light }, index) => replacement([lightEntries[index]], light.data)),
    );
    await settings.set("white", before);
  };
}

/**
 * Give a plan up: neither the setup nor its lights name it any longer.
 * @param {Thing} setup
 * @returns {Promise<() => Promise<void>>} undo
 */
export async function dropPlan(setup) {
  const things = [setup, ...book.below(setup.id, "light").filter((light) => light.data.planned)];
  const entries = things.map((thing) => {
    const { plan: _plan, planned: _planned, ...rest } = thing.data;
    return replacement(thing.heads, rest);
  });
  await book.add(...entries);
  return () => book.add(...things.map((thing, index) => replacement([entries[index]], thing.data)));
}

/** Whether the lights are measured against the white of the kept plan. @param {Thing | undefined} setup */
export function matchesPlan(setup) {
  const white = setup?.data.plan?.white;
  const { cct_K, duv } = settings.get("white");
  return Boolean(white) && white.cct_K === cct_K && white.duv === duv && !setup?.data.hero;
}

/**
 * Whether the plan for a light is still to be carried out: nothing was read since.
 * @param {Thing} light
 * @param {Thing} reading  its latest
 */
export function toDo(light, reading) {
  return light.data.planned?.from === reading.id && matchesPlan(book.thing(light.parent));
}

/** Measure the lights against the plan's white again. @param {Thing} setup */
export async function matchPlan(setup) {
  await book.edit(setup.id, { hero: null });
  await settings.set("white", setup.data.plan.white);
}
