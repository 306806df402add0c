/**
 * Digits made of seven bars, which readers of print do not know: read by which bars are lit.
 *
 * @typedef {import("./prepare.js").Grey} Grey
 */

/** The bars in the order a to g: above, right above, right below, below, left below, left above,
 *  middle. */
const DIGITS = new Map([
  ["1111110", "0"],
  ["0110000", "1"],
  ["1101101", "2"],
  ["1111001", "3"],
  ["0110011", "4"],
  ["1011011", "5"],
  ["1011111", "6"],
  ["0011111", "6"],
  ["1110000", "7"],
  ["1110010", "7"],
  ["1111111", "8"],
  ["1111011", "9"],
  ["1110011", "9"],
]);
/**
 * Where to look for each bar, as shares of a digit's width and height: along it, without its ends,
 * and as far across as it may lie off its place.
 * @type {{ along: "x" | "y", at: number[] }[]}
 */
const BARS = [
  { along: "x", at: [0.32, 0.68, 0, 0.18] },
  { along: "y", at: [0.66, 1, 0.2, 0.38] },
  { along: "y", at: [0.66, 1, 0.62, 0.8] },
  { along: "x", at: [0.32, 0.68, 0.82, 1] },
  { along: "y", at: [0, 0.34, 0.62, 0.8] },
  { along: "y", at: [0, 0.34, 0.2, 0.38] },
  { along: "x", at: [0.32, 0.68, 0.41, 0.59] },
];
/** How far the digits may lean, in widths per height: a display seen from the side leans more. */
const LEANS = [0.1, 0.05, 0.15, 0, 0.2, -0.05, 0.25];
/** A number read as surely as this need not be read with other leans and gaps. */
const SURE = 0.7;
/** From how much ink on a column is not between two digits. */
const INKED = [0.5, 0.7, 0.3];

/** Between the bars there is no ink: these parts of a digit are bare. */
const HOLES = [
  [0.4, 0.6, 0.24, 0.36],
  [0.4, 0.6, 0.64, 0.76],
];
const A_NUMBER = /^[+-]?\d*\.?\d+$/;

/**
 * @param {Grey} line one word, dark on white, cut close above and below
 * @returns {{ text: string, unit: boolean, sure: number } | null} the number, and whether a unit stands behind it;
 *   null where it is not a number of bars
 */
export function readSegments(line) {
  let best = { text: "", unit: false, sure: 0 };
  for (const lean of LEANS) {
    const upright = turnedUpright(line, lean);
    for (const inked of INKED) {
      const read = withGaps(upright, inked);
      if (read && read.sure > best.sure && A_NUMBER.test(read.text)) best = read;
      if (best.sure > SURE) return best;
    }
  }
  return best.text ? best : null;
}

/**
 * A line whose digits lean, with how much ink there is at each of its places, 0 to 1.
 *
 * @param {Grey} line
 * @param {number} lean
 */
function turnedUpright({ width, height, data }, lean) {
  const ink = new Float32Array(width * height);
  for (let y = 0; y < height; y++) {
    const shift = Math.round(lean * (height / 2 - y));
    for (let x = 0; x < width; x++) {
      const from = x + shift;
      if (from >= 0 && from < width) {
        ink[y * width + x] = 1 - (data[y * width + from] ?? 255) / 255;
      }
    }
  }
  return { width, height, ink };
}

/** @typedef {ReturnType<typeof turnedUpright>} Upright */

/**
 * @param {Upright} line
 * @param {number} inked
 * @returns {{ text: string, unit: boolean, sure: number } | null}
 */
function withGaps(line, inked) {
  const { width, height } = line;
  const most = (/** @type {number} */ x) => strongest(line, x, x + 1, 0, height);
  const filled = Array.from({ length: width }, (_, x) => most(x) > inked);
  let text = "";
  let sure = 1;
  for (let x = 0; x < width; ) {
    if (!filled[x]) {
      x += 1;
      continue;
    }
    let end = x;
    while (end < width && filled[end]) end += 1;
    const read = signIn(line, x, end);
    if (!read) return null;
    // A unit is written smaller.
    if (!read.sign && text.length > 2) return { text, unit: true, sure };
    text += read.sign || " ";
    sure = Math.min(sure, read.sure);
    x = end;
  }
  return text ? { text, unit: false, sure } : null;
}

/**
 * @param {Upright} line
 * @param {number} left
 * @param {number} right
 */
function signIn(line, left, right) {
  const { height } = line;
  let [top, bottom] = [height, 0];
  for (let y = 0; y < height; y++) {
    if (strongest(line, left, right, y, y + 1) < 0.5) continue;
    top = Math.min(top, y);
    bottom = Math.max(bottom, y + 1);
  }
  const [wide, high] = [right - left, bottom - top];
  if (high < 0.3 * height) {
    if (top > 0.7 * height) return { sign: ".", sure: 1 };
    return Math.abs((top + bottom) / 2 / height - 0.5) < 0.15 ? { sign: "-", sure: 1 } : null;
  }
  const level = (
    /** @type {"x" | "y"} */ along,
    /** @type {number[]} */ [x0 = 0, x1 = 1, y0 = 0, y1 = 1],
  ) => inkAlong(line, along, left + x0 * wide, left + x1 * wide, top + y0 * high, top + y1 * high);
  if (high < 0.75 * height) {
    const cross = level("x", [0, 1, 0.4, 0.6]) > 0.6 && level("x", [0, 0.25, 0, 0.25]) < 0.4;
    const amid = Math.abs((top + bottom) / 2 / height - 0.5) < 0.1;
    return { sign: cross && amid ? "+" : "", sure: 1 };
  }
  if (wide < 0.32 * height)
    return level("y", [0, 1, 0.1, 0.9]) > 0.7 ? { sign: "1", sure: 1 } : null;
  if (wide > 0.85 * height || HOLES.some((hole) => level("x", hole) > 0.5)) return null;
  let [code, sure] = ["", 1];
  for (const { along, at } of BARS) {
    const lit = level(along, at);
    code += lit > 0.5 ? "1" : "0";
    sure = Math.min(sure, Math.abs(lit - 0.5) * 2);
  }
  const sign = DIGITS.get(code);
  return sign ? { sign, sure } : null;
}

/**
 * How much ink a bar has: the mean along it of the strongest ink across it.
 *
 * @param {Upright} line
 * @param {"x" | "y"} along
 * @param {number} left
 * @param {number} right
 * @param {number} top
 * @param {number} bottom
 */
function inkAlong(line, along, left, right, top, bottom) {
  const [x0, x1] = [Math.round(left), Math.max(Math.round(left) + 1, Math.round(right))];
  const [y0, y1] = [Math.round(top), Math.max(Math.round(top) + 1, Math.round(bottom))];
  let sum = 0;
  if (along === "x") {
    for (let x = x0; x < x1; x++) sum += strongest(line, x, x + 1, y0, y1);
    return sum / (x1 - x0);
  }
  for (let y = y0; y < y1; y++) sum += strongest(line, x0, x1, y, y + 1);
  return sum / (y1 - y0);
}

/**
 * The strongest ink of a part of the line.
 *
 * @param {Upright} line
 * @param {number} left
 * @param {number} right
 * @param {number} top
 * @param {number} bottom
 */
function strongest({ width, ink }, left, right, top, bottom) {
  let most = 0;
  for (let y = top; y < bottom; y++) {
    for (let x = left; x < right; x++) most = Math.max(most, ink[y * width + x] ?? 0);
  }
  return most;
}
