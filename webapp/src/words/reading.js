/** A reading as it was typed, in words: nothing here is computed. */
import { t } from "./index.js";
import { duv, kelvin } from "./numbers.js";

/** Green and magenta as they were typed. @param {Record<string, any>} data */
function tintOf({ duv: typed, tint_cc, tint_cuts, tint_says }) {
  if (typed && Number(typed) !== 0) return t("reading.duv", { n: typed });
  const typedTint = String(tint_cc ?? tint_cuts ?? "").trim();
  if (!typedTint) return "";
  const n = typedTint.replace(/^[+\-−]\s*/, "");
  const side = /^[-−]/.test(typedTint) ? "magenta" : "green";
  const tint = t(`reading.${tint_cc ? "tint_cc" : "tint_cuts"}.${side}`, { n });
  return tint_says === "filter" ? t("reading.wants", { tint }) : tint;
}

/** A colour as it was typed. @param {Record<string, any>} data */
export function whiteOf(data) {
  if (data.cct_K || data.cct_mired) {
    const white = data.cct_K
      ? t("reading.cct", { cct: data.cct_K })
      : t("reading.mired", { mired: data.cct_mired });
    return [white, tintOf(data)].filter(Boolean).join(", ");
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
        : data.flash_f_number
          ? t("reading.flash", {
              n: String(data.flash_f_number).replace(/^f\s*\/?\s*/i, ""),
              iso: data.flash_iso,
            })
          : "";
  const pack = data.pack?.length ? t("reading.pack", { pack: data.pack.join(" + ") }) : "";
  return [white, light, pack].filter(Boolean).join(", ");
}
