/** A reading typed in place: x y or CCT and Duv, and how bright it is. */
import { html } from "lit";
import { segments, textField } from "../../parts/inputs.js";
import { t } from "../../words/index.js";
import { spread, understood, withUnit } from "../../words/typed.js";

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
export function colourOf(entered) {
  const [x, y, cct_K, duv] = /** @type {const} */ (["x", "y", "cct_K", "duv"]).map((name) =>
    understood(name, entered[name]),
  );
  if (entered.way === "xy") return { x, y };
  return duv ? { cct_K, duv } : { cct_K };
}

/**
 * The whole reading; `unit` is the field that its amount goes into.
 * @param {Entered} entered
 * @param {string} unit  such as "illuminance_lx"
 * @returns {Record<string, any>}
 */
export function readingOf(entered, unit) {
  const { number, unit: own } = withUnit(entered.amount);
  const other = unit.startsWith("illuminance") && (own === "lx" || own === "fc");
  const field = other ? `illuminance_${own}` : unit;
  const amount = field.endsWith(own.replace("·", "_")) ? number : entered.amount;
  return { ...colourOf(entered), ...(number ? { [field]: amount } : {}) };
}

/**
 * A whole line of a meter in one field, by field.
 * @param {"xy" | "cct"} way
 * @param {string} name
 * @param {string} typed
 * @returns {Partial<Entered> | null}
 */
function lineOf(way, name, typed) {
  const line = spread(way, name, typed);
  if (!line) return null;
  const { illuminance, ...colour } = line;
  return illuminance ? { ...colour, amount: withUnit(illuminance).number } : colour;
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
      signed: name === "duv",
      onInput: (typed) => onInput(lineOf(value.way, name, typed) ?? { [name]: typed }),
      onLeave: () => {
        const text = understood(name, value[name]);
        if (text !== value[name]) onInput({ [name]: text });
      },
      ...more,
    });
  return html`
    ${segments({
      name: `${id}-way`,
      legend,
      value: value.way,
      options: { xy: t("light.wayXy"), cct: t("light.wayCct") },
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
