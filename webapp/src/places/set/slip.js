/** A light's short card on Set: how far out it is, and what to hang on it. */
import { html, nothing } from "lit";
import { changeWords, goodEnough, inAll, packWords } from "../../parts/pack-card.js";
import { verdictMark } from "../../parts/verdict.js";
import { warningList } from "../../parts/warnings.js";
import { tunable } from "../../store/kit/lamps.js";
import { gelsOn } from "../../store/log/measured-gels.js";
import { toDo } from "../../store/log/plan.js";
import { t } from "../../words/index.js";
import { index, kelvin, steps, stops, whenRead } from "../../words/numbers.js";
import { planned } from "./planned.js";

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
  const pack = answer?.pack;
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
              ${
                toDo(light, reading)
                  ? html`<p class="hang">${light.data.planned.words}</p>`
                  : pack
                    ? html`<p class="hang">
                        ${changeWords(pack) || t("slip.hang", { pack: packWords(pack) })}
                      </p>
                      ${inAll(pack)} ${goodEnough(answer.verdict, answer.steps)}
                      <p class="reason">
                        ${t("slip.lands", {
                          cct: kelvin(pack.lands.cct_K),
                          stops: stops(pack.stops_lost),
                        })}
                        ${verdictMark(pack.verdict)}
                      </p>`
                    : answer.verdict === "holds"
                      ? html`<p class="hang">${t("answer.leave")}</p>`
                      : html`<p class="hang">${t("answer.noGel")}</p>`
              }
              <p class="reason">${kelvin(answer.cct_K)} · ${answer.offset.words}</p>
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
