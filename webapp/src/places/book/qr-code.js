/** A QR code, black on white in both themes, with a quiet zone as scanners need it. */
import { html, svg } from "lit";
import encodeQR from "qr";

const QUIET = 4; // modules, as ISO/IEC 18004 asks

/** Bytes that fit codes so many modules wide, versions 22 to 25 at error correction L (ISO/IEC 18004). */
const ROOM = /** @type {const} */ ([
  [105, 1003],
  [109, 1091],
  [113, 1171],
  [117, 1273],
]);

/** What a module takes at least for a phone's camera, in px; common practice, no source. */
const MODULE = 3;

/** How many characters fit one code on this screen. @param {number} width  of the page, in px */
export function roomFor(width) {
  const modules = width / MODULE - 2 * QUIET;
  return (ROOM.findLast(([wide]) => wide <= modules) ?? ROOM[0])[1];
}

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
