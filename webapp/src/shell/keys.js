/**
 * Keys for who sits at a keyboard: one to each place, to the next light, to the search, through the
 * lights of a list. They are listed on the screen, and can be turned off (WCAG 2.2, 2.1.4). In a
 * field a key is what it writes.
 */
import { html, nothing } from "lit";
import { tinykeys } from "tinykeys";
import { Page } from "../base/page.js";
import { Watch } from "../base/watch.js";
import { route } from "../router.js";
import { lightDraft } from "../store/drafts/light-draft.js";
import { reportFault, settings } from "../store/index.js";
import { t } from "../words/index.js";
import { PLACE_KEYS, PLACES } from "./four-places.js";

/** What arrows go through: the lights of Set and of a setup, readings that were found. */
const LIGHTS = ".slip > details > summary, a.setup, a.reading";

/** @param {string} name @param {() => HTMLElement | null} field */
async function goToField(name, field) {
  route.go(name);
  for (let turn = 0; turn < 50 && !field(); turn += 1) {
    await new Promise((resolve) => requestAnimationFrame(resolve));
  }
  field()?.focus();
}

function nextLight() {
  if (!lightDraft.unsaved) lightDraft.start();
  return goToField("light", () => document.querySelector("ek-light form input[type=text]"));
}

function search() {
  return goToField("book", () => document.querySelector("#find-text"));
}

/** @param {KeyboardEvent} event @param {1 | -1} step */
function throughLights(event, step) {
  const lights = /** @type {HTMLElement[]} */ ([...document.querySelectorAll(LIGHTS)]).filter(
    (one) => one.checkVisibility(),
  );
  if (!lights.length) return;
  const at = lights.findIndex((one) => one.matches(":focus"));
  // Elsewhere arrows scroll or move what has the focus.
  if (at < 0 && document.activeElement?.matches("summary, a, button")) return;
  const to = at < 0 ? 0 : Math.min(lights.length - 1, Math.max(0, at + step));
  event.preventDefault();
  lights[to].focus();
}

class Keys extends Page {
  constructor() {
    super();
    this.watch = new Watch(this, settings);
    this.unbind = () => {};
  }

  get dialog() {
    return /** @type {HTMLDialogElement | null} */ (this.querySelector("dialog"));
  }

  connectedCallback() {
    super.connectedCallback();
    const when =
      (/** @type {(event: KeyboardEvent) => unknown} */ run) =>
      (/** @type {KeyboardEvent} */ event) => {
        if (!settings.get("keys") || this.dialog?.open) return;
        run(event);
      };
    const once = (/** @type {() => unknown} */ run) =>
      when((event) => {
        event.preventDefault();
        run();
      });
    this.unbind = tinykeys(window, {
      ...Object.fromEntries(
        PLACES.map((place) => [PLACE_KEYS[place], once(() => route.go(place))]),
      ),
      n: once(nextLight),
      "[Shift]+/": once(search),
      "[Shift]+?": once(() => this.dialog?.showModal()),
      ArrowDown: when((event) => throughLights(event, 1)),
      ArrowUp: when((event) => throughLights(event, -1)),
    });
  }

  disconnectedCallback() {
    super.disconnectedCallback();
    this.unbind();
  }

  render() {
    const on = settings.get("keys");
    const row = (/** @type {string} */ key, /** @type {string} */ words) => html`<div>
      <dt><kbd>${key}</kbd></dt>
      <dd>${words}</dd>
    </div>`;
    return html`
      <button type="button" class="quiet" @click=${() => this.dialog?.showModal()}>
        ${t("keys.title")} ${on ? html`<kbd>?</kbd>` : nothing}
      </button>
      <dialog aria-labelledby="keys-title">
        <h2 id="keys-title">${t("keys.title")}</h2>
        <dl class="keys">
          ${PLACES.map((place) => row(PLACE_KEYS[place], t(`place.${place}`)))}
          ${row("n", t("keys.next"))} ${row("/", t("keys.search"))} ${row("↑ ↓", t("keys.lights"))}
          ${row("?", t("keys.list"))}
        </dl>
        <label class="check">
          <input
            type="checkbox"
            .checked=${on}
            @change=${(/** @type {Event} */ event) =>
              settings
                .set("keys", /** @type {HTMLInputElement} */ (event.target).checked)
                .catch(reportFault)}
          />
          <span>${t("keys.on")}</span>
        </label>
        <form method="dialog" class="actions">
          <button type="submit">${t("keys.close")}</button>
        </form>
      </dialog>
    `;
  }
}
customElements.define("ek-keys", Keys);
