/** Numbers of the metrics, each with what it rests on: observer, reference and edition on demand. */
import { html } from "lit";
import { t } from "../../words/index.js";
import { index } from "../../words/numbers.js";

/**
 * @typedef {object} NumberRow
 * @property {string} name
 * @property {number | null} value
 * @property {string} [observer]
 * @property {string | null} reference
 * @property {string} [edition]
 */

/** @param {NumberRow[]} rows */
export function numberRows(rows) {
  return rows.map(
    ({ name, value, observer, reference, edition }) => html`<details class="number">
      <summary><span>${name}</span> <strong>${index(value)}</strong></summary>
      <dl class="facts">
        <dt>${t("number.reference")}</dt>
        <dd>${reference}</dd>
        <dt>${t("number.observer")}</dt>
        <dd>${observer}</dd>
        <dt>${t("number.edition")}</dt>
        <dd>${edition}</dd>
      </dl>
    </details>`,
  );
}
