/** A QR code, black on white in both themes, with a quiet zone as scanners need it. */
import { html, svg } from "lit";
import encodeQR from "qr";

const QUIET = 4; // modules, as ISO/IEC 18004 asks

/**
 * @param {string} text
 * @param {string} label
 */
export function qrCode(text, label) {
  const rows = encodeQR(text, "raw", { ecc: "low", border: QUIET });
  const side = rows.length;
  const dark = rows.flatMap((row, y) => row.flatMap((on, x) => (on ? [`M${x} ${y}h1v1h-1z`] : [])));
  return html`<svg class="code" viewBox="0 0 ${side} ${side}" role="img" aria-label=${label}>
    ${svg`<rect class="paper" width=${side} height=${side}></rect>
      <path class="ink" d=${dark.join("")}></path>`}
  </svg>`;
}
