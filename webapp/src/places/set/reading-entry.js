/** A reading typed in place: x y or CCT and Duv, and how bright it is. */
import { html } from "lit";
import { segments, textField } from "../../parts/inputs.js";
import { levelOf, levelTyped, levelUnit } from "../../store/questions/camera.js";
import {
  cctWords,
  colourComplete,
  colourField,
  colourTyped,
  numbersOf,
  OTHER_FORMS,
} from "../../store/questions/forms.js";
import { t } from "../../words/index.js";
import { spread, understood, withUnit } from "../../words/typed.js";

/**
 * @typedef {object} Entered
 * @property {"xy" | "cct"} way
 * @property {string} x
 * @property {string} y
 * @property {string} cct_K
 * @property {string} duv
 * @property {string} [cct_mired]  the same in the other forms of questions/forms.js
 * @property {string} [tint_cc]
 * @property {string} [tint_cuts]
 * @property {string} amount
 */

/** @type {Entered} */
export const NOTHING = { way: "xy", x: "", y: "", cct_K: "", duv: "", ...OTHER_FORMS, amount: "" };

/** Whether the numbers of the chosen way are all there. @param {Entered} entered */
export const complete = (entered) => colourComplete(entered.way, entered);

/** The colour that was typed, as the kernel reads it. @param {Entered} entered */
export const colourOf = (entered) => colourTyped(entered.way, entered);

/**
 * The whole reading; `unit` is the field that its amount goes into.
 * @param {Entered} entered
 * @param {string} unit  such as "illuminance_lx"
 * @returns {Record<string, any>}
 */
export const readingOf = (entered, unit) => ({
  ...colourOf(entered),
  ...levelTyped(unit, entered.amount),
});

/**
 * A whole line of a meter in one field, by field.
 * @param {Entered} entered
 * @param {string} name
 * @param {string} typed
 * @returns {Partial<Entered> | null}
 */
function lineOf(entered, name, typed) {
  const line = spread(numbersOf(entered.way, entered), name, typed);
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
  const number = (/** @type {import("../../store/questions/forms.js").ColourField} */ name) => {
    const text = value[name] ?? "";
    return textField({
      ...colourField(name, text),
      id: `${id}-${name}`,
      problem: problemAt(name),
      onInput: (typed) => onInput(lineOf(value, name, typed) ?? { [name]: typed }),
      onLeave: () => {
        if (understood(name, text) !== text) onInput({ [name]: understood(name, text) });
      },
    });
  };
  const take = (/** @type {Record<string, string>} */ reading) => {
    const { x = "", y = "", cct_K = "", duv = "", tint_cc = "" } = reading;
    const [level] = amount ? Object.keys(levelOf(reading)) : [];
    const told = level ? { amount: `${reading[level]} ${levelUnit(level)}` } : {};
    onInput({ way: x ? "xy" : "cct", ...OTHER_FORMS, x, y, cct_K, duv, tint_cc, ...told });
    return () => onInput(value);
  };
  return html`
    <ek-read-display id="${id}-display" .holds=${complete(value)} .take=${take}></ek-read-display>
    ${segments({
      name: `${id}-way`,
      legend,
      value: value.way,
      options: { xy: t("light.wayXy"), cct: cctWords(value) },
      onChange: (way) => onInput({ way: /** @type {"xy"} */ (way) }),
    })}
    <div class="pair">
      ${numbersOf(value.way, value)
        .filter((name) => name !== "illuminance")
        .map(number)}
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
