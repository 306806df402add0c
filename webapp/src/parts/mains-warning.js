/** Warns where the mains of the place and the camera's shutter do not go together. */
import { html, nothing } from "lit";
import { LiveQuestion } from "../base/live-question.js";
import { Page } from "../base/page.js";
import { properties } from "../base/properties.js";
import { Watch } from "../base/watch.js";
import { book, settings } from "../store/index.js";
import { currentSetup } from "../store/log/shoot.js";
import { mainsQuestion } from "../store/questions/camera.js";
import { t } from "../words/index.js";

/** Filaments hardly follow the mains; daylight and flash never. Any other lamp can. */
const STEADY = new Set(["tungsten", "daylight", "flash"]);

class MainsWarning extends Page {
  static properties = properties({ given: ["lamps"] });

  constructor() {
    super();
    /** Kinds of the lamps in question. @type {string[]} */
    this.lamps = [];
    this.flicker = /** @type {LiveQuestion<"flicker">} */ (new LiveQuestion(this));
    this.watch = new Watch(this, book, settings);
  }

  willUpdate() {
    const pulsing = this.lamps.some((lamp) => lamp && !STEADY.has(lamp));
    this.flicker.put(pulsing ? mainsQuestion(book.thing(currentSetup()?.parent)) : null);
  }

  render() {
    const collision = this.flicker.answer?.collision;
    if (!collision) return nothing;
    return html`<ul class="warnings">
      <li>${collision} <a href="#flicker">${t("flicker.more")}</a></li>
    </ul>`;
  }
}
customElements.define("ek-mains-warning", MainsWarning);
