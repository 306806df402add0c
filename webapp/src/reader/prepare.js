import { readSegments } from "./segments.js";

/**
 * A picture of a display made ready for the reader: the light levelled, the words found, and each
 * of them set upright, dark on white and at one height, on a page with a line for every word.
 *
 * @typedef {{ width: number, height: number, data: Uint8Array }} Grey
 * @typedef {{ left: number, right: number, top: number, bottom: number }} Box
 * @typedef {{ box: Box, corners: [number, number][], line: { top: number, bottom: number }, bars: ReturnType<typeof readSegments> }} Word
 *   where it stands in the picture turned upright, in the picture as it is, and on the page; what
 *   it says if it is a number made of bars
 * @typedef {{ page: Grey, words: Word[], tilt: number }} Prepared
 */

/** Below and above these shares of the picture's height nothing is a letter or a digit. */
const LEAST_GLYPH = 0.011;
const MOST_GLYPH = 0.3;
/** The height to which every word is brought, and the paper about it, in pixels. */
const TALL = 36;
const PAPER = 22;
const MOST_TILT = 17;
/** A page of more words than any display has is not a display. */
const MOST_WORDS = 60;

/**
 * @param {Grey} picture of any light, either way round
 * @param {boolean} [bars] whether to look for digits made of bars, which have gaps
 * @returns {Prepared | null} null where no writing is seen
 */
export function prepare(picture, bars = false) {
  const even = evened(smoothed(picture));
  const [dark, light] = [inkOf(even, true, bars), inkOf(even, false, bars)];
  const isDark = weight(dark.glyphs) >= weight(light.glyphs);
  const { glyphs, marks } = isDark ? dark : light;
  if (glyphs.length < 3) return null;
  const tilt = tiltOf(glyphs);
  const turn = turning(tilt);
  const words = wordsOf(
    glyphs.map((box) => turn.box(box)),
    marks.map((box) => turn.box(box)),
    bars,
  ).slice(0, MOST_WORDS);
  if (!words.length) return null;
  return { ...setOut(picture, isDark, turn, words, bars), tilt };
}

/**
 * Take the grain off: the mean of each pixel and its eight neighbours.
 *
 * @param {Grey} picture
 * @returns {Grey}
 */
function smoothed({ width, height, data }) {
  const smooth = new Uint8Array(data);
  for (let y = 1; y < height - 1; y++) {
    let [one, two] = [0, 0];
    for (let x = 0; x < width; x++) {
      const at = y * width + x;
      const three = (data[at - width] ?? 0) + 2 * (data[at] ?? 0) + (data[at + width] ?? 0);
      if (x > 1) smooth[at - 1] = (one + 2 * two + three) >> 4;
      one = two;
      two = three;
    }
  }
  return { width, height, data: smooth };
}

/**
 * Level the light: each pixel by how far it stands from the mean about it, in the spread about it.
 *
 * @param {Grey} picture
 * @returns {Grey} 128 is the mean about
 */
function evened({ width, height, data }) {
  const sums = new Float64Array((width + 1) * (height + 1));
  const squares = new Float64Array((width + 1) * (height + 1));
  let whole = 0;
  for (let y = 0; y < height; y++) {
    let sum = 0;
    let square = 0;
    for (let x = 0; x < width; x++) {
      const value = data[y * width + x] ?? 0;
      sum += value;
      square += value * value;
      const at = (y + 1) * (width + 1) + x + 1;
      sums[at] = (sums[at - width - 1] ?? 0) + sum;
      squares[at] = (squares[at - width - 1] ?? 0) + square;
    }
    whole += square - (sum * sum) / width;
  }
  // What hardly differs from what is about it is noise, not writing.
  const least = Math.max(5, 0.25 * Math.sqrt(whole / (width * height)));
  const reach = Math.round(Math.max(width, height) / 22);
  const even = new Uint8Array(width * height);
  for (let y = 0; y < height; y++) {
    const top = Math.max(0, y - reach) * (width + 1);
    const bottom = Math.min(height, y + reach + 1) * (width + 1);
    const rows = (bottom - top) / (width + 1);
    for (let x = 0; x < width; x++) {
      const left = Math.max(0, x - reach);
      const right = Math.min(width, x + reach + 1);
      const count = rows * (right - left);
      const over = (/** @type {Float64Array} */ table) =>
        ((table[bottom + right] ?? 0) -
          (table[bottom + left] ?? 0) -
          (table[top + right] ?? 0) +
          (table[top + left] ?? 0)) /
        count;
      const mean = over(sums);
      const spread = Math.max(least, Math.sqrt(Math.max(0, over(squares) - mean * mean)));
      const value = ((data[y * width + x] ?? 0) - mean) / spread;
      even[y * width + x] = Math.max(0, Math.min(255, Math.round(128 + 56 * value)));
    }
  }
  return { width, height, data: even };
}

/**
 * Find the ink: what could be letters and digits, and the smaller marks beside them.
 *
 * @param {Grey} even
 * @param {boolean} dark whether the writing is darker than what is about it
 * @param {boolean} bars
 */
function inkOf({ width, height, data }, dark, bars) {
  const seen = new Uint8Array(width * height);
  const stack = new Int32Array(width * height);
  /** @type {Box[]} */
  const glyphs = [];
  /** @type {Box[]} */
  const marks = [];
  const grow = bars ? Math.ceil(Math.max(width, height) / 450) : 0;
  const mask = thickened(
    { width, height, data: data.map((value) => +(dark ? value < 80 : value > 176)) },
    grow,
  );
  const isInk = (/** @type {number} */ at) => mask[at] === 1;
  const least = Math.max(6, LEAST_GLYPH * height);
  const most = MOST_GLYPH * height;
  for (let start = 0; start < seen.length; start++) {
    if (seen[start] || !isInk(start)) continue;
    let size = 0;
    let ink = 0;
    stack[size++] = start;
    seen[start] = 1;
    const box = { left: width, right: 0, top: height, bottom: 0 };
    while (size) {
      const at = stack[--size] ?? 0;
      const x = at % width;
      const y = (at - x) / width;
      ink += 1;
      if (x < box.left) box.left = x;
      if (x > box.right) box.right = x;
      if (y < box.top) box.top = y;
      if (y > box.bottom) box.bottom = y;
      for (let dy = -1; dy <= 1; dy++) {
        for (let dx = -1; dx <= 1; dx++) {
          if (x + dx < 0 || x + dx >= width || y + dy < 0 || y + dy >= height) continue;
          const next = at + dy * width + dx;
          if (seen[next] || !isInk(next)) continue;
          seen[next] = 1;
          stack[size++] = next;
        }
      }
    }
    if (grow) {
      box.left += grow;
      box.right -= grow;
      box.top += grow;
      box.bottom -= grow;
    }
    const high = box.bottom - box.top + 1;
    const wide = box.right - box.left + 1;
    if (high > most || wide > 2 * most || ink < 4) continue;
    if (box.left <= grow || box.top <= grow) continue;
    if (box.right >= width - 1 - grow || box.bottom >= height - 1 - grow) continue;
    const full = ink / (high * wide);
    // In a small or soft picture the signs of a number run into one another.
    const alone = wide <= 1.7 * high && wide >= 0.07 * high && full > 0.12;
    const run = !bars && wide <= 6 * high && full > 0.25 && full < 0.75;
    if (high >= least && (alone || run)) glyphs.push(box);
    else if (high < 2 * least || wide < 6 * high) marks.push(box);
  }
  const kept = ofOneSize(glyphs);
  return { glyphs: kept, marks: [...marks, ...glyphs.filter((box) => !kept.includes(box))] };
}

/**
 * Let ink run by some pixels each way, so that it closes gaps.
 *
 * @param {Grey} ink of noughts and ones
 * @param {number} by
 * @returns {Uint8Array}
 */
function thickened({ width, height, data }, by) {
  if (!by) return data;
  const across = new Uint8Array(data.length);
  for (let at = 0; at < data.length; at++) {
    if (!data[at]) continue;
    const x = at % width;
    across.fill(1, at - Math.min(by, x), at + Math.min(by, width - 1 - x) + 1);
  }
  const both = new Uint8Array(data.length);
  for (let y = 0; y < height; y++) {
    for (let from = Math.max(0, y - by); from <= Math.min(height - 1, y + by); from++) {
      for (let x = 0; x < width; x++) {
        if (across[from * width + x]) both[y * width + x] = 1;
      }
    }
  }
  return both;
}

/**
 * Keep the boxes that have company of their own size: writing comes in rows. A letter alone is
 * kept where such a row goes on beside it.
 *
 * @param {Box[]} boxes
 */
function ofOneSize(boxes) {
  /** @type {(box: Box, other: Box, far: number) => boolean} */
  const alike = (box, other, far) => {
    const [high, tall] = [highOf(box), highOf(other)];
    const apart = Math.max(other.left - box.right, box.left - other.right);
    const above = Math.abs(other.top + other.bottom - box.top - box.bottom) / 2;
    return tall < 1.6 * high && tall > high / 1.6 && apart < far * high && above < 0.6 * high;
  };
  const company = boxes.filter((box) =>
    boxes.some((other) => other !== box && alike(box, other, 1.2)),
  );
  return boxes.filter(
    (box) => company.includes(box) || company.some((other) => alike(box, other, 9)),
  );
}

/** @param {Box[]} boxes */
function weight(boxes) {
  return boxes.reduce((sum, box) => sum + box.bottom - box.top, 0);
}

/**
 * Find by how many degrees the rows are tilted: where the glyphs' feet and heads fall together.
 *
 * @param {Box[]} boxes
 */
function tiltOf(boxes) {
  const tall = boxes.map((box) => box.bottom - box.top + 1).sort((a, b) => a - b);
  const slot = Math.max(1, (tall[tall.length >> 1] ?? 10) / 8);
  let best = 0;
  let most = -1;
  for (let tilt = -MOST_TILT; tilt <= MOST_TILT; tilt += 0.5) {
    const rise = Math.tan((tilt * Math.PI) / 180);
    /** @type {Map<number, number>} */
    const rows = new Map();
    for (const box of boxes) {
      const middle = (box.left + box.right) / 2;
      for (const foot of [box.bottom, box.top]) {
        const row = (foot - rise * middle) / slot;
        const whole = Math.floor(row);
        rows.set(whole, (rows.get(whole) ?? 0) + 1 - (row - whole));
        rows.set(whole + 1, (rows.get(whole + 1) ?? 0) + row - whole);
      }
    }
    let score = 0;
    for (const count of rows.values()) score += count * count;
    score -= Math.abs(tilt) * 0.01;
    if (score > most) {
      most = score;
      best = tilt;
    }
  }
  return best;
}

/**
 * Upright places from those of the picture, and back.
 *
 * @param {number} tilt in degrees
 */
function turning(tilt) {
  const cos = Math.cos((tilt * Math.PI) / 180);
  const sin = Math.sin((tilt * Math.PI) / 180);
  return {
    tilt,
    /** @param {Box} box the box about its turned middle, no larger than it was */
    box({ left, right, top, bottom }) {
      const [x, y] = [(left + right) / 2, (top + bottom) / 2];
      const [across, down] = [x * cos + y * sin, y * cos - x * sin];
      const [wide, high] = [(right - left) / 2, (bottom - top) / 2];
      return { left: across - wide, right: across + wide, top: down - high, bottom: down + high };
    },
    /** @type {(across: number, down: number) => [number, number]} */
    back: (across, down) => [across * cos - down * sin, across * sin + down * cos],
  };
}

/**
 * Gather glyphs that stand side by side into words, with the points and signs between them.
 *
 * @param {Box[]} glyphs
 * @param {Box[]} marks
 * @param {boolean} bars
 * @returns {Box[]}
 */
function wordsOf(glyphs, marks, bars) {
  // A 1 of bars stands at the right of its place.
  const beside = (/** @type {Box} */ one, /** @type {Box} */ other) =>
    inOneRow(one, other, bars ? 0.78 : 0.5);
  let words = joined(
    [...glyphs].sort((a, b) => a.left - b.left),
    beside,
  );
  // Digits made of bars come in two halves.
  words = joined(words, halves);
  words = joined(words, beside);
  // A point, a minus sign, what has come off a letter.
  for (const mark of marks) {
    const word = words.find((each) => {
      const size = highOf(each);
      // A sign before a number may be taller than a point in it; behind it stands its unit.
      if (highOf(mark) > (mark.right < each.left ? 0.62 : 0.42) * size) return false;
      const middle = (mark.top + mark.bottom) / 2;
      const apart = Math.max(mark.left - each.right, each.left - mark.right);
      return (
        middle > each.top - 0.1 * size &&
        middle < each.bottom + 0.15 * size &&
        apart < 0.42 * size &&
        mark.right - mark.left < 0.9 * size
      );
    });
    if (word) {
      word.left = Math.min(word.left, mark.left);
      word.right = Math.max(word.right, mark.right);
    }
  }
  return joined(words, beside).sort((a, b) => a.top - b.top);
}

const highOf = (/** @type {Box} */ box) => box.bottom - box.top + 1;

/**
 * Join the boxes that belong together, until none do.
 *
 * @param {Box[]} boxes
 * @param {(one: Box, other: Box) => boolean} belong
 */
function joined(boxes, belong) {
  /** @type {Box[]} */
  let words = boxes.map((box) => ({ ...box }));
  for (let before = -1; before !== words.length; ) {
    before = words.length;
    /** @type {Box[]} */
    const fewer = [];
    for (const box of words) {
      const word = fewer.find((each) => belong(each, box));
      if (word) widen(word, box);
      else fewer.push(box);
    }
    words = fewer;
  }
  return words;
}

/** @type {(one: Box, other: Box, far: number) => boolean} */
function inOneRow(one, other, far) {
  const [less, more] = [highOf(one), highOf(other)].sort((a, b) => a - b);
  const shared = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top);
  const apart = Math.max(one.left, other.left) - Math.min(one.right, other.right);
  // A unit is written smaller than its number.
  return (
    shared > 0.6 * (less ?? 0) && (less ?? 0) > 0.68 * (more ?? 0) && apart < far * (more ?? 0)
  );
}

/** @type {(one: Box, other: Box) => boolean} */
function halves(one, other) {
  const [less, more] = [highOf(one), highOf(other)].sort((a, b) => a - b);
  const shared = Math.min(one.right, other.right) - Math.max(one.left, other.left);
  const apart = Math.max(one.top, other.top) - Math.min(one.bottom, other.bottom);
  const narrow = Math.min(one.right - one.left, other.right - other.left);
  return shared > 0.6 * narrow && (less ?? 0) > 0.7 * (more ?? 0) && apart < 0.3 * (more ?? 0);
}

/**
 * @param {Box} box
 * @param {Box} other
 */
function widen(box, other) {
  box.left = Math.min(box.left, other.left);
  box.right = Math.max(box.right, other.right);
  box.top = Math.min(box.top, other.top);
  box.bottom = Math.max(box.bottom, other.bottom);
}

/**
 * Set the words out on a page, a line each.
 *
 * @param {Grey} picture
 * @param {boolean} dark
 * @param {ReturnType<typeof turning>} turn
 * @param {Box[]} boxes
 * @param {boolean} bars
 * @returns {{ page: Grey, words: Word[] }}
 */
function setOut(picture, dark, turn, boxes, bars) {
  const lines = boxes.map((box) => {
    const scale = TALL / (box.bottom - box.top + 1);
    return { box, scale, wide: Math.min(1200, Math.ceil((box.right - box.left + 1) * scale)) };
  });
  const width = Math.max(...lines.map((line) => line.wide)) + 2 * PAPER;
  const step = TALL + 2 * PAPER;
  const data = new Uint8Array(width * step * lines.length).fill(255);
  const words = lines.map(({ box, scale, wide }, row) => {
    const about = 6;
    const values = new Uint8Array((wide + 2 * about) * (TALL + 2 * about));
    for (let y = 0; y < TALL + 2 * about; y++) {
      for (let x = 0; x < wide + 2 * about; x++) {
        values[y * (wide + 2 * about) + x] = mean(
          picture,
          turn.back(box.left + (x - about) / scale, box.top + (y - about) / scale),
          0.5 / scale,
        );
      }
    }
    const sorted = Uint8Array.from(values).sort();
    const share = (/** @type {number} */ part) =>
      sorted[Math.floor(part * (sorted.length - 1))] ?? 0;
    const [ink, paper] = dark ? [share(0.06), share(0.75)] : [share(0.94), share(0.25)];
    const range = paper - ink || 1;
    for (let y = 0; y < TALL + 2 * about; y++) {
      for (let x = 0; x < wide + 2 * about; x++) {
        const value = ((values[y * (wide + 2 * about) + x] ?? 0) - ink) / range;
        const at = (row * step + PAPER - about + y) * width + PAPER - about + x;
        data[at] = Math.max(0, Math.min(255, 255 * (1.25 * value - 0.05)));
      }
    }
    const line = { top: row * step, bottom: (row + 1) * step };
    const corners = [
      turn.back(box.left, box.top),
      turn.back(box.right, box.top),
      turn.back(box.right, box.bottom),
      turn.back(box.left, box.bottom),
    ];
    return {
      box,
      corners,
      line,
      bars: bars ? readSegments(cut(data, width, wide, row * step)) : null,
    };
  });
  return { page: { width, height: step * lines.length, data }, words };
}

/**
 * Cut a word out of the page, close above and below.
 *
 * @param {Uint8Array} page
 * @param {number} width
 * @param {number} wide
 * @param {number} top of its line
 * @returns {Grey}
 */
function cut(page, width, wide, top) {
  const margin = 4;
  const data = new Uint8Array((wide + 2 * margin) * TALL);
  for (let y = 0; y < TALL; y++) {
    const from = (top + PAPER + y) * width + PAPER - margin;
    data.set(page.subarray(from, from + wide + 2 * margin), y * (wide + 2 * margin));
  }
  return { width: wide + 2 * margin, height: TALL, data };
}

/**
 * The mean of a picture about a point.
 *
 * @param {Grey} picture
 * @param {[number, number]} point
 * @param {number} reach
 */
function mean({ width, height, data }, [x, y], reach) {
  const steps = reach > 0.75 ? 3 : 1;
  let sum = 0;
  for (let i = 0; i < steps; i++) {
    for (let j = 0; j < steps; j++) {
      const across = Math.max(0, Math.min(width - 1.001, x + ((2 * i + 1) / steps - 1) * reach));
      const down = Math.max(0, Math.min(height - 1.001, y + ((2 * j + 1) / steps - 1) * reach));
      const [left, top] = [Math.floor(across), Math.floor(down)];
      const at = top * width + left;
      const [fx, fy] = [across - left, down - top];
      sum +=
        ((data[at] ?? 0) * (1 - fx) + (data[at + 1] ?? 0) * fx) * (1 - fy) +
        ((data[at + width] ?? 0) * (1 - fx) + (data[at + width + 1] ?? 0) * fx) * fy;
    }
  }
  return sum / steps ** 2;
}
