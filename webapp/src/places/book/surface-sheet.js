/** The surfaces of a setup on its report: how even each is, and what to dim. */
import { html, nothing } from "lit";
import { surfaceMap } from "../../charts/surface-map.js";
import { book } from "../../store/index.js";
import { cellsOf, evenQuestion, trimQuestion } from "../../store/log/surfaces.js";
import { t } from "../../words/index.js";
import { percent, stops } from "../../words/numbers.js";

/**
 * What the kernel says of each surface that was read.
 * @param {import("../../base/page.js").Page["askHere"]} ask
 * @param {string} setup
 */
export async function surfacesOf(ask, setup) {
  const found = [];
  for (const { data } of book.below(setup, "surface").reverse()) {
    const surface = /** @type {import("../../store/log/surfaces.js").Surface} */ (
      /** @type {unknown} */ ({ points: [], lamps: [], again: [], aim: null, ...data })
    );
    const [even, trim] = [evenQuestion(surface), trimQuestion(surface, "steady")];
    const said = even && (await ask(even));
    const dimmed = trim && (await ask(trim));
    found.push({
      surface,
      even: said && !said.problem ? said : undefined,
      trim: dimmed && !dimmed.problem ? dimmed : undefined,
    });
  }
  return found;
}

/** @param {Awaited<ReturnType<typeof surfacesOf>>[number]} one */
export function surfaceSheet({ surface, even, trim }) {
  return html`<section class="surface-sheet">
    <h3>${surface.name}</h3>
    ${
      even
        ? html`<p>${even.words}</p>
            <p class="hint">
              ${t("sweep.spread")} ${stops(even.spread_stops)} · ${t("sweep.uniformity")}
              ${percent(even.uniformity)}
            </p>`
        : nothing
    }
    ${surfaceMap({
      cells: cellsOf(surface, even),
      columns: surface.columns,
      lines: even?.map ?? null,
      title: t("sweep.map"),
      aim: surface.aim?.point,
      photo: surface.photo,
    })}
    ${trim?.words.map((words) => html`<p>${words}</p>`) ?? nothing}
    ${
      trim
        ? html`<p>
            ${trim.dimmers.map(({ name, percent: part }) => `${name} ${percent(part / 100)}`).join(" · ")}
          </p>`
        : nothing
    }
  </section>`;
}
