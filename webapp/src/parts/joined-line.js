/** Who is joined and what is not there yet, in sight wherever one is; with the way to stop. */
import { html, nothing } from "lit";
import { Page } from "../base/page.js";
import { Watch } from "../base/watch.js";
import { settings } from "../store/index.js";
import { joined } from "../store/together/joined.js";
import { t } from "../words/index.js";
import { isolated } from "../words/isolated.js";
import { count } from "../words/numbers.js";

class JoinedLine extends Page {
  constructor() {
    super();
    this.watch = new Watch(this, joined, settings);
  }

  render() {
    const members = [...joined.members];
    if (!members.length) return nothing;
    const names = members.flatMap(({ name }) => (name ? [isolated(name)] : []));
    const away = members.filter(({ state }) => state !== "joined").length;
    const n = joined.pending;
    const who =
      names.length === members.length && names.length < 3
        ? t("join.with", { names: names.join(", ") })
        : t("join.phones", { n: members.length });
    const how = away
      ? t("join.away", { n: away })
      : n
        ? t("join.pending", { n, count: count(n) })
        : t("join.state.joined");
    return html`<div class="notice joined" role="status">
      <p><a href="#join">${who}</a> · ${how}</p>
      <button type="button" @click=${() => joined.stop()}>${t("join.stop")}</button>
    </div>`;
  }
}
customElements.define("ek-joined-line", JoinedLine);
