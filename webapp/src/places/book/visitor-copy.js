/** Somebody else's book, to look at before it goes into the own one. */
import { html, nothing } from "lit";
import { patch } from "../../charts/patch.js";
import { longWork } from "../../parts/long-work.js";
import { meantLine, meantWords } from "../../parts/meant-words.js";
import { planLine } from "../../parts/plan-line.js";
import { verdictMark } from "../../parts/verdict.js";
import { problemNote, warningList } from "../../parts/warnings.js";
import { reportFault, settings } from "../../store/index.js";
import { visitor } from "../../store/log/visitor.js";
import { t, tMaybe } from "../../words/index.js";
import { joined, listed } from "../../words/isolated.js";
import { count, dayOf, duv, illuminance, kelvin, whenRead } from "../../words/numbers.js";
import { readingWords } from "../../words/reading.js";

/** So many readings of a light are listed, and setups until so many are in all; the rest is counted. */
const MOST_READINGS = 20;
const MOST_IN_ALL = 300;

/** @param {import("../../store/log/visitor.js").Copy} copy @param {import("../../store/log/book.js").Thing} setup */
function setupOf({ book, slips }, setup) {
  const { plan } = setup.data;
  return html`<section class="location">
    <h2>${setup.data.name}</h2>
    <p class="hint">${joined([dayOf(setup.at), setup.data.note].filter(Boolean))}</p>
    ${plan ? html`<p>${t("planned.setup", { words: plan.words })}</p>` : nothing}
    <ul class="lights">
      ${book
        .below(setup.id, "light")
        .reverse()
        .map((light) => {
          const slip = slips.get(light.id);
          return html`<li>
            <div class="head">
              <h3>${light.data.name}</h3>
              ${patch([slip?.grey])}
              ${slip?.verdict || slip?.meant ? verdictMark(slip.verdict) : nothing}
            </div>
            ${slip ? standing(slip) : nothing}
            ${light.data.meant ? meantLine(meantWords(light.id, light.data.meant, book)) : nothing}
            ${light.data.planned ? planLine(light.data.planned) : nothing}
            ${readingsOf(book.below(light.id, "reading"))}
          </li>`;
        })}
    </ul>
  </section>`;
}

/** How a light stands now, and what hangs on it. @param {any} slip of the kernel's "report" */
function standing(slip) {
  const now = slip.readings.at(-1);
  if (!now) return nothing;
  const level = now.exposure_lx_s
    ? `${now.exposure_lx_s} lx·s`
    : now.illuminance_lx && illuminance(now, settings.get("illuminance"));
  const words = [kelvin(now.cct_K), `Duv ${duv(now.duv)}`, level, slip.offset?.words];
  return html`<p class="now">${joined(words.filter(Boolean))}</p>
    <p>
      ${slip.hangs.length ? t("report.hangs", { pack: joined(slip.hangs, " + ") }) : t("report.noGel")}
    </p>`;
}

/** @param {import("../../store/log/book.js").Thing[]} readings  the newest first */
function readingsOf(readings) {
  if (!readings.length) return nothing;
  return html`<details class="more">
    <summary>${t("copy.readings", { n: readings.length, count: count(readings.length) })}</summary>
    <ul class="readings">
      ${readings.slice(0, MOST_READINGS).map(
        (reading) => html`<li>
          <span>
            ${readingWords(reading.data)}
            <span class="hint"
              >${joined(
                [
                  tMaybe(`stage.${reading.data.stage}`, ""),
                  whenRead(reading.at),
                  reading.data.note,
                ].filter(Boolean),
              )}</span
            >
          </span>
        </li>`,
      )}
    </ul>
    ${
      readings.length > MOST_READINGS
        ? html`<p class="hint">${t("find.more", { n: readings.length - MOST_READINGS })}</p>`
        : nothing
    }
  </details>`;
}

/** @param {import("../../store/log/log.js").Log} book @param {import("../../store/log/book.js").Thing[]} setups */
function shownOf(book, setups) {
  let room = MOST_IN_ALL;
  return setups.filter((setup) => {
    if (room <= 0) return false;
    for (const light of book.below(setup.id, "light")) {
      room -= 1 + Math.min(MOST_READINGS, book.below(light.id, "reading").length);
    }
    return true;
  });
}

export function visitorCopy() {
  const { copy, problem, waiting } = visitor;
  if (!copy) {
    return html`${problemNote(problem || undefined)}
    ${
      waiting
        ? html`<p role="status">${t("copy.reading")}</p>
            ${longWork(t("copy.longWork"), () => visitor.stop())}`
        : nothing
    }`;
  }
  const { book, summary } = copy;
  const { setup, light, reading, gel } = summary.things;
  const kits = book.below(null, "kit").map((kit) => kit.data.name);
  const setups = book
    .below(null, "production")
    .flatMap((one) => book.below(one.id, "location"))
    .flatMap((one) => book.below(one.id, "setup"));
  const shown = shownOf(book, setups);
  return html`
    <section class="answer">
      <p class="headline" data-testid="headline">${copy.title}</p>
      <p class="hint" ?hidden=${!setup && kits.length > 0}>
        ${[
          t("copy.setups", { n: setup, count: count(setup) }),
          t("copy.lights", { n: light, count: count(light) }),
          t("copy.readings", { n: reading, count: count(reading) }),
        ].join(", ")}
      </p>
      ${gel ? html`<p class="hint">${t("copy.gels", { n: gel })}</p>` : nothing}
      ${kits.length ? html`<p class="hint">${t("copy.kits", { names: listed(kits) })}</p>` : nothing}
      <p class="hint hash">${t("copy.hash", { n: summary.count, hash: summary.sha256.slice(0, 12) })}</p>
      ${warningList(summary.warnings)} ${problemNote(problem || undefined)}
      ${
        copy.added
          ? html`<p class="kept" role="status">${t("copy.added", { n: copy.fresh })}</p>
              <div class="actions"><a class="button main" href="#book">${t("copy.toBook")}</a></div>`
          : copy.fresh === 0
            ? html`<p role="status">${t("copy.allThere")}</p>
                <div class="actions"><a class="button main" href="#book">${t("copy.toBook")}</a></div>`
            : html`<p>${t("copy.visitor", { n: copy.fresh })}</p>
                <div class="actions">
                  <button
                    type="button"
                    class="main"
                    ?disabled=${waiting}
                    @click=${() => visitor.add().catch(reportFault)}
                  >
                    ${t("copy.add")}
                  </button>
                </div>`
      }
    </section>
    ${shown.map((setup) => setupOf(copy, setup))}
    ${
      setups.length > shown.length
        ? html`<p class="hint">${t("copy.moreSetups", { n: setups.length - shown.length })}</p>`
        : nothing
    }
  `;
}
