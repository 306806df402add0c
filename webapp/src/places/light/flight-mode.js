/** That the app opens without a network: said once it is true. */
import { html, nothing } from "lit";
import { offlineState } from "../../store/offline-state.js";
import { t } from "../../words/index.js";

export function flightMode() {
  if (!offlineState.build) return nothing;
  return html`<p class="hint flight" role="status">${t("light.flight")}</p>`;
}
