/** The tunable lamps of the kit and what is known about each. */
import { html, nothing } from "lit";
import { Page } from "../../base/page.js";
import { Watch } from "../../base/watch.js";
import { sayWithUndo } from "../../parts/toast.js";
import { reportFault, settings } from "../../store/index.js";
import { dropLamp } from "../../store/kit/lamps.js";
import { t } from "../../words/index.js";
import { whenRead } from "../../words/numbers.js";

/** @param {import("../../store/kit/lamps.js").Lamp} lamp */
function knownWords({ at, primaries = [], range }) {
  return [
    at ? t("lamps.learned", { time: whenRead(at) }) : "",
    primaries.length ? t("lamps.primaries", { n: primaries.length }) : "",
    range?.from_K && range.to_K ? t("lamps.range", { from: range.from_K, to: range.to_K }) : "",
  ]
    .filter(Boolean)
    .join(", ");
}

class KitLamps extends Page {
  constructor() {
    super();
    this.watch = new Watch(this, settings);
  }

  /** @param {string} name */
  async drop(name) {
    const undo = await dropLamp(name);
    sayWithUndo(t("book.deleted", { name }), undo);
  }

  render() {
    const lamps = settings.get("lamps");
    if (!lamps.length) return nothing;
    return html`<section>
      <h2>${t("lamps.heading")}</h2>
      <ul class="readings">
        ${lamps.map(
          (lamp) => html`<li>
            <span>${lamp.name} <span class="hint">${knownWords(lamp)}</span></span>
            <button
              type="button"
              class="quiet"
              aria-label=${t("lamps.remove", { name: lamp.name })}
              @click=${() => this.drop(lamp.name).catch(reportFault)}
            >
              ${t("book.delete")}
            </button>
          </li>`,
        )}
      </ul>
    </section>`;
  }
}
customElements.define("ek-kit-lamps", KitLamps);
