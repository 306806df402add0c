/** Gel by the roll as questions to the kernel. Lengths pass as they were typed. */
import { settings } from "../index.js";

/** Whether anything was typed into a line. @param {Record<string, any>} row */
export const typedIn = (row) => Object.values(row).some((value) => String(value ?? "").trim());

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
