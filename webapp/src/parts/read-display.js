/**
 * A meter's display read by the camera, or from a picture: what was read goes into the fields at
 * once and stands beside its picture, to be compared, until the fields are emptied.
 *
 * Properties: `take`, called with R as the display writes it, gives back its undo or throws a
 * sentence; `holds`, whether the fields still hold something; `many`, whether one display follows
 * another: then the camera stays on, and each is taken by a tap; `keepPicture`, which takes the
 * picture along where that is offered.
 */
import { html, nothing, svg } from "lit";
import { createRef, ref } from "lit/directives/ref.js";
import { Page } from "../base/page.js";
import { properties } from "../base/properties.js";
import { Watch } from "../base/watch.js";
import { DisplayReader } from "../reader/client.js";
import { readerPart } from "../reader/reader-part.js";
import { t } from "../words/index.js";
import { size } from "../words/numbers.js";
import { pickFile } from "./pick-file.js";
import "./spoken.js";
import { problemNote } from "./warnings.js";

/** @typedef {import("../reader/client.js").Look} Look */
/** @typedef {import("../kernel/answers.js").Answers["display"]} Answer */
/** @typedef {{ answer: Answer, look: Look, canvas: HTMLCanvasElement }} Read with its own picture */

const BETWEEN = 60; // ms between two looks: the reader takes several times that
const LONGEST = 1280; // pixels: more are read no better
const LARGEST_FILE = 40_000_000; // bytes
const MOST_WORSE = 3; // looks in a row that read less than the one before them
const SETTLES = 3000; // ms, until an answer and its drawings stand
/** From the surest. */
const SURE = ["agrees", "mended", "nearly", "unchecked", "contradicts"];

/** @param {Read} read */
const rank = ({ answer }) => {
  const [way] = answer.ways;
  return way ? SURE.indexOf(way.sure) : SURE.length;
};

class ReadDisplay extends Page {
  static properties = properties({
    given: ["take", "holds", "many", "keepPicture"],
    own: ["open", "problem", "looking", "read", "taken", "busy"],
  });

  constructor() {
    super();
    /** @type {(reading: Record<string, string>) => () => void} */
    this.take = () => () => {};
    this.holds = false;
    this.many = false;
    /** @type {((picture: Blob) => void) | null} */
    this.keepPicture = null;
    this.open = false;
    this.problem = "";
    this.looking = false;
    this.busy = false;
    /** What the last look read. @type {Read | null} */
    this.read = null;
    /** What went into the fields. @type {{ read: Read, way: number, picture: Blob | null, crop: string, undo: () => void } | null} */
    this.taken = null;
    this.video = createRef();
    this.reader = new DisplayReader();
    /** @type {MediaStream | undefined} */
    this.stream = undefined;
    this.last = "";
    /** How many looks since the one that is shown read less. */
    this.worse = 0;
    this.watch = new Watch(this, readerPart);
  }

  connectedCallback() {
    super.connectedCallback();
    readerPart.look();
  }

  disconnectedCallback() {
    super.disconnectedCallback();
    this.close();
    this.forget();
  }

  willUpdate() {
    // The reading was kept, or cleared: its picture has done its work.
    if (this.taken && !this.holds && !this.many) this.forget();
  }

  forget() {
    if (this.taken) URL.revokeObjectURL(this.taken.crop);
    this.taken = null;
  }

  start() {
    this.open = true;
    this.problem = "";
    this.read = null;
    if (readerPart.got) this.film();
  }

  close() {
    this.open = false;
    this.stopFilming();
    this.reader.close();
  }

  stopFilming() {
    this.looking = false;
    for (const track of this.stream?.getTracks() ?? []) track.stop();
    this.stream = undefined;
  }

  async get() {
    this.problem = "";
    try {
      await readerPart.get();
      if (this.open) this.film();
    } catch {
      this.problem = t("display.notGot");
    }
  }

  async film() {
    try {
      this.stream = await navigator.mediaDevices.getUserMedia({
        video: { facingMode: "environment", width: { ideal: 1280 }, height: { ideal: 960 } },
      });
    } catch (error) {
      const refused = error instanceof DOMException && error.name === "NotAllowedError";
      this.problem = t(refused ? "display.refused" : "display.noCamera");
      return;
    }
    this.looking = true;
    await this.updateComplete;
    const video = /** @type {HTMLVideoElement | undefined} */ (this.video.value);
    if (!this.isConnected || !video) {
      this.close();
      return;
    }
    video.srcObject = this.stream;
    await video.play().catch(() => {});
    this.showItself();
    this.last = "";
    while (this.looking) {
      if (video.videoWidth) await this.lookAt(video, video.videoWidth, video.videoHeight);
      await new Promise((resolve) => setTimeout(resolve, BETWEEN));
    }
  }

  async showItself() {
    await this.updateComplete;
    this.firstElementChild?.scrollIntoView({ block: "nearest" });
  }

  /** The answer comes a moment later, above, and would push what is to be compared away. */
  async stayInSight() {
    await this.showItself();
    const about = new ResizeObserver(() => this.showItself());
    about.observe(this.closest("form")?.parentElement ?? document.body);
    const enough = () => about.disconnect();
    addEventListener("pointerdown", enough, { once: true });
    setTimeout(enough, SETTLES);
  }

  /**
   * One look at the live picture; what two looks agree on is taken. A look that a hand shook, or
   * that sees less, leaves the one before it to be taken for a moment.
   *
   * @param {CanvasImageSource} source
   * @param {number} width
   * @param {number} height
   */
  async lookAt(source, width, height) {
    let read;
    try {
      read = await this.readPicture(source, width, height);
    } catch (error) {
      if (this.looking) this.fault(error);
      return;
    }
    if (!this.looking) return;
    this.worse = this.read && rank(read) > rank(this.read) ? this.worse + 1 : 0;
    if (this.worse % MOST_WORSE === 0) this.read = read;
    const [way] = read.answer.ways;
    if (way?.sure !== "agrees") return;
    const said = JSON.stringify(way.reading);
    if (!this.many && said === this.last) await this.takeOver(read);
    this.last = said;
  }

  /** @param {unknown} error */
  fault(error) {
    if (error instanceof DOMException && error.name === "AbortError") return;
    const reason = error instanceof Error ? error.message : String(error);
    if (reason === "closed") return;
    this.looking = false;
    this.problem = t("display.failed", { reason });
  }

  /**
   * @param {CanvasImageSource} source
   * @param {number} width
   * @param {number} height
   * @returns {Promise<Read>}
   */
  async readPicture(source, width, height) {
    const scale = Math.min(1, LONGEST / Math.max(width, height));
    const canvas = document.createElement("canvas");
    canvas.width = Math.max(1, Math.round(width * scale));
    canvas.height = Math.max(1, Math.round(height * scale));
    const context = canvas.getContext("2d");
    if (!context) throw new Error("no canvas");
    context.imageSmoothingQuality = "high";
    context.drawImage(source, 0, 0, canvas.width, canvas.height);
    const look = await this.reader.look(await createImageBitmap(canvas));
    const plain = { look, canvas, answer: await this.understood(look) };
    if (rank(plain) === 0) return plain;
    // Digits made of bars have gaps, which only a second look closes.
    const second = await this.reader.lookForBars();
    const bars = { look: second, canvas, answer: await this.understood(second) };
    const surer = rank(bars) - rank(plain);
    return surer < 0 || (surer === 0 && bars.look.bars > 1) ? bars : plain;
  }

  /** What the kernel makes of what was seen. @param {Look} look @returns {Promise<Answer>} */
  async understood(look) {
    const words = look.words.map(({ text, box, confidence }) => ({ text, box, confidence }));
    const answer = await this.askHere({ ask: "display", words });
    if (answer.problem) throw new Error(answer.problem.message);
    return answer;
  }

  /** @param {File[]} files */
  async pictures([file]) {
    this.problem = "";
    this.stopFilming();
    if (!file) return;
    this.busy = true;
    try {
      if (file.size > LARGEST_FILE) throw new Error("too large");
      const picture = await createImageBitmap(file, { imageOrientation: "from-image" });
      try {
        this.read = await this.readPicture(picture, picture.width, picture.height);
      } catch (error) {
        this.fault(error);
        return;
      } finally {
        picture.close();
      }
      if (this.read.answer.ways.length) await this.takeOver(this.read);
      else this.problem = this.read.answer.words ?? "";
    } catch {
      this.problem = t("display.noPicture", { name: file.name });
    } finally {
      this.busy = false;
    }
  }

  /** Put what was read into the fields, and its picture above them. @param {Read} read */
  async takeOver(read) {
    const [way] = read.answer.ways;
    if (!way) return;
    this.looking &&= this.many;
    const picture = await this.crop(read);
    this.forget();
    let undo;
    try {
      undo = this.take(way.reading);
    } catch (error) {
      this.problem = error instanceof Error ? error.message : String(error);
      return;
    }
    this.problem = "";
    this.holds = true;
    this.taken = { read, way: 0, picture, crop: picture ? URL.createObjectURL(picture) : "", undo };
    if (this.many) this.read = null;
    else this.close();
    // What is to be compared is brought into sight; what agrees leaves the answer where it is.
    if (way.sure !== "agrees") this.stayInSight();
    navigator.vibrate?.(40);
  }

  /** The part of the picture that shows what was taken. @param {Read} read @returns {Promise<Blob | null>} */
  async crop({ answer, look, canvas }) {
    const numbers = answer.ways.flatMap((way) => way.numbers.map(({ word }) => word));
    const corners = [...new Set(numbers)].flatMap((word) => look.words[word]?.corners ?? []);
    const across = corners.map(([x]) => x);
    const down = corners.map(([, y]) => y);
    const scale = canvas.width / look.width;
    const margin = 0.06 * look.width;
    const left = Math.max(0, Math.min(...across) - margin) * scale;
    const top = Math.max(0, Math.min(...down) - margin) * scale;
    const right = Math.min(canvas.width, (Math.max(...across) + margin) * scale);
    const bottom = Math.min(canvas.height, (Math.max(...down) + margin) * scale);
    const cut = document.createElement("canvas");
    cut.width = Math.max(1, Math.round(right - left));
    cut.height = Math.max(1, Math.round(bottom - top));
    cut.getContext("2d")?.drawImage(canvas, -left, -top);
    return new Promise((resolve) => cut.toBlob(resolve, "image/jpeg", 0.8));
  }

  /** Take the display in another way. @param {number} index */
  other(index) {
    const { taken } = this;
    const way = taken?.read.answer.ways[index];
    if (!taken || !way) return;
    taken.undo();
    this.taken = { ...taken, way: index, undo: this.take(way.reading) };
  }

  takeBack() {
    this.taken?.undo();
    this.forget();
  }

  /** The picture goes along with the reading, as its photo. */
  withPicture() {
    const { taken } = this;
    if (!taken?.picture) return;
    this.keepPicture?.(taken.picture);
    this.keepPicture = null;
  }

  /** @param {Answer["ways"][number]} way */
  figures(way) {
    return way.numbers
      .map(({ field, text }) => t("display.figure", { name: nameOf(field), text }))
      .join(" · ");
  }

  renderTaken() {
    const { taken } = this;
    if (!taken) return nothing;
    const { ways } = taken.read.answer;
    const way = ways[taken.way];
    if (!way) return nothing;
    return html`<section class="from-display" aria-label=${t("display.taken")}>
      <img src=${taken.crop} alt=${t("display.crop", { figures: this.figures(way) })} />
      <p class=${way.sure === "agrees" ? "hint" : "warning"}>${way.words}</p>
      ${
        ways.length > 1
          ? html`<div class="row" role="group" aria-label=${t("display.which")}>
              ${ways.map(
                (one, index) => html`<button
                  type="button"
                  aria-pressed=${index === taken.way ? "true" : "false"}
                  @click=${() => this.other(index)}
                >
                  ${this.figures(one)}
                </button>`,
              )}
            </div>`
          : nothing
      }
      <div class="row">
        <button type="button" class="quiet" @click=${this.takeBack}>${t("display.takeBack")}</button>
        ${
          this.open
            ? nothing
            : html`<button type="button" class="quiet" @click=${this.start}>${t("display.again")}</button>`
        }
        ${
          this.keepPicture && taken.picture
            ? html`<button type="button" class="quiet" @click=${() => this.withPicture()}>
                ${t("display.keepPicture")}
              </button>`
            : nothing
        }
      </div>
      <ek-spoken .words=${`${this.figures(way)}. ${way.words}`}></ek-spoken>
    </section>`;
  }

  renderGet() {
    const { part } = readerPart;
    return html`<p>${t("display.part", { size: size(readerPart.bytes) })}</p>
      ${
        part === null
          ? html`<div class="row">
              <button type="button" class="main" @click=${this.get}>
                ${t("display.get", { size: size(readerPart.bytes) })}
              </button>
              <button type="button" @click=${this.close}>${t("display.close")}</button>
            </div>`
          : html`<progress max="1" .value=${part} aria-label=${t("display.getting")}></progress>`
      }
      <p class="links"><a href="#about">${t("display.licence")}</a></p>`;
  }

  /** The live picture, with the numbers that are read. */
  renderLive() {
    const { read } = this;
    const [way] = read?.answer.ways ?? [];
    return html`<div class="viewfinder">
        <video class="scan" ${ref(this.video)} playsinline muted></video>
        ${
          read
            ? html`<svg viewBox="0 0 ${read.look.width} ${read.look.height}" aria-hidden="true">
                ${(way?.numbers ?? []).map(
                  ({ word }) =>
                    svg`<polygon points=${(read.look.words[word]?.corners ?? []).join(" ")}></polygon>`,
                )}
              </svg>`
            : nothing
        }
      </div>
      <p class="figures" data-testid="display-seen">
        ${way ? this.figures(way) : t("display.aim")}
      </p>
      <div class="row">
        <button
          type="button"
          class="main"
          ?disabled=${!way}
          @click=${() => read && this.takeOver(read)}
        >
          ${t("display.take")}
        </button>
      </div>`;
  }

  renderOpen() {
    if (!readerPart.got) return this.renderGet();
    return html`${this.looking ? this.renderLive() : nothing}
      ${this.busy ? html`<p class="hint" role="status">${t("display.reading")}</p>` : nothing}
      <div class="row">
        ${pickFile({
          id: `${this.id || "display"}-picture`,
          label: t("display.picture"),
          accept: "image/*",
          one: true,
          onFiles: (files) => this.pictures(files),
        })}
        <button type="button" @click=${this.close}>${t("display.close")}</button>
      </div>`;
  }

  render() {
    return html`${this.renderTaken()}
    ${
      this.open
        ? html`<section class="read-display" aria-label=${t("display.title")}>
            ${this.renderOpen()} ${problemNote(this.problem || undefined)}
          </section>`
        : this.taken
          ? nothing
          : html`<button type="button" class="quiet read-display" @click=${this.start}>
              <span aria-hidden="true">⌾</span> ${t("display.start")}
            </button>`
    }`;
  }
}

/** What a figure is called. @param {string} field */
function nameOf(field) {
  /** @type {Record<string, string>} */
  const names = { x: "x", y: "y", cct_K: "CCT", duv: "Duv", exposure_lx_s: "lux·s", tint_cc: "CC" };
  /** @type {Record<string, string>} */
  const units = { illuminance_lx: "lux", illuminance_fc: "fc" };
  return names[field] ?? units[field] ?? (field === "ssi" ? "SSI" : field.replace("r", "R"));
}

customElements.define("ek-read-display", ReadDisplay);
