/**
 * Numbers as people type and paste them on a phone, told apart as text: digits without a point, a
 * unit behind them, a whole reading in one field. Their values are the kernel's to read.
 */

/** The signs that stand for a minus in pasted text. */
const MINUS = /^[‐‑‒–—−]\s*/;

/** A number with what may cling to it in a line. */
const NUMBER = /^[+\-‐‑‒–—−]?([\d.,]+|\d\/\d)$/;
const UNIT = /^(lx|lux|fc|k|lx[·.]?s|mired)$/i;
const LABEL = /^(x|y|cct|duv|cc|lux|e)[:=]?$/i;

/** Units that may stand behind a number and go without saying in its field. */
const OWN_UNITS = /** @type {Record<string, string>} */ ({
  cct_K: "k",
  cct_mired: "mired",
  tint_cc: "cc",
  duv: "",
  tint_cuts: "",
});

/**
 * A coordinate x or y as it is meant: four or more digits without a point stand behind one. Digits
 * that begin with a zero can be read in two ways and stay as they are.
 * @param {string} text
 */
export function coordinateTyped(text) {
  const plain = text.trim();
  return /^[1-9]\d{3,5}$/.test(plain) ? `0.${plain}` : plain;
}

/**
 * A number that may have its unit behind it.
 * @param {string} text
 * @returns {{number: string, unit: string}} unit: small letters, empty where none is given
 */
export function withUnit(text) {
  const plain = text.trim().replace(MINUS, "-");
  const [, number, unit] = /^(.*?[\d.])\s*(lx[·.]?s|lux|lx|fc|k|mired|cc)$/i.exec(plain) ?? [];
  if (number === undefined) return { number: plain, unit: "" };
  const small = unit.toLowerCase().replace(".", "·");
  return { number, unit: small === "lux" ? "lx" : small === "lxs" ? "lx·s" : small };
}

/**
 * What a field shows once it is left: what was understood.
 * @param {string} name of a field of a reading
 * @param {string} text
 */
export function understood(name, text) {
  if (name === "x" || name === "y") return coordinateTyped(text);
  const { number, unit } = withUnit(text);
  const own = OWN_UNITS[name];
  return own !== undefined && (unit === own || !unit) ? number : text;
}

/**
 * A line such as “0.4012 0.3991 860 lx” that was typed or pasted into one field, by field.
 * @param {readonly string[]} order  the fields that a line fills
 * @param {string} name  of the field it stands in
 * @param {string} text
 * @returns {Record<string, string> | null} null where it is no more than one value
 */
export function spread(order, name, text) {
  const from = order.indexOf(name);
  if (from < 0) return null;
  // A comma parts values only where points stand in them, or where a space follows.
  const parted = text.replace(/,(?=\s)/g, " ");
  const commas = /\d\.\d.*,/.test(parted) ? parted.replaceAll(",", " ") : parted;
  /** @type {string[]} */
  const values = [];
  for (const token of commas
    .split(order.includes("tint_cuts") ? /[\s;|]+/ : /[\s;|/]+/)
    .filter(Boolean)) {
    const bare = token.replace(/^(x|y|cct|duv|e)[:=]/i, "");
    if (LABEL.test(bare) && !values.length) continue;
    if (UNIT.test(bare) && values.length) values[values.length - 1] += ` ${bare}`;
    else if (LABEL.test(bare)) continue;
    else if (NUMBER.test(withUnit(bare).number) && /\d/.test(bare)) values.push(bare);
    else return null;
  }
  if (values.length < 2 || values.length > order.length - from) return null;
  return Object.fromEntries(
    values.map((value, n) => [order[from + n], understood(order[from + n], value)]),
  );
}

/** How many digits stand behind the point. @param {string} text */
export const decimalsOf = (text) => /^0?[.,](\d+)$/.exec(coordinateTyped(text))?.[1].length ?? 0;
