/** Figures as a table under a caption, and a few of them side by side. */
import { html, nothing } from "lit";

/**
 * Each column has a head, each row begins with its own.
 * @param {unknown} caption      "" where a heading above the table says it
 * @param {unknown[]} heads      of the columns; "" for one that needs none
 * @param {unknown[][]} rows     cells, the head of the row first
 */
export const figureTable = (caption, heads, rows) => html`<table class="compare">
  ${caption ? html`<caption>${caption}</caption>` : nothing}
  <thead>
    <tr>
      ${heads.map((head) => (head === "" ? html`<td></td>` : html`<th scope="col">${head}</th>`))}
    </tr>
  </thead>
  <tbody>
    ${rows.map(
      ([head, ...cells]) => html`<tr>
        <th scope="row">${head}</th>
        ${cells.map((cell) => html`<td>${cell}</td>`)}
      </tr>`,
    )}
  </tbody>
</table>`;

/** The few figures that stand behind an answer. @param {unknown[][]} of  label and figure */
export const figures = (of) => html`<dl class="figures">
  ${of.map(([label, figure]) => html`<div><dt>${label}</dt><dd>${figure}</dd></div>`)}
</dl>`;
