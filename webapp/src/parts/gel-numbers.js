/** What a measured gel does, its nominal namesake beside it, and how far the measurement goes. */
import { html, nothing } from "lit";
import { gelCurve } from "../charts/gel-curve.js";
import { t, tMaybe } from "../words/index.js";
import { duv, kelvin, mired, nanometres, stops } from "../words/numbers.js";

/**
 * @param {import("../store/kit/own-gels.js").OwnGel} gel
 * @param {import("../store/kit/own-gels.js").OwnGel["nominal"]} nominal
 */
export function gelNumbers(gel, nominal) {
  const row = (
    /** @type {string} */ name,
    /** @type {Pick<import("../store/kit/own-gels.js").OwnGel, "mired" | "duv" | "stops">} */ one,
  ) => html`<tr>
    <th scope="row">${name}</th>
    <td>${mired(one.mired)}</td>
    <td>${duv(one.duv)}</td>
    <td>${stops(one.stops)}</td>
  </tr>`;
  return html`
    <table class="compare">
      <caption>
        ${t("own.shifts", { cct: kelvin(gel.reference_K) })}
      </caption>
      <thead>
        <tr>
          <td></td>
          <th scope="col">${t("own.shift")}</th>
          <th scope="col">ΔDuv</th>
          <th scope="col">${t("pack.costs")}</th>
        </tr>
      </thead>
      <tbody>
        ${row(t("own.measured"), gel)} ${nominal ? row(t("own.nominal"), nominal) : nothing}
      </tbody>
    </table>
    <p class="hint">
      ${tMaybe(`own.source.${gel.source}`, "")}
      ${
        gel.unknown?.length
          ? t("own.unknown", {
              ranges: gel.unknown
                .map(([from, to]) => (from === to ? nanometres(from) : `${from}–${nanometres(to)}`))
                .join(", "),
            })
          : nothing
      }
    </p>
    ${gelCurve(/** @type {any} */ (gel))}
  `;
}
