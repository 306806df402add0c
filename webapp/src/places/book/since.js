/** Then and now: one light over its readings, what it drifted in warmth, tint and amount. */
import { html, nothing } from "lit";
import { LiveQuestion } from "../../base/live-question.js";
import { Page } from "../../base/page.js";
import { properties } from "../../base/properties.js";
import { driftChart } from "../../charts/drift.js";
import { figureTable } from "../../charts/figures.js";
import { choice } from "../../parts/inputs.js";
import "../../parts/boot-progress.js";
import { Watch } from "../../base/watch.js";
import { verdictMark } from "../../parts/verdict.js";
import { problemNote } from "../../parts/warnings.js";
import { route } from "../../router.js";
import { book, settings } from "../../store/index.js";
import { sameLights } from "../../store/log/shoot.js";
import { bookQuestion } from "../../store/questions/reading.js";
import { t, tMaybe } from "../../words/index.js";
import { joined } from "../../words/isolated.js";
import { duv, mired, stopsChange, whenRead } from "../../words/numbers.js";
import { dialledWords } from "../../words/reading.js";

class SinceView extends Page {
  static properties = properties({ given: ["id"] });

  constructor() {
    super();
    this.id = "";
    this.since = /** @type {LiveQuestion<"since">} */ (new LiveQuestion(this));
    this.watch = new Watch(this, book, settings);
  }

  willUpdate() {
    const lights = sameLights(this.id);
    this.since.put(
      lights.some((light) => book.latest(light))
        ? {
            ask: "since",
            book: bookQuestion(...lights),
            lights,
            tolerance: settings.get("tolerance"),
          }
        : null,
    );
  }

  /** @param {any} series */
  renderSeries(series) {
    const name = series.pack.length
      ? t("since.with", { pack: series.pack.join(" + ") })
      : t("since.bare");
    const [first] = series.points;
    const last = series.points.at(-1);
    // The day is told by where it went farthest, not by where it ended.
    const greatest = series.greatest.length
      ? series.greatest.map((/** @type {number} */ place) => series.points[place])
      : [last];
    return html`<section>
      <h2>${name}</h2>
      ${
        series.points.length < 2
          ? html`<p class="hint">${t("since.one", { when: whenRead(first.at) })}</p>`
          : html`
              ${greatest.map(
                (/** @type {any} */ point) => html`<p class="headline">
                  ${t("since.greatest", { words: point.drift.words, when: whenRead(point.at) })}
                </p>`,
              )}
              <p class="reason">
                ${greatest[0].drift.verdict ? verdictMark(greatest[0].drift.verdict) : nothing}
                ${t("since.span", { from: whenRead(first.at), to: whenRead(last.at) })}
                ${
                  greatest.includes(last)
                    ? nothing
                    : t("since.last", { when: whenRead(last.at), words: last.drift.words })
                }
              </p>
              ${driftChart(series.points, { title: t("since.chart", { name }) })}
              ${figureTable(
                t("since.table"),
                [t("since.when"), t("since.warmth"), "ΔDuv", t("since.light")],
                series.points.map((/** @type {any} */ point) => [
                  html`<a href="#reading/${book.entry(point.id)?.of}">${whenRead(point.at)}</a>
                    ${
                      point.dimmer || point.dialled
                        ? html`<span class="hint"
                          >${joined([point.dimmer, dialledWords(point.dialled)])}</span
                        >`
                        : nothing
                    }`,
                  mired(point.drift.mired),
                  duv(point.drift.duv),
                  stopsChange(point.drift.stops),
                ]),
              )}
            `
      }
    </section>`;
  }

  render() {
    const light = book.standing(this.id);
    if (!light) return html`<h1>${t("place.book")}</h1><p class="empty">${t("book.gone")}</p>`;
    const setup = book.thing(light.parent);
    const others = book.below(light.parent, "light").reverse();
    return html`
      <h1>${t("since.title")}: ${light.data.name}</h1>
      <p class="hint"><a href="#setup/${setup?.id}">${setup?.data.name}</a></p>
      ${
        others.length > 1
          ? choice({
              id: "since-light",
              label: t("place.light"),
              value: light.id,
              options: others.map((one) => ({ value: one.id, label: one.data.name })),
              onChange: (id) => route.go("since", id),
            })
          : nothing
      }
      <ek-boot-progress></ek-boot-progress>
      ${problemNote(this.since.problem?.message)}
      ${
        this.since.answer
          ? this.since.answer.series.map((/** @type {any} */ one) => this.renderSeries(one))
          : this.since.waiting
            ? nothing
            : html`<p class="empty">${tMaybe("since.none", "")}</p>`
      }
    `;
  }
}
customElements.define("ek-since", SinceView);
