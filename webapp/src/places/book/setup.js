/** One setup of the book: its lights with their readings in time, and what to do with it. */
import { html, nothing } from "lit";
import { Page } from "../../base/page.js";
import { properties } from "../../base/properties.js";
import { Watch } from "../../base/watch.js";
import { ask } from "../../kernel/client.js";
import { meantBeside, meantLine } from "../../parts/meant-words.js";
import { shareText } from "../../parts/share-text.js";
import { sayWithUndo } from "../../parts/toast.js";
import { route } from "../../router.js";
import { book, reportFault, settings } from "../../store/index.js";
import { verdicts } from "../../store/log/search.js";
import { currentSetup, duplicateSetup, openSetup, placeWords } from "../../store/log/shoot.js";
import { whiteOfSetup } from "../../store/questions/reading.js";
import { t } from "../../words/index.js";
import { dayOf, kelvin } from "../../words/numbers.js";
import { nameForm } from "./name-form.js";
import { readingRow } from "./reading-row.js";
import { deleteThing, versions } from "./versions.js";

/** Readings of a light on screen at first, and how many more each time. */
const PAGE = 10;

/** @typedef {import("../../store/log/book.js").Thing} Thing */

class SetupView extends Page {
  static properties = properties({ given: ["id"], own: ["naming", "shown"] });

  constructor() {
    super();
    this.id = "";
    this.naming = "";
    /** How many readings are shown, by light. @type {Record<string, number>} */
    this.shown = {};
    this.watch = new Watch(this, book, settings, verdicts);
  }

  /** Work in this setup. @param {"light" | "sweep"} place  where to begin */
  async work(place) {
    const onward = route.onward();
    await openSetup(this.id);
    onward(place);
  }

  /** Set today's white to the one of this setup. */
  async match() {
    const found = await ask(whiteOfSetup(this.id));
    if (found.problem) throw new Error(found.problem.message);
    if (!found.target) throw new Error(t("setup.noWhite"));
    const white = await ask({ ask: "describe", reading: found.target });
    if (white.problem) throw new Error(white.problem.message);
    const before = settings.get("white");
    const stated = found.target.cct_K ? found.target : { cct_K: white.cct_K, duv: white.duv };
    if (stated.cct_K == null) throw new Error(t("setup.noWhite"));
    await settings.set("white", {
      cct_K: String(stated.cct_K),
      duv: String(stated.duv ?? "0"),
    });
    sayWithUndo(t("setup.matched", { cct: kelvin(white.cct_K) }), () =>
      settings.set("white", before),
    );
  }

  /** The same lights for another day, each to be brought to what it was. */
  async pickUp() {
    const onward = route.onward();
    const setup = /** @type {Thing} */ (book.thing(this.id));
    // Without the kernel the lights are doubled all the same; the white then stays as it is.
    const found = await ask(whiteOfSetup(this.id));
    const again = await duplicateSetup(
      setup,
      t("setup.pickUpName", { name: setup.data.name }),
      found.target ?? null,
    );
    await openSetup(again);
    if (found.target?.cct_K) {
      const { cct_K, duv } = found.target;
      await settings.set("white", { cct_K: String(cct_K), duv: String(duv ?? "0") });
    }
    onward("set");
  }

  /** @param {Thing} light */
  renderLight(light) {
    const readings = book.below(light.id, "reading");
    const shown = this.shown[light.id] ?? PAGE;
    return html`<li>
      <h2>${light.data.name} ${versions(light)}</h2>
      ${meantLine(meantBeside(light.id))}
      <ul class="readings">
        ${readings
          .slice(0, shown)
          .map((reading) => readingRow(reading, { verdict: verdicts.of(reading) }))}
      </ul>
      <div class="actions">
        ${
          readings.length > shown
            ? html`<button
                type="button"
                class="quiet"
                @click=${() => {
                  this.shown = { ...this.shown, [light.id]: shown + 100 };
                }}
              >
                ${t("find.more", { n: readings.length - shown })}
              </button>`
            : nothing
        }
        <button
          type="button"
          class="quiet"
          aria-label=${t("book.deleteName", { name: light.data.name })}
          @click=${() => deleteThing(light).catch(reportFault)}
        >
          ${t("book.delete")}
        </button>
        <a
          class="button quiet"
          href="#since/${light.id}"
          aria-label=${t("since.name", { name: light.data.name })}
          >${t("since.title")}</a
        >
      </div>
    </li>`;
  }

  renderSurfaces() {
    const surfaces = book.below(this.id, "surface");
    return html`<section class=${surfaces.length ? nothing : "no-print"}>
      <h2>${t("sweep.others")}</h2>
      <ul class="links">
        ${surfaces.map(
          (surface) => html`<li>
            <a href="#sweep/${surface.id}">${surface.data.name}</a> ${versions(surface)}
          </li>`,
        )}
        <li class="no-print">
          <button
            type="button"
            class="quiet"
            @click=${() => this.work("sweep").catch(reportFault)}
          >
            ${t("sweep.new")}
          </button>
        </li>
      </ul>
    </section>`;
  }

  updated() {
    const readings = book
      .below(this.id, "light")
      .flatMap((light) => book.below(light.id, "reading").slice(0, this.shown[light.id] ?? PAGE));
    verdicts.want(readings).catch(reportFault);
  }

  render() {
    const setup = book.standing(this.id);
    if (!setup) return html`<h1>${t("place.book")}</h1><p class="empty">${t("book.gone")}</p>`;
    const lights = book.below(setup.id, "light").reverse();
    const { name, note } = setup.data;
    const here = currentSetup()?.id === setup.id;
    const earlier = book.thing(setup.data.pickup_of);
    const run = (/** @type {() => Promise<unknown>} */ work) => () => work().catch(reportFault);
    return html`
      <h1>${name} ${versions(setup)}</h1>
      <p class="hint">
        <a href="#book">${placeWords(setup)}</a> · ${dayOf(setup.at)}
        ${here ? html`<span class="tag">${t("book.here")}</span>` : nothing}
      </p>
      ${note ? html`<p>${note}</p>` : nothing}
      ${
        earlier
          ? html`<p class="hint">
              ${t("setup.isPickUp")}
              <a href="#setup/${earlier.id}">${earlier.data.name}, ${dayOf(earlier.at)}</a>
            </p>`
          : nothing
      }
      <div class="actions">
        <button type="button" @click=${run(() => this.pickUp())}>${t("setup.pickUp")}</button>
        <button
          type="button"
          class="main"
          aria-label=${t("book.workName", { name })}
          @click=${run(() => this.work("light"))}
        >
          ${t("book.work")}
        </button>
      </div>
      ${
        lights.length
          ? html`<ul class="lights">
              ${lights.map((light) => this.renderLight(light))}
            </ul>`
          : html`<p class="empty">${t("book.noLights")}</p>`
      }
      ${this.renderSurfaces()}
      <section class="no-print">
        <h2>${t("setup.with")}</h2>
        <ul class="links">
          <li>
            <button type="button" class="quiet" @click=${run(() => this.match())}>
              ${t("setup.match")}
            </button>
          </li>
          <li><a href="#share/${setup.id}">${t("share.title")}</a></li>
          <li><a href="#report/${setup.id}">${t("report.title")}</a></li>
          <li>
            <button
              type="button"
              class="quiet"
              @click=${run(() =>
                shareText(
                  name,
                  new URL(`./#set/${setup.id}`, location.href).href,
                  t("setup.addressCopied"),
                ),
              )}
            >
              ${t("setup.address")}
            </button>
            <p class="hint">${t("setup.addressHint")}</p>
          </li>
        </ul>
        <details class="more">
          <summary>${t("book.change", { name })}</summary>
          <div class="actions">
            <button
              type="button"
              class="quiet"
              aria-label=${t("book.deleteName", { name })}
              @click=${run(() => deleteThing(setup))}
            >
              ${t("book.delete")}
            </button>
            <button
              type="button"
              class="quiet"
              @click=${() => {
                this.naming = "note";
              }}
            >
              ${t("log.note")}
            </button>
            <button
              type="button"
              class="quiet"
              aria-label=${t("book.renameName", { name })}
              @click=${() => {
                this.naming = "name";
              }}
            >
              ${t("book.rename")}
            </button>
          </div>
          ${
            this.naming
              ? nameForm({
                  label: t(this.naming === "name" ? "book.name" : "log.note"),
                  value: (this.naming === "name" ? name : note) ?? "",
                  onSave: (typed) => {
                    book.edit(setup.id, { [this.naming]: typed }).catch(reportFault);
                    this.naming = "";
                  },
                  onCancel: () => {
                    this.naming = "";
                  },
                })
              : nothing
          }
        </details>
      </section>
    `;
  }
}
customElements.define("ek-setup", SetupView);
