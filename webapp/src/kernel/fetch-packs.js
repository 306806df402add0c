// Fetches what the browser's Python is made of, unpacks it and compiles its machine code.
import { MACHINE_CODE, machineCode, readPythonPack, unzipped } from "./python-packs.js";

/** @typedef {{part: number} | {name: string, files: Uint8Array<ArrayBuffer>}
 *           | {name: string, code: WebAssembly.Module}} Fetched */

/** Python's own machine code. */
export const RUNTIME = "runtime";
/** The packs of files. */
export const FILES = ["library", "kernel"];

/**
 * What Python starts with is asked for first, and the extension modules, which it only needs when
 * it has started, when that has come.
 * @param {string} folder the address of the packs
 * @param {() => Promise<import("./zstandard.js").Zstd>} zstd
 * @param {(fetched: Fetched) => void} take gets each part when it is ready, and how far all is
 */
export async function fetchPacks(folder, zstd, take) {
  /** @type {Record<string, number>} */
  const received = {};
  let shown = 0;
  const counter = (/** @type {string} */ name) => (/** @type {number} */ bytes) => {
    received[name] = bytes;
    const part = Object.values(received).reduce((sum, n) => sum + n, 0) / PACK_BYTES;
    if (part - shown < 0.02 && part < 1) return;
    shown = part;
    take({ part: Math.min(1, part) });
  };
  /**
   * Machine code, compiled as it comes. Where the service worker kept it plain it is handed on
   * untouched: only then does the browser find again what it compiled of it the last time.
   * @param {string} name
   */
  const fetchCode = async (name) => {
    const response = await fetch(`${folder}${name}.wasm.pack`);
    const plain = response.headers.get("Content-Type") === MACHINE_CODE;
    const code = plain ? response : machineCode(unzipped(response, zstd, counter(name)));
    take({ name, code: await WebAssembly.compileStreaming(code) });
  };
  const fetchFiles = async (/** @type {string} */ name) => {
    const response = await fetch(`${folder}${name}.pack`);
    take({ name, files: await readPythonPack(response, zstd, counter(name)) });
  };
  const runtime = fetchCode(RUNTIME);
  const files = Promise.all(FILES.map(fetchFiles));
  const extensions = files.then(() => Promise.all(EXTENSIONS.map(fetchCode)));
  await Promise.all([runtime, extensions]);
}
