/**
 * Where we are in the shoot: the setup we work in, its lights, what they are measured against,
 * and keeping a reading there.
 */
import { ask } from "../../kernel/client.js";
import { t } from "../../words/index.js";
import { joined } from "../../words/isolated.js";
import { dialledWords } from "../../words/reading.js";
import { book, settings } from "../index.js";
import { creation, replacement } from "./entries.js";
import { orderOf } from "./log.js";
import { gelsOn, tie, tieMeant } from "./measured-gels.js";

/** @typedef {import("./book.js").Thing} Thing */

/** @returns {Thing | undefined} the setup, or the location or production without one, we work in */
function here() {
  return book.standing(settings.get("here"));
}

/** @returns {Thing | undefined} the setup we work in */
export function currentSetup() {
  const place = here();
  return place?.kind === "setup" ? place : undefined;
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
 * The lights of a setup that have no reading yet, such as those of a pick-up.
 * @param {Thing | undefined} setup
 */
export function unreadLights(setup) {
  if (!setup) return [];
  return book
    .below(setup.id, "light")
    .reverse()
    .filter((light) => !book.latest(light.id));
}

/**
 * The hero light of the setup and its latest reading, when one is chosen.
 * @param {Thing | undefined} setup
 */
export function heroOf(setup) {
  return lightsOf(setup).find(({ light }) => light.id === setup?.data.hero);
}

/**
 * The same light at an earlier time, when this one is its pick-up, with its latest reading.
 * @param {string | null} light
 * @returns {{light: Thing, reading: Thing} | undefined}
 */
export function earlierOf(light) {
  for (const id of light ? sameLights(light).slice(1) : []) {
    const reading = book.latest(id);
    if (reading) return { light: /** @type {Thing} */ (book.thing(id)), reading };
  }
  return undefined;
}

/**
 * A target as it is kept with a reading: a white, whatever hung when a hero light gave it. Of one
 * whose spectrum was measured only the x y, or every reading would carry that spectrum along.
 * @param {Record<string, any>} question
 * @returns {Promise<Record<string, any>>}
 */
export async function targetToKeep({ pack: _pack, own_gels: _gels, ...question }) {
  if (!question.spectrum) return question;
  const white = await ask({ ask: "describe", reading: question });
  return white.problem ? question : { x: white.x, y: white.y };
}

/** Where a light lives, as words. @param {Thing | undefined} setup */
export function placeWords(setup) {
  if (!setup) return here()?.data.name ?? t("place.none");
  const location = book.thing(setup.parent);
  return location ? joined([location.data.name, setup.data.name]) : setup.data.name;
}

/** All locations of all productions, newest first. */
export function locations() {
  return book.below(null, "production").flatMap((one) => book.below(one.id, "location"));
}

/**
 * The entries a new setup needs, with a location and a production made up where missing.
 * @param {string} [name]
 */
function setupEntries(name) {
  const made = [];
  const place = here();
  let production = place?.kind === "production" ? place.id : book.below(null, "production")[0]?.id;
  let location =
    place?.kind === "location"
      ? place.id
      : place?.kind === "setup"
        ? place.parent
        : production && book.below(production, "location")[0]?.id;
  if (!location) {
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
  const setup = creation("setup", location, {
    name: name ?? t("book.nthSetup", { n: count + 1 }),
  });
  return { made: [...made, setup], setup: setup.id };
}

/**
 * Work in the setup of this name at the location we work at; made where there is none.
 * @param {string} name
 */
export async function workInSetup(name) {
  const place = currentSetup()?.parent;
  let id = place && book.below(place, "setup").find((one) => one.data.name === name)?.id;
  if (!id) {
    const { made, setup } = setupEntries(name);
    await book.add(...made);
    id = setup;
  }
  await settings.set("here", id);
}

/**
 * Make a location.
 * @param {string} name
 * @param {string} production
 */
export function newLocation(name, production) {
  return book.create("location", production, { name });
}

/** The place of the next light of a setup: after all others. @param {string} setup its id */
function nextOrder(setup) {
  const lights = book.below(setup, "light");
  return 1 + Math.max(lights.length, ...lights.map(orderOf));
}

/**
 * A setup like this one for another day: its lights with their lamps, no readings yet, and the
 * white it was set to.
 * @param {Thing} setup
 * @param {string} name
 * @param {Record<string, any> | null} target  the white of the earlier setup, when it is known
 * @returns {Promise<string>} its id, when durable
 */
export async function duplicateSetup(setup, name, target) {
  const { hero, key, ...data } = setup.data;
  const again = creation("setup", setup.parent, {
    ...data,
    ...(target ? { target } : {}),
    name,
    pickup_of: setup.id,
  });
  const lights = book
    .below(setup.id, "light")
    .reverse()
    .map((light, i) => {
      /** @type {Record<string, any>} */
      const data = { ...light.data, pickup_of: light.id, order: i + 1 };
      // What was read is meant to be as it was; what nobody judged then, nobody judges now.
      if (data.meant?.as !== "found" && sameLights(light.id).some((id) => book.latest(id))) {
        delete data.meant;
      }
      return { of: light.id, entry: creation("light", again.id, data) };
    });
  for (const { entry } of lights) {
    const like = lights.find(({ of }) => of === entry.data.meant?.like)?.entry.id;
    if (like) entry.data.meant = { ...entry.data.meant, like };
  }
  for (const [name, id] of [
    ["hero", hero],
    ["key", key],
  ]) {
    const now = lights.find(({ of }) => of === id)?.entry.id;
    if (now) again.data[name] = now;
  }
  await book.add(again, ...lights.map(({ entry }) => entry));
  return again.id;
}

/**
 * This light and those that it is a pick-up of, the latest first.
 * @param {string} id
 * @returns {string[]}
 */
export function sameLights(id) {
  /** @type {string[]} */
  const ids = [];
  for (let light = book.thing(id); light && !ids.includes(light.id); ) {
    ids.push(light.id);
    light = book.thing(light.data.pickup_of);
  }
  return ids;
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
 * What a reading is beside the one before it. Only with the same gel, and the lamp left as it was
 * dialled, is it a re-check; and daylight moves by itself.
 * @param {Record<string, any>} data
 * @param {Record<string, any> | undefined} before
 */
function stageOf(data, before) {
  const pack = data.pack ?? [];
  const same =
    before &&
    data.lamp !== "daylight" &&
    gelsOn(before).join() === pack.join() &&
    dialledWords(before.dialled) === dialledWords(data.dialled);
  if (same) return "re-checked";
  return pack.length ? "gelled" : "bare";
}

/** @param {unknown} one @param {unknown} other  plain data */
const same = (one, other) => JSON.stringify(one) === JSON.stringify(other);

/**
 * Say what a light is meant to be. Resolves when durable.
 * @param {string} id
 * @param {Record<string, any> | null | undefined} said  gels by their labels
 */
export async function sayMeant(id, said) {
  const light = book.thing(id);
  if (!light) return;
  /** @type {import("./entries.js").Entry[]} */
  const made = [];
  const meant = tieMeant(said ?? null, made);
  if (!same(light.data.meant ?? null, meant)) {
    await book.add(...made, replacement(light.heads, { ...light.data, meant }));
  }
}

/**
 * Keep a reading in the setup we work in; one transaction with everything it needs above it.
 * @param {object} what
 * @param {string | null} what.light   id of a light measured before, or null for a new one
 * @param {Record<string, any>} what.lightData  name and lamp of the light, what it is meant to be
 * @param {Record<string, any>} what.data  the reading
 * @returns {Promise<{light: string, reading: string, earlier: Record<string, any> | null}>} when
 *   durable; earlier: what a known light was before, where that changed
 */
export async function keepReading({ light, lightData, data }) {
  /** @type {import("./entries.js").Entry[]} */
  const entries = [];
  const { names, ids } = tie(data.pack ?? [], entries);
  const about =
    "meant" in lightData ? { ...lightData, meant: tieMeant(lightData.meant, entries) } : lightData;
  let setup = currentSetup()?.id;
  const known = book.standing(light);
  if (!known && !setup) {
    const { made, setup: fresh } = setupEntries();
    entries.push(...made);
    setup = fresh;
  }
  let id = known?.id;
  let earlier = null;
  if (!known) {
    const order = nextOrder(/** @type {string} */ (setup));
    const entry = creation("light", /** @type {string} */ (setup), { ...about, order });
    entries.push(entry);
    id = entry.id;
  } else if (Object.entries(about).some(([key, value]) => !same(known.data[key], value))) {
    entries.push(replacement(known.heads, { ...known.data, ...about }));
    const keys = Object.keys(about);
    earlier = Object.fromEntries(keys.map((key) => [key, known.data[key] ?? null]));
  }
  // A clock that was set back must not put this reading before those it came after.
  const readings = known ? book.below(known.id, "reading") : [];
  const behind = readings.some((one) => Date.parse(one.at) > Date.now());
  const taken = {
    ...data,
    stage: stageOf(data, known && book.latest(known.id)?.data),
    pack: names,
    ...(ids.length ? { gel_ids: ids } : {}),
    ...(behind ? { follows: readings[0].id } : {}),
  };
  const reading = creation("reading", /** @type {string} */ (id), taken);
  await book.add(...entries, reading);
  if (!known && setup !== settings.get("here")) {
    await settings.set("here", /** @type {string} */ (setup));
  }
  return { light: /** @type {string} */ (id), reading: reading.id, earlier };
}

/**
 * One more light that is the same as one read before: kept with its reading, which says so.
 * @param {string} id  of the light that was read
 * @param {object} as
 * @param {string} as.note    that says whose reading it is
 * @param {Record<string, any>} as.target  what it is measured against
 * @param {Record<string, any> | null | undefined} as.meant  as sayMeant has it
 * @returns {Promise<{name: string, light: string, reading: string, fresh: true}>} when durable
 */
export async function keepTwinOf(id, { note, target, meant }) {
  const { name: of, lamp } = /** @type {Thing} */ (book.thing(id)).data;
  const {
    photo: _photo,
    stage: _stage,
    gel_ids: _ids,
    follows: _follows,
    ...data
  } = /** @type {Thing} */ (book.latest(id)).data;
  const pack = gelsOn(/** @type {Thing} */ (book.latest(id)).data);
  const name = nextName(currentSetup(), of);
  const { light, reading } = await keepReading({
    light: null,
    lightData: { name, lamp, ...(meant ? { meant } : {}) },
    data: { ...data, pack, note, target },
  });
  return { name, light, reading, fresh: true };
}

/**
 * Keep a surface in the setup we work in, or put it in place of itself. Resolves when durable.
 * @param {string} id  "" = a new one
 * @param {import("./surfaces.js").Surface} surface
 * @returns {Promise<string>} its id
 */
export async function keepSurface(id, { photo, ...surface }) {
  const data = { ...surface, ...(photo ? { photo } : {}) };
  if (book.standing(id)) {
    await book.replace(id, data);
    return id;
  }
  const here = currentSetup();
  const { made, setup } = here ? { made: [], setup: here.id } : setupEntries();
  const entry = creation("surface", setup, data);
  await book.add(...made, entry);
  if (!here) await settings.set("here", setup);
  return entry.id;
}

/**
 * Delete a reading that was kept by mistake, and with it a light that has no other; a light that was
 * renamed with it is again what it was.
 * @param {object} kept
 * @param {string} kept.reading
 * @param {string} kept.light
 * @param {boolean} kept.fresh  whether the light came into the book with the reading
 * @param {Record<string, any> | null} [kept.earlier]  see keepReading
 */
export async function takeBack({ reading, light, fresh, earlier }) {
  const alone = fresh && book.below(light, "reading").length < 2;
  const gone = [reading, alone ? light : null].flatMap((id) => book.thing(id) ?? []);
  const entries = gone.map((thing) => replacement(thing.heads, thing.data, true));
  const renamed = earlier && book.thing(light);
  if (renamed) entries.push(replacement(renamed.heads, { ...renamed.data, ...earlier }));
  await book.add(...entries);
}

/**
 * The light of a setup that goes by a name, as people tell names apart.
 * @param {Thing | undefined} setup
 * @param {string} name
 */
export function lightNamed(setup, name) {
  if (!setup || !name.trim()) return undefined;
  return book.below(setup.id, "light").find((light) => isSameName(light.data.name, name));
}

/**
 * Whether two names are one and the same light's: capitals and blanks tell nothing.
 * @param {string | undefined} one
 * @param {string} other
 */
export function isSameName(one, other) {
  const plain = (/** @type {string} */ words) =>
    words.trim().replace(/\s+/g, " ").toLocaleLowerCase();
  return plain(one ?? "") === plain(other);
}

/**
 * A name that no light of this setup has: this one with the next number.
 * @param {Thing | undefined} setup
 * @param {string} name
 */
export function nextName(setup, name) {
  const [, stem, digits] = /** @type {RegExpExecArray} */ (
    /^(.*?)\s*(\d{0,6})$/s.exec(name.trim())
  );
  for (let n = Number(digits || 1) + 1; ; n += 1) {
    const next = `${stem} ${n}`.trim();
    if (!lightNamed(setup, next)) return next;
  }
}

/**
 * Names that lights of the other setups here have and this one's have not, the latest setup's first.
 * @param {Thing | undefined} setup
 * @param {number} most
 */
export function earlierNames(setup, most) {
  const place = here();
  const location = place?.kind === "setup" ? place.parent : place?.id;
  /** @type {Set<string>} */
  const names = new Set();
  for (const other of location ? book.below(location, "setup") : []) {
    if (other.id === setup?.id) continue;
    for (const light of book.below(other.id, "light").reverse()) {
      const name = String(light.data.name);
      if (!lightNamed(setup, name)) names.add(name);
      if (names.size >= most) return [...names];
    }
  }
  return [...names];
}
