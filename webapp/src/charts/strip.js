/**
 * The strip: one tile a light of the set in its order, filled as the camera at its white sees a grey
 * card under it, as high as its stop beside the key's, with a notch in the colour that is meant, its
 * number, and whether it holds. Colours and stops come from the kernel; here they are laid out.
 */
import { html, nothing, svg } from "lit";
import { t } from "../words/index.js";
import { stops } from "../words/numbers.js";
import { paint } from "./patch.js";
import { ring } from "./ring.js";

const WIDTH = 340;
const LEAST = 26; // of a tile, in the same units
const PAD = { left: 30, top: 8, bottom: 44 };
const HIGH = 112; // of a tile at the top of the scale
const LOWEST = 10;
/** Stops below the key at the foot, unless a light is darker still. */
const DOWN = 4;

/**
 * @typedef {object} Tile
 * @property {string} name
 * @property {import("./patch.js").Colour} [colour]
 * @property {import("./patch.js").Colour} [meant]
 * @property {number | null} [stops]   beside the key, 0 for the key; null where it has no level
 * @property {"holds" | "near" | "out"} [verdict]
 */

/**
 * @param {Tile[]} tiles
 * @param {{title: string, onTouch: (index: number) => void}} options
 */
export function strip(tiles, { title, onTouch }) {
  const levels = tiles.flatMap(({ stops: level }) => level ?? []);
  const left = levels.length ? PAD.left : 2;
  const each = Math.max(LEAST, (WIDTH - left) / tiles.length);
  const width = left + each * tiles.length;
  const [low, high] = [Math.min(-DOWN, ...levels), Math.max(0, ...levels)];
  const foot = PAD.top + HIGH;
  const y = (/** @type {number} */ level) =>
    Math.min(foot - LOWEST, PAD.top + ((high - level) / (high - low)) * HIGH);
  const lines = levels.length
    ? Array.from({ length: Math.ceil(high) - Math.floor(low) + 1 }, (_, i) => Math.floor(low) + i)
        .filter((level) => level > low && level <= high)
        .filter((level, _, all) => level === 0 || all.length < 9 || level % 2 === 0)
    : [];
  const touch = (/** @type {PointerEvent} */ event) => {
    const frame = /** @type {Element} */ (event.currentTarget).getBoundingClientRect();
    const across = ((event.clientX - frame.left) / frame.width) * width;
    const index = Math.floor((across - left) / each);
    if (tiles[index]) onTouch(index);
  };
  return html`<figure
    class="strip"
    tabindex=${width > WIDTH ? "0" : nothing}
    aria-label=${width > WIDTH ? t("strip.title") : nothing}
    role=${width > WIDTH ? "group" : nothing}
  >
    <svg
      viewBox="0 0 ${width} ${foot + PAD.bottom}"
      class=${width > WIDTH ? "many" : ""}
      role="img"
      aria-label="${title} ${tiles.map(tileWords).join(" ")}"
      @click=${touch}
    >
      ${lines.map(
        (
          level,
        ) => svg`<line class="grid" x1=${left} x2=${width} y1=${y(level)} y2=${y(level)}></line>
          <text x=${left - 4} y=${y(level) + 4} text-anchor="end">${
            level ? (level > 0 ? `+${level}` : `−${-level}`) : t("strip.key")
          }</text>`,
      )}
      ${tiles.map(({ colour, meant, stops: level, verdict }, i) => {
        const x = left + i * each + 2;
        const top = level == null ? (levels.length ? foot - HIGH / 2 : PAD.top) : y(level);
        const middle = x + each / 2 - 2;
        return svg`<g class="tile ${level == null && levels.length ? "unread" : ""}">
          <rect class="fill" x=${x} width=${each - 4} y=${top} height=${foot - top} rx="4"
            fill=${colour ? paint(colour) : "none"}></rect>
          ${
            meant
              ? svg`<path class="notch" d="M${middle - 8} ${foot}a8 8 0 0 1 16 0z"
                  fill=${paint(meant)}></path>`
              : nothing
          }
          ${
            verdict
              ? svg`<g class="verdict ${verdict}" transform="translate(${middle - 8} ${foot + 5}) scale(0.67)">${ring(verdict)}</g>`
              : nothing
          }
          <text class="number" x=${middle} y=${foot + PAD.bottom - 7} text-anchor="middle">${i + 1}</text>
        </g>`;
      })}
    </svg>
  </figure>`;
}

/** @param {Tile} tile @param {number} index */
function tileWords({ name, stops: level, verdict }, index) {
  return t("strip.tile", {
    n: index + 1,
    name,
    verdict: verdict ? t(`verdict.${verdict}`) : t("strip.unjudged"),
    level:
      level == null
        ? t("strip.noLevel")
        : level === 0
          ? t("strip.asKey")
          : t(level < 0 ? "strip.below" : "strip.above", { stops: stops(Math.abs(level)) }),
  });
}
