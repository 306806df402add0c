/** What the kept plan wants of a light, beside what was measured since. */
import { html, nothing } from "lit";
import { landsWords, planLine } from "../../parts/plan-line.js";
import { verdictMark } from "../../parts/verdict.js";
import { book } from "../../store/index.js";
import { gelsOn, labels } from "../../store/log/measured-gels.js";
import { matchesPlan, toDo } from "../../store/log/plan.js";
import { t } from "../../words/index.js";

/**
 * @param {import("../../store/log/book.js").Thing} light
 * @param {import("../../store/log/book.js").Thing} reading  its latest
 * @param {any} answer  its part of the kernel's "agree", when there
 */
export function planned(light, reading, answer) {
  const plan = light.data.planned;
  if (!plan) return nothing;
  const since = reading.id !== plan.from;
  const hangs = gelsOn(reading.data).sort().join();
  const asPlanned = hangs === labels(plan.gels, plan.gel_ids).sort().join();
  return html`
    ${planLine(plan, !toDo(light, reading))}
    ${
      matchesPlan(book.thing(light.parent))
        ? html`<p class="planned">
            <span class="what">${t("planned.measured")}</span>
            ${
              !since
                ? t("planned.notYet")
                : answer
                  ? html`${landsWords(answer, answer)}
                  ${verdictMark(answer.verdict)} ${asPlanned ? nothing : t("planned.otherGel")}`
                  : nothing
            }
          </p>`
        : nothing
    }
  `;
}
