/** Pair: two lights side by side, as the eye and as a camera see the same things under them. */
import { html, nothing } from "lit";
import { figures, figureTable } from "../../charts/figures.js";
import { lookOf, patch } from "../../charts/patch.js";
import "../../charts/spectrum-curve.js";
import "../../parts/boot-progress.js";
import "../../parts/patch-light.js";
import { LiveQuestion } from "../../base/live-question.js";
import { Page } from "../../base/page.js";
import { properties } from "../../base/properties.js";
import { Watch } from "../../base/watch.js";
import { problemNote, warningList } from "../../parts/warnings.js";
import { whichCamera } from "../../parts/which-camera.js";
import { lightDraft } from "../../store/drafts/light-draft.js";
import { book, settings } from "../../store/index.js";
import { cameraNamed, ownCamera } from "../../store/kit/cameras.js";
import { withOwnGels } from "../../store/kit/own-gels.js";
import { t } from "../../words/index.js";
import { index, steps, toTenth } from "../../words/numbers.js";
import { flagList } from "./flags.js";
import { numberRows } from "./number-rows.js";
import { spectral } from "./spectral.js";

/** What is shown under both, from the kernel's "seen". */
const THINGS = /** @type {const} */ (["grey", "skin_light", "skin_dark", "red", "foliage"]);
const JUDGES = /** @type {const} */ (["eye", "camera"]);

class PairView extends Page {
  static properties = properties({ given: ["of"] });

  constructor() {
    super();
    /** The two lights, as in the address. @type {string[]} */
    this.of = [];
    this.compare = /** @type {LiveQuestion<"compare">} */ (new LiveQuestion(this));
    this.seen = JUDGES.map(
      () => /** @type {LiveQuestion<"seen">} */ (new LiveQuestion(this, { after: [this.compare] })),
    );
    this.watch = new Watch(this, book, settings, lightDraft);
  }

  willUpdate() {
    const [first, second] = this.of.map(spectral);
    this.compare.put(
      first && second
        ? {
            ask: "compare",
            first: first.question,
            second: second.question,
            tolerance: settings.get("tolerance"),
            ...ownCamera(),
            ...withOwnGels(),
          }
        : null,
    );
    JUDGES.forEach((judge, i) => {
      this.seen[i].put(
        first && second
          ? {
              ask: "seen",
              lights: [{ reading: first.question }, { reading: second.question }],
              white: first.question,
              judge,
              ...(judge === "camera" ? ownCamera() : {}),
              ...withOwnGels(),
            }
          : null,
      );
    });
  }

  /** The same things under both lights, each half and half, to the eye and to the camera. */
  renderLooks() {
    const looks = this.seen.map(({ answer }) => answer?.lights.map((one) => lookOf(one)?.as_read));
    if (!looks.flat().some(Boolean)) return nothing;
    return html`<table class="looks">
        <caption class="spoken">${t("pair.looks")}</caption>
        <thead>
          <tr>
            <td></td>
            ${JUDGES.map((judge) => html`<th scope="col">${t(`pair.${judge}`)}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${THINGS.map(
            (thing) => html`<tr>
              <th scope="row">${t(`look.${thing}`)}</th>
              ${looks.map((pair) => html`<td>${patch((pair ?? []).map((one) => one?.[thing]))}</td>`)}
            </tr>`,
          )}
        </tbody>
      </table>
      <p class="hint">${t("pair.halves", this.namesOf())} <ek-patch-light></ek-patch-light></p>`;
  }

  /** The two by name. */
  namesOf() {
    const [first, second] = this.of.map(spectral);
    return { first: first?.name ?? "", second: second?.name ?? "" };
  }

  /** @param {any} answer */
  renderChart(answer) {
    const { eye, camera, grey_card: grey, patches } = answer;
    if (!patches.length) return answer.unrated ? html`<p>${answer.unrated}</p>` : nothing;
    return html`<section>
      <h2>${t("pair.chart")}</h2>
      <p>
        ${t("pair.skin", {
          eye: toTenth(eye.skin),
          camera: toTenth(camera.skin),
          name: cameraNamed(settings.get("eyes"))?.name ?? t("cameras.standard"),
        })}
      </p>
      <p class="reason">${t("pair.grey", { eye: toTenth(grey.eye), camera: toTenth(grey.camera) })}</p>
      <details class="more">
        <summary>${t("pair.patches")}</summary>
        ${figureTable(
          t("pair.caption", { edition: eye.edition }),
          [t("pair.patch"), t("pair.eye"), t("pair.camera")],
          patches.map((/** @type {any} */ patch) => [
            patch.name,
            toTenth(patch.eye),
            toTenth(patch.camera),
          ]),
        )}
        <dl class="facts">
          <dt>${t("pair.eye")}</dt>
          <dd>${eye.observer}</dd>
          <dt>${t("pair.camera")}</dt>
          <dd>${camera.observer}</dd>
        </dl>
      </details>
      ${settings.get("cameras").length ? whichCamera() : nothing}
    </section>`;
  }

  render() {
    const [first, second] = this.of.map(spectral);
    const { answer, problem } = this.compare;
    if (!first || !second) {
      return html`<h1>${t("pair.title")}</h1>
        <p class="empty">${t("pair.none")}</p>`;
    }
    const similar = answer ? [answer.ssi, answer.ssi.back].filter((one) => one.value != null) : [];
    return html`
      <h1>${t("pair.heading", { first: first.name, second: second.name })}</h1>
      <section class="answer" aria-label=${t("light.answer")} aria-busy=${this.compare.waiting}>
        <ek-boot-progress></ek-boot-progress>
        ${problemNote(problem?.message)}
        ${
          answer
            ? html`${figures([
                [t("answer.distance"), steps(answer.steps)],
                ["SSI", index(answer.ssi.value)],
                [t("pair.skinShort"), `ΔE ${toTenth(answer.eye?.skin)}`],
              ])}
                ${this.renderLooks()} ${flagList(answer.flags)} ${warningList(answer.warnings)}`
            : nothing
        }
      </section>
      ${
        answer
          ? html`<section>
                <h2>${t("spectrum.curve")}</h2>
                <ek-spectrum-curve
                  .curves=${answer.curves}
                  .name=${first.name}
                  .beside=${answer.curves.against[0]}
                ></ek-spectrum-curve>
              </section>
              ${this.renderChart(answer)}
              <section>
                <h2>${t("spectrum.numbers")}</h2>
                ${numberRows(similar)}
              </section>
              <ul class="links">
                ${[first, second].map(
                  ({ id, name }) =>
                    html`<li><a href="#spectrum/${id}">${t("pair.one", { name })}</a></li>`,
                )}
              </ul>`
          : nothing
      }
    `;
  }
}
customElements.define("ek-pair", PairView);
