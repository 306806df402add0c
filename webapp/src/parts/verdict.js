/**
 * Holds, near or out: a shape and a word. The dot is in the ring, on it, or outside it; what should
 * hold is in it but not its middle, what has to be read again touches it from within; what is as
 * found has no ring.
 */
import { html, svg } from "lit";
import { ring } from "../charts/ring.js";
import { t } from "../words/index.js";

/**
 * @param {"holds" | "should_hold" | "read_again" | "near" | "out" | "found" | null} verdict
 *   null as "found": not judged
 */
export function verdictMark(verdict) {
  if (!verdict || verdict === "found") {
    return html`<span class="verdict found">
      <svg viewBox="0 0 24 24" width="20" height="20" aria-hidden="true">
        ${svg`<circle cx="12" cy="12" r="4.5" class="dot"></circle>`}
      </svg>
      ${t("verdict.found")}
    </span>`;
  }
  return html`
    <span class="verdict ${verdict}">
      <svg viewBox="0 0 24 24" width="20" height="20" aria-hidden="true">
        ${ring(verdict)}
      </svg>
      ${t(`verdict.${verdict}`)}
    </span>
  `;
}
