/** A reading for what is worked out: of a light that was kept, or typed here. */
import { html, nothing } from "lit";
import { choice } from "../../parts/inputs.js";
import { book } from "../../store/index.js";
import { levelUnit } from "../../store/questions/camera.js";
import { readingQuestion } from "../../store/questions/reading.js";
import { t } from "../../words/index.js";
import { complete, NOTHING, readingEntry, readingOf } from "./reading-entry.js";

/** @typedef {import("../../store/log/book.js").Thing} Thing */
/** @typedef {import("./reading-entry.js").Entered} Entered */
/** @typedef {{from: string, entered: Entered}} Source  from: id of a kept light, "" = typed here */

/** @type {Source} */
export const TYPED_HERE = { from: "", entered: NOTHING };

/** The kept reading that is meant, if one is. @param {Source} source */
export const keptOf = ({ from }) => (from ? book.latest(from) : undefined);

/**
 * The reading as the kernel takes it; null while it is not whole.
 * @param {Source} source
 * @param {string} unit  the field that a typed amount goes into
 * @returns {Record<string, any> | null} R
 */
export function sourceQuestion(source, unit) {
  const kept = keptOf(source);
  if (kept) return readingQuestion(kept.data);
  return complete(source.entered) ? readingOf(source.entered, unit) : null;
}

/**
 * @param {object} entry
 * @param {string} entry.id
 * @param {string} entry.label     of the choice of a kept light
 * @param {{light: Thing}[]} entry.lights  to choose from
 * @param {Source} entry.value
 * @param {string} entry.unit      the field that a typed amount goes into
 * @param {string} [entry.amount]  what that amount is called
 * @param {unknown} [entry.above]  what else is asked about one that is typed here
 * @param {(path: string) => string | undefined} entry.problemAt  by the kernel's name of a field
 * @param {(fields: Partial<Source>) => void} entry.onInput
 */
export function readingSource(entry) {
  const { id, label, lights, value, unit, amount, above, problemAt, onInput } = entry;
  const { from, entered } = value;
  return html`
    ${
      lights.length
        ? choice({
            id: `${id}-from`,
            label,
            value: from,
            options: [
              { value: "", label: t("unmix.typed") },
              ...lights.map(({ light }) => ({ value: light.id, label: light.data.name })),
            ],
            onChange: (light) => onInput({ from: light }),
          })
        : nothing
    }
    ${
      from
        ? nothing
        : html`${above} ${readingEntry({
            id,
            legend: t("light.way"),
            value: entered,
            amount: { name: unit, label: amount ?? t("light.illuminance"), unit: levelUnit(unit) },
            // Whatever unit was typed, the kernel may find fault with it in lux.
            problemAt: (path) =>
              problemAt(path) ?? (path === unit ? problemAt("illuminance_lx") : undefined),
            onInput: (fields) => onInput({ entered: { ...entered, ...fields } }),
          })}`
    }
  `;
}
