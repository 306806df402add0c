/**
 * Where we are in the shoot: the setup we work in, its lights, what they are measured against,
 * and keeping a reading there.
 */
import { ask } from "../kernel/client.js";
import { t } from "../words/index.js";
import { creation, replacement } from "./entries.js";
import { book, settings } from "./index.js";
import { readingQuestion, whiteQuestion } from "./questions.js";

/** @typedef {import("./book.js").Thing} Thing */

/** @returns {Thing | undefined} the setup we work in */
export function currentSetup() {
  return book.standing(settings.get("here"));
}

/**
 * The lights of a setup that have a reading, in the order they were first kept.
 * @param {Thing | undefined} setup
 * @returns {{light: Thing, reading: Thing}[]}
 */
export function lightsOf(setup) {
  if (!setup) return [];
  return book
    .below(setup.id, "light")
    .reverse()
    .flatMap((light) => {
      const reading = book.latest(light.id);
      return reading ? [{ light, reading }] : [];
    });
}

/**
 * The hero light of the setup and its latest reading, when one is chosen.
 * @param {Thing | undefined} setup
 */
export function heroOf(setup) {
  return lightsOf(setup).find(({ light }) => light.id === setup?.data.hero);
}

/**
 * What a light is measured against: the hero light, if one is chosen and it is not this very
 * light; otherwise the white the camera is set to.
 * @param {string | null} [light] id of the light under the meter
 * @returns {{question: Record<string, any>, hero: Thing | undefined}}
 */
export function targetFor(light = null) {
  const hero = heroOf(currentSetup());
  if (!hero || hero.light.id === light) return { question: whiteQuestion(), hero: undefined };
  return { question: readingQuestion(hero.reading.data), hero: hero.light };
}

/**
 * A target as it is kept with a reading: of a hero light whose spectrum was measured, only the
 * x y, or every reading would carry that spectrum along.
 * @param {Record<string, any>} question
 * @returns {Promise<Record<string, any>>}
 */
export async function targetToKeep(question) {
  if (!question.spectrum) return question;
  const white = await ask({ ask: "describe", reading: question });
  return white.problem ? question : { x: white.x, y: white.y };
}

/** Where a light lives, as words. @param {Thing | undefined} setup */
export function placeWords(setup) {
  if (!setup) return t("place.none");
  const location = book.thing(setup.parent);
  return location ? `${location.data.name} · ${setup.data.name}` : setup.data.name;
}

/** All locations of all productions, newest first. */
export function locations() {
  return book.below(null, "production").flatMap((one) => book.below(one.id, "location"));
}

/** The entries a new setup needs, with a location and a production made up where missing. */
function setupEntries() {
  const made = [];
  let location = locations()[0]?.id;
  if (!location) {
    let production = book.below(null, "production")[0]?.id;
    if (!production) {
      const entry = creation("production", null, { name: t("book.firstProduction") });
      made.push(entry);
      production = entry.id;
    }
    const entry = creation("location", production, { name: t("book.firstLocation") });
    made.push(entry);
    location = entry.id;
  }
  const count = book.below(location, "setup").length;
  const setup = creation("setup", location, { name: t("book.nthSetup", { n: count + 1 }) });
  return { made: [...made, setup], setup: setup.id };
}

/**
 * Make a location, below the newest production.
 * @param {string} name
 */
export async function newLocation(name) {
  const production =
    book.below(null, "production")[0]?.id ??
    (await book.create("production", null, { name: t("book.firstProduction") }));
  return book.create("location", production, { name });
}

/**
 * Work in a setup again, with the white its last reading was measured against.
 * @param {string} id
 */
export async function openSetup(id) {
  await settings.set("here", id);
  const [newest] = book
    .below(id, "light")
    .flatMap((light) => book.below(light.id, "reading"))
    .sort((a, b) => Date.parse(b.at) - Date.parse(a.at));
  const white = newest?.data.target;
  // A reading names its lamp, a white has none: a hero light is no white for the camera.
  if (white?.cct_K && !white.lamp)
    await settings.set("white", { cct_K: white.cct_K, duv: white.duv ?? "0" });
}

/**
 * Keep a reading in the setup we work in; one transaction with everything it needs above it.
 * @param {object} what
 * @param {string | null} what.light   id of a light measured before, or null for a new one
 * @param {Record<string, any>} what.lightData  name and lamp of the light
 * @param {Record<string, any>} what.data  the reading
 * @returns {Promise<{light: string, reading: string}>} when durable
 */
export async function keepReading({ light, lightData, data }) {
  const entries = [];
  let setup = currentSetup()?.id;
  const known = book.standing(light);
  if (!known && !setup) {
    const { made, setup: fresh } = setupEntries();
    entries.push(...made);
    setup = fresh;
  }
  let id = known?.id;
  if (!known) {
    const entry = creation("light", /** @type {string} */ (setup), lightData);
    entries.push(entry);
    id = entry.id;
  } else if (Object.entries(lightData).some(([key, value]) => known.data[key] !== value)) {
    entries.push(replacement(known.heads, { ...known.data, ...lightData }));
  }
  const reading = creation("reading", /** @type {string} */ (id), data);
  await book.add(...entries, reading);
  if (!known && setup !== settings.get("here")) {
    await settings.set("here", /** @type {string} */ (setup));
  }
  return { light: /** @type {string} */ (id), reading: reading.id };
}
