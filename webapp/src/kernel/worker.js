// The kernel's worker: boots Python in named stages, then answers one question after the other.
// In:  {id, request: JSON text}.  Out: {stage, part, words} · {id, answer: JSON text} ·
// {fatal: words} when Python can no longer be used.
import { loadPyodide } from "pyodide";
import { readPack, writePack } from "./pack.js";

const INDEX_URL = new URL("./pyodide/", self.location.href).href;

/** @typedef {"runtime" | "packages" | "kernel" | "ready"} Stage */

/**
 * @param {Stage} stage
 * @param {number} part from 0 to 1
 * @param {string} words
 */
function tell(stage, part, words) {
  self.postMessage({ stage, part, words });
}

/** Sizes come with the build, because a host that compresses does not tell the true length. */
async function boot() {
  tell("runtime", 0, "Loading Python");
  const sizes = await (await fetch(`${INDEX_URL}sizes.json`)).json();
  const wanted = sizes["library.pack"] + sizes["kernel.pack"];
  /** @type {Record<string, number>} */
  const received = {};
  let shown = 0;
  const load = async (/** @type {string} */ name) =>
    readPack(await fetch(INDEX_URL + name), (bytes) => {
      received[name] = bytes;
      const part = Object.values(received).reduce((sum, n) => sum + n, 0) / wanted;
      if (part - shown < 0.02 && part < 1) return;
      shown = part;
      tell("packages", Math.min(1, part), "Loading the colour tables and numpy");
    });
  const packs = Promise.all([load("library.pack"), load("kernel.pack")]);
  packs.catch(() => {}); // reported by fsInit, below
  /** @type {unknown} */
  let lost;
  const pyodide = await loadPyodide({
    indexURL: INDEX_URL,
    fsInit: async (FS) => {
      try {
        for (const pack of await packs) writePack(FS, pack);
      } catch (error) {
        lost = error;
        throw error;
      }
    },
  }).catch((error) => {
    throw lost ?? error;
  });
  tell("kernel", 0, "Starting the kernel");
  const answer = pyodide.pyimport("evenkelvin.desk").answer_json;
  tell("kernel", 0.5, "Starting the kernel");
  answer('{"ask":"kit"}'); // imports numpy and the tables before the first real question
  tell("ready", 1, "Ready");
  return answer;
}

/** @param {unknown} error */
const words = (error) => (error instanceof Error ? error.message : String(error));

const booted = boot();
booted.catch((error) => self.postMessage({ fatal: words(error), booting: true }));

self.onmessage = async ({ data: { id, request } }) => {
  const answer = await booted.catch(() => undefined);
  if (!answer) return;
  try {
    self.postMessage({ id, answer: answer(request) });
  } catch (error) {
    // A Python exception leaves Python sound; anything else (out of memory, a trap in the
    // machine code) does not.
    if (error instanceof Error && error.name === "PythonError") {
      const last = error.message.trim().split("\n").pop();
      const message = `The kernel stumbled over this question (${last}). Nothing you entered is lost.`;
      self.postMessage({ id, answer: JSON.stringify({ problem: { field: "", message } }) });
    } else {
      self.postMessage({ fatal: words(error), booting: false });
    }
  }
};
