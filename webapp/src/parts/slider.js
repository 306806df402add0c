/** A native slider with its name and its value in words: for a thumb, for keys, to be heard. */
import { html, nothing } from "lit";

/**
 * @param {object} slider
 * @param {string} slider.id
 * @param {string} slider.label
 * @param {string} slider.words   the value, with its unit
 * @param {number} slider.min
 * @param {number} slider.max
 * @param {number} slider.step
 * @param {string} slider.value
 * @param {string} [slider.problem]
 * @param {(value: string) => void} slider.onInput
 */
export function slider({ id, label, words, min, max, step, value, problem, onInput }) {
  return html`<div class="slider">
    <label for=${id}>${label}</label>
    <output for=${id}>${words}</output>
    <input
      id=${id}
      type="range"
      min=${min}
      max=${max}
      step=${step}
      .value=${value}
      aria-valuetext=${words}
      aria-describedby=${problem ? `${id}-problem` : nothing}
      @input=${(/** @type {Event} */ event) =>
        onInput(/** @type {HTMLInputElement} */ (event.target).value)}
    />
    ${problem ? html`<p class="problem" id="${id}-problem">${problem}</p>` : nothing}
  </div>`;
}
