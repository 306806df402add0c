/** Holds, near or out as a shape: the dot is in the ring, on it, or outside it. */
import { svg } from "lit";

const DOT = { holds: 12, should_hold: 14, read_again: 16, near: 18, out: 21 };

/** In a box of 24 by 24. @param {keyof typeof DOT} verdict */
export function ring(verdict) {
  return svg`<circle cx="12" cy="12" r=${verdict === "out" ? 6 : 8} class="ring"></circle>
    <circle cx=${DOT[verdict]} cy=${verdict === "out" ? 5 : 12}
      r=${verdict === "holds" ? 4.5 : 3} class="dot"></circle>`;
}
