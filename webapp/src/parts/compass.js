/** Where the top of the phone points, only when it is asked for. */
import { t } from "../words/index.js";

/** How long a phone gets to find north, in ms. */
const PATIENCE = 4000;

/** @returns {Promise<number>} degrees from north by east; rejects with a sentence */
export async function facing() {
  const Sensor = /** @type {any} */ (globalThis).DeviceOrientationEvent;
  const refused = Sensor?.requestPermission && (await Sensor.requestPermission()) !== "granted";
  if (!Sensor || refused) throw new Error(t("compass.none"));
  return new Promise((resolve, reject) => {
    const done = () => {
      clearTimeout(timer);
      for (const name of NAMES) removeEventListener(name, hear);
    };
    const hear = (/** @type {any} */ event) => {
      // Safari gives the heading itself, others the turn against it where it is from north.
      const turn = event.absolute && event.alpha !== null ? 360 - event.alpha : undefined;
      const heading = event.webkitCompassHeading ?? turn;
      if (heading === undefined) return;
      done();
      resolve(Math.round(heading) % 360);
    };
    const timer = setTimeout(() => {
      done();
      reject(new Error(t("compass.none")));
    }, PATIENCE);
    for (const name of NAMES) addEventListener(name, hear);
  });
}

const NAMES = ["deviceorientationabsolute", "deviceorientation"];
