// Starts the kernel's worker, and on a first visit another beside it, which fetches, unpacks and
// compiles what Python is made of. The page starts both: a worker that starts another is busy itself
// meanwhile, and the other waits for it. What the service worker keeps lies unpacked, and the browser
// keeps what it compiled of it for whoever asked: there the kernel's worker is quicker alone.
import { scriptAddress } from "../trusted.js";
import { t } from "../words/index.js";
import { HELPED } from "./helped.js";

/** @returns {Worker} the kernel's, as worker.js speaks; the other ends when its work is done */
export function startKernel() {
  if (navigator.serviceWorker?.controller) return new Worker(scriptAddress("./worker.js"));
  const beside = new Worker(scriptAddress("./unpack.js"));
  const worker = new Worker(scriptAddress("./worker.js"), { name: HELPED });
  beside.onmessage = ({ data }) => {
    worker.postMessage(data, data.files ? [data.files.buffer] : []);
  };
  beside.onerror = (event) => {
    event.preventDefault();
    worker.postMessage({ lost: event.message || t("kernel.fileMissing") });
  };
  return worker;
}
