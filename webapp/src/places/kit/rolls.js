/** Rolls and sheets: what can be bought, and what is in stock. Kept at every keystroke. */
import { html, nothing } from "lit";
import { LiveQuestion } from "../../base/live-question.js";
import { Page } from "../../base/page.js";
import { Watch } from "../../base/watch.js";
import { textField } from "../../parts/inputs.js";
import { lengthField } from "../../parts/length-field.js";
import { rows } from "../../parts/rows.js";
import { problemNote } from "../../parts/warnings.js";
import { reportFault, settings } from "../../store/index.js";
import { gels } from "../../store/kit/gels.js";
import { typedIn } from "../../store/questions/by-the-roll.js";
import { t, tMaybe } from "../../words/index.js";
import { level } from "../../words/numbers.js";

class RollsView extends Page {
  constructor() {
    super();
    this.check = /** @type {LiveQuestion<"order">} */ (new LiveQuestion(this));
    this.watch = new Watch(this, settings, gels);
  }

  willUpdate() {
    // Nothing hangs: only to be told what is wrong with the sizes.
    this.check.put({
      ask: "order",
      hangs: [],
      rolls: settings.get("rolls").map((row) => (typedIn(row) ? row : { width_m: 1, length_m: 1 })),
      stock: settings
        .get("stock")
        .map((row) => (typedIn(row) ? row : { gel: "–", width_m: 1, length_m: 1 })),
    });
  }

  /**
   * @param {"rolls" | "stock"} list
   * @param {Record<string, string>} row
   * @param {number} i
   * @param {(fields: Record<string, string>) => void} change
   */
  renderSize(list, row, i, change) {
    const problemAt = (/** @type {string} */ name) => this.check.problemAt(`${list}.${i}.${name}`);
    return html`<div class="pair">
      ${lengthField({
        id: `${list}-${i}-width`,
        label: t("rolls.width"),
        name: "width",
        data: row,
        problemAt,
        onInput: change,
      })}
      ${lengthField({
        id: `${list}-${i}-length`,
        label: t("rolls.length"),
        name: "length",
        data: row,
        problemAt,
        onInput: change,
      })}
      ${
        list === "stock"
          ? textField({
              id: `${list}-${i}-count`,
              label: t("rolls.count"),
              number: true,
              value: row.count ?? "1",
              problem: problemAt("count"),
              onInput: (count) => change({ count }),
            })
          : nothing
      }
    </div>`;
  }

  /**
   * @param {Record<string, string>} row
   * @param {number} i
   * @param {(fields: Record<string, string>) => void} change
   */
  renderStock(row, i, change) {
    const problem = this.check.problemAt(`stock.${i}.gel`);
    return html`<div class="field">
        <label for="stock-${i}-gel">${t("rolls.gel")}</label>
        <select
          id="stock-${i}-gel"
          @change=${(/** @type {Event} */ event) =>
            change({ gel: /** @type {HTMLSelectElement} */ (event.target).value })}
        >
          <option value="" ?selected=${!row.gel}>${t(gels.all ? "gel.putOn" : "gel.loading")}</option>
          ${
            row.gel && !gels.all?.some(({ name }) => name === row.gel)
              ? html`<option value=${row.gel} selected>${row.gel}</option>`
              : nothing
          }
          ${[...gels.families()].map(
            ([family, members]) => html`<optgroup label=${tMaybe(`family.${family}`, family)}>
              ${members.map(
                ({ name }) =>
                  html`<option value=${name} ?selected=${name === row.gel}>${name}</option>`,
              )}
            </optgroup>`,
          )}
        </select>
        ${problem ? html`<p class="problem">${problem}</p>` : nothing}
      </div>
      ${this.renderSize("stock", row, i, change)}`;
  }

  render() {
    const removeLabel = (/** @type {unknown} */ _, /** @type {number} */ i) =>
      t("rolls.removeNth", { n: i + 1 });
    return html`
      <h1>${t("rolls.title")}</h1>
      <p class="links"><a href="#order">${t("order.title")}</a> <a href="#kit">${t("back.kit")}</a></p>
      ${problemNote(this.check.problemBeside(/^(rolls|stock)\.\d+\./))}
      <section>
        <h2>${t("rolls.buy")}</h2>
        <p class="hint">
          ${t("rolls.buyHint", { size: settings.get("length") === "m" ? `${level(1.22)} × ${level(7.62)} m` : "4′ × 25′" })}
        </p>
        ${rows({
          rows: settings.get("rolls"),
          addLabel: t("rolls.addSize"),
          blank: {},
          removeLabel,
          show: (row, i, change) => this.renderSize("rolls", row, i, change),
          onChange: (all) => settings.set("rolls", all).catch(reportFault),
        })}
      </section>
      <section>
        <h2>${t("rolls.stock")}</h2>
        <p class="hint">${t("rolls.stockHint")}</p>
        ${rows({
          rows: settings.get("stock"),
          addLabel: t("rolls.addStock"),
          blank: {},
          removeLabel,
          show: (row, i, change) => this.renderStock(row, i, change),
          onChange: (all) => settings.set("stock", all).catch(reportFault),
        })}
      </section>
    `;
  }
}
customElements.define("ek-rolls", RollsView);
