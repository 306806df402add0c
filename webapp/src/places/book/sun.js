/** The sun at a location through one day: when it enters a window, and how daylight is coloured. */
import { html, nothing } from "lit";
import { properties } from "../../base/properties.js";
import { horizonLine } from "../../charts/horizon-line.js";
import { daylightColour, readDay, sunHeight, sunInWindows } from "../../charts/sun-day.js";
import { LocationPage } from "./location-page.js";
import "../../parts/boot-progress.js";
import { LiveQuestion } from "../../base/live-question.js";
import { Watch } from "../../base/watch.js";
import { facing } from "../../parts/compass.js";
import { optionsOf, segments, textField } from "../../parts/inputs.js";
import { whereAmI } from "../../parts/position.js";
import { rows } from "../../parts/rows.js";
import { say } from "../../parts/toast.js";
import { problemNote, warningList } from "../../parts/warnings.js";
import { book, reportFault, settings } from "../../store/index.js";
import { currentSetup, keepReading, lightNamed } from "../../store/log/shoot.js";
import { t } from "../../words/index.js";
import { joined } from "../../words/isolated.js";
import { dayOf, degrees, duv, illuminance, kelvin, level } from "../../words/numbers.js";
import { clockAt, daylightReadings, deviceOffset, facingWindows, withCct } from "./daylight.js";

const KEPT = /** @type {const} */ ([
  "lat_deg",
  "lon_deg",
  "utc_offset_h",
  "facing_deg",
  "horizon_deg",
]);
const SKIES = /** @type {const} */ (["clear", "hazy", "overcast"]);
const MOST_DAYS = 6;
/** Three numbers or more: no plain latitude. */
const IN_ONE_PIECE = /\d\D+\d+\D+\d/;

const BLANK = {
  lat_deg: "",
  lon_deg: "",
  utc_offset_h: "",
  facing_deg: "",
  horizon_deg: "",
  /** What stands before the window, point by point. */
  horizon: /** @type {{azimuth_deg?: string, altitude_deg?: string}[]} */ ([]),
  date: "",
  sky: /** @type {typeof SKIES[number]} */ ("clear"),
};

/** Today as this phone's calendar has it. */
function today() {
  const now = new Date();
  const two = (/** @type {number} */ value) => String(value).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** @extends {LocationPage<typeof BLANK>} */
class SunView extends LocationPage {
  static properties = { ...LocationPage.properties, ...properties({ own: ["found"] }) };

  constructor() {
    super({
      name: "sun",
      blank: () => ({ ...BLANK, date: today() }),
      inBook: [...KEPT, "horizon"],
    });
    /** Readings of the day, with their CCT. @type {Awaited<ReturnType<typeof withCct>>} */
    this.found = [];
    this.asked = "";
    /** The line as it was before each touch. @type {(typeof BLANK.horizon)[]} */
    this.undone = [];
    this.drawn = false;
    this.sun = /** @type {LiveQuestion<"sun">} */ (new LiveQuestion(this));
    this.watch = new Watch(this, book);
  }

  /** What the book keeps of this form, as text. */
  get kept() {
    const data = this.location?.data ?? {};
    const texts = /** @type {Record<typeof KEPT[number], string>} */ (
      Object.fromEntries(KEPT.map((name) => [name, String(data[name] ?? "")]))
    );
    return { ...texts, horizon: /** @type {typeof BLANK.horizon} */ (data.horizon ?? []) };
  }

  get changed() {
    const kept = this.kept;
    const line = JSON.stringify(this.horizon) !== JSON.stringify(kept.horizon);
    return line || KEPT.some((name) => this.typed[name] !== kept[name]);
  }

  /** The points that have both of their numbers. */
  get horizon() {
    return this.typed.horizon.filter((one) => one.azimuth_deg?.trim() && one.altitude_deg?.trim());
  }

  /** Latitude and longitude, which a map gives in one piece. */
  get where() {
    const { lat_deg, lon_deg } = this.typed;
    const { answer } = this.sun;
    return !answer || !IN_ONE_PIECE.test(lat_deg)
      ? { lat_deg, lon_deg }
      : { lat_deg: String(answer.lat_deg), lon_deg: String(answer.lon_deg) };
  }

  /** Hours ahead of UTC: as typed, otherwise of this phone on that day. */
  get offset() {
    return this.typed.utc_offset_h.trim() || deviceOffset(this.typed.date);
  }

  /** @param {import("../../store/log/book.js").Thing} location */
  async write(location) {
    this.type(this.where);
    await book.edit(location.id, {
      ...Object.fromEntries(KEPT.map((name) => [name, this.typed[name].trim() || null])),
      horizon: this.horizon.length ? this.horizon : null,
    });
    return t("sun.kept", { name: location.data.name });
  }

  async locate() {
    try {
      const { latitude, longitude } = await whereAmI();
      this.type({ lat_deg: String(latitude), lon_deg: String(longitude) });
    } catch (error) {
      say(error instanceof Error ? error.message : String(error));
    }
  }

  async askCompass() {
    try {
      this.type({ facing_deg: String(await facing()) });
      say(t("compass.steel"));
    } catch (error) {
      say(error instanceof Error ? error.message : String(error));
    }
  }

  willUpdate() {
    const { lat_deg, lon_deg, facing_deg, horizon_deg, date, sky } = this.typed;
    this.sun.put(
      lat_deg.trim() && (lon_deg.trim() || IN_ONE_PIECE.test(lat_deg)) && date
        ? {
            ask: "sun",
            lat_deg,
            lon_deg,
            date,
            utc_offset_h: this.offset,
            facing_deg,
            horizon_deg,
            horizon: this.horizon,
            windows: facingWindows(this.location?.data),
            sky,
          }
        : null,
    );
    this.findReadings().catch(reportFault);
  }

  /** The clock of the place, for the times that readings bear. @param {string} at */
  clock(at) {
    const typed = Number(this.offset.replace(",", ".").replace("−", "-"));
    const hours = this.sun.answer?.utc_offset_h ?? (Number.isFinite(typed) ? typed : 0);
    return clockAt(at, hours);
  }

  async findReadings() {
    const all = daylightReadings(this.of).filter(
      ({ reading }) => this.clock(reading.at).date === this.typed.date,
    );
    const asked = all.map(({ reading }) => reading.id).join();
    if (asked === this.asked) return;
    this.asked = asked;
    const found = await withCct(all.reverse());
    if (asked === this.asked) this.found = found;
  }

  renderPlace() {
    const { typed } = this;
    const dateProblem = this.sun.problemAt("date");
    const number = (
      /** @type {typeof KEPT[number]} */ name,
      /** @type {{label: string, hint?: string, unit?: string, value?: string}} */ words,
    ) =>
      textField({
        id: `sun-${name}`,
        value: typed[name],
        // A keypad for numbers has no minus, and no letters for NE or 42.88 S.
        number: name === "horizon_deg",
        problem: this.sun.problemAt(name),
        onInput: (value) => this.type({ [name]: value }),
        ...words,
      });
    return html`<section>
      <div class="pair">
        ${number("lat_deg", { label: t("sun.lat"), hint: t("sun.latHint"), unit: "°" })}
        ${number("lon_deg", { label: t("sun.lon"), hint: t("sun.lonHint"), unit: "°" })}
      </div>
      <div class="actions">
        <button type="button" class="quiet" @click=${this.locate}>${t("sun.here")}</button>
      </div>
      <div class="pair">
        <div class="field">
          <label for="sun-date">${t("sun.date")}</label>
          <input
            id="sun-date"
            type="date"
            .value=${typed.date}
            @input=${(/** @type {Event} */ event) =>
              this.type({ date: /** @type {HTMLInputElement} */ (event.target).value })}
          />
          ${dateProblem ? html`<p class="problem">${dateProblem}</p>` : nothing}
        </div>
        ${number("utc_offset_h", { label: t("sun.offset"), unit: "h", value: this.offset })}
      </div>
      ${this.renderDays()}
      <div class="actions">
        <button type="button" class="quiet" @click=${this.askCompass}>${t("compass.ask")}</button>
      </div>
      ${number("facing_deg", { label: t("sun.facing"), hint: t("sun.facingHint"), unit: "°" })}
      ${
        typed.facing_deg.trim()
          ? html`${number("horizon_deg", {
              label: t("sun.horizon"),
              hint: t("sun.horizonHint"),
              unit: "°",
            })}
              ${this.renderLine()}`
          : nothing
      }
      ${segments({
        name: "sun-sky",
        legend: t("sun.sky"),
        value: typed.sky,
        options: optionsOf(SKIES, (sky) => t(`sun.${sky}`)),
        onChange: (sky) => this.type({ sky: /** @type {"clear"} */ (sky) }),
      })}
    </section>`;
  }

  /** The points as numbers, each with its place in the list; what is no number, as understood. */
  get points() {
    const understood = this.sun.answer?.window?.horizon ?? [];
    const whole = this.horizon;
    return this.typed.horizon.flatMap((row, at) => {
      const nth = whole.indexOf(row);
      if (nth < 0) return [];
      const known = understood.length === whole.length ? understood[nth] : undefined;
      const number = (/** @type {"azimuth_deg" | "altitude_deg"} */ name) => {
        const typed = Number(row[name]?.replace(",", "."));
        return Number.isFinite(typed) ? typed : known?.[name];
      };
      const [azimuth_deg, altitude_deg] = [number("azimuth_deg"), number("altitude_deg")];
      return azimuth_deg === undefined || altitude_deg === undefined
        ? []
        : [{ at, azimuth_deg, altitude_deg }];
    });
  }

  /** @param {typeof BLANK.horizon} horizon @param {boolean} [further]  of the same touch */
  draw(horizon, further = false) {
    if (!further) this.undone.push(this.typed.horizon);
    this.type({ horizon });
  }

  /** The line on the sun's way, where the window's view is known. */
  renderDrawn() {
    const { answer } = this.sun;
    const { horizon } = this.typed;
    if (!answer?.window) return nothing;
    const text = (/** @type {import("../../charts/horizon-line.js").Point} */ point) => ({
      azimuth_deg: String(point.azimuth_deg),
      altitude_deg: String(point.altitude_deg),
    });
    const { words, sky_words } = answer.window;
    return html`${horizonLine({
      day: answer,
      points: this.points,
      onPlace: (point) => this.draw([...horizon, text(point)]),
      onMove: (at, point, begins) =>
        this.draw(
          this.typed.horizon.map((row, i) => (i === at ? text(point) : row)),
          !begins,
        ),
      onRemove: (at) => this.draw(horizon.filter((_, i) => i !== at)),
    })}
      <p class="reason">${words} ${sky_words}</p>
      <div class="actions">
        <button
          type="button"
          ?disabled=${!this.undone.length}
          @click=${() => this.type({ horizon: this.undone.pop() ?? [] })}
        >
          ${t("undo")}
        </button>
      </div>`;
  }

  /** What stands before the window, where it is no level line. */
  renderLine() {
    const { horizon } = this.typed;
    const field = (
      /** @type {number} */ i,
      /** @type {"azimuth_deg" | "altitude_deg"} */ name,
      /** @type {(fields: Record<string, string>) => void} */ change,
    ) =>
      textField({
        id: `sun-horizon-${i}-${name}`,
        label: t(`sun.${name}`),
        unit: "°",
        value: horizon[i][name] ?? "",
        number: name === "altitude_deg",
        problem: this.sun.problemAt(`horizon.${i}.${name}`),
        onInput: (value) => change({ [name]: value }),
      });
    // Once it has opened it stays so, though the last point is taken off.
    this.drawn ||= horizon.length > 0;
    return html`<details class="more" ?open=${this.drawn}>
      <summary>${t("sun.line")}</summary>
      <p class="hint">${t("sun.lineHint")}</p>
      ${this.renderDrawn()}
      ${rows({
        rows: horizon,
        addLabel: t("sun.lineAdd"),
        blank: {},
        removeLabel: (_row, i) => t("sun.lineRemove", { n: i + 1 }),
        show: (_row, i, change) =>
          html`<div class="pair">
            ${field(i, "azimuth_deg", change)} ${field(i, "altitude_deg", change)}
          </div>`,
        onChange: (horizon) => this.type({ horizon }),
      })}
    </details>`;
  }

  /** Days on which daylight was read here, newest first. */
  renderDays() {
    const dates = daylightReadings(this.of).map(({ reading }) => this.clock(reading.at).date);
    const days = [...new Set(dates)].sort().reverse().slice(0, MOST_DAYS);
    if (!days.length) return nothing;
    return html`<div class="row" role="group" aria-label=${t("sun.days")}>
      ${days.map(
        (date) => html`<button
          type="button"
          class="chip"
          aria-pressed=${date === this.typed.date ? "true" : "false"}
          @click=${() => this.type({ date })}
        >
          ${dayOf(`${date}T12:00:00`)}
        </button>`,
      )}
    </div>`;
  }

  /** @param {any} day */
  renderDay(day) {
    const spans = (/** @type {any[]} */ some) =>
      some.map(({ words }) => words).join(", ") || t("sun.none");
    const { highest, window: glass } = day;
    return html`
      <p class="headline small" data-testid="headline">${glass ? glass.words : day.words}</p>
      ${glass ? html`<p class="change">${day.words} ${glass.sky_share < 0.995 ? glass.sky_words : ""}</p>` : nothing}
      ${warningList(day.warnings)}
      <p class="caution">${day.cautions.join(" ")}</p>
      ${sunHeight(day)} ${sunInWindows(day)}
      <dl class="facts">
        <dt>${t("sun.golden")}</dt>
        <dd>${spans(day.golden)}</dd>
        <dt>${t("sun.blue")}</dt>
        <dd>${spans(day.blue)}</dd>
        <dt>${t("sun.highest")}</dt>
        <dd>
          ${t("sun.highestAt", {
            time: highest.time,
            altitude: degrees(highest.altitude_deg),
            azimuth: degrees(highest.azimuth_deg),
          })}
        </dd>
      </dl>
      ${this.renderColour(day)}
    `;
  }

  /**
   * Put the daylight of an hour among the lights of the setup we work in.
   * @param {import("../../store/log/book.js").Thing} reading
   * @param {string} time
   */
  pick({ data, at }, time) {
    const { pack: _, gel_ids: _ids, stage: _stage, follows: _follows, ...read } = data;
    return this.keeping.run(async () => {
      const name = t("sun.daylightAt", { time });
      await keepReading({
        light: lightNamed(currentSetup(), name)?.id ?? null,
        lightData: { name, lamp: "daylight" },
        data: { ...read, lamp: "daylight", read_at: at },
      });
      return t("sun.picked", { name });
    });
  }

  /** @param {any} day */
  renderColour(day) {
    const unit = settings.get("illuminance");
    const readings = this.found.map((one) => {
      const { light, reading, cct_K } = one;
      const { time, minute } = this.clock(reading.at);
      const more = [`Duv ${duv(one.duv)}`, one.illuminance_lx ? illuminance(one, unit) : ""];
      const words = joined([
        t("sun.reading", { time, name: light.data.name, cct: kelvin(cct_K) }),
        ...more.filter(Boolean),
      ]);
      return {
        minute,
        cct_K,
        words,
        time,
        reading,
        duv: one.duv,
        level: one[`illuminance_${unit}`],
      };
    });
    const chart = (/** @type {"duv" | "level"} */ of) =>
      readings.map((one) => ({ minute: one.minute, value: one[of] }));
    return html`
      <h2>${t("sun.colour")}</h2>
      ${daylightColour(day, readings)} ${readDay(chart("duv"), "Duv", duv)}
      ${readDay(chart("level"), t("sun.level", { unit }), (value) => level(value))}
      <p class="reason">${day.estimate.words}</p>
      ${
        readings.length
          ? html`<h3>${t("sun.readings")}</h3>
              <ol class="numbered">
                ${readings.map(
                  ({ words, time, reading }) => html`<li>
                    ${words}
                    <button
                      type="button"
                      class="quiet"
                      aria-label=${t("sun.pickAt", { time })}
                      @click=${() => this.pick(reading, time)}
                    >
                      ${t("sun.pick")}
                    </button>
                  </li>`,
                )}
              </ol>`
          : html`<p class="hint">${t("sun.noReadings")}</p>`
      }
    `;
  }

  render() {
    const { location } = this;
    if (!location) return this.renderGone(t("location.sun"));
    const { answer, problem } = this.sun;
    return html`
      <h1>${t("sun.title", { name: location.data.name })}</h1>
      <p class="links">
        <a href="#book">${t("back.book")}</a>
        <a href="#windows/${this.of}">${t("location.windows")}</a>
      </p>
      <section class="answer small" aria-busy=${this.sun.waiting} aria-label=${t("sun.answer")}>
        <ek-boot-progress></ek-boot-progress>
        ${answer ? this.renderDay(answer) : nothing} ${problemNote(this.sun.problemBeside([...KEPT, "date"]))}
        ${answer || problem ? nothing : html`<p class="hint">${t("sun.empty")}</p>`}
      </section>
      ${this.renderPlace()}
      ${this.renderKeep(t("sun.keep"))}
    `;
  }
}
customElements.define("ek-sun", SunView);
