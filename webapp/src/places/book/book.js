/** Book: what was kept, by production, location and setup, and a search through all readings. */
import { html, nothing } from "lit";
import { Page } from "../../base/page.js";
import { properties } from "../../base/properties.js";
import { Watch } from "../../base/watch.js";
import { choice, textField } from "../../parts/inputs.js";
import { LAMPS } from "../../parts/lamp-kinds.js";
import { moreButton } from "../../parts/more.js";
import { route } from "../../router.js";
import { book, reportFault, settings } from "../../store/index.js";
import { ANYTHING, isAnything } from "../../store/log/rows.js";
import { findReadings, rows, verdicts } from "../../store/log/search.js";
import { currentSetup, locations, newLocation } from "../../store/log/shoot.js";
import { t } from "../../words/index.js";
import { dayOf } from "../../words/numbers.js";
import { backupNote } from "./backup-note.js";
import { locationLinks, locationMains } from "./location-facts.js";
import { nameForm } from "./name-form.js";
import { readingRow } from "./reading-row.js";
import { deleteThing, versions } from "./versions.js";

/** Setups or readings on screen at first, and how many more each time. */
const PAGE = 20;

/** @typedef {import("../../store/log/book.js").Thing} Thing */
/** @typedef {import("../../store/log/rows.js").Wanted} Wanted */

/** What is looked for, so that coming back from a reading shows the same list. */
let lastWanted = ANYTHING;

class BookView extends Page {
  static properties = properties({ own: ["shown", "naming", "wanted"] });

  constructor() {
    super();
    this.shown = PAGE;
    /** What is being named: a thing's id, "production", or "location in ID", "setup in ID". */
    this.naming = "";
    /** @type {Wanted} */
    this.wanted = lastWanted;
    this.watch = new Watch(this, book, settings, rows, verdicts);
  }

  /** @param {Partial<Wanted>} change */
  look(change) {
    this.wanted = { ...this.wanted, ...change };
    lastWanted = this.wanted;
    this.shown = PAGE;
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

  /** @param {Thing} thing a production or a location */
  renderTools(thing) {
    const { name } = thing.data;
    return html`
      <details class="more">
        <summary>${t("book.change", { name })}</summary>
        <div class="actions">
          <button
            type="button"
            class="quiet"
            aria-label=${t("book.deleteName", { name })}
            @click=${() => deleteThing(thing).catch(reportFault)}
          >
            ${t("book.delete")}
          </button>
          <button
            type="button"
            class="quiet"
            aria-label=${t("book.renameName", { name })}
            @click=${() => {
              this.naming = thing.id;
            }}
          >
            ${t("book.rename")}
          </button>
          <a class="button quiet" href="#share/${thing.id}">${t("share.title")}</a>
          <a class="button quiet" href="#report/${thing.id}">${t("report.title")}</a>
        </div>
        ${this.renderNaming(thing.id, t("book.name"), name, (typed) =>
          book.edit(thing.id, { name: typed }),
        )}
        ${thing.kind === "location" ? locationMains(thing) : nothing}
      </details>
    `;
  }

  /** @param {Thing} setup */
  renderSetup(setup) {
    const lights = book.below(setup.id, "light").length;
    return html`<a class="setup" href="#setup/${setup.id}">
      <span>
        <strong>${setup.data.name}</strong>
        <span class="hint">${dayOf(setup.at)} · ${t("book.lights", { n: lights })}</span>
      </span>
      ${setup.heads.length > 1 ? html`<span class="tag">${t("book.twice")}</span>` : nothing}
      ${currentSetup()?.id === setup.id ? html`<span class="tag">${t("book.here")}</span>` : nothing}
    </a>`;
  }

  /**
   * @param {Thing} location
   * @param {Thing[]} setups those of its setups that are on screen
   */
  renderLocation(location, setups) {
    const key = `setup in ${location.id}`;
    return html`<section class="location">
      <h3>${location.data.name} ${versions(location)}</h3>
      ${locationLinks(location)}
      ${setups.map((setup) => this.renderSetup(setup))}
      ${this.renderNaming(
        key,
        t("book.newSetup"),
        t("book.nthSetup", { n: book.below(location.id, "setup").length + 1 }),
        async (name) => {
          const onward = route.onward();
          const id = await book.create("setup", location.id, { name });
          await settings.set("here", id);
          onward("setup", id);
        },
      )}
      ${this.renderTools(location)}
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

  renderStructure() {
    const productions = book.below(null, "production");
    const all = productions.flatMap((production) =>
      book.below(production.id, "location").map((location) => ({
        location,
        setups: book.below(location.id, "setup"),
      })),
    );
    const count = all.reduce((sum, { setups }) => sum + setups.length, 0);
    let room = this.shown;
    const onScreen = all.flatMap(({ location, setups }) => {
      if (room <= 0) return [];
      const some = setups.slice(0, room);
      room -= Math.max(1, some.length);
      return [{ location, setups: some }];
    });
    return html`
      ${productions.length ? nothing : html`<p class="empty">${t("book.empty")}</p>`}
      ${productions.map((production) => {
        const inside = onScreen.filter(({ location }) => location.parent === production.id);
        const has = book.below(production.id, "location").length > 0;
        if (has && inside.length === 0) return nothing;
        const key = `location in ${production.id}`;
        return html`<section class="production">
          <h2>${production.data.name} ${versions(production)}</h2>
          ${this.renderTools(production)}
          ${inside.map(({ location, setups }) => this.renderLocation(location, setups))}
          ${this.renderNaming(key, t("book.newLocation"), "", (name) =>
            this.makeLocation(name, production.id),
          )}
          <button
            type="button"
            aria-label=${t("book.newLocationIn", { name: production.data.name })}
            @click=${() => {
              this.naming = key;
            }}
          >
            ${t("book.newLocation")}
          </button>
        </section>`;
      })}
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
      ${this.renderNaming("production", t("book.newProduction"), "", async (name) => {
        const id = await book.create("production", null, { name });
        await settings.set("here", id);
        this.naming = `location in ${id}`;
      })}
      <div class="actions">
        <button
          type="button"
          @click=${() => {
            this.naming = "production";
          }}
        >
          ${t("book.newProduction")}
        </button>
      </div>
    `;
  }

  /** A location, in which we work from now on: its first light makes its first setup. */
  async makeLocation(/** @type {string} */ name, /** @type {string} */ production) {
    await settings.set("here", await newLocation(name, production));
  }

  renderFilters() {
    const { wanted } = this;
    const place = book.thing(wanted.location);
    const any = { value: "", label: t("find.any") };
    const named = (/** @type {Thing[]} */ things) => [
      any,
      ...things.map((thing) => ({ value: thing.id, label: thing.data.name })),
    ];
    const day = (/** @type {"from" | "to"} */ name) => html`<div class="field">
      <label for="find-${name}">${t(`find.${name}`)}</label>
      <input
        id="find-${name}"
        type="date"
        .value=${wanted[name]}
        @change=${(/** @type {Event} */ event) =>
          this.look({ [name]: /** @type {HTMLInputElement} */ (event.target).value })}
      />
    </div>`;
    return html`<details class="more">
      <summary>${t("find.filters")}</summary>
      ${choice({
        id: "find-location",
        label: t("find.location"),
        value: wanted.location,
        options: named(locations()),
        onChange: (location) => this.look({ location, setup: "" }),
      })}
      ${
        place
          ? choice({
              id: "find-setup",
              label: t("find.setup"),
              value: wanted.setup,
              options: named(book.below(place.id, "setup")),
              onChange: (setup) => this.look({ setup }),
            })
          : nothing
      }
      <div class="pair">
        ${choice({
          id: "find-lamp",
          label: t("light.lamp"),
          value: wanted.lamp,
          options: [any, ...LAMPS.map((lamp) => ({ value: lamp, label: t(`lamp.${lamp}`) }))],
          onChange: (lamp) => this.look({ lamp }),
        })}
        ${choice({
          id: "find-verdict",
          label: t("answer.verdict"),
          value: wanted.verdict,
          options: [
            any,
            .../** @type {const} */ (["holds", "near", "out", "found"]).map((verdict) => ({
              value: verdict,
              label: t(`verdict.${verdict}`),
            })),
          ],
          onChange: (verdict) => this.look({ verdict }),
        })}
      </div>
      <div class="pair">${day("from")} ${day("to")}</div>
    </details>`;
  }

  renderFound() {
    const found = findReadings(this.wanted);
    if (!found) return html`<p role="status">${t("find.looking")}</p>`;
    const onScreen = found.slice(0, this.shown);
    return html`
      <p role="status">${t("find.found", { n: found.length })}</p>
      <ul class="found">
        ${onScreen.map((row) =>
          readingRow(row.reading, {
            title: row.light.data.name,
            where: `${row.location.data.name} · ${row.setup.data.name}`,
            verdict: verdicts.of(row.reading),
          }),
        )}
      </ul>
      <div class="actions">
        <button type="button" class="quiet" @click=${() => this.look(ANYTHING)}>
          ${t("find.clear")}
        </button>
        ${moreButton(found.length - this.shown, () => {
          this.shown += PAGE;
        })}
      </div>
    `;
  }

  updated() {
    if (isAnything(this.wanted)) return;
    // The filter needs them all; otherwise those on screen do.
    const asked = this.wanted.verdict
      ? verdicts.wantAll()
      : verdicts.want(
          (findReadings(this.wanted) ?? []).slice(0, this.shown).map((row) => row.reading),
        );
    asked.catch(reportFault);
  }

  render() {
    return html`
      <h1>${t("place.book")}</h1>
      ${backupNote()}
      ${textField({
        id: "find-text",
        label: t("find.text"),
        value: this.wanted.text,
        onInput: (text) => this.look({ text }),
      })}
      ${this.renderFilters()}
      ${isAnything(this.wanted) ? this.renderStructure() : this.renderFound()}
      <section>
        <h2>${t("book.carry")}</h2>
        <ul class="links">
          <li><a href="#share">${t("book.share")}</a></li>
          <li><a href="#receive">${t("receive.title")}</a></li>
          <li><a href="#join">${t("join.title")}</a></li>
        </ul>
      </section>
    `;
  }
}
customElements.define("ek-book", BookView);
