/** Gels that are named somewhere and that the person has not said to carry. */
import { html, nothing } from "lit";
import { settings } from "../store/index.js";
import { tradeName } from "../store/log/measured-gels.js";
import { t } from "../words/index.js";

/** @param {readonly string[]} names @returns {string[]} those of them to fetch, each once */
export function toFetch(names) {
  const without = new Set(settings.get("without"));
  return [...new Set(names)].filter((name) => without.has(tradeName(name)));
}

/** Marks what the kit has none of. @param {readonly string[]} names  of gels */
export function fetchNote(names) {
  const gels = toFetch(names);
  return gels.length
    ? html`<p class="reason">${t("gels.fetch", { gels: gels.join(", ") })}</p>`
    : nothing;
}
