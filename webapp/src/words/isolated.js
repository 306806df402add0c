/**
 * People's own words inside a sentence. A name may be written right to left, or hold a mark that
 * turns round whatever follows it: it is set apart, so that the words after it stay as they are.
 */

/** Letters that are written right to left, and the marks of direction (Unicode UAX #9). */
const TURNS = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc\u200f\u202a-\u202e\u2066-\u2069]/;
const [OPENS, CLOSES] = ["\u2068", "\u2069"];

/** Whether words could turn round what stands beside them. @param {string} words */
export const turns = (words) => TURNS.test(words);

/** @param {string} words */
export function isolated(words) {
  if (!turns(words)) return words;
  let depth = 0;
  let whole = "";
  for (const sign of words) {
    if (sign >= "\u2066" && sign <= OPENS) depth += 1;
    // One that closes more than was opened would end the setting apart.
    if (sign === CLOSES && depth === 0) continue;
    if (sign === CLOSES) depth -= 1;
    whole += sign;
  }
  return OPENS + whole + CLOSES.repeat(depth + 1);
}

/**
 * People's own words one after the other, empty ones left out.
 * @param {Iterable<string | null | undefined | false>} all
 * @param {string} [sign] between them
 */
export const joined = (all, sign = " · ") =>
  [...all].flatMap((words) => (words ? [isolated(words)] : [])).join(sign);

/**
 * Names as a list; where one of them holds a comma itself, semicolons part them.
 * @param {Iterable<string>} names
 */
export function listed(names) {
  const all = [...names];
  return joined(all, all.some((name) => name.includes(",")) ? "; " : ", ");
}
