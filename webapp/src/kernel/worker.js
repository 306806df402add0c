// The kernel's worker: boots Python in named stages, then answers one question after the other.
// In:  {id, request: JSON text, forms: whether what is said comes as forms and values} ·
// what unpack.js gives.
// Out: {stage, part} · {id, answer: JSON text} · {id, stumbled: words, memory: whether for
// want of it} · {fatal: words} when Python can no longer be used.
import { loadPyodide } from "pyodide";
import { scriptAddress } from "../trusted.js";
import { FILES, fetchPacks, RUNTIME } from "./fetch-packs.js";
import { HELPED } from "./helped.js";
import { extensionFile, writePythonPack } from "./python-packs.js";
import { zstdIn } from "./zstandard.js";

const INDEX_URL = new URL("./pyodide/", self.location.href).href;

/** @typedef {"runtime" | "packages" | "kernel" | "ready"} Stage */

/**
 * @param {Stage} stage
 * @param {number} part from 0 to 1
 */
function tell(stage, part) {
  self.postMessage({ stage, part });
}

/**
 * What Python is made of, part by part, each by its name: from a worker beside this one, or, where
 * there is none, fetched here.
 * @returns {(name: string) => Promise<any>} rejects as soon as any part cannot be read
 */
function packs() {
  /** @type {Map<string, {promise: Promise<any>, found: (part: any) => void}>} */
  const parts = new Map();
  const part = (/** @type {string} */ name) => {
    let one = parts.get(name);
    if (!one) {
      let found = (/** @type {any} */ _) => {};
      const promise = new Promise((resolve) => {
        found = resolve;
      });
      one = { promise, found };
      parts.set(name, one);
    }
    return one;
  };
  const take = (/** @type {import("./fetch-packs.js").Fetched} */ fetched) => {
    if ("part" in fetched) tell("packages", fetched.part);
    else part(fetched.name).found("files" in fetched ? fetched.files : fetched.code);
  };
  const lost = new Promise((_, reject) => {
    if (self.name !== HELPED) {
      fetchPacks(INDEX_URL, zstdIn(INDEX_URL), take).catch(reject);
      return;
    }
    self.addEventListener("message", ({ data }) => {
      if (data.lost !== undefined) reject(new Error(data.lost || "unpack.js could not be read"));
      else if (data.id === undefined) take(data);
    });
  });
  return (name) => Promise.race([part(name).promise, lost]);
}

/**
 * Pyodide fetches and compiles its machine code by itself, under one name and uncompressed; here
 * it is given ours. It only warns when machine code cannot be started, for want of memory or of
 * sound bytes, and then waits for ever: the promise rejects with the reason.
 * @param {Promise<WebAssembly.Module>} code
 * @returns {Promise<never>}
 */
function startOf(code) {
  const plainFetch = self.fetch;
  self.fetch = async (input, init) =>
    String(input) === `${INDEX_URL}pyodide.asm.wasm` ? new Response() : plainFetch(input, init);
  return new Promise((_, reject) => {
    WebAssembly.instantiateStreaming = async (_, imports) => {
      try {
        const module = await code;
        return { module, instance: await WebAssembly.instantiate(module, imports) };
      } catch (error) {
        reject(error);
        throw error;
      }
    };
  });
}

async function boot() {
  tell("runtime", 0);
  const part = packs();
  const lost = startOf(part(RUNTIME));
  const files = Promise.all(FILES.map(part));
  /** @type {Promise<never>} */
  const never = new Promise(() => {});
  // Left to itself, Pyodide would load this by a bare address, which Trusted Types refuse.
  /** @type {any} */ (self).importScripts(scriptAddress("./pyodide/pyodide.asm.js"));
  /** @type {any} */
  const pyodide = await Promise.race([
    loadPyodide({
      indexURL: INDEX_URL,
      // Python must not start on half a library: if a pack is lost, the other promise tells.
      fsInit: async (FS) => {
        for (const pack of await files.catch(() => never)) writePythonPack(FS, pack);
      },
    }),
    files.then(() => never),
    lost,
  ]);
  tell("kernel", 0);
  /** @type {Record<string, WebAssembly.Module>} */
  const extensions = {};
  for (const name of EXTENSIONS) extensions[extensionFile(name)] = await part(name);
  pyodide._module.extensions = extensions;
  pyodide.pyimport("numpy");
  tell("kernel", 0.7);
  const answer = pyodide.pyimport("evenkelvin.desk").answer_json;
  tell("ready", 1);
  return { answer, steps: () => pyodide.pyimport("evenkelvin.practice").steps() };
}

/**
 * The last line of Python's message, which names the error; the traceback goes to the console.
 * @param {unknown} error
 */
function words(error) {
  const message = error instanceof Error ? error.message : String(error);
  return message.trim().split("\n").pop();
}

const booted = boot();
booted.then(
  ({ steps }) => {
    asked = performance.now();
    practise(steps).catch(() => {}); // what is wrong will be told when somebody asks
  },
  (error) => {
    console.error(error);
    self.postMessage({ fatal: words(error), booting: true });
  },
);

/** Milliseconds without a question after which practice goes on, and between its steps. */
const QUIET = 300;
const BREATH = 10;
let asked = 0;

/**
 * The first question of a kind reads its modules and fills its tables, a tenth of a second and more.
 * That is done while nobody asks, in steps that are short beside an answer.
 * @param {() => Generator} begin the kernel's practice.py
 */
async function practise(begin) {
  /** @type {Generator | undefined} */
  let steps;
  for (let done = false; !done; ) {
    const quiet = performance.now() - asked > QUIET;
    await new Promise((resolve) => setTimeout(resolve, quiet ? BREATH : QUIET));
    if (performance.now() - asked <= QUIET) continue;
    steps ??= begin();
    done = steps.next().done ?? true;
  }
}

self.onmessage = async ({ data: { id, request, forms } }) => {
  if (id === undefined) return; // no question: what Python is made of
  const kernel = await booted.catch(() => undefined);
  if (!kernel) return;
  try {
    self.postMessage({ id, answer: kernel.answer(request, forms) });
  } catch (error) {
    // A Python exception leaves Python sound; anything else (out of memory, a trap in the
    // machine code) does not.
    if (error instanceof Error && error.name === "PythonError") {
      console.error(error.message);
      const stumbled = words(error) ?? "";
      self.postMessage({ id, stumbled, memory: stumbled.includes("MemoryError") });
    } else {
      self.postMessage({ fatal: words(error), booting: false });
    }
  }
  asked = performance.now();
};
