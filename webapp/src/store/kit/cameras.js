/**
 * Cameras whose spectral sensitivities are known: kept in the settings of this book, and sent with
 * every question that one of them judges. The standard camera needs none: the kernel has it.
 */

import { settings } from "../index.js";

/**
 * @typedef {object} CameraEyes
 * @property {string} name
 * @property {number[]} wavelengths_nm
 * @property {number[]} red
 * @property {number[]} green
 * @property {number[]} blue
 */

/** The longest name that the kernel takes. */
export const LONGEST_NAME = 80;

/** @param {string} name @returns {CameraEyes | undefined} undefined for the standard one */
export const cameraNamed = (name) => settings.get("cameras").find((one) => one.name === name);

/** The camera that judges, as a field of a question: none for the standard one. */
export function ownCamera() {
  const camera = cameraNamed(settings.get("eyes"));
  return camera ? { camera } : {};
}

/**
 * Whether a camera can judge some lights: it goes by spectra alone, of one of them at least and of
 * the light that all match, if there is one.
 * @param {{reading: import("../log/book.js").Thing}[]} lights
 * @param {{reading: import("../log/book.js").Thing}} [hero]
 */
export const cameraCan = (lights, hero) =>
  lights.some(({ reading }) => reading.data.spectrum) &&
  (!hero || Boolean(hero.reading.data.spectrum));

/**
 * Who judges, as fields of a question: none for the eye.
 * @param {boolean} can  see cameraCan
 * @returns {{judge?: "camera", camera?: CameraEyes}}
 */
export const judging = (can) =>
  can && settings.get("judge") === "camera" ? { judge: "camera", ...ownCamera() } : {};

/** A name that no other camera has. @param {string} wanted */
function freeName(wanted) {
  let name = wanted.slice(0, LONGEST_NAME);
  for (let n = 2; cameraNamed(name); n += 1) {
    const ending = ` ${n}`;
    name = wanted.slice(0, LONGEST_NAME - ending.length) + ending;
  }
  return name;
}

/** Put a camera into the kit, beside all others. @param {CameraEyes} camera */
export const keepCamera = (camera) =>
  settings.set("cameras", [...settings.get("cameras"), { ...camera, name: freeName(camera.name) }]);

/** @param {string} from @param {string} to  a name that no other camera has */
export async function renameCamera(from, to) {
  const judges = settings.get("eyes") === from;
  await settings.set(
    "cameras",
    settings.get("cameras").map((one) => (one.name === from ? { ...one, name: to } : one)),
  );
  if (judges) await settings.set("eyes", to);
}

/**
 * Take a camera out of the kit. Where it judged, the standard one does from now on.
 * @param {string} name
 * @returns {Promise<() => Promise<void>>} undo
 */
export async function removeCamera(name) {
  const { cameras, eyes } = settings.values;
  await settings.set(
    "cameras",
    cameras.filter((one) => one.name !== name),
  );
  if (eyes === name) await settings.set("eyes", "");
  return async () => {
    await settings.set("cameras", cameras);
    await settings.set("eyes", eyes);
  };
}
