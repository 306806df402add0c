/** Order: all gel that a setup, a location or the whole book hangs, against the stock. */
import { html, nothing } from "lit";
import "../../parts/boot-progress.js";
import { LiveQuestion } from "../../base/live-question.js";
import { Page } from "../../base/page.js";
import { properties } from "../../base/properties.js";
import { Watch } from "../../base/watch.js";
import { optionsOf, segments, textField } from "../../parts/inputs.js";
import { lengthField, unitOf } from "../../parts/length-field.js";
import { moreButton } from "../../parts/more.js";
import { shareText } from "../../parts/share-text.js";
import { fetchNote, toFetch } from "../../parts/to-fetch.js";
import { say } from "../../parts/toast.js";
import { problemNote, warningList } from "../../parts/warnings.js";
import { book, reportFault, settings } from "../../store/index.js";
import { gels } from "../../store/kit/gels.js";
import { turn } from "../../store/log/book.js";
import { labels, tradeName } from "../../store/log/measured-gels.js";
import { countedPieces } from "../../store/log/plan.js";
import { currentSetup, locations, placeWords } from "../../store/log/shoot.js";
import {
  cuttingQuestion,
  glassSize,
  stockQuestion,
  typedIn,
} from "../../store/questions/by-the-roll.js";
import { t } from "../../words/index.js";
import { listed } from "../../words/isolated.js";
import { gelsOf } from "./advice.js";

const SCOPES = /** @type {const} */ (["setup", "location", "book"]);

/** @typedef {import("../../store/log/book.js").Thing} Thing */

/** The gel's own size on a light, as typed. @param {Thing} light */
function ownSize(light) {
  const { gel_width_m, gel_width_ft, gel_height_m, gel_height_ft } = light.data;
  const size = {
    width_m: gel_width_m,
    width_ft: gel_width_ft,
    height_m: gel_height_m,
    height_ft: gel_height_ft,
  };
  return Object.fromEntries(Object.entries(size).filter(([, value]) => value));
}

/**
 * Whether a light is daylight through windows that have a cut list of their own: their gel, once
 * chosen, is counted there. One that was given a size of its own counts by that.
 * @param {Thing} light
 */
function throughGlass(light) {
  const place = book.standing(book.thing(light.parent)?.parent);
  return light.data.lamp === "daylight" && place?.data.windows?.length && !typedIn(ownSize(light));
}

/** Lights on screen at first, and how many more each time. */
const PAGE = 20;

/** Names that stand beside a piece on the screen; the rest is counted. */
const NAMED = 12;

/** For so many milliseconds setups are gone through before the screen gets a turn. */
const AT_ONCE = 20;

class OrderView extends Page {
  static properties = {
    scope: {},
    ...properties({ own: ["lit", "fault", "gathering", "done", "sizes", "sized"] }),
  };

  constructor() {
    super();
    /** @type {string} */
    this.scope = "setup";
    /** Lights and what shall hang on each. @type {Awaited<ReturnType<typeof gelsOf>>} */
    this.lit = [];
    this.fault = "";
    this.gathering = false;
    /** Setups looked at so far. */
    this.done = 0;
    /** Sizes being typed, by light. @type {Record<string, Record<string, string>>} */
    this.sizes = {};
    /** Lights whose size is on screen. */
    this.sized = PAGE;
    this.order = /** @type {LiveQuestion<"order">} */ (new LiveQuestion(this));
    this.watch = new Watch(this, book, settings, gels);
    this.gathered = "";
  }

  /** @returns {{setups: Thing[], places: Thing[]}} what the order is for */
  get extent() {
    const setup = currentSetup();
    const location = book.standing(setup?.parent);
    if (this.scope === "setup")
      return { setups: setup ? [setup] : [], places: location ? [location] : [] };
    const places = this.scope === "location" ? (location ? [location] : []) : locations();
    return { places, setups: places.flatMap((place) => book.below(place.id, "setup")) };
  }

  get partWords() {
    const setup = currentSetup();
    if (this.scope === "setup") return placeWords(setup);
    if (this.scope === "location") return book.thing(setup?.parent)?.data.name ?? "";
    return book
      .below(null, "production")
      .map(({ data }) => data.name)
      .join(", ");
  }

  /** Ask for each setup what it needs, when something that matters changed. */
  async gather() {
    const { setups } = this.extent;
    const advised = settings.get("order").advised;
    const state = JSON.stringify([
      setups.map(({ id }) => id),
      book.version,
      advised,
      settings.get("tolerance"),
      settings.get("without"),
      settings.get("ownGels").map(({ name, at }) => [name, at]),
      settings.get("white"),
      Boolean(gels.all),
    ]);
    if (state === this.gathered) return;
    this.gathered = state;
    this.gathering = true;
    this.done = 0;
    this.fault = "";
    try {
      const lit = [];
      let pause = performance.now() + AT_ONCE;
      for (const setup of setups) {
        lit.push(...(await gelsOf(setup, advised)));
        if (state !== this.gathered || !this.isConnected) return;
        this.done += 1;
        if (performance.now() < pause) continue;
        await turn();
        pause = performance.now() + AT_ONCE;
      }
      this.lit = lit;
    } catch (error) {
      this.fault = error instanceof Error ? error.message : String(error);
    }
    this.gathering = false;
  }

  /** Everything that hangs, as the kernel takes it. */
  get hangs() {
    const { piece } = settings.get("order");
    const lamps = this.lit
      .filter(({ light, gels: names }) => names.length && !throughGlass(light))
      .map(({ light, gels: names, hangs }) => {
        const own = ownSize(light);
        return {
          gels: names.map(tradeName),
          ...(typedIn(own) ? own : piece),
          count: light.data.cuts ?? "",
          where: light.data.name,
          on: "lamp",
          hung: hangs.map(tradeName),
        };
      });
    const glass = this.extent.places.flatMap((place) => {
      const common = labels(place.data.window_gels, place.data.window_gel_ids).map(tradeName);
      return (place.data.windows ?? [])
        .map((/** @type {any} */ window) => ({
          gels: window.gels ? labels(window.gels, window.gel_ids).map(tradeName) : common,
          ...glassSize(window),
          where: [place.data.name, window.name].filter(Boolean).join(", ").slice(0, 120),
        }))
        .filter((/** @type {any} */ { gels: names }) => names.length);
    });
    return [...lamps, ...glass];
  }

  willUpdate() {
    this.gather();
    const { hangs } = this;
    this.order.put(
      hangs.length
        ? {
            ask: "order",
            hangs,
            ready: countedPieces(),
            stock: stockQuestion(),
            spare_percent: settings.get("order").spare_percent,
            ...cuttingQuestion(),
          }
        : null,
    );
  }

  /** @param {Partial<import("../../store/settings.js").Values["order"]>} fields */
  set(fields) {
    settings.set("order", { ...settings.get("order"), ...fields }).catch(reportFault);
  }

  /** @param {any} gel @param {number} [most]  names; all without it */
  pieceLines(gel, most) {
    return gel.pieces.map((/** @type {any} */ { words, where }) => {
      const rest = most ? where.length - most : 0;
      const more = rest > 0 ? [t("find.more", { n: rest })] : [];
      return where.length ? `${words} (${listed([...where.slice(0, most), ...more])})` : words;
    });
  }

  /** @param {any} answer */
  async share(answer) {
    const title = t("order.shareTitle", { place: this.partWords });
    const lines = answer.gels.flatMap((/** @type {any} */ gel) => [
      gel.words,
      ...this.pieceLines(gel).map((/** @type {string} */ line) => `  ${line}`),
      ...(gel.pieces.length && toFetch([gel.gel]).length
        ? [`  ${t("gels.fetch", { gels: gel.gel })}`]
        : []),
      ...(gel.hung ? [`  ${t("order.hung", { n: gel.hung })}`] : []),
      ...(gel.ready ? [`  ${t("order.ready", { n: gel.ready })}`] : []),
    ]);
    const text = [title, "", ...lines, ...answer.warnings].join("\n");
    await shareText(title, text);
  }

  /** @param {any} gel */
  renderGel(gel) {
    const have = gel.have.map((/** @type {any} */ size) => size.words).join(", ");
    return html`<li class="pack">
      <strong>${gel.words}</strong>
      ${
        gel.pieces.length
          ? html`<p class="reason">${t("order.hangs", { pieces: this.pieceLines(gel, NAMED).join("; ") })}</p>`
          : nothing
      }
      ${gel.pieces.length ? fetchNote([gel.gel]) : nothing}
      ${gel.hung ? html`<p class="reason">${t("order.hung", { n: gel.hung })}</p>` : nothing}
      ${gel.ready ? html`<p class="reason">${t("order.ready", { n: gel.ready })}</p>` : nothing}
      ${have ? html`<p class="reason">${t("order.have", { have })}</p>` : nothing}
      ${gel.unsized ? html`<p class="reason">${t("order.unsized", { n: gel.unsized })}</p>` : nothing}
      ${gel.seams ? html`<p class="reason">${t("order.seams", { n: gel.seams })}</p>` : nothing}
    </li>`;
  }

  renderGlass() {
    const names = this.lit
      .filter(({ light, gels: some }) => some.length && throughGlass(light))
      .map(({ light }) => light.data.name);
    return names.length
      ? html`<p class="hint">${t("order.throughGlass", { names: listed(names) })}</p>`
      : nothing;
  }

  /** @param {any} answer */
  renderAnswer(answer) {
    const buy = answer.gels.filter((/** @type {any} */ gel) => gel.order.length).length;
    return html`
      ${buy ? nothing : html`<p class="headline small">${answer.words}</p>`}
      <ul class="packs" data-testid="order">
        ${answer.gels.map((/** @type {any} */ gel) => this.renderGel(gel))}
      </ul>
      ${warningList(answer.warnings)}
      <div class="actions">
        <button type="button" class="quiet" @click=${() => window.print()}>
          ${t("report.print")}
        </button>
        <button
          type="button"
          class="main"
          ?disabled=${this.gathering || this.order.waiting}
          @click=${() => this.share(answer)}
        >
          ${t("order.share")}
        </button>
      </div>
    `;
  }

  /** @param {string} id @param {Record<string, string>} fields */
  typeSize(id, fields) {
    this.sizes = { ...this.sizes, [id]: { ...this.sizes[id], ...fields } };
  }

  /** @param {Thing} light */
  async keepSize(light) {
    const size = { ...ownSize(light), ...this.sizes[light.id] };
    const unit = unitOf(size, "width");
    const other = unit === "m" ? "ft" : "m";
    /** @type {Record<string, string | null>} */
    const data = { [`gel_width_${other}`]: null, [`gel_height_${other}`]: null };
    if (size.cuts !== undefined) data.cuts = size.cuts;
    for (const name of ["width", "height"]) {
      data[`gel_${name}_${unit}`] = size[`${name}_${unit}`] || null;
    }
    await book.edit(light.id, data);
    const { [light.id]: _, ...rest } = this.sizes;
    this.sizes = rest;
    say(t("order.sizeKept", { name: light.data.name }));
  }

  renderSizes() {
    const { piece, spare_percent } = settings.get("order");
    const lamps = this.lit.filter(({ gels: names }) => names.length);
    return html`<section class="no-print">
      <p class="hint">${t("order.stockHint")}</p>
      <h2>${t("order.piece")}</h2>
      <div class="pair">
        ${["width", "height"].map((name) =>
          lengthField({
            id: `order-${name}`,
            label: t(`windows.${/** @type {"width"} */ (name)}`),
            name,
            data: piece,
            problemAt: () => undefined,
            onInput: (fields) => this.set({ piece: { ...piece, ...fields } }),
          }),
        )}
      </div>
      ${textField({
        id: "order-spare",
        label: t("order.spare"),
        unit: "%",
        number: true,
        value: spare_percent,
        problem: this.order.problemAt("spare_percent"),
        onInput: (value) => this.set({ spare_percent: value }),
      })}
      ${
        lamps.length
          ? html`<details class="more">
              <summary>${t("order.sizes")}</summary>
              <p class="hint">${t("order.sizesHint")}</p>
              ${lamps.slice(0, this.sized).map(({ light }) => this.renderSize(light))}
              ${moreButton(lamps.length - this.sized, () => {
                this.sized += PAGE;
              })}
            </details>`
          : nothing
      }
    </section>`;
  }

  /** @param {Thing} light */
  renderSize(light) {
    // The light as it stands: what was gathered may be older.
    const now = book.thing(light.id) ?? light;
    const typed = this.sizes[light.id];
    const data = { ...ownSize(now), ...typed };
    return html`<fieldset class="size">
      <legend>${now.data.name}</legend>
      <div class="pair">
        ${["width", "height"].map((name) =>
          lengthField({
            id: `size-${light.id}-${name}`,
            label: t(`windows.${/** @type {"width"} */ (name)}`),
            name,
            data,
            problemAt: () => undefined,
            onInput: (fields) => this.typeSize(light.id, fields),
          }),
        )}
      </div>
      <div class="pair">
        ${textField({
          id: `size-${light.id}-cuts`,
          label: t("balance.cuts"),
          number: true,
          value: typed?.cuts ?? now.data.cuts ?? "",
          onInput: (cuts) => this.typeSize(light.id, { cuts }),
        })}
        <button
          type="button"
          ?disabled=${!typed}
          @click=${() => this.keepSize(now).catch(reportFault)}
        >
          ${t("order.keepSize")}
        </button>
      </div>
    </fieldset>`;
  }

  render() {
    const { answer, problem } = this.order;
    const unread = this.lit.filter((one) => one.unread).length;
    const at = /^hangs\.(\d+)\./.exec(problem?.field ?? "");
    const where = at ? this.hangs[Number(at[1])]?.where : "";
    const other = this.order.problemBeside(["spare_percent"]);
    const message = [where, other].filter(Boolean).join(": ");
    return html`
      <h1>${t("order.title")}</h1>
      <p class="links">
        <a href="#kit">${t("back.kit")}</a> <a href="#rolls">${t("order.stockLink")}</a>
      </p>
      ${segments({
        name: "order-scope",
        legend: t("order.scope"),
        quiet: true,
        value: this.scope,
        options: optionsOf(SCOPES, (scope) => t(`order.${scope}`)),
        onChange: (scope) => {
          location.hash = `order/${scope}`;
        },
      })}
      <p class="reason">${this.partWords}</p>
      <label class="check no-print">
        <input
          type="checkbox"
          .checked=${settings.get("order").advised}
          @change=${(/** @type {Event} */ event) =>
            this.set({ advised: /** @type {HTMLInputElement} */ (event.target).checked })}
        />
        <span>${t("order.advised")}</span>
      </label>
      <section
        class="answer small"
        aria-busy=${this.gathering || this.order.waiting}
        aria-label=${t("order.answer")}
      >
        <ek-boot-progress></ek-boot-progress>
        ${problemNote(this.fault)} ${problemNote(message)}
        ${
          this.gathering && (!answer || this.extent.setups.length > 3)
            ? html`<p class="hint">
                ${t("order.gathering", { done: this.done, n: this.extent.setups.length })}
              </p>`
            : nothing
        }
        ${answer ? this.renderAnswer(answer) : nothing} ${this.renderGlass()}
        ${
          answer || problem || this.gathering
            ? nothing
            : html`<p class="empty">${t("order.empty")}</p>`
        }
      </section>
      ${unread ? html`<p class="problem">${t("order.unread", { n: unread })}</p>` : nothing}
      ${this.renderSizes()}
    `;
  }
}
customElements.define("ek-order", OrderView);
