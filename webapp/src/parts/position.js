/** Where the phone is, only when it is asked for. */
import { t } from "../words/index.js";

/** @typedef {{latitude: number, longitude: number, accuracy_m: number}} Position */

/** @returns {Promise<Position>} rejects with a sentence */
export function whereAmI() {
  return new Promise((resolve, reject) => {
    if (!navigator.geolocation) {
      reject(new Error(t("position.none")));
      return;
    }
    navigator.geolocation.getCurrentPosition(
      ({ coords }) =>
        resolve({
          // About a metre; more digits would pretend to know.
          latitude: Number(coords.latitude.toFixed(5)),
          longitude: Number(coords.longitude.toFixed(5)),
          accuracy_m: Math.round(coords.accuracy),
        }),
      (error) =>
        reject(
          new Error(
            t(error.code === error.PERMISSION_DENIED ? "position.refused" : "position.none"),
          ),
        ),
      { enableHighAccuracy: true, timeout: 15_000, maximumAge: 60_000 },
    );
  });
}
