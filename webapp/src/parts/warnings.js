/** What the kernel wants a practitioner to know, one sentence a line. */
import { html, nothing } from "lit";

/** @param {readonly string[] | undefined} warnings */
export function warningList(warnings) {
  if (!warnings?.length) return nothing;
  return html`<ul class="warnings">
    ${warnings.map((warning) => html`<li>${warning}</li>`)}
  </ul>`;
}

/** @param {string | undefined} message a problem that belongs to no field on the screen */
export function problemNote(message) {
  return message ? html`<p class="problem block" role="alert">${message}</p>` : nothing;
}

/** What figures in another form were taken for. @param {{assumed?: string[]} | null | undefined} answer */
export const assumed = (answer) =>
  answer?.assumed?.length ? html`<p class="reason">${answer.assumed.join(" ")}</p>` : nothing;
