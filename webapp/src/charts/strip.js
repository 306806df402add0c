/**
 * The strip: one tile a light of the set in its order, filled as the camera at its white sees a grey
 * card under it, as high as its stop beside the key's, with a notch in the colour that is meant, its
 * number, and whether it holds. Colours and stops come from the kernel; here they are laid out.
 * Drawn low it stays in sight above what is scrolled, for the eye alone: its words are the other's.
 */
import { html, nothing, svg } from "lit";
import { t } from "../words/index.js";
import { stops } from "../words/numbers.js";
import { paint } from "./patch.js";
import { ring } from "./ring.js";

/** In units of the drawing: a tile is `high` at the top of the scale, and never below `lowest`. */
const FULL = {
  width: 340,
  least: 26,
  left: 30,
  top: 8,
  high: 112,
  lowest: 10,
  mark: 16,
  below: 44,
};
const LOW = { width: 260, least: 0, left: 0, top: 2, high: 24, lowest: 5, mark: 14, below: 30 };
/** A tile that is narrower has no room for its number. */
const NUMBERED = 16;
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
 * @param {{title: string, low?: boolean, onTouch: (index: number) => void}} options
 */
export function strip(tiles, { title, low: isLow = false, onTouch }) {
  const size = isLow ? LOW : FULL;
  const levels = tiles.flatMap(({ stops: level }) => level ?? []);
  const left = levels.length ? size.left : 2;
  const each = Math.max(size.least, (size.width - left) / tiles.length);
  const width = left + each * tiles.length;
  const [low, high] = [Math.min(-DOWN, ...levels), Math.max(0, ...levels)];
  const foot = size.top + size.high;
  const y = (/** @type {number} */ level) =>
    Math.min(foot - size.lowest, size.top + ((high - level) / (high - low)) * size.high);
  const lines =
    levels.length && !isLow
      ? Array.from({ length: Math.ceil(high) - Math.floor(low) + 1 }, (_, i) => Math.floor(low) + i)
          .filter((level) => level > low && level <= high)
          .filter((level, _, all) => level === 0 || all.length < 9 || level % 2 === 0)
      : [];
  const touch = (/** @type {PointerEvent} */ event) => {
    const drawing = /** @type {SVGSVGElement} */ (event.currentTarget);
    const place = new DOMPoint(event.clientX, event.clientY);
    const across = place.matrixTransform(drawing.getScreenCTM()?.inverse()).x;
    const index = Math.floor((across - left) / each);
    if (tiles[index]) onTouch(index);
  };
  const many = width > size.width;
  return html`<figure
    class=${isLow ? "strip low" : "strip"}
    tabindex=${many ? "0" : nothing}
    aria-label=${many ? t("strip.title") : nothing}
    aria-hidden=${isLow ? "true" : nothing}
    role=${many ? "group" : nothing}
  >
    <svg
      viewBox="0 0 ${width} ${foot + size.below}"
      class=${many ? "many" : ""}
      role="img"
      aria-label=${isLow ? nothing : `${title} ${tiles.map(tileWords).join(" ")}`}
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
        const top = level == null ? (levels.length ? foot - size.high / 2 : size.top) : y(level);
        const middle = x + each / 2 - 2;
        const half = size.mark / 2;
        return svg`<g class="tile ${level == null && levels.length ? "unread" : ""}">
          <rect class="fill" x=${x} width=${Math.max(each - 4, 2)} y=${top} height=${foot - top} rx="4"
            fill=${colour ? paint(colour) : "none"}></rect>
          ${
            meant && !isLow
              ? svg`<path class="notch" d="M${middle - half} ${foot}a${half} ${half} 0 0 1 ${2 * half} 0z"
                  fill=${paint(meant)}></path>`
              : nothing
          }
          ${
            verdict
              ? svg`<g class="verdict ${verdict}" transform="translate(${middle - half} ${foot + half / 2}) scale(${size.mark / 24})">${ring(verdict)}</g>`
              : nothing
          }
          ${
            each < NUMBERED
              ? nothing
              : svg`<text class="number" x=${middle} y=${foot + size.below - half + 1} text-anchor="middle">${i + 1}</text>`
          }
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
