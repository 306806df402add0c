/** Readings that hold a spectrum: where they are, and how they are asked about. */

import { lightDraft } from "../../store/drafts/light-draft.js";
import { book } from "../../store/index.js";
import { currentSetup, lightsOf, locations, placeWords } from "../../store/log/shoot.js";
import { readingQuestion } from "../../store/questions/reading.js";

/** The reading that stands on Light, as an address. */
export const DRAFT = "draft";

/**
 * @typedef {object} Spectral
 * @property {string} id
 * @property {string} name
 * @property {string} [at]     when it was read
 * @property {string} [file]
 * @property {Record<string, any>} question  R, with its spectrum
 */

/**
 * @param {string} id of a reading, of a light (its latest reading counts), or DRAFT
 * @returns {Spectral | undefined} undefined when there is none with a spectrum
 */
export function spectral(id) {
  if (id === DRAFT) {
    const { typed, reading } = lightDraft;
    if (!reading.spectrum) return undefined;
    const name = typed.name.trim() || typed.source;
    return { id, name, file: typed.source, question: readingQuestion(reading, name) };
  }
  const thing = book.thing(id);
  const reading = thing?.kind === "light" ? book.latest(id) : thing;
  if (!reading?.data.spectrum) return undefined;
  const name = book.thing(reading.parent)?.data.name ?? "";
  const question = readingQuestion(reading.data, name);
  return { id, name, at: reading.at, file: reading.data.file, question };
}

/** The lights of this setup whose latest reading holds a spectrum. @returns {Spectral[]} */
export function spectralLights() {
  return lightsOf(currentSetup()).flatMap(({ light }) => spectral(light.id) ?? []);
}

/**
 * Those of every other setup, such as the day that a pick-up is to match.
 * @returns {(Spectral & {place: string})[]}
 */
export function spectralElsewhere() {
  const here = currentSetup()?.id;
  return locations()
    .flatMap((location) => book.below(location.id, "setup"))
    .filter((setup) => setup.id !== here)
    .flatMap((setup) =>
      lightsOf(setup).flatMap(({ light }) => {
        const found = spectral(light.id);
        return found ? [{ ...found, place: placeWords(setup) }] : [];
      }),
    );
}
