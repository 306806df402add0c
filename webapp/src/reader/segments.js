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
/** Where the middle of each bar lies, as shares of a digit's width and height. */
const BARS = [
  [0.5, 0.07],
  [0.9, 0.27],
  [0.9, 0.73],
  [0.5, 0.93],
  [0.1, 0.73],
  [0.1, 0.27],
  [0.5, 0.5],
];
/** How far the digits lean, in widths per height. */
const LEANS = [0.1, 0, 0.05, 0.15];

/**
 * @param {Grey} line one word, dark on white, cut close above and below
 * @returns {string | null} null where any of it is not a digit of bars
 */
export function readSegments(line) {
  const texts = LEANS.map((lean) => withLean(line, lean)).filter((text) => text !== null);
  return texts.sort((one, other) => other.sure - one.sure)[0]?.text ?? null;
}

/**
 * @param {Grey} line
 * @param {number} lean
 */
function withLean({ width, height, data }, lean) {
  const inkAt = (/** @type {number} */ x, /** @type {number} */ y) => {
    const column = Math.round(x + lean * (height / 2 - y));
    if (column < 0 || column >= width || y < 0 || y >= height) return 0;
    return 1 - (data[Math.round(y) * width + column] ?? 255) / 255;
  };
  const filled = Array.from({ length: width }, (_, x) => {
    let most = 0;
    for (let y = 0; y < height; y++) most = Math.max(most, inkAt(x, y));
    return most > 0.5;
  });
  let text = "";
  let sure = 1;
  for (let x = 0; x < width; ) {
    if (!filled[x]) {
      x += 1;
      continue;
    }
    let end = x;
    while (end < width && filled[end]) end += 1;
    const read = signIn(inkAt, x, end, height);
    if (!read) return null;
    text += read.sign;
    sure = Math.min(sure, read.sure);
    x = end;
  }
  return text ? { text, sure } : null;
}

/**
 * @param {(x: number, y: number) => number} inkAt
 * @param {number} left
 * @param {number} right
 * @param {number} height
 */
function signIn(inkAt, left, right, height) {
  let [top, bottom] = [height, 0];
  for (let y = 0; y < height; y++) {
    for (let x = left; x < right; x++) {
      if (inkAt(x, y) < 0.5) continue;
      top = Math.min(top, y);
      bottom = Math.max(bottom, y + 1);
    }
  }
  const [wide, high] = [right - left, bottom - top];
  if (high < 0.3 * height) {
    if (top > 0.7 * height) return { sign: ".", sure: 1 };
    return Math.abs((top + bottom) / 2 / height - 0.5) < 0.15 ? { sign: "-", sure: 1 } : null;
  }
  if (high < 0.75 * height) {
    return Math.abs((top + bottom) / 2 / height - 0.5) < 0.1 ? { sign: "+", sure: 1 } : null;
  }
  if (wide < 0.32 * height) return { sign: "1", sure: 1 };
  if (wide > 0.85 * height) return null;
  let [code, sure] = ["", 1];
  for (const [across = 0, down = 0] of BARS) {
    const level = ink(inkAt, left + across * wide, top + down * high, 0.035 * height);
    code += level > 0.5 ? "1" : "0";
    sure = Math.min(sure, Math.abs(level - 0.5) * 2);
  }
  const sign = DIGITS.get(code);
  return sign ? { sign, sure } : null;
}

/**
 * The ink about a point.
 *
 * @param {(x: number, y: number) => number} inkAt
 * @param {number} x
 * @param {number} y
 * @param {number} reach
 */
function ink(inkAt, x, y, reach) {
  let sum = 0;
  for (const dx of [-reach, 0, reach]) {
    for (const dy of [-reach, 0, reach]) sum += inkAt(x + dx, y + dy);
  }
  return sum / 9;
}
