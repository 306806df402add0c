/** The plan that was kept for this setup, above its lights. */
import { html, nothing } from "lit";
import { Page } from "../../base/page.js";
import { Watch } from "../../base/watch.js";
import { sayWithUndo } from "../../parts/toast.js";
import { book, reportFault, settings } from "../../store/index.js";
import { dropPlan, matchesPlan, matchPlan } from "../../store/log/plan.js";
import { currentSetup } from "../../store/log/shoot.js";
import { t } from "../../words/index.js";
import { whenRead } from "../../words/numbers.js";

class PlanNote extends Page {
  constructor() {
    super();
    this.watch = new Watch(this, book, settings);
  }

  async drop() {
    const setup = currentSetup();
    if (!setup) return;
    const undo = await dropPlan(setup);
    sayWithUndo(t("planned.dropped"), undo);
  }

  render() {
    const setup = currentSetup();
    const plan = setup?.data.plan;
    if (!setup || !plan) return nothing;
    return html`<section class="plan" aria-label=${t("planned.plan")}>
      <p>${t("planned.setup", { words: plan.words })} <span class="hint">${whenRead(plan.at)}</span></p>
      ${
        matchesPlan(setup)
          ? nothing
          : html`<p class="hint">
              ${t("planned.otherWhite", { white: t("white.plain", { cct: plan.white.cct_K }) })}
            </p>`
      }
      <div class="actions">
        <button type="button" class="quiet" @click=${() => this.drop().catch(reportFault)}>
          ${t("planned.drop")}
        </button>
        ${
          matchesPlan(setup)
            ? nothing
            : html`<button type="button" @click=${() => matchPlan(setup).catch(reportFault)}>
                ${t("planned.return")}
              </button>`
        }
      </div>
    </section>`;
  }
}
customElements.define("ek-plan-note", PlanNote);
