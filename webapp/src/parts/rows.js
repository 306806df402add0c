/** Lines of typed fields that can be added and taken off. */
import { html } from "lit";
import { t } from "../words/index.js";

/**
 * @template {Record<string, any>} Row
 * @param {object} list
 * @param {Row[]} list.rows
 * @param {string} list.addLabel
 * @param {Row} list.blank
 * @param {(row: Row, index: number, change: (fields: Partial<Row>) => void) => unknown} list.show
 * @param {(row: Row, index: number) => string} list.removeLabel
 * @param {(rows: Row[]) => void} list.onChange
 */
export function rows({ rows: all, addLabel, blank, show, removeLabel, onChange }) {
  const replaced = (/** @type {number} */ at, /** @type {Partial<Row>} */ fields) =>
    all.map((row, i) => (i === at ? { ...row, ...fields } : row));
  return html`
    <ul class="rows">
      ${all.map(
        (row, i) => html`<li>
          ${show(row, i, (fields) => onChange(replaced(i, fields)))}
          <button
            type="button"
            class="quiet"
            aria-label=${removeLabel(row, i)}
            @click=${() => onChange(all.filter((_, at) => at !== i))}
          >
            ${t("rolls.remove")}
          </button>
        </li>`,
      )}
    </ul>
    <div class="actions">
      <button type="button" @click=${() => onChange([...all, { ...blank }])}>${addLabel}</button>
    </div>
  `;
}
