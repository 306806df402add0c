/**
 * Camera sensitivities: what the sensors of one's own cameras see, by name, which of them judges,
 * and two of them side by side on the lights of this setup.
 */
import { html, nothing } from "lit";
import { lookOf, patch } from "../../charts/patch.js";
import { sketch } from "../../charts/sketch.js";
import "../../parts/boot-progress.js";
import { LiveQuestion } from "../../base/live-question.js";
import { Page } from "../../base/page.js";
import { properties } from "../../base/properties.js";
import { Watch } from "../../base/watch.js";
import { fileButton } from "../../parts/bring-files.js";
import { choice, textField } from "../../parts/inputs.js";
import "../../parts/patch-light.js";
import { sayWithUndo } from "../../parts/toast.js";
import { problemNote, warningList } from "../../parts/warnings.js";
import { cameraOptions, standardOption, whichCamera } from "../../parts/which-camera.js";
import { book, reportFault, settings } from "../../store/index.js";
import { cameraNamed, LONGEST_NAME, removeCamera, renameCamera } from "../../store/kit/cameras.js";
import { withOwnGels } from "../../store/kit/own-gels.js";
import { currentSetup, lightsOf } from "../../store/log/shoot.js";
import { readingQuestion, whiteQuestion } from "../../store/questions/reading.js";
import { t } from "../../words/index.js";
import { kelvin } from "../../words/numbers.js";

class CamerasView extends Page {
  static properties = properties({ own: ["one", "other", "typed"] });

  constructor() {
    super();
    /** Names of the two side by side; "" is the standard one, which is only ever the other. */
    this.one = settings.get("eyes");
    this.other = "";
    /** New names that are being typed, by the old ones. @type {Record<string, string>} */
    this.typed = {};
    this.apart = /** @type {LiveQuestion<"cameras">} */ (new LiveQuestion(this));
    const after = [this.apart];
    this.seen = [0, 1].map(
      () => /** @type {LiveQuestion<"seen">} */ (new LiveQuestion(this, { after })),
    );
    this.watch = new Watch(this, book, settings);
  }

  /** The two cameras, the second undefined for the standard one; none without any in the kit. */
  get pair() {
    const one = cameraNamed(this.one) ?? settings.get("cameras")[0];
    if (!one) return [];
    return [one, this.other === one.name ? undefined : cameraNamed(this.other)];
  }

  /** The lights of this setup that a camera can be asked about. */
  get lights() {
    return lightsOf(currentSetup())
      .filter(({ reading }) => reading.data.spectrum)
      .map(({ light, reading }) => readingQuestion(reading.data, light.data.name));
  }

  willUpdate() {
    const [first, second] = this.pair;
    const { lights } = this;
    const asked = first && lights.length;
    const white = whiteQuestion();
    this.apart.put(
      asked
        ? { ask: "cameras", lights, white, first, ...(second ? { second } : {}), ...withOwnGels() }
        : null,
    );
    [first, second].forEach((camera, i) => {
      this.seen[i].put(
        asked
          ? {
              ask: "seen",
              lights: lights.map((reading) => ({ reading })),
              white,
              judge: "camera",
              ...(camera ? { camera } : {}),
              ...withOwnGels(),
            }
          : null,
      );
    });
  }

  /** The answer, if it is about as many lights as stand here now. */
  get answer() {
    const { answer } = this.apart;
    return answer?.lights.length === this.lights.length ? answer : undefined;
  }

  /** A grey card in a light, as each of the two shows it. @param {number} place */
  looks(place) {
    return this.seen.map(({ answer }) => lookOf(answer?.lights[place])?.as_read?.grey);
  }

  renderEdge() {
    const { answer } = this;
    if (!answer) return nothing;
    const { edge } = answer;
    if (!edge) return nothing;
    const [from, to] = edge.pair;
    const [left, right] = [this.looks(from), this.looks(to)];
    const names = [answer.first, answer.second];
    return html`<p class="headline" data-testid="headline">${edge.words}</p>
      ${names.map(
        (camera, i) => html`<figure class="edge-by">
          ${patch([left[i], right[i]], {
            kind: "large",
            label: t("cameras.edge", {
              one: answer.lights[from].name,
              other: answer.lights[to].name,
              camera,
            }),
          })}
          <figcaption class="hint">${camera}</figcaption>
        </figure>`,
      )}
      <ek-patch-light></ek-patch-light>`;
  }

  renderPair() {
    const [first, second] = this.pair;
    if (!first) return nothing;
    if (!this.lights.length) return html`<p class="hint">${t("cameras.none")}</p>`;
    const cameras = settings.get("cameras");
    const { answer } = this;
    return html`<section class="answer" aria-busy=${this.apart.waiting}>
      <ek-boot-progress></ek-boot-progress>
      ${problemNote(this.apart.problem?.message)} ${this.renderEdge()}
      <div class="pair">
        ${choice({
          id: "camera-one",
          label: t("cameras.one"),
          value: first.name,
          options: cameraOptions(cameras),
          onChange: (name) => {
            this.one = name;
          },
        })}
        ${choice({
          id: "camera-other",
          label: t("cameras.other"),
          value: second?.name ?? "",
          options: [
            standardOption(),
            ...cameraOptions(cameras.filter(({ name }) => name !== first.name)),
          ],
          onChange: (name) => {
            this.other = name;
          },
        })}
      </div>
      ${
        answer
          ? html`<ul class="readings">
                ${answer.lights.map((light, place) =>
                  light.problem || !light.apart
                    ? nothing
                    : html`<li><span>${light.apart.words}</span> ${patch(this.looks(place))}</li>`,
                )}
              </ul>
              ${warningList(answer.warnings)}
              <p class="hint">${t("cameras.balanced", { white: kelvin(answer.white.cct_K) })}</p>`
          : nothing
      }
    </section>`;
  }

  /** @param {string} name @param {string} typed @returns {string | undefined} what is wrong with it */
  fault(name, typed) {
    if (!typed.trim()) return t("cameras.nameless");
    return typed.trim() !== name && cameraNamed(typed.trim()) ? t("cameras.taken") : undefined;
  }

  /** @param {string} name */
  rename(name) {
    const to = this.typed[name]?.trim();
    if (to === undefined || this.fault(name, to)) return;
    this.typed = {};
    if (this.one === name) this.one = to;
    if (this.other === name) this.other = to;
    renameCamera(name, to).catch(reportFault);
  }

  /** @param {string} name */
  async drop(name) {
    sayWithUndo(t("book.deleted", { name }), await removeCamera(name));
  }

  /** @param {import("../../store/kit/cameras.js").CameraEyes} camera @param {number} index */
  renderCamera(camera, index) {
    const { name } = camera;
    const typed = this.typed[name] ?? name;
    return html`<li>
      <h2>${name}</h2>
      ${sketch(camera, t("cameras.curve", { name }))}
      <details class="more">
        <summary>${t("book.change", { name })}</summary>
        ${textField({
          id: `camera-name-${index}`,
          label: t("book.name"),
          value: typed,
          most: LONGEST_NAME,
          problem: this.fault(name, typed),
          onInput: (value) => {
            this.typed = { [name]: value };
          },
          onLeave: () => this.rename(name),
        })}
        <div class="actions">
          <button
            type="button"
            class="quiet"
            aria-label=${t("own.removeName", { name })}
            @click=${() => this.drop(name).catch(reportFault)}
          >
            ${t("own.remove")}
          </button>
        </div>
      </details>
    </li>`;
  }

  render() {
    const cameras = settings.get("cameras");
    return html`
      <h1>${t("cameras.title")}</h1>
      ${this.renderPair()}
      ${cameras.length ? whichCamera(nothing) : nothing}
      <ul class="found">
        ${cameras.map((camera, index) => this.renderCamera(camera, index))}
      </ul>
      <p class="hint">${t("cameras.lead")}</p>
      <div class="actions">
        ${fileButton({
          id: "camera-file",
          label: t("cameras.load"),
          choices: { columns: "camera" },
          main: !cameras.length,
        })}
      </div>
    `;
  }
}
customElements.define("ek-cameras", CamerasView);
