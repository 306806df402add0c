// Starts the kernel's worker and another beside it, which fetches, unpacks and compiles what Python is
// made of. The page starts both: a worker that starts another is busy itself meanwhile, and the other
// waits for it. With the other ends what a browser holds for each file, 25 MB.
import { scriptAddress } from "../trusted.js";
import { HELPED } from "./helped.js";

/** @returns {Worker} the kernel's, as worker.js speaks; the other ends by itself */
export function startKernel() {
  const beside = new Worker(scriptAddress("./unpack.js"));
  const worker = new Worker(scriptAddress("./worker.js"), { name: HELPED });
  beside.onmessage = ({ data }) => {
    worker.postMessage(data, data.files ? [data.files.buffer] : []);
  };
  beside.onerror = (event) => {
    event.preventDefault();
    worker.postMessage({ lost: event.message });
  };
  return worker;
}
