/** A reading typed in place: x y or CCT and Duv, and how bright it is. */
import { html } from "lit";
import { segments, textField } from "../../parts/inputs.js";
import { t } from "../../words/index.js";

/**
 * @typedef {object} Entered
 * @property {"xy" | "cct"} way
 * @property {string} x
 * @property {string} y
 * @property {string} cct_K
 * @property {string} duv
 * @property {string} amount
 */

/** @type {Entered} */
export const NOTHING = { way: "xy", x: "", y: "", cct_K: "", duv: "", amount: "" };

/** Whether the numbers of the chosen way are all there. @param {Entered} entered */
export const complete = ({ way, x, y, cct_K }) =>
  way === "xy" ? Boolean(x.trim() && y.trim()) : Boolean(cct_K.trim());

/** The colour that was typed, as the kernel reads it. @param {Entered} entered */
export function colourOf({ way, x, y, cct_K, duv }) {
  if (way === "xy") return { x, y };
  return duv.trim() ? { cct_K, duv } : { cct_K };
}

/**
 * The whole reading; `unit` is the field that its amount goes into.
 * @param {Entered} entered
 * @param {string} unit  such as "illuminance_lx"
 * @returns {Record<string, any>}
 */
export function readingOf(entered, unit) {
  const { amount } = entered;
  return { ...colourOf(entered), ...(amount.trim() ? { [unit]: amount } : {}) };
}

/**
 * @param {object} entry
 * @param {string} entry.id
 * @param {string} entry.legend
 * @param {Entered} entry.value
 * @param {{name: string, label: string, unit: string}} [entry.amount]  left out: no amount is asked
 * @param {(name: string) => string | undefined} entry.problemAt  by the kernel's name of a field
 * @param {(fields: Partial<Entered>) => void} entry.onInput
 */
export function readingEntry({ id, legend, value, amount, problemAt, onInput }) {
  const number = (
    /** @type {"x" | "y" | "cct_K" | "duv"} */ name,
    /** @type {string} */ label,
    /** @type {{unit?: string, hint?: string}} */ more = {},
  ) =>
    textField({
      id: `${id}-${name}`,
      label,
      number: true,
      value: value[name],
      problem: problemAt(name),
      onInput: (typed) => onInput({ [name]: typed }),
      ...more,
    });
  return html`
    ${segments({
      name: `${id}-way`,
      legend,
      value: value.way,
      options: [
        { value: "xy", label: t("light.wayXy") },
        { value: "cct", label: t("light.wayCct") },
      ],
      onChange: (way) => onInput({ way: /** @type {"xy"} */ (way) }),
    })}
    <div class="pair">
      ${
        value.way === "xy"
          ? [number("x", "x"), number("y", "y")]
          : [
              number("cct_K", t("light.cct"), { unit: "K" }),
              number("duv", t("light.duv"), { hint: t("light.duvHint") }),
            ]
      }
      ${
        amount
          ? textField({
              id: `${id}-amount`,
              label: amount.label,
              unit: amount.unit,
              number: true,
              value: value.amount,
              problem: problemAt(amount.name),
              onInput: (typed) => onInput({ amount: typed }),
            })
          : ""
      }
    </div>
  `;
}
