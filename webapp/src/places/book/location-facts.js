/** What belongs to a place: its windows, its sun, its mains. Stands with a location in the book. */
import { html } from "lit";
import { choice } from "../../parts/inputs.js";
import { book, reportFault } from "../../store/index.js";
import { t } from "../../words/index.js";

/** The ways to its windows and its sun. @param {import("../../store/log/book.js").Thing} location */
export function locationLinks(location) {
  const { name } = location.data;
  return html`
    <ul class="links row">
      <li>
        <a href="#windows/${location.id}" aria-label=${t("location.windowsOf", { name })}
          >${t("location.windows")}</a
        >
      </li>
      <li>
        <a href="#sun/${location.id}" aria-label=${t("location.sunOf", { name })}
          >${t("location.sun")}</a
        >
      </li>
    </ul>
  `;
}

/** The mains it is on. @param {import("../../store/log/book.js").Thing} location */
export function locationMains(location) {
  const { name } = location.data;
  const mains = String(location.data.mains_hz ?? "");
  const other = mains && !["50", "60"].includes(mains) ? [mains] : [];
  return html`
    ${choice({
      id: `mains-${location.id}`,
      label: t("location.mains", { name }),
      value: mains,
      options: [
        { value: "", label: t("mains.unknown") },
        ...["50", "60", ...other].map((hz) => ({ value: hz, label: `${hz} Hz` })),
      ],
      onChange: (mains_hz) =>
        book.edit(location.id, { mains_hz: mains_hz || null }).catch(reportFault),
    })}
  `;
}
