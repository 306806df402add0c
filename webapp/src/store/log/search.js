/** Finding readings in the book, by what is written in them and how they stood. */
import { ask } from "../../kernel/client.js";
import { tMaybe } from "../../words/index.js";
import { dialledWords } from "../../words/reading.js";
import { book, settings } from "../index.js";
import { readingQuestion } from "../questions/reading.js";
import { gelsOn } from "./measured-gels.js";
import { matching, Rows } from "./rows.js";
import { earlierOf } from "./shoot.js";
import { aimed, saidOf } from "./target.js";

/** @typedef {import("./book.js").Thing} Thing */

export const rows = new Rows(book, (data, lamp) => [
  ...gelsOn(data),
  dialledWords(data.dialled),
  tMaybe(`lamp.${lamp}`, lamp),
  tMaybe(`stage.${data.stage}`, ""),
]);

/**
 * @param {import("./rows.js").Wanted} wanted
 * @returns {import("./rows.js").Row[] | undefined} the newest first, undefined while they are being
 *   worked out
 */
export function findReadings(wanted) {
  return rows.all?.filter(matching(wanted, (reading) => verdicts.of(reading)));
}

/**
 * What the verdict on a reading hangs on: the reading, and what its light is meant to be.
 * @param {Thing} reading
 */
function keyOf({ heads, parent }) {
  const said = saidOf(parent);
  const like = typeof said?.like === "string" ? book.latest(said.like) : earlier(parent, said);
  return [heads[0].id, said && JSON.stringify(said), like?.heads[0].id].join(" ");
}

/** @param {string | null} light @param {import("./target.js").Said} said */
const earlier = (light, said) => (said ? undefined : earlierOf(light)?.reading);

/** How many readings go to the kernel at once. */
const TOGETHER = 1000;

/**
 * How readings stood against what their lights are meant to be beside the white of then, within the
 * present tolerance. The kernel works it out; it is kept here until the tolerance changes, or what
 * the light is meant to be. Fires "change".
 */
class Verdicts extends EventTarget {
  /**
   * By what was asked about it.
   * @type {Map<string, {verdict: string, cct_K: number | null, duv: number | null,
   *   grey: import("../../kernel/answers.js").Answers["judge"]["greys"][number]}>}
   */
  #known = new Map();
  #tolerance = "";
  #asking = false;

  /** @param {Thing} reading @returns {string | undefined} "" = cannot be told, "found" = not judged */
  of(reading) {
    return this.#known.get(keyOf(reading))?.verdict;
  }

  /** What a reading reads, and how a grey card looks in it, as far as it is known yet. @param {Thing} reading */
  whiteOf(reading) {
    return this.#known.get(keyOf(reading));
  }

  /**
   * Work out those that are not known yet.
   * @param {readonly Thing[]} readings
   */
  async want(readings) {
    const tolerance = settings.get("tolerance");
    if (this.#tolerance !== JSON.stringify(tolerance)) {
      this.#known.clear();
      this.#tolerance = JSON.stringify(tolerance);
    }
    const open = readings.filter((one) => this.of(one) === undefined);
    if (this.#asking || open.length === 0) return;
    this.#asking = true;
    try {
      for (let start = 0; start < open.length; start += TOGETHER) {
        const some = open.slice(start, start + TOGETHER);
        const answer = await ask({
          ask: "judge",
          tolerance,
          readings: some.map(({ data, parent }) => ({
            ...aimed(readingQuestion(data), parent),
            target: data.target,
          })),
        });
        if (answer.problem) return;
        const found = new Set(answer.found);
        some.forEach((one, i) => {
          const verdict = found.has(i) ? "found" : (answer.verdicts[i] ?? "");
          const [cct_K, duv, grey] = [answer.cct_K[i], answer.duv[i], answer.greys[i]];
          this.#known.set(keyOf(one), { verdict, cct_K, duv, grey });
        });
        this.dispatchEvent(new Event("change"));
      }
    } finally {
      this.#asking = false;
    }
  }

  /** Work out all readings of the book. */
  wantAll() {
    return this.want(rows.all?.map((row) => row.reading) ?? []);
  }
}

export const verdicts = new Verdicts();
