/**
 * In which form the person's meter gives its numbers, chosen once in Kit. The numbers stay as they
 * were typed: each form is a field of its own, and the kernel converts.
 */
import { t } from "../../words/index.js";
import { understood } from "../../words/typed.js";
import { settings } from "../index.js";

/** The forms that each number may have, the usual one first. */
export const FORMS = /** @type {const} */ ({
  cct: ["cct_K", "cct_mired"],
  tint: ["duv", "tint_cc", "tint_cuts"],
  says: ["light", "filter"],
  flash: ["exposure_lx_s", "flash_f_number"],
});

/** @typedef {(typeof FORMS)["cct" | "tint"][number]} CctField */
/** @typedef {"x" | "y" | CctField} ColourField */
/** @typedef {Partial<Record<ColourField, string>>} Colour  as typed */

/** Fields of the forms that are not the usual ones, for what is typed. */
export const OTHER_FORMS = { cct_mired: "", tint_cc: "", tint_cuts: "" };

/** Cuts of plus and minus green as they are typed: a tap each. */
const CUTS = ["1/8", "1/4", "1/2", "3/4", "1"];

/**
 * The field of one number: that of the form chosen in Kit, or the one that something stands in.
 * @param {"cct" | "tint"} number @param {Colour} typed @returns {CctField}
 */
function fieldOf(number, typed) {
  const usual = settings.get("forms")[number];
  if (typed[usual]?.trim()) return usual;
  return FORMS[number].find((name) => typed[name]?.trim()) ?? usual;
}

/** The fields that CCT and tint are typed into. @param {Colour} typed */
export const cctFields = (typed) => [fieldOf("cct", typed), fieldOf("tint", typed)];

/**
 * The fields that one line of a meter fills, in their order.
 * @param {"xy" | "cct"} way @param {Colour} typed
 * @returns {(ColourField | "illuminance")[]}
 */
export const numbersOf = (way, typed) =>
  way === "xy" ? ["x", "y", "illuminance"] : [...cctFields(typed), "illuminance"];

/** Whether the numbers of the chosen way are all there. @param {"xy" | "cct"} way @param {Colour} typed */
export const colourComplete = (way, typed) =>
  way === "xy"
    ? Boolean(typed.x?.trim() && typed.y?.trim())
    : Boolean(typed[fieldOf("cct", typed)]?.trim());

/**
 * The colour that was typed, as the kernel reads it.
 * @param {"xy" | "cct"} way @param {Colour} typed
 * @returns {Record<string, string>}
 */
export function colourTyped(way, typed) {
  const value = (/** @type {ColourField} */ name) => understood(name, typed[name] ?? "");
  if (way === "xy") return { x: value("x"), y: value("y") };
  const [cct, tint] = cctFields(typed);
  const { says } = settings.get("forms");
  return {
    [cct]: value(cct),
    ...(value(tint) ? { [tint]: value(tint) } : {}),
    ...(value(tint) && tint !== "duv" && says !== "light" ? { tint_says: says } : {}),
  };
}

/** What the fields are called; x and y are called so everywhere. */
const LABELS = /** @type {const} */ ({
  cct_K: "light.cct",
  cct_mired: "form.cct_mired",
  duv: "light.duv",
  tint_cc: "form.tint_cc",
  tint_cuts: "form.tint_cuts",
});

/** @param {ColourField} name */
const formLabel = (name) => (name === "x" || name === "y" ? name : t(LABELS[name]));

/** What the way by CCT is called. @param {Colour} typed */
export function cctWords(typed) {
  const [cct, tint] = cctFields(typed).map(formLabel);
  return t("form.pair", { cct, tint });
}

/**
 * What a field of a colour is labelled with and how it is typed, for `textField`.
 * @param {ColourField} name
 * @param {string} value
 */
export function colourField(name, value) {
  const tint = name === "duv" || name === "tint_cc" || name === "tint_cuts";
  const wants = name !== "duv" && settings.get("forms").says === "filter";
  return {
    label: formLabel(name),
    value,
    number: true,
    ...(name === "cct_K" ? { unit: "K" } : {}),
    ...(tint ? { signed: true, hint: t(wants ? "light.wantsHint" : "light.duvHint") } : {}),
    ...(name === "tint_cuts" && !value.trim() ? { choices: CUTS } : {}),
  };
}

/** Remembered for the page that opens before the store does (src/opening.js). */
export function rememberForms() {
  const pair = cctFields({}).map((name) => [name, formLabel(name)]);
  try {
    localStorage.setItem("evenkelvin.cct", JSON.stringify(pair));
  } catch {
    // Every storage is forbidden here, or full.
  }
}

/** @param {Partial<import("../settings.js").Values["forms"]>} change */
export async function chooseForms(change) {
  const saved = settings.set("forms", { ...settings.get("forms"), ...change });
  rememberForms();
  await saved;
}
