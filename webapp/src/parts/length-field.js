/** A length to be typed: in the unit it was typed in before, otherwise in the one of the Kit. */
import { settings } from "../store/index.js";
import { t } from "../words/index.js";
import { textField } from "./inputs.js";

/** @param {Record<string, any>} data @param {string} name @returns {"m" | "ft"} */
export function unitOf(data, name) {
  if (data[`${name}_ft`] !== undefined) return "ft";
  return data[`${name}_m`] !== undefined ? "m" : settings.get("length");
}

/**
 * @param {object} length
 * @param {string} length.id
 * @param {string} length.label
 * @param {string} length.name     without its unit, such as "width"
 * @param {Record<string, any>} length.data  what was typed
 * @param {(path: string) => string | undefined} length.problemAt  by name with unit
 * @param {(fields: Record<string, string>) => void} length.onInput
 */
export function lengthField({ id, label, name, data, problemAt, onInput }) {
  const unit = unitOf(data, name);
  const own = `${name}_${unit}`;
  return textField({
    id,
    label,
    unit,
    // Feet and inches need marks that a keypad for numbers does not have.
    number: unit === "m",
    value: String(data[own] ?? ""),
    hint: unit === "ft" ? t("length.feetHint") : undefined,
    problem: problemAt(own) ?? problemAt(`${name}_m`),
    onInput: (value) => onInput({ [own]: value }),
  });
}
