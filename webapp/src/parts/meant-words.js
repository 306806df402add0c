/** What a light is meant to be, in a few words. */
import { html, nothing } from "lit";
import { book } from "../store/index.js";
import { labels } from "../store/log/measured-gels.js";
import { currentSetup, earlierOf, heroOf } from "../store/log/shoot.js";
import { saidOf } from "../store/log/target.js";
import { t } from "../words/index.js";
import { joined } from "../words/isolated.js";
import { dayOf } from "../words/numbers.js";
import { whiteOf } from "../words/reading.js";

/**
 * @param {string | null} light
 * @param {import("../store/log/target.js").Said} [said]
 * @param {import("../store/log/log.js").Log} [log]  that the light stands in
 */
export function meantWords(light, said = saidOf(light), log = book) {
  if (!said) {
    const then = earlierOf(light);
    if (then) return t("meant.itself", { day: dayOf(then.reading.at) });
  }
  if (!said || said.as === "white") {
    const hero = heroOf(currentSetup())?.light;
    if (!hero) return t("meant.white");
    return hero.id === light ? t("meant.asRead") : t("meant.like", { name: hero.data.name });
  }
  if (said.as === "found") return t("meant.found");
  if (said.warmer_mired !== undefined) {
    return withTint(t("meant.warmer", { n: said.warmer_mired }), said.duv);
  }
  if (said.cooler_mired !== undefined) {
    return withTint(t("meant.cooler", { n: said.cooler_mired }), said.duv);
  }
  if (said.as_through) {
    return t("meant.through", { pack: labels(said.as_through, said.gel_ids).join(" + ") });
  }
  if (typeof said.like === "string")
    return t("meant.like", { name: likeName(light, said.like, log) });
  return t("meant.own", { colour: whiteOf(said.like ?? said) });
}

/** @param {string} words @param {unknown} duv  as it was typed */
const withTint = (words, duv) => (String(duv ?? "").trim() ? `${words}, Duv ${duv}` : words);

/**
 * What a light is called that another is meant to be like: with its setup where that is another.
 * @param {string | null} light
 * @param {string} like
 * @param {import("../store/log/log.js").Log} [log]
 */
export function likeName(light, like, log = book) {
  const other = log.thing(like);
  const own = light ? log.thing(light)?.parent : other?.parent;
  const setup = other?.parent === own ? "" : log.thing(other?.parent)?.data.name;
  return joined([other?.data.name ?? "?", setup], ", ");
}

/** In a list of lights, what one is meant to be. @param {string | null | undefined} words */
export const meantLine = (words) =>
  words ? html`<p class="hint">${t("text.meant", { words })}</p>` : nothing;

/**
 * The same for a list of lights; empty where a light is meant as the others are.
 * @param {string} light
 */
export function meantBeside(light) {
  const said = saidOf(light);
  return (said && said.as !== "white") || earlierOf(light) ? meantWords(light, said) : "";
}
