/** The camera's view, looking for QR codes; or codes in pictures. Says what it reads by "code". */
import { html, nothing } from "lit";
import { createRef, ref } from "lit/directives/ref.js";
import { decodeQR } from "qr/decode.js";
import { Page } from "../../base/page.js";
import { properties } from "../../base/properties.js";
import { pickFile } from "../../parts/pick-file.js";
import { problemNote } from "../../parts/warnings.js";
import { t } from "../../words/index.js";

const BETWEEN = 120; // ms between two looks: quick enough for a hand, cool enough for a phone
const WIDEST = 1600; // pixels of a picture that is searched

/**
 * @param {CanvasImageSource} source
 * @param {number} width
 * @param {number} height
 * @param {object} [effort] options of the decoder
 * @returns {string | undefined}
 */
function codeIn(source, width, height, effort) {
  if (!width || !height) return undefined;
  const scale = Math.min(1, WIDEST / Math.max(width, height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.round(width * scale);
  canvas.height = Math.round(height * scale);
  const context = canvas.getContext("2d", { willReadFrequently: true });
  if (!context) return undefined;
  context.drawImage(source, 0, 0, canvas.width, canvas.height);
  try {
    return decodeQR(context.getImageData(0, 0, canvas.width, canvas.height), effort);
  } catch {
    return undefined; // no code in this picture
  }
}

class Scanner extends Page {
  static properties = properties({ own: ["problem", "looking"] });

  constructor() {
    super();
    this.problem = "";
    this.looking = false;
    this.video = createRef();
    /** @type {MediaStream | undefined} */
    this.stream = undefined;
    /** @type {ReturnType<typeof setTimeout> | undefined} */
    this.timer = undefined;
    this.last = "";
  }

  disconnectedCallback() {
    super.disconnectedCallback();
    this.stop();
  }

  async start() {
    this.problem = "";
    try {
      this.stream = await navigator.mediaDevices.getUserMedia({
        video: { facingMode: "environment" },
      });
    } catch (error) {
      const refused = error instanceof DOMException && error.name === "NotAllowedError";
      this.problem = t(refused ? "scan.refused" : "scan.noCamera");
      return;
    }
    this.looking = true;
    await this.updateComplete;
    const video = /** @type {HTMLVideoElement | undefined} */ (this.video.value);
    if (!this.isConnected || !video) {
      this.stop();
      return;
    }
    video.srcObject = this.stream;
    await video.play().catch(() => {});
    this.look();
  }

  stop() {
    clearTimeout(this.timer);
    for (const track of this.stream?.getTracks() ?? []) track.stop();
    this.stream = undefined;
    this.looking = false;
  }

  look() {
    const video = /** @type {HTMLVideoElement | undefined} */ (this.video.value);
    if (!this.looking || !video) return;
    const text = codeIn(video, video.videoWidth, video.videoHeight);
    if (text && text !== this.last) this.found(text);
    this.timer = setTimeout(() => this.look(), BETWEEN);
  }

  /** @param {string} text */
  found(text) {
    this.last = text;
    this.dispatchEvent(new CustomEvent("code", { detail: text }));
  }

  /** @param {File[]} files */
  async pictures(files) {
    this.problem = "";
    for (const file of files) {
      const picture = await createImageBitmap(file).catch(() => undefined);
      const text =
        picture && codeIn(picture, picture.width, picture.height, { effort: 4, timeLimit: 2000 });
      if (text) this.found(text);
      else this.problem = t("scan.none", { name: file.name });
    }
  }

  render() {
    return html`
      ${this.looking ? html`<video class="scan" ${ref(this.video)} playsinline muted></video>` : nothing}
      ${problemNote(this.problem || undefined)}
      <div class="row">
        ${
          this.looking
            ? html`<button type="button" @click=${this.stop}>${t("scan.stop")}</button>`
            : html`<button type="button" class="main" @click=${this.start}>${t("scan.start")}</button>`
        }
        ${pickFile({
          id: "scan-picture",
          label: t("scan.picture"),
          accept: "image/*",
          onFiles: (files) => this.pictures(files),
        })}
      </div>
    `;
  }
}
customElements.define("ek-scanner", Scanner);
