/** The lights of a set as stops for the camera, and each one's ratio to the key. */
import { html, nothing } from "lit";
import { settings } from "../../store/index.js";
import { cameraQuestion, levelOf } from "../../store/questions/camera.js";
import { t } from "../../words/index.js";

/** @typedef {{light: import("../../store/log/book.js").Thing, reading: import("../../store/log/book.js").Thing}} Lit */

/**
 * The light that the others are a ratio to: the hero, else the one called key, else the first
 * that has a level; undefined where none has.
 * @param {Lit[]} lights
 * @param {string | undefined} hero
 */
export function keyOf(lights, hero) {
  const level = lights.filter(({ reading }) => Object.keys(levelOf(reading.data)).length);
  return (
    level.find(({ light }) => light.id === hero) ??
    level.find(({ light }) => [light.data.role, light.data.name].includes("key")) ??
    level[0]
  );
}

/**
 * @param {Lit[]} lights
 * @param {Lit | undefined} key
 * @param {({stops_lost: number} | null)[]} [packs]  what is to be hung on each
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
  if (!level) return [];
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
