/** Starts the app: the store, then the screen, and the kernel beside them. */
import { ready } from "./kernel/client.js";
import { registerOffline } from "./offline.js";
import { gels } from "./store/gels.js";
import { openStore, reportFault } from "./store/index.js";
import { lightDraft } from "./store/light-draft.js";
import { followTheme } from "./theme.js";
import "./views/shell.js";
import { say } from "./parts/toast.js";
import { t } from "./words/index.js";

ready().catch(() => {}); // a failed boot is told where the answer would stand
gels.load().catch(reportFault);

await openStore();
await lightDraft.load();
followTheme();
const shell = /** @type {any} */ (document.createElement("ek-shell"));
document.body.replaceChildren(shell);

registerOffline({
  onReady: () => {},
  onUpdate: (/** @type {() => void} */ apply) => {
    shell.newVersion = apply;
  },
  onProblem: (/** @type {string} */ words) => say(`${t("offline.not")} ${words}`),
});
