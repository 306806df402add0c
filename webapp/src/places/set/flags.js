/** What the numbers mean on a set, in plain words, the weightiest first. */
import { html } from "lit";

/** @param {{weight: "serious" | "look" | "fine", words: string}[]} flags */
export function flagList(flags) {
  return html`<ul class="flags">
    ${flags.map(({ weight, words }) => html`<li class=${weight}>${words}</li>`)}
  </ul>`;
}
