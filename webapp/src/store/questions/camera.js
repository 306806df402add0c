/** The camera and the mains as questions to the kernel. Numbers pass as they were typed. */
import { t } from "../../words/index.js";
import { withUnit } from "../../words/typed.js";
import { settings } from "../index.js";

/** How bright a light is, of the fields of a reading. */
const LEVEL = /** @type {const} */ ([
  "illuminance_lx",
  "illuminance_fc",
  "exposure_lx_s",
  "flash_f_number",
]);

/** What an f-number of a flash meter goes by. */
const FLASH_METER = /** @type {const} */ (["flash_iso", "flash_receptor", "flash_constant"]);

/** The shutter as typed. */
export function shutterQuestion(camera = settings.get("camera")) {
  const { fps, way, shutter_deg, time_s } = camera;
  return way === "angle" ? { fps, shutter_deg } : { fps, time_s };
}

/** The camera, as "expose" and "levels" take it. */
export function cameraQuestion(camera = settings.get("camera")) {
  const { iso, filterAs, filter, lens_stops, receptor, constant } = camera;
  return {
    iso,
    ...shutterQuestion(camera),
    [filterAs === "stops" ? "filter_stops" : "filter_factor"]: filter,
    lens_stops,
    receptor,
    constant,
  };
}

/** The camera in a few words. @param {{flash?: boolean}} [light] */
export function cameraWords({ flash } = {}) {
  const { iso, fps, way, shutter_deg, time_s } = settings.get("camera");
  if (flash) return t("camera.flashWords", { iso });
  return way === "angle"
    ? t("camera.angleWords", { iso, fps, angle: shutter_deg })
    : t("camera.timeWords", { iso, fps, time: time_s });
}

/**
 * What a reading says about brightness; empty where it says nothing.
 * @param {Record<string, any>} data
 * @returns {Record<string, any>}
 */
export function levelOf(data) {
  const given = LEVEL.find((name) => String(data[name] ?? "").trim() !== "");
  if (!given) return {};
  const meter = given === "flash_f_number" ? FLASH_METER.filter((name) => data[name]) : [];
  return Object.fromEntries([given, ...meter].map((name) => [name, data[name]]));
}

/** @param {Record<string, any>} level as levelOf gives it */
export const isFlash = (level) => "exposure_lx_s" in level || "flash_f_number" in level;

/** The field that a brightness is typed into. @param {string} lamp */
export function levelField(lamp) {
  return lamp === "flash"
    ? settings.get("forms").flash
    : `illuminance_${settings.get("illuminance")}`;
}

/**
 * A brightness as a reading keeps it. Its own unit may stand behind it and decides.
 * @param {string} field  see levelField
 * @param {string} typed
 * @returns {Record<string, string>} empty where nothing was typed
 */
export function levelTyped(field, typed) {
  const { number, unit } = withUnit(typed);
  if (!number) return {};
  const steady = field.startsWith("illuminance");
  const own = steady
    ? unit === "lx" || unit === "fc"
      ? `illuminance_${unit}`
      : field
    : unit === "lx·s"
      ? "exposure_lx_s"
      : field;
  // A unit that does not belong here stays, for the kernel to refuse.
  const level = { [own]: own.endsWith(unit.replace("·", "_")) ? number : typed };
  if (own !== "flash_f_number") return level;
  const { receptor, constant } = settings.get("camera");
  return {
    ...level,
    flash_iso: settings.get("forms").iso,
    flash_receptor: receptor,
    ...(constant.trim() ? { flash_constant: constant } : {}),
  };
}

/** @param {string} name of a field, see levelField */
export function levelUnit(name) {
  if (name === "flash_f_number") return t("form.atIso", { iso: settings.get("forms").iso });
  return name === "exposure_lx_s" ? "lx·s" : name.slice("illuminance_".length);
}

/**
 * Whether the mains of a place and the shutter go together.
 * @param {import("../log/book.js").Thing | undefined} location
 * @returns {import("../../kernel/answers.js").Question<"flicker"> | null} null where the mains are not known
 */
export function mainsQuestion(location) {
  const mains_hz = location?.data.mains_hz || settings.get("mains_hz");
  if (!mains_hz) return null;
  const place = location ? { place: String(location.data.name).slice(0, 200) } : {};
  return { ask: "flicker", mains_hz, ...shutterQuestion(), ...place };
}
