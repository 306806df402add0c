// The kernel's worker: boots Python in named stages, then answers one question after the other.
// In:  {id, request: JSON text, forms: whether what is said comes as forms and values}.
// Out: {stage, part} · {id, answer: JSON text} · {id, stumbled: words, memory: whether for
// want of it} · {fatal: words} when Python can no longer be used.
import { loadPyodide } from "pyodide";
import { scriptAddress } from "../trusted.js";
import {
  extensionFile,
  MACHINE_CODE,
  machineCode,
  readPythonPack,
  unzipped,
  writePythonPack,
} from "./python-packs.js";

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
 * Pyodide only warns when the machine code cannot be started, for want of memory or of sound
 * bytes, and then waits for ever; this promise rejects with the reason.
 * @returns {Promise<never>}
 */
function machineCodeLost() {
  const { instantiateStreaming } = WebAssembly;
  return new Promise((_, reject) => {
    WebAssembly.instantiateStreaming = async (source, imports) => {
      try {
        return await instantiateStreaming(source, imports);
      } catch (error) {
        reject(error);
        throw error;
      }
    };
  });
}

/**
 * Machine code, compiled as it comes. Where the service worker kept it plain it is handed on
 * untouched: only then does the browser find again what it compiled of it the last time.
 * @param {string} name
 * @param {(received: number) => void} onBytes
 */
async function fetchMachineCode(name, onBytes) {
  const response = await fetch(`${INDEX_URL}${name}.wasm.pack`);
  const plain = response.headers.get("Content-Type") === MACHINE_CODE;
  return plain ? response : machineCode(unzipped(response, onBytes));
}

/**
 * Pyodide fetches its machine code by itself, under one name and uncompressed; here it is given
 * ours, which was asked for before Pyodide's script was read.
 * @param {string} address
 * @param {Promise<Response>} response
 */
function answerFetchOf(address, response) {
  const plainFetch = self.fetch;
  self.fetch = (input, init) => (String(input) === address ? response : plainFetch(input, init));
}

async function boot() {
  tell("runtime", 0);
  /** @type {Record<string, number>} */
  const received = {};
  let shown = 0;
  const counter = (/** @type {string} */ name) => (/** @type {number} */ bytes) => {
    received[name] = bytes;
    const part = Object.values(received).reduce((sum, n) => sum + n, 0) / PACK_BYTES;
    if (part - shown < 0.02 && part < 1) return;
    shown = part;
    tell("packages", Math.min(1, part));
  };
  const load = async (/** @type {string} */ name) =>
    readPythonPack(await fetch(INDEX_URL + name), counter(name));
  const code = (/** @type {string} */ name) => fetchMachineCode(name, counter(name));
  const runtime = code("runtime");
  answerFetchOf(`${INDEX_URL}pyodide.asm.wasm`, runtime);
  const extensions = Promise.all(
    EXTENSIONS.map(async (name) => [
      extensionFile(name),
      await WebAssembly.compileStreaming(code(name)),
    ]),
  );
  const packs = Promise.all([load("library.pack"), load("kernel.pack"), extensions, runtime]);
  const never = new Promise(() => {});
  const lost = machineCodeLost();
  // Left to itself, Pyodide would load this by a bare address, which Trusted Types refuse.
  /** @type {any} */ (self).importScripts(scriptAddress("./pyodide/pyodide.asm.js"));
  const pyodide = await Promise.race([
    loadPyodide({
      indexURL: INDEX_URL,
      // Python must not start on half a library: if a pack is lost, the other promise tells.
      fsInit: async (FS) => {
        const [library, kernel] = await packs.catch(() => never);
        writePythonPack(FS, library);
        writePythonPack(FS, kernel);
      },
    }),
    packs.then(() => never),
    lost,
  ]);
  tell("kernel", 0);
  pyodide._module.extensions = Object.fromEntries(await extensions);
  pyodide.pyimport("numpy");
  tell("kernel", 0.7);
  const answer = pyodide.pyimport("evenkelvin.desk").answer_json;
  tell("ready", 1);
  return answer;
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
booted.catch((error) => {
  console.error(error);
  self.postMessage({ fatal: words(error), booting: true });
});

/**
 * What a person asks soon after the first reading. The first question of a kind reads its modules and
 * fills its tables, a tenth of a second: that is done while nobody waits.
 */
const PRACTICE = [
  '{"ask":"fix","reading":{"x":"0.4","y":"0.39"},"target":{"cct_K":"5600"}}',
  '{"ask":"agree","target":{"cct_K":"5600"},"lights":[{"x":"0.4","y":"0.39"}]}',
  '{"ask":"mix","lights":[{"reading":{"cct_K":"3200"}},{"reading":{"cct_K":"5600"}}]}',
];
const PAUSE = 400; // ms, in which a waiting question has its turn
let practised = false;

/** @param {(request: string, forms: boolean) => string} answer */
async function practise(answer) {
  if (practised) return;
  practised = true;
  for (const request of PRACTICE) {
    await new Promise((resolve) => setTimeout(resolve, PAUSE));
    answer(request, false);
  }
}

self.onmessage = async ({ data: { id, request, forms } }) => {
  const answer = await booted.catch(() => undefined);
  if (!answer) return;
  try {
    self.postMessage({ id, answer: answer(request, forms) });
    practise(answer).catch(() => {}); // what is wrong will be told when somebody asks
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
};
