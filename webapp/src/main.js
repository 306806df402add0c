/** Starts the app: the store, then the screen, and the kernel beside them. */
import { onStage, ready } from "./kernel/client.js";
import { followFiles } from "./parts/bring-files.js";
import { handOver } from "./shell/hand-over.js";
import { followKeyboard } from "./shell/keyboard.js";
import { registerOffline } from "./shell/offline.js";
import { lightDraft } from "./store/drafts/light-draft.js";
import { openStore, reportFault, settings } from "./store/index.js";
import { gels } from "./store/kit/gels.js";
import { tieOldReadings } from "./store/log/old-readings.js";
import { offlineState } from "./store/offline-state.js";
import { followTheme } from "./theme.js";
import "./shell/shell.js";
import { say, sayWithUndo } from "./parts/toast.js";
import { language, speak, t } from "./words/index.js";

// For whoever watches from outside: how far kernel and offline copy have come.
const state = document.documentElement.dataset;
onStage(({ stage }) => {
  state.kernel = stage;
});
ready().catch(() => {}); // a failed boot is told where the answer would stand
gels.follow();

await openStore();
await tieOldReadings().catch(reportFault);
await lightDraft.load();
followTheme();
followKeyboard();
followFiles();
await speak(settings.get("language"));
let shell = /** @type {any} */ (document.createElement("ek-shell"));
const aside = await handOver(shell);
if (aside) sayWithUndo(t("light.setAside"), () => lightDraft.start(aside));
settings.addEventListener("change", async () => {
  const before = language();
  await speak(settings.get("language"));
  if (language() === before) return;
  // Every word on the screen is another now.
  const { newVersion } = shell;
  shell = document.createElement("ek-shell");
  shell.newVersion = newVersion;
  document.body.replaceChildren(shell);
});

registerOffline({
  onReady: (build) => {
    state.offline ??= "ready";
    offlineState.put(build);
  },
  onUpdate: (apply) => {
    state.offline = "update";
    shell.newVersion = apply;
  },
  onProblem: say,
});
