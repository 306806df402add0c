/** What dimming does for a tungsten light, beside the gels. */
import { html, nothing } from "lit";
import { t } from "../words/index.js";
import { verdictMark } from "./verdict.js";

/**
 * Whether a light is better dimmed than gelled: a practical that holds by its dimmer, or a light
 * that no gel brings there.
 * @param {{verdict: string | null, dim: any, packs?: any[], pack?: any}} light  of the kernel's "fix" or "agree"
 */
export function dimsFirst({ verdict, dim, packs, pack = packs?.[0] }) {
  if (verdict === "holds" || dim?.verdict !== "holds") return false;
  return dim.before_gel || pack?.verdict !== "holds";
}

/** The dimmer as the other way, or what it leads to where it comes first. @param {any} light */
export function dimLine(light) {
  const { dim } = light;
  if (!dim) return nothing;
  const first = dimsFirst(light);
  return html`<p class="reason">
    ${first ? t("dim.first") : t("dim.or", { words: dim.words })} ${verdictMark(dim.verdict)}
  </p>`;
}
