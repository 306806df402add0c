/** The answer to one reading: what to do first, then where it lands, then why. */
import { html, nothing } from "lit";
import { figureTable } from "../../charts/figures.js";
import { dimLine, dimsFirst } from "../../parts/dim-line.js";
import {
  changeWords,
  inAll,
  orLeave,
  packFigures,
  packReasons,
  packWords,
} from "../../parts/pack-card.js";
import { verdictMark } from "../../parts/verdict.js";
import { assumed, warningList } from "../../parts/warnings.js";
import { t } from "../../words/index.js";
import { coordinate, duv, kelvin, mired, steps, stops } from "../../words/numbers.js";

/** The pack to hang: none on a light that holds as it is. @param {any} fix */
export function bestPack(fix) {
  return fix.verdict === "holds" || dimsFirst(fix) ? undefined : fix.packs[0];
}

/** Whether it is a colour, such as a green screen's, that no gel should make white. @param {any} fix */
const noWhite = (fix) => fix.is_colour && !fix.packs.length;

/** The one line that counts. @param {any} fix the kernel's answer to "fix" */
export function headline(fix) {
  if (!fix.target) return t("answer.found");
  if (dimsFirst(fix)) return fix.dim.words;
  if (fix.verdict === "holds") return t("answer.leave");
  if (noWhite(fix)) return t("answer.colour");
  const best = bestPack(fix);
  return best ? changeWords(best) || packWords(best) : t("answer.noGel");
}

/** The answer in one sentence, to be heard. @param {any} fix */
export function answerSentence(fix) {
  if (!fix.target) return `${headline(fix)}.`;
  const best = bestPack(fix);
  if (!best) return `${headline(fix)}. ${fix.offset.words}.`;
  return t("answer.sentence", {
    pack: changeWords(best) || packWords(best),
    cct: kelvin(best.lands.cct_K),
    verdict: t(`verdict.${/** @type {"near"} */ (best.promise)}`),
    stops: stops(best.stops_lost),
  });
}

/**
 * @param {any} fix
 * @param {any} [before]  the answer to the reading before the fix
 */
export function answerCard(fix, before) {
  const best = bestPack(fix);
  const { reading, offset, dial } = fix;
  if (!fix.target) {
    return html`
      <p class="headline" data-testid="headline">${headline(fix)}</p>
      <p class="now">
        <span class="what">${t("answer.now")}</span>
        ${kelvin(reading.cct_K)}, Duv ${duv(reading.duv)}
      </p>
      ${assumed(fix)} ${warningList(fix.warnings)}
    `;
  }
  return html`
    <p class="headline" data-testid="headline">${headline(fix)}</p>
    ${best ? inAll(best) : nothing} ${orLeave(fix.verdict, offset.steps)}
    ${best ? packFigures(best) : nothing}
    ${best && fix.after ? html`<p class="reason" data-testid="after">${fix.after}</p>` : nothing}
    ${best && fix.advice ? html`<p class="reason">${fix.advice}</p>` : nothing} ${dimLine(fix)}
    ${
      noWhite(fix) ? html`<p><a class="button" href="#sweep">${t("answer.sweep")}</a></p>` : nothing
    }
    <p class="now">
      <span class="what">${t("answer.now")}</span> ${verdictMark(fix.verdict)} ${offset.words}
    </p>
    ${assumed(fix)} ${before?.target ? beforeAfter(before, fix) : nothing}
    ${warningList([...fix.warnings, ...(best?.warnings ?? [])])}
    <details class="more">
      <summary>${t("answer.why")}</summary>
      <dl class="facts">
        <dt>${t("answer.reads")}</dt>
        <dd>${kelvin(reading.cct_K)}, Duv ${duv(reading.duv)}</dd>
        <dt>x y</dt>
        <dd>${coordinate(reading.x)} ${coordinate(reading.y)}</dd>
        <dt>${t("answer.offset")}</dt>
        <dd>${mired(offset.mired)}, ΔDuv ${duv(offset.duv)}, ${steps(offset.steps)}</dd>
        <dt>${t("answer.dial")}</dt>
        <dd>
          x ${coordinate(dial.x)} y ${coordinate(dial.y)}
          ${
            dial.green
              ? html`<br />${t("answer.dialGreen", { cct: kelvin(dial.cct_K), green: dial.green })}`
              : nothing
          }
        </dd>
      </dl>
      ${best ? packReasons(best) : nothing}
      <p class="reason">
        ${t("answer.tolerance", { steps: steps(fix.tolerance.steps) })}
        <a href="#tint">${t("answer.terms")}</a>
      </p>
    </details>
  `;
}

/**
 * @param {any} before
 * @param {any} after
 */
function beforeAfter(before, after) {
  const row = (/** @type {string} */ label, /** @type {any} */ fix) => [
    label,
    kelvin(fix.reading.cct_K),
    duv(fix.reading.duv),
    steps(fix.offset.steps),
    verdictMark(fix.verdict),
  ];
  return figureTable(
    t("answer.compare"),
    ["", "CCT", "Duv", t("answer.distance"), t("answer.verdict")],
    [row(t("light.before"), before), row(t("light.after"), after)],
  );
}
