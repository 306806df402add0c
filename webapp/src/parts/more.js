/** The rest of a list: folded away under its number, or shown by a press. */
import { html, nothing } from "lit";
import { t } from "../words/index.js";

/** @param {string} summary @param {"packs" | "warnings"} kind @param {unknown[]} rows */
export const folded = (summary, kind, rows) =>
  rows.length
    ? html`<details class="more">
        <summary>${summary}</summary>
        <ul class=${kind}>${rows}</ul>
      </details>`
    : nothing;

/** @param {number} left  how many are not shown yet @param {() => void} onMore */
export const moreButton = (left, onMore) =>
  left > 0
    ? html`<button type="button" @click=${onMore}>${t("find.more", { n: left })}</button>`
    : nothing;
