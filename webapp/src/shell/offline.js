// Works with the network gone: registers the service worker, and offers a new version once it is
// fully at hand. Nothing changes before the person agrees.
import { ready } from "../kernel/client.js";
import { scriptAddress } from "../trusted.js";
import { t } from "../words/index.js";

/**
 * @param {object} handlers
 * @param {(build: string) => void} [handlers.onReady] every file is kept: the app now opens without a network
 * @param {(apply: () => void) => void} [handlers.onUpdate] a new version is at hand; `apply`
 *   switches to it and reloads this page
 * @param {(words: string) => void} [handlers.onProblem] the app could not be kept for offline use
 */
export async function registerOffline({ onReady, onUpdate, onProblem } = {}) {
  if (!("serviceWorker" in navigator)) {
    onProblem?.(t("offline.never"));
    return;
  }
  const { serviceWorker } = navigator;
  // The version this page was loaded from; a page loaded from the network has the newest.
  /** @type {string | undefined} */
  let mine;
  let applying = false;
  /** @type {string | undefined} */
  let offered;
  let told = false;

  const apply = async () => {
    applying = true;
    (await serviceWorker.ready).active?.postMessage("apply");
  };

  serviceWorker.addEventListener("message", ({ data: { shown, whole, newest } }) => {
    if (!shown) return;
    mine ??= shown;
    // A browser short of space may have dropped a file: then it is not said before it is back.
    if (!whole) return;
    if (!told) onReady?.(shown);
    told = true;
    const other = shown !== mine || newest !== shown;
    document.documentElement.dataset.offline = other ? "update" : "ready"; // for whoever tests
    if (applying && shown === newest) {
      location.reload();
    } else if (shown !== mine) {
      // Another tab agreed to the new version; this one keeps working until reloaded.
      if (offered !== shown) onUpdate?.(() => location.reload());
      offered = shown;
    } else if (newest !== shown && offered !== newest) {
      offered = newest;
      onUpdate?.(apply);
    }
  });

  // The first visit is for the kernel: keeping the files waits until it has loaded them.
  await ready().catch(() => {});
  try {
    const registration = await serviceWorker.register(scriptAddress("./sw.js"));
    watch(registration, onProblem);
    (await serviceWorker.ready).active?.postMessage("state");
  } catch (error) {
    onProblem?.(t("offline.failed", { reason: String(error) }));
  }
}

/**
 * Say so when the files could not be kept, and look for a new version whenever the person
 * comes back to the app.
 * @param {ServiceWorkerRegistration} registration
 * @param {((words: string) => void) | undefined} onProblem
 */
function watch(registration, onProblem) {
  const follow = (/** @type {ServiceWorker | null} */ worker) =>
    worker?.addEventListener("statechange", () => {
      if (worker.state === "redundant" && !registration.active) {
        onProblem?.(t("offline.later"));
      }
    });
  follow(registration.installing);
  registration.addEventListener("updatefound", () => follow(registration.installing));
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible") registration.update().catch(() => {});
  });
}
