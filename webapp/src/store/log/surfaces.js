/**
 * Surfaces that are read point by point: where the points are, in which order one walks them, and
 * how they are asked about. What they mean is the kernel's.
 */

import { settings } from "../index.js";

/**
 * @typedef {Record<string, any>} Point  place across and up, 0 to 1, and what was typed there
 *
 * @typedef {object} Lamp
 * @property {string} name
 * @property {string[]} [points]   levels that it gives alone
 * @property {string[]} [without]  levels of all the others
 * @property {string} [dimmer_now]
 *
 * @typedef {object} Surface
 * @property {string} name
 * @property {number | null} columns  null: free points
 * @property {number | null} rows
 * @property {Point[]} points
 * @property {Lamp[]} lamps
 * @property {string[]} again   levels that were read once the lamps were dimmed
 * @property {{point?: number, illuminance_lx?: string, illuminance_fc?: string} | null} aim
 * @property {string} [photo]
 */

/** Columns and rows to choose from. */
export const GRIDS = /** @type {const} */ ([
  [3, 3],
  [4, 3],
  [5, 3],
  [5, 4],
  [6, 4],
  [8, 5],
]);

/**
 * The middles of a grid's cells, row by row from the lower left.
 * @param {number} columns
 * @param {number} rows
 * @returns {Point[]}
 */
export const gridOf = (columns, rows) =>
  Array.from({ length: columns * rows }, (_, i) => ({
    across: ((i % columns) + 0.5) / columns,
    up: (Math.floor(i / columns) + 0.5) / rows,
  }));

/** @param {number} columns @param {number} rows @returns {Surface} */
export const blankSurface = (columns = 3, rows = 3) => ({
  name: "",
  columns,
  rows,
  points: gridOf(columns, rows),
  lamps: [],
  again: [],
  aim: null,
});

/**
 * The points in the order in which one walks: row by row from below, there and back; free ones as
 * they were put.
 * @param {Surface} surface
 * @returns {number[]}
 */
export function walkOf({ points, columns, rows }) {
  if (!columns || !rows) return points.map((_, i) => i);
  return points.map((_, i) => {
    const row = Math.floor(i / columns);
    return row % 2 ? row * columns + (columns - 1 - (i % columns)) : i;
  });
}

/** The field that a surface's levels stand in: once begun in one unit, it stays in it. @param {Surface} surface */
export function levelFieldOf({ points }) {
  const typed = points.find((point) => point.illuminance_fc || point.illuminance_lx);
  if (!typed) return `illuminance_${settings.get("illuminance")}`;
  return typed.illuminance_fc ? "illuminance_fc" : "illuminance_lx";
}

/** The points that have a level, by their place in the surface. @param {Surface} surface */
export function readPoints(surface) {
  const field = levelFieldOf(surface);
  return surface.points.flatMap((point, i) => (String(point[field] ?? "").trim() ? [i] : []));
}

/** Whether every point of a list of levels is there. @param {Surface} surface @param {string[] | undefined} levels */
export const complete = (surface, levels) =>
  surface.points.every((_, i) => String(levels?.[i] ?? "").trim());

/**
 * What the points are held against, as a field of the question.
 * @param {Surface} surface
 * @param {number[]} asked
 */
function aimOf({ aim }, asked) {
  if (!aim) return {};
  if (aim.point === undefined) {
    return Object.values(aim).some((typed) => String(typed ?? "").trim()) ? { aim } : {};
  }
  const point = asked.indexOf(aim.point);
  return point < 0 ? {} : { aim: { point } };
}

/**
 * @param {Surface} surface
 * @param {string[]} [levels]  in place of those read first
 * @returns {import("../../kernel/answers.js").Question<"even"> | null} about the points of
 *   {@link readPoints}, in their order
 */
export function evenQuestion(surface, levels) {
  const field = levelFieldOf(surface);
  const points = levels
    ? surface.points.map(({ across, up }, i) => ({ across, up, [field]: levels[i] }))
    : surface.points;
  const asked = readPoints({ ...surface, points });
  if (!asked.length) return null;
  return {
    ask: "even",
    points: asked.map((i) => points[i]),
    ...aimOf(surface, asked),
    say: settings.get("say"),
  };
}

/**
 * A surface without one of its points: the levels that were read there go with it.
 * @param {Surface} surface
 * @param {number} index
 * @returns {Pick<Surface, "points" | "lamps" | "again" | "aim">}
 */
export function withoutPoint({ points, lamps, again, aim }, index) {
  /** @template T @param {T[]} list */
  const rest = (list) => list.filter((_, i) => i !== index);
  const at = aim?.point;
  return {
    points: rest(points),
    again: rest(again),
    lamps: lamps.map((lamp) => ({
      ...lamp,
      ...(lamp.points && { points: rest(lamp.points) }),
      ...(lamp.without && { without: rest(lamp.without) }),
    })),
    aim: at === undefined ? aim : at === index ? null : { point: at > index ? at - 1 : at },
  };
}

/**
 * The cells of a map: each point with its level, and how far it is off by an answer to even.
 * @param {Surface} surface
 * @param {import("../../kernel/answers.js").Answers["even"] | undefined} answer
 * @param {string[]} [levels]  in place of those read first
 */
export function cellsOf(surface, answer, levels) {
  const field = levelFieldOf(surface);
  const points = surface.points.map(({ across, up, ...point }, i) => ({
    across: Number(across),
    up: Number(up),
    level: String((levels ? levels[i] : point[field]) ?? ""),
  }));
  const asked = points.flatMap(({ level }, i) => (level.trim() ? [i] : []));
  // An answer about other points is an earlier one.
  const known = answer?.points.length === asked.length ? answer.points : [];
  return points.map((cell, i) => {
    const point = known[asked.indexOf(i)];
    if (!point) return cell;
    return { ...cell, ...(point.problem ? { problem: point.problem.message } : point) };
  });
}

/**
 * @param {Surface} surface
 * @param {"steady" | "most_even"} how
 * @returns {import("../../kernel/answers.js").Question<"trim"> | null} once every point and a lamp
 *   have been read
 */
export function trimQuestion(surface, how) {
  const asked = readPoints(surface);
  const lamps = surface.lamps.filter((lamp) => complete(surface, lamp.points ?? lamp.without));
  if (asked.length < surface.points.length || !lamps.length) return null;
  return {
    ask: "trim",
    points: surface.points,
    lamps: lamps.map(({ dimmer_now, ...lamp }) => ({ ...lamp, ...(dimmer_now && { dimmer_now }) })),
    unit: levelFieldOf(surface).endsWith("fc") ? "fc" : "lx",
    settings: how,
    ...aimOf(surface, asked),
    say: settings.get("say"),
  };
}
