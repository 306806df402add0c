/** The lights of a set as stops for the camera, and each one's ratio to the key. */
import { html, nothing } from "lit";
import { choice } from "../../parts/inputs.js";
import { book, reportFault, settings } from "../../store/index.js";
import { cameraQuestion, levelOf } from "../../store/questions/camera.js";
import { t } from "../../words/index.js";

/** @typedef {{light: import("../../store/log/book.js").Thing, reading: import("../../store/log/book.js").Thing}} Lit */

/** The lights whose level was read. @param {Lit[]} lights */
const withLevel = (lights) =>
  lights.filter(({ reading }) => Object.keys(levelOf(reading.data)).length);

/**
 * The light that the others are a ratio to: the one chosen for that, else the one whose colour
 * they match, else the first by the setup's order; undefined where no light has a level.
 * @param {Lit[]} lights
 * @param {import("../../store/log/book.js").Thing | undefined} setup
 */
export function keyOf(lights, setup) {
  const level = withLevel(lights);
  const of = (/** @type {string | undefined} */ id) => level.find(({ light }) => light.id === id);
  return of(setup?.data.key) ?? of(setup?.data.hero) ?? level[0];
}

/**
 * The choice of that light, kept with the setup.
 * @param {Lit[]} lights
 * @param {import("../../store/log/book.js").Thing | undefined} setup
 */
export function keyChoice(lights, setup) {
  const level = withLevel(lights);
  if (!setup || level.length < 2) return nothing;
  return choice({
    id: "set-key",
    label: t("levels.key"),
    value: keyOf(lights, setup)?.light.id ?? "",
    options: level.map(({ light }) => ({ value: light.id, label: light.data.name })),
    onChange: (key) => book.edit(setup.id, { key }).catch(reportFault),
  });
}

/**
 * @param {Lit[]} lights
 * @param {Lit | undefined} key
 * @param {({stops_lost: number} | null)[]} [packs]  what is to be hung on each
 * @returns {import("../../kernel/answers.js").Question<"levels"> | null}
 */
export function levelsQuestion(lights, key, packs) {
  if (!key) return null;
  return {
    ask: "levels",
    lights: lights.map(({ light, reading }, i) => ({
      name: light.data.name,
      ...levelOf(reading.data),
      loss_stops: packs?.[i]?.stops_lost ?? 0,
    })),
    key: lights.indexOf(key),
    camera: cameraQuestion(),
    say: settings.get("say"),
  };
}

/**
 * Its stop and its ratio, as read and with all gels on; empty where there is nothing to say.
 * @param {any} level  one light of the kernel's "levels"
 * @param {string} key  name of the key light
 * @param {boolean} byPlan  whether a kept plan says what hangs
 * @returns {string[]}
 */
export function levelWords(level, key, byPlan) {
  if (!level || level.problem) return [];
  const words = (/** @type {any} */ state) =>
    [state.stop, state.ratio_words && t("levels.toKey", { ratio: state.ratio_words, key })]
      .filter(Boolean)
      .join(" · ");
  const now = words(level.now);
  const then = level.gelled ? words(level.gelled) : now;
  const gelled = byPlan ? "levels.planned" : "levels.gelled";
  return [now, then === now ? "" : t(gelled, { words: then })].filter(Boolean);
}

/** @param {any} level @param {string} key @param {boolean} byPlan */
export function levelLine(level, key, byPlan) {
  const [now, then] = levelWords(level, key, byPlan);
  if (!now) return nothing;
  return html`<p class="reason level">${now} ${then ? html`<br />${then}` : nothing}</p>`;
}
