// A pack is one gzip stream: four bytes (the length of the list, big-endian), the list as JSON
// ([[path, size], …]), then the files' bytes in that order. build.py writes it, the worker and
// the build's own Node step read it. Compressed by us, because a static host need not do it.

// runtime.pack is the same without a list: one gzip stream of Pyodide's machine code.

/**
 * Unzip a response as it comes, calling `onBytes` with the count of bytes received so far.
 * @param {Response} response
 * @param {(received: number) => void} [onBytes]
 * @returns {Promise<ReadableStream>}
 */
export async function unzipped(response, onBytes = () => {}) {
  if (!response.ok || !response.body) {
    throw new Error(`${response.url} could not be read (${response.status}).`);
  }
  let received = 0;
  const counted = response.body.pipeThrough(
    new TransformStream({
      transform(chunk, controller) {
        received += chunk.byteLength;
        onBytes(received);
        controller.enqueue(chunk);
      },
    }),
  );
  const [head, body] = await firstBytes(counted);
  // Some hosts label what they recognise as gzip, and the browser has then unzipped it already.
  const zipped = head[0] === 0x1f && head[1] === 0x8b;
  return zipped ? body.pipeThrough(new DecompressionStream("gzip")) : body;
}

/**
 * Read a pack, calling `onBytes` with the count of bytes received so far.
 * @param {Response} response
 * @param {(received: number) => void} [onBytes]
 * @returns {Promise<Uint8Array>} the pack, unzipped
 */
export async function readPack(response, onBytes) {
  const plain = new Response(await unzipped(response, onBytes));
  return new Uint8Array(await plain.arrayBuffer());
}

/**
 * Look at the first chunk of a stream without losing it.
 * @param {ReadableStream<Uint8Array>} stream
 * @returns {Promise<[Uint8Array, ReadableStream<any>]>}
 */
async function firstBytes(stream) {
  const reader = stream.getReader();
  const first = (await reader.read()).value ?? new Uint8Array();
  const rest = new ReadableStream({
    start: (controller) => controller.enqueue(first),
    async pull(controller) {
      const { done, value } = await reader.read();
      if (done) controller.close();
      else controller.enqueue(value);
    },
    cancel: (reason) => reader.cancel(reason),
  });
  return [first, rest];
}

/**
 * Write the files of a pack into Pyodide's file system, without copying their bytes.
 * @param {any} FS Emscripten's file system
 * @param {Uint8Array} pack what {@link readPack} gave
 */
export function writePack(FS, pack) {
  const listLength = new DataView(pack.buffer, pack.byteOffset).getUint32(0);
  /** @type {[string, number][]} */
  const list = JSON.parse(new TextDecoder().decode(pack.subarray(4, 4 + listLength)));
  const folders = new Set();
  let at = 4 + listLength;
  for (const [path, size] of list) {
    const folder = path.slice(0, path.lastIndexOf("/"));
    if (!folders.has(folder)) {
      FS.mkdirTree(folder);
      folders.add(folder);
    }
    FS.writeFile(path, pack.subarray(at, at + size), { canOwn: true });
    at += size;
  }
}
