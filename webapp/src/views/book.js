/** Book: what was kept, by location and setup, newest first; nothing deleted for good. */
import { html, nothing } from "lit";
import { locationLinks, locationMains } from "../parts/location-facts.js";
import { nameForm } from "../parts/name-form.js";
import { Page } from "../parts/page.js";
import { say } from "../parts/toast.js";
import { Watch } from "../parts/watch.js";
import { route } from "../router.js";
import { book, reportFault, settings } from "../store/index.js";
import { currentSetup, lightsOf, locations, newLocation, openSetup } from "../store/shoot.js";
import { t } from "../words/index.js";
import { dayOf, timeOfDay } from "../words/numbers.js";
import { readingWords } from "../words/reading.js";

/** Setups on screen at first, and how many more each time. */
const PAGE = 20;

/** @typedef {import("../store/book.js").Thing} Thing */

class BookView extends Page {
  static properties = {
    shown: { state: true },
    opened: { state: true },
    naming: { state: true },
  };

  constructor() {
    super();
    this.shown = PAGE;
    /** Setups whose lights are on screen. @type {Set<string>} */
    this.opened = new Set([settings.get("here") ?? ""]);
    /** What is being named: a thing's id, "location", or "setup in ID". */
    this.naming = "";
    this.watch = new Watch(this, book, settings);
  }

  /** @param {Thing} thing */
  async deleteThing(thing) {
    const undo = await book.remove(thing.id);
    say(t("book.deleted", { name: thing.data.name ?? t("book.reading") }), {
      label: t("undo"),
      run: () => undo().catch(reportFault),
    });
  }

  /** @param {string} id */
  async work(id) {
    await openSetup(id);
    route.go("light");
  }

  /** @param {string} id @param {boolean} open */
  toggle(id, open) {
    const opened = new Set(this.opened);
    if (open) opened.add(id);
    else opened.delete(id);
    this.opened = opened;
  }

  /**
   * @param {string} key
   * @param {string} label
   * @param {string} value
   * @param {(name: string) => Promise<unknown>} save
   */
  renderNaming(key, label, value, save) {
    if (this.naming !== key) return nothing;
    return nameForm({
      label,
      value,
      onSave: (name) => {
        this.naming = "";
        save(name).catch(reportFault);
      },
      onCancel: () => {
        this.naming = "";
      },
    });
  }

  /** @param {Thing} thing a location or a setup */
  renderTools(thing) {
    return html`
      <div class="actions">
        <button
          type="button"
          class="quiet"
          aria-label=${t("book.deleteName", { name: thing.data.name })}
          @click=${() => this.deleteThing(thing).catch(reportFault)}
        >
          ${t("book.delete")}
        </button>
        <button
          type="button"
          class="quiet"
          aria-label=${t("book.renameName", { name: thing.data.name })}
          @click=${() => {
            this.naming = thing.id;
          }}
        >
          ${t("book.rename")}
        </button>
        ${
          thing.kind === "setup"
            ? html`<button
                type="button"
                aria-label=${t("book.workName", { name: thing.data.name })}
                @click=${() => this.work(thing.id).catch(reportFault)}
              >
                ${t("book.work")}
              </button>`
            : nothing
        }
      </div>
      ${this.renderNaming(thing.id, t("book.name"), thing.data.name, (name) =>
        book.edit(thing.id, { name }),
      )}
    `;
  }

  /** @param {Thing} light */
  renderLight(light) {
    const readings = book.below(light.id, "reading");
    return html`<li>
      <h3>${light.data.name} ${versions(light)}</h3>
      <ul class="readings">
        ${readings.map(
          (reading) => html`<li>
            <span>
              ${
                reading.data.spectrum
                  ? html`<a href="#spectrum/${reading.id}">${readingWords(reading.data)}</a>`
                  : readingWords(reading.data)
              }
              <span class="hint"
                >${t(`stage.${/** @type {"bare"} */ (reading.data.stage ?? "bare")}`)},
                ${timeOfDay(reading.at)}</span
              >
            </span>
            <button
              type="button"
              class="quiet"
              aria-label=${t("book.deleteReading", {
                name: light.data.name,
                time: timeOfDay(reading.at),
              })}
              @click=${() => this.deleteThing(readings.length > 1 ? reading : light).catch(reportFault)}
            >
              ${t("book.delete")}
            </button>
          </li>`,
        )}
      </ul>
    </li>`;
  }

  /** @param {Thing} setup */
  renderSetup(setup) {
    const lights = lightsOf(setup);
    const here = currentSetup()?.id === setup.id;
    const open = this.opened.has(setup.id);
    return html`<details
      class="setup"
      ?open=${open}
      @toggle=${(/** @type {Event} */ event) =>
        this.toggle(setup.id, /** @type {HTMLDetailsElement} */ (event.currentTarget).open)}
    >
      <summary>
        <span>
          <strong>${setup.data.name}</strong> ${versions(setup)}
          <span class="hint">${dayOf(setup.at)} · ${t("book.lights", { n: lights.length })}</span>
        </span>
        ${here ? html`<span class="tag">${t("book.here")}</span>` : nothing}
      </summary>
      ${
        open
          ? html`${this.renderTools(setup)}
              ${
                lights.length
                  ? html`<ul class="lights">
                      ${lights
                        .slice()
                        .reverse()
                        .map(({ light }) => this.renderLight(light))}
                    </ul>`
                  : html`<p class="hint">${t("book.noLights")}</p>`
              }`
          : nothing
      }
    </details>`;
  }

  /**
   * @param {Thing} location
   * @param {Thing[]} setups those of its setups that are on screen
   */
  renderLocation(location, setups) {
    const key = `setup in ${location.id}`;
    return html`<section class="location">
      <h2>${location.data.name} ${versions(location)}</h2>
      ${locationLinks(location)}
      ${setups.map((setup) => this.renderSetup(setup))}
      ${this.renderNaming(
        key,
        t("book.newSetup"),
        t("book.nthSetup", { n: book.below(location.id, "setup").length + 1 }),
        async (name) => {
          const id = await book.create("setup", location.id, { name });
          this.toggle(id, true);
          await settings.set("here", id);
        },
      )}
      <details class="more">
        <summary>${t("book.change", { name: location.data.name })}</summary>
        ${this.renderTools(location)} ${locationMains(location)}
      </details>
      <button
        type="button"
        aria-label=${t("book.newSetupIn", { name: location.data.name })}
        @click=${() => {
          this.naming = key;
        }}
      >
        ${t("book.newSetup")}
      </button>
    </section>`;
  }

  render() {
    const all = locations().map((location) => ({
      location,
      setups: book.below(location.id, "setup"),
    }));
    const count = all.reduce((sum, { setups }) => sum + setups.length, 0);
    let room = this.shown;
    const onScreen = all.flatMap(({ location, setups }) => {
      if (room <= 0) return [];
      const some = setups.slice(0, room);
      room -= Math.max(1, some.length);
      return [{ location, setups: some }];
    });
    return html`
      <h1>${t("place.book")}</h1>
      ${all.length ? nothing : html`<p class="empty">${t("book.empty")}</p>`}
      ${onScreen.map(({ location, setups }) => this.renderLocation(location, setups))}
      ${
        count > this.shown
          ? html`<button
              type="button"
              @click=${() => {
                this.shown += PAGE;
              }}
            >
              ${t("book.more", { n: count - this.shown })}
            </button>`
          : nothing
      }
      ${this.renderNaming("location", t("book.newLocation"), "", async (name) => {
        const id = await newLocation(name);
        const setup = await book.create("setup", id, { name: t("book.nthSetup", { n: 1 }) });
        this.toggle(setup, true);
        await settings.set("here", setup);
      })}
      <div class="actions">
        <button
          type="button"
          class="main"
          @click=${() => {
            this.naming = "location";
          }}
        >
          ${t("book.newLocation")}
        </button>
      </div>
    `;
  }
}
customElements.define("ek-book", BookView);

/**
 * When a thing was edited in two places at once: every version, to choose the one that stands.
 * @param {Thing} thing
 */
function versions(thing) {
  if (thing.heads.length < 2) return nothing;
  return html`<span class="versions" role="group" aria-label=${t("book.twoVersions")}>
    ${t("book.twoVersions")}
    ${thing.heads.map(
      (head) => html`<button
        type="button"
        class="chip"
        @click=${() =>
          (head.gone ? book.remove(thing.id) : book.edit(thing.id, head.data)).catch(reportFault)}
      >
        ${head.gone ? t("book.versionGone") : t("book.keepVersion", { name: head.data.name ?? "" })}
      </button>`,
    )}
  </span>`;
}
