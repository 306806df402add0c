/** A light's short card on Set: how far out it is, and what to hang on it. */
import { html, nothing } from "lit";
import { patch } from "../../charts/patch.js";
import { dimLine, dimsFirst } from "../../parts/dim-line.js";
import { changeWords, inAll, orLeave, packWords } from "../../parts/pack-card.js";
import "../../parts/meant-row.js";
import { fetchNote } from "../../parts/to-fetch.js";
import { verdictMark } from "../../parts/verdict.js";
import { warningList } from "../../parts/warnings.js";
import { tunable } from "../../store/kit/lamps.js";
import { gelsOn, labels } from "../../store/log/measured-gels.js";
import { toDo } from "../../store/log/plan.js";
import { sayMeant } from "../../store/log/shoot.js";
import { saidOf } from "../../store/log/target.js";
import { t } from "../../words/index.js";
import { joined } from "../../words/isolated.js";
import { index, kelvin, stops, whenRead } from "../../words/numbers.js";
import { cameraWords } from "./hanging-list.js";
import { planned } from "./planned.js";

/** @typedef {import("../../store/log/target.js").Said} Said */

/**
 * @typedef {object} What
 * @property {import("../../store/log/book.js").Thing} light
 * @property {import("../../store/log/book.js").Thing} reading
 * @property {any} answer   this light's part of the kernel's "agree", when there
 * @property {boolean} hero
 * @property {string} number
 * @property {unknown} [level]    its stop and its ratio to the key
 * @property {string} [problem]
 * @property {import("../../charts/patch.js").Colour[]} [colours]  as read and with its gels
 * @property {() => void} onMeasure
 * @property {() => void} onTwin
 * @property {string} twin  the name of a light that is the same
 */

/** @param {What} what */
export function slip(what) {
  return html`<li class="slip">
    <details>
      <summary>${twoLines(what)}</summary>
      ${inside(what)}
    </details>
  </li>`;
}

/** What is to be done, and of which light. @param {What} what */
function twoLines({ light, reading, answer, hero, number, problem, colours = [] }) {
  const now = answer ? [kelvin(answer.cct_K), answer.offset?.words] : [problem];
  return html`
    <span class="ordinal" aria-hidden="true">${number}</span>
    <span class="two">
      ${answer ? html`<span class="hang">${toDoWords(light, reading, answer)}</span>` : nothing}
      <span class="of">
        <h2>${light.data.name}</h2>
        ${hero ? html`<span class="tag">${t("slip.hero")}</span>` : nothing}
        <span class=${problem ? "problem" : "now"}>${joined(now.filter(Boolean))}</span>
      </span>
    </span>
    ${patch(colours)} ${answer ? verdictMark(answer.verdict) : nothing}
  `;
}

/**
 * What is to be done: by the kept plan until the light is read again, else as the kernel advises.
 * @param {import("../../store/log/book.js").Thing} light
 * @param {import("../../store/log/book.js").Thing} reading
 * @param {any} answer
 */
export function toDoWords(light, reading, answer) {
  if (toDo(light, reading)) return light.data.planned.words;
  if (!answer.target) return t("answer.found");
  if (dimsFirst(answer)) return answer.dim.words;
  const { pack } = answer;
  if (pack) return changeWords(pack) || t("slip.hang", { pack: packWords(pack) });
  return t(answer.verdict === "holds" ? "answer.leave" : "answer.noGel");
}

/** All else about it. @param {What} what */
function inside({ light, reading, answer, level, onMeasure, onTwin, twin }) {
  const on = gelsOn(reading.data);
  return html`
    <div class="inside">
      ${
        answer
          ? html`
              ${howItGoes(light, reading, answer)}
              ${
                answer.ssi_to_hero == null
                  ? nothing
                  : html`<p class="reason">
                      ${t("slip.ssi", { value: index(answer.ssi_to_hero) })}
                    </p>`
              }
              ${answer.camera ? html`<p class="reason">${cameraWords(answer)}</p>` : nothing}
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
          aria-label=${t("slip.twinName", { twin })}
          @click=${onTwin}
        >
          ${t("slip.twin")}
        </button>
        <button
          type="button"
          class="quiet"
          aria-label=${t("slip.measureName", { name: light.data.name })}
          @click=${onMeasure}
        >
          ${t("slip.measure")}
        </button>
      </footer>
    </div>
  `;
}

/**
 * Where that leads, and what it costs.
 * @param {import("../../store/log/book.js").Thing} light
 * @param {import("../../store/log/book.js").Thing} reading
 * @param {any} answer
 */
function howItGoes(light, reading, answer) {
  if (toDo(light, reading)) {
    const { does, gels, gel_ids: ids } = light.data.planned;
    return does === "gel" ? fetchNote(labels(gels, ids)) : nothing;
  }
  if (!answer.target) return nothing;
  const { pack } = answer;
  if (dimsFirst(answer) || !pack) return dimLine(answer);
  return html`${inAll(pack)} ${orLeave(answer.verdict, answer.steps)}
    <p class="reason">
      ${t("slip.lands", { cct: kelvin(pack.lands.cct_K), stops: stops(pack.stops_lost) })}
      ${verdictMark(pack.promise)} ${answer.after}
    </p>
    ${dimLine(answer)}`;
}
