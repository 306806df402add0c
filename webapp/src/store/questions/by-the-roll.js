/** Gel by the roll as questions to the kernel. Lengths pass as they were typed. */
import { settings } from "../index.js";

/** Whether anything was typed into a line. @param {Record<string, any>} row */
export const typedIn = (row) => Object.values(row).some((value) => String(value ?? "").trim());

const GLASS = [
  "width_m",
  "width_ft",
  "height_m",
  "height_ft",
  "count",
  "panes_across",
  "panes_down",
];

/** The size of windows, of all that a line of them says. @param {Record<string, any>} row */
export const glassSize = (row) =>
  Object.fromEntries(GLASS.filter((name) => name in row).map((name) => [name, row[name]]));

/** Sizes that can be bought and how gel is cut, for "windows" and "order". */
export function cuttingQuestion() {
  return {
    rolls: settings.get("rolls").filter(typedIn),
    ...settings.get("order").overlap,
    length_unit: settings.get("length"),
  };
}

/** Rolls and sheets at hand. */
export function stockQuestion() {
  return settings.get("stock").filter(typedIn);
}
