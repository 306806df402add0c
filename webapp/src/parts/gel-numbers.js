/** What a measured gel does, its nominal namesake beside it, and how far the measurement goes. */
import { html, nothing } from "lit";
import { figureTable } from "../charts/figures.js";
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
  ) => [name, mired(one.mired), duv(one.duv), stops(one.stops)];
  return html`
    ${figureTable(
      t("own.shifts", { cct: kelvin(gel.reference_K) }),
      ["", t("own.shift"), "ΔDuv", t("pack.costs")],
      [row(t("own.measured"), gel), ...(nominal ? [row(t("own.nominal"), nominal)] : [])],
    )}
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
