/** How much would be lost with this phone, said once it is worth saying. */
import { html, nothing } from "lit";
import { book, inDemo, settings } from "../../store/index.js";
import { t } from "../../words/index.js";
import { dayOf } from "../../words/numbers.js";

/** So many entries at risk are an hour's work or so. */
const WORTH_SAYING = 20;

/** Entries that no file of the whole book holds. The log only grows, so counting is enough. */
export function atRisk() {
  return Math.max(0, book.size - (settings.get("backup")?.count ?? 0));
}

export function backupNote() {
  const n = atRisk();
  const { at } = settings.get("backup") ?? {};
  if (inDemo() || n < WORTH_SAYING) return nothing;
  return html`<div class="notice">
    <p>${at ? t("backup.since", { n, day: dayOf(at) }) : t("backup.never", { n })}</p>
    <a class="button" href="#share">${t("backup.now")}</a>
  </div>`;
}
