/** What was worked out about this setup and kept. */
import { html, nothing } from "lit";
import { Page } from "../../base/page.js";
import { Watch } from "../../base/watch.js";
import { sayWithUndo } from "../../parts/toast.js";
import { book, reportFault } from "../../store/index.js";
import { dropFinding, findingsOf } from "../../store/log/findings.js";
import { currentSetup } from "../../store/log/shoot.js";
import { t } from "../../words/index.js";
import { whenRead } from "../../words/numbers.js";

class Findings extends Page {
  constructor() {
    super();
    this.watch = new Watch(this, book);
  }

  /** @param {import("../../store/log/findings.js").Finding} finding */
  async drop(finding) {
    const undo = await dropFinding(finding);
    sayWithUndo(t("book.deleted", { name: t(`finding.${finding.by}`) }), undo);
  }

  render() {
    const findings = findingsOf(currentSetup());
    if (!findings.length) return nothing;
    return html`<details class="more">
      <summary>${t("finding.kept", { n: findings.length })}</summary>
      <ul class="readings">
        ${findings.map(
          (finding) => html`<li>
            <span>
              <strong>${t(`finding.${finding.by}`)}</strong> ${finding.words}
              <span class="hint">${whenRead(finding.at)}</span>
            </span>
            <button
              type="button"
              class="quiet"
              aria-label=${t("finding.delete", { words: finding.words })}
              @click=${() => this.drop(finding).catch(reportFault)}
            >
              ${t("book.delete")}
            </button>
          </li>`,
        )}
      </ul>
    </details>`;
  }
}
customElements.define("ek-findings", Findings);
