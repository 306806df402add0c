// What the browser's Python is made of comes in packs, each one zstd stream (RFC 8878): compressed
// by us, because a static host need not do it, and smaller than gzip makes it. The service worker
// keeps them plain. The build writes them; the worker and the build's own Node step read them.
//
// NAME.wasm.pack is machine code. NAME.pack is a set of files: four bytes (the length of the list,
// big-endian), the list as JSON ([[path, size], …]), then the files' bytes in that order.
import { Unpacking } from "./zstandard.js";

export const MACHINE_CODE = "application/wasm";

/** A file of machine code, as a response that may be compiled while it comes. */
export const machineCode = (/** @type {BodyInit} */ body) =>
  new Response(body, { headers: { "Content-Type": MACHINE_CODE } });

/** @typedef {import("./zstandard.js").Zstd} Zstd */

/**
 * Unzip a response as it comes, calling `onBytes` with the count of bytes received so far. What
 * is plain already, because the host labelled it or the service worker kept it so, stays as it is.
 * @param {Response} response
 * @param {() => Promise<Zstd>} zstd asked for when the first bytes are a zstd stream's
 * @param {(received: number) => void} [onBytes]
 * @returns {ReadableStream<Uint8Array>}
 */
export function unzipped(response, zstd, onBytes = () => {}) {
  if (!response.ok || !response.body) {
    throw new Error(`${response.url} could not be read (${response.status}).`);
  }
  let received = 0;
  /** @type {Unpacking | undefined} */
  let zipped;
  return response.body.pipeThrough(
    new TransformStream({
      async transform(chunk, controller) {
        if (received === 0 && isZstandard(chunk)) zipped = new Unpacking(await zstd());
        received += chunk.byteLength;
        onBytes(received);
        if (zipped) zipped.push(chunk, (part) => controller.enqueue(part));
        else controller.enqueue(chunk);
      },
      flush: () => zipped?.end(),
    }),
  );
}

const MAGIC = [0x28, 0xb5, 0x2f, 0xfd];
const isZstandard = (/** @type {Uint8Array} */ bytes) =>
  MAGIC.every((byte, i) => bytes[i] === byte);

/**
 * Read a pack, calling `onBytes` with the count of bytes received so far.
 * @param {Response} response
 * @param {() => Promise<Zstd>} zstd
 * @param {(received: number) => void} [onBytes]
 * @returns {Promise<Uint8Array<ArrayBuffer>>} the pack, unzipped
 */
export async function readPythonPack(response, zstd, onBytes) {
  return new Uint8Array(await new Response(unzipped(response, zstd, onBytes)).arrayBuffer());
}

/**
 * Write the files of a pack into Pyodide's file system, without copying their bytes.
 * @param {any} FS Emscripten's file system
 * @param {Uint8Array} pack what {@link readPythonPack} gave
 */
export function writePythonPack(FS, pack) {
  const listLength = new DataView(pack.buffer, pack.byteOffset).getUint32(0);
  /** @type {[string, number][]} */
  const list = JSON.parse(new TextDecoder().decode(pack.subarray(4, 4 + listLength)));
  const folders = new Map();
  let at = 4 + listLength;
  for (const [path, size] of list) {
    const cut = path.lastIndexOf("/");
    const name = path.slice(0, cut);
    let folder = folders.get(name);
    if (!folder) {
      FS.mkdirTree(name);
      folder = FS.lookupPath(name).node;
      folders.set(name, folder);
    }
    // FS.writeFile would look up every folder of every path anew, and open and close a stream.
    const file = FS.filesystems.MEMFS.createNode(folder, path.slice(cut + 1), 0o100644, 0);
    file.contents = pack.subarray(at, at + size);
    file.usedBytes = size;
    at += size;
  }
  if (at !== pack.length) throw new Error("a file of Python's library is cut short");
}

/**
 * The file in which Python looks for an extension module.
 * @param {string} module such as "numpy.linalg._umath_linalg"
 */
export const extensionFile = (module) =>
  `/lib/python3.12/site-packages/${module.replaceAll(".", "/")}.cpython-312-wasm32-emscripten.so`;
