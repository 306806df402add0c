/** A reading as it was typed, in words: nothing here is computed. */
import { t } from "./index.js";

/** @param {Record<string, any>} data */
export function readingWords(data) {
  const white = data.cct_K
    ? data.duv
      ? t("reading.cctDuv", { cct: data.cct_K, duv: data.duv })
      : t("reading.cct", { cct: data.cct_K })
    : data.spectrum
      ? t("reading.spectrum")
      : t("reading.xy", { x: data.x, y: data.y });
  const light = data.illuminance_lx
    ? `${data.illuminance_lx} lx`
    : data.illuminance_fc
      ? `${data.illuminance_fc} fc`
      : data.exposure_lx_s
        ? `${data.exposure_lx_s} lx·s`
        : "";
  const pack = data.pack?.length ? t("reading.pack", { pack: data.pack.join(" + ") }) : "";
  return [white, light, pack].filter(Boolean).join(", ");
}
