/** A reading as it was typed, in words: nothing here is computed. */
import { t } from "./index.js";
import { duv, kelvin } from "./numbers.js";

/** A colour as it was typed. @param {Record<string, any>} data */
export function whiteOf(data) {
  if (data.cct_K) {
    const plain = !data.duv || Number(data.duv) === 0;
    return plain
      ? t("reading.cct", { cct: data.cct_K })
      : t("reading.cctDuv", { cct: data.cct_K, duv: data.duv });
  }
  if (data.spectrum) return t("reading.spectrum");
  return data.x && data.y ? t("reading.xy", { x: data.x, y: data.y }) : "";
}

/**
 * What was dialled: as the lamp's display said it, or the colour that Dial had it set to.
 * @param {string | Record<string, any> | null | undefined} dialled
 */
export const dialledWords = (dialled) =>
  dialled && typeof dialled === "object" ? whiteOf(dialled) : (dialled ?? "");

/**
 * @param {Record<string, any>} data
 * @param {{cct_K: number | null, duv: number | null}} [read]  what it reads, where the kernel said
 */
export function readingWords(data, read) {
  const white = read?.cct_K ? `${kelvin(read.cct_K)}, Duv ${duv(read.duv)}` : whiteOf(data);
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
