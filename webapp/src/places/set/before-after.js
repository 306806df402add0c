/** The balance field of a set before and after a plan, one at a time. */
import { html, nothing } from "lit";
import { LiveQuestion } from "../../base/live-question.js";
import { Page } from "../../base/page.js";
import { properties } from "../../base/properties.js";
import { balanceField } from "../../charts/balance-field.js";
import { segments } from "../../parts/inputs.js";
import { settings } from "../../store/index.js";
import { gelTerms } from "../../store/questions/reading.js";
import { t } from "../../words/index.js";

class BeforeAfter extends Page {
  static properties = properties({ given: ["white", "lights", "parts"], own: ["side"] });

  constructor() {
    super();
    /** @type {any} the plan's white */
    this.white = undefined;
    /** @type {Record<string, any>[]} R of each light as it is, with what it is meant to be */
    this.lights = [];
    /** @type {any[]} what the plan does to each */
    this.parts = [];
    /** @type {"before" | "after"} */
    this.side = "after";
    this.chart = /** @type {LiveQuestion<"field">} */ (new LiveQuestion(this));
  }

  willUpdate() {
    const { x, y } = this.white;
    const before = this.side === "before";
    this.chart.put({
      ask: "field",
      target: { x, y },
      tolerance: settings.get("tolerance"),
      ...gelTerms(),
      lights: before
        ? this.lights
        : this.parts.map(({ name, lands }, i) => {
            const { meant, own_gels } = this.lights[i];
            return { name, x: lands.x, y: lands.y, meant, own_gels };
          }),
      packs: this.parts.map(({ pack }) => (before && pack ? pack.gels : null)),
    });
  }

  render() {
    return html`
      ${segments({
        name: "before-after",
        legend: t("balance.field"),
        quiet: true,
        value: this.side,
        options: { before: t("balance.before"), after: t("balance.after") },
        onChange: (side) => {
          this.side = /** @type {"before"} */ (side);
        },
      })}
      ${
        this.chart.answer
          ? balanceField(this.chart.answer, { title: t(`balance.title.${this.side}`) })
          : nothing
      }
    `;
  }
}
customElements.define("ek-before-after", BeforeAfter);
