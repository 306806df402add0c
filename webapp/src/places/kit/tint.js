/** Duv, CC and cuts of plus and minus green: what each says, and how they go together. */
import { html } from "lit";
import { Page } from "../../base/page.js";
import { Watch } from "../../base/watch.js";
import { figureTable } from "../../charts/figures.js";
import { gels } from "../../store/kit/gels.js";
import { t } from "../../words/index.js";
import { cc, duv, kelvin } from "../../words/numbers.js";

class Tint extends Page {
  constructor() {
    super();
    this.watch = new Watch(this, gels);
  }

  renderTable() {
    const cuts = gels.nominal.filter(({ family }) => family === "green");
    if (!cuts.length) return html`<p class="hint">${t("tint.loading")}</p>`;
    return figureTable(
      t("tint.table", { cct: kelvin(cuts[0].reference_K) }),
      [t("tint.gel"), t("tint.cc"), "ΔDuv"],
      cuts.map((gel) => [gel.name, cc(gel.cc), duv(gel.duv)]),
    );
  }

  render() {
    return html`
      <h1>${t("tint.title")}</h1>
      <p class="lead">${t("tint.lead")}</p>
      ${
        /** @type {const} */ (["duv", "cc", "cuts"]).map(
          (part) => html`<section>
          <h2>${t(`tint.${part}`)}</h2>
          <p>${t(`tint.${part}Words`)}</p>
        </section>`,
        )
      }
      ${this.renderTable()}
    `;
  }
}
customElements.define("ek-tint", Tint);
