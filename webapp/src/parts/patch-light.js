/**
 * Patches are dim in the dark theme, so that they do not spill on a set at night. This shows them
 * full, and dims them again.
 */
import { html } from "lit";
import { Page } from "../base/page.js";
import { Watch } from "../base/watch.js";
import { themeNow } from "../theme.js";
import { t } from "../words/index.js";
import { say } from "./toast.js";

/** Fires "change". Forgotten when the page is left: the next night begins dim. */
class PatchLight extends EventTarget {
  full = false;

  /** @param {boolean} full */
  put(full) {
    this.full = full;
    document.documentElement.dataset.patches = full ? "full" : "dim";
    this.dispatchEvent(new Event("change"));
    if (full && themeNow() === "dark") say(t("patch.noMonitor"));
  }
}

export const patchLight = new PatchLight();

class PatchLightButton extends Page {
  constructor() {
    super();
    this.watch = new Watch(this, patchLight);
  }

  render() {
    const { full } = patchLight;
    return html`<button type="button" class="quiet" @click=${() => patchLight.put(!full)}>
      ${t(full ? "patch.dim" : "patch.full")}
    </button>`;
  }
}
customElements.define("ek-patch-light", PatchLightButton);
