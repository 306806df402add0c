/** A light's short card on Set: how far out it is, and what to hang on it. */
import { html, nothing } from "lit";
import { dimLine, dimsFirst } from "../../parts/dim-line.js";
import { changeWords, goodEnough, inAll, packWords } from "../../parts/pack-card.js";
import "../../parts/meant-row.js";
import { verdictMark } from "../../parts/verdict.js";
import { warningList } from "../../parts/warnings.js";
import { tunable } from "../../store/kit/lamps.js";
import { gelsOn } from "../../store/log/measured-gels.js";
import { toDo } from "../../store/log/plan.js";
import { sayMeant } from "../../store/log/shoot.js";
import { saidOf } from "../../store/log/target.js";
import { t } from "../../words/index.js";
import { joined } from "../../words/isolated.js";
import { index, kelvin, steps, stops, whenRead } from "../../words/numbers.js";
import { planned } from "./planned.js";

/** @typedef {import("../../store/log/target.js").Said} Said */

/**
 * @param {object} slip
 * @param {import("../../store/log/book.js").Thing} slip.light
 * @param {import("../../store/log/book.js").Thing} slip.reading
 * @param {any} slip.answer   this light's part of the kernel's "agree", when there
 * @param {boolean} slip.hero
 * @param {string} slip.number
 * @param {unknown} [slip.level]    its stop and its ratio to the key
 * @param {string} [slip.problem]
 * @param {() => void} slip.onMeasure
 */
export function slip({ light, reading, answer, hero, number, level, problem, onMeasure }) {
  const on = gelsOn(reading.data);
  return html`
    <li class="slip">
      <header>
        <span class="ordinal" aria-hidden="true">${number}</span>
        <h2>${light.data.name}</h2>
        ${hero ? html`<span class="tag">${t("slip.hero")}</span>` : nothing}
        ${answer ? verdictMark(answer.verdict) : nothing}
      </header>
      ${problem ? html`<p class="problem">${problem}</p>` : nothing}
      ${
        answer
          ? html`
              ${whatToDo(light, reading, answer)}
              <p class="reason">
                ${joined([kelvin(answer.cct_K), answer.offset?.words].filter(Boolean))}
              </p>
              ${
                answer.ssi_to_hero == null
                  ? nothing
                  : html`<p class="reason">
                      ${t("slip.ssi", { value: index(answer.ssi_to_hero) })}
                    </p>`
              }
              ${
                answer.camera
                  ? html`<p class="reason">
                      ${t("slip.camera", {
                        steps: steps(answer.camera.steps),
                        camera: t(`verdict.${/** @type {"out"} */ (answer.camera.verdict)}`),
                        eye: t(`verdict.${/** @type {"out"} */ (answer.observer_verdict)}`),
                      })}
                    </p>`
                  : nothing
              }
              ${level ?? nothing}
              ${warningList(answer.warnings)}
            `
          : nothing
      }
      <ek-meant
        .light=${light.id}
        .said=${saidOf(light.id)}
        .say=${(/** @type {Said} */ said) => sayMeant(light.id, said)}
      ></ek-meant>
      ${planned(light, reading, answer)}
      <footer>
        <span class="hint"
          >${t("slip.read", { time: whenRead(reading.at) })}${
            on.length ? ` · ${t("slip.on", { pack: on.join(" + ") })}` : ""
          }</span
        >
        ${
          reading.data.spectrum
            ? html`<a
                class="button quiet"
                href="#spectrum/${light.id}"
                aria-label=${t("slip.spectrumName", { name: light.data.name })}
                >${t("slip.spectrum")}</a
              >`
            : nothing
        }
        <a
          class="button quiet"
          href="#mix/${light.id}"
          aria-label=${t("slip.mixName", { name: light.data.name })}
          >${t("slip.mix")}</a
        >
        ${
          light.data.lamp === "tungsten"
            ? html`<a
                class="button quiet"
                href="#dim/${light.id}"
                aria-label=${t("slip.dimName", { name: light.data.name })}
                >${t("slip.dim")}</a
              >`
            : nothing
        }
        ${
          tunable(light)
            ? html`<a
                class="button quiet"
                href="#dial/${light.id}"
                aria-label=${t("slip.dialName", { name: light.data.name })}
                >${t("slip.dial")}</a
              >`
            : nothing
        }
        <button
          type="button"
          class="quiet"
          aria-label=${t("slip.measureName", { name: light.data.name })}
          @click=${onMeasure}
        >
          ${t("slip.measure")}
        </button>
      </footer>
    </li>
  `;
}

/**
 * What is to be done: by the kept plan until the light is read again, else as the kernel advises.
 * @param {import("../../store/log/book.js").Thing} light
 * @param {import("../../store/log/book.js").Thing} reading
 * @param {any} answer
 */
function whatToDo(light, reading, answer) {
  if (toDo(light, reading)) return html`<p class="hang">${light.data.planned.words}</p>`;
  if (!answer.target) return html`<p class="hang">${t("answer.found")}</p>`;
  if (dimsFirst(answer)) return html`<p class="hang">${answer.dim.words}</p>${dimLine(answer)}`;
  const { pack } = answer;
  if (!pack) {
    const words = t(answer.verdict === "holds" ? "answer.leave" : "answer.noGel");
    return html`<p class="hang">${words}</p>${dimLine(answer)}`;
  }
  return html`<p class="hang">
      ${changeWords(pack) || t("slip.hang", { pack: packWords(pack) })}
    </p>
    ${inAll(pack)} ${goodEnough(answer.verdict, answer.steps)}
    <p class="reason">
      ${t("slip.lands", { cct: kelvin(pack.lands.cct_K), stops: stops(pack.stops_lost) })}
      ${verdictMark(pack.verdict)}
    </p>
    ${dimLine(answer)}`;
}
