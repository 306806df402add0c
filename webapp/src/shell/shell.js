/** The frame around every view: where we are, the theme, notices, the thumb bar. */
import { html, nothing } from "lit";
import { repeat } from "lit/directives/repeat.js";
import { Page } from "../base/page.js";
import { properties } from "../base/properties.js";
import { ready } from "../kernel/client.js";
import { placeIcon } from "./place-icon.js";
import "../parts/toast.js";
import { Watch } from "../base/watch.js";
import { FIRST, route } from "../router.js";
import { lightDraft } from "../store/drafts/light-draft.js";
import { book, bookRead, fault, inDemo, leaveDemo, reportFault, settings } from "../store/index.js";
import { themeNow } from "../theme.js";
import { t } from "../words/index.js";
import { PLACE_KEYS, PLACES } from "./four-places.js";
import { layout, panes } from "./layout.js";
import { readOthers, VIEWS } from "./views.js";

class Shell extends Page {
  static properties = properties({ own: ["newVersion", "others"] });

  constructor() {
    super();
    /** @type {(() => void) | null} switches to the new version */
    this.newVersion = null;
    /** Whether views other than the first can be shown. @type {"waiting" | "ready" | "lost"} */
    this.others = "waiting";
    this.watch = new Watch(this, route, settings, fault, layout);
    /** Beside the book stands the setup of now. */
    this.setups = new Watch(this, book);
    route.addEventListener("change", () => this.arrive());
  }

  connectedCallback() {
    super.connectedCallback();
    // Without an idle moment soon, a view is read when somebody goes there.
    const later = window.requestIdleCallback ?? ((work) => setTimeout(work, 1000));
    const soon = () => later(() => this.readOthers());
    if (route.now.name === FIRST) ready().then(soon, () => {});
    else this.readOthers();
  }

  async readOthers() {
    try {
      await Promise.all([readOthers(), bookRead()]);
      this.others = "ready";
    } catch {
      this.others = "lost";
    }
  }

  /** A new view starts at its heading, for eyes and for screen readers. */
  async arrive() {
    this.requestUpdate();
    if (route.now.name !== FIRST) await this.readOthers();
    await this.updateComplete;
    const here = this.querySelector("main > .here");
    await /** @type {any} */ (here?.firstElementChild)?.updateComplete;
    const heading = /** @type {HTMLElement | null} */ (here?.querySelector("h1"));
    if (heading) {
      heading.tabIndex = -1;
      heading.focus({ preventScroll: true });
    }
    here?.scrollTo(0, 0);
    window.scrollTo(0, 0);
  }

  async leave() {
    await leaveDemo();
    await lightDraft.load();
    route.go(FIRST);
  }

  renderNotices() {
    return html`
      ${
        inDemo()
          ? html`<div class="notice demo">
              <p>${t("demo.notice")}</p>
              <button type="button" @click=${() => this.leave().catch(reportFault)}>
                ${t("demo.leave")}
              </button>
            </div>`
          : nothing
      }
      ${
        this.newVersion
          ? html`<div class="notice" role="status">
              <p>${t("update.there")}</p>
              <button
                type="button"
                class="quiet"
                @click=${() => {
                  this.newVersion = null;
                }}
              >
                ${t("update.later")}
              </button>
              <button type="button" @click=${this.newVersion}>${t("update.now")}</button>
            </div>`
          : nothing
      }
      ${
        fault.words
          ? html`<div class="notice fault" role="alert">
              <p>${fault.words}</p>
              <button
                type="button"
                class="quiet"
                @click=${() => fault.put("")}
              >
                ${t("dismiss")}
              </button>
            </div>`
          : nothing
      }
    `;
  }

  /** @param {import("./layout.js").Pane} here @param {import("./views.js").View["place"]} place */
  renderPanes(here, place) {
    const room = layout.room;
    const all = panes(here, place, room);
    return html`<main id="main" class=${room > 1 ? `side by-${all.length}` : ""}>
      ${repeat(
        all,
        ({ name }) => name,
        ({ name, rest }) => html`<div class="pane ${name === here.name ? "here" : ""}">
          ${this.renderView(VIEWS[name], rest)}
        </div>`,
      )}
    </main>`;
  }

  /** @param {import("./views.js").View} view @param {string} rest */
  renderView(view, rest) {
    if (view === VIEWS[FIRST] || this.others === "ready") return view.show(rest);
    if (this.others === "waiting") return nothing;
    return html`<h1>${t(view.title)}</h1>
      <p role="alert">${t("part.lost")}</p>
      <div class="actions">
        <button type="button" class="main" @click=${() => location.reload()}>
          ${t("boot.again")}
        </button>
      </div>`;
  }

  render() {
    const { name: asked, rest } = route.now;
    const name = Object.hasOwn(VIEWS, asked) ? asked : FIRST;
    const view = VIEWS[name];
    document.title = `${t(view.title)} · ${t("app.name")}`;
    const other = themeNow() === "dark" ? "daylight" : "dark";
    return html`
      <a class="skip" href="#main" @click=${(/** @type {Event} */ event) => {
        event.preventDefault();
        this.arrive();
      }}>${t("skip")}</a>
      <header>
        <div class="top">
        <span class="brand">${t("app.name")}</span>
        <button
          type="button"
          class="quiet theme"
          @click=${() => settings.set("theme", other).catch(reportFault)}
        >
          ${t(`theme.to.${other}`)}
        </button>
        </div>
        ${this.renderNotices()}
        <ek-joined-line></ek-joined-line>
      </header>
      ${this.renderPanes({ name, rest }, view.place)}
      <ek-toast></ek-toast>
      <nav class="thumb" aria-label=${t("nav.label")}>
        ${PLACES.map(
          (place) => html`<a
            href="#${place}"
            aria-current=${view.place === place ? "page" : "false"}
          >
            ${placeIcon(place)} <span>${t(`place.${place}`)}</span>
            ${settings.get("keys") ? html`<kbd aria-hidden="true">${PLACE_KEYS[place]}</kbd>` : nothing}
          </a>`,
        )}
        <ek-keys></ek-keys>
      </nav>
    `;
  }
}
customElements.define("ek-shell", Shell);
