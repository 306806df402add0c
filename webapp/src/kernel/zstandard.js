// Unpacks zstd (RFC 8878) by zstd's own code, which the package `zstddec` carries as WebAssembly.
// That package asks for its code by a data: address, which the app's policy refuses: so the build
// lays the code beside the packs (webapp/tools/zstd-code.mjs), and here it is started from there.

/** As many bytes as zstd takes and gives in one turn (ZSTD_DStreamInSize, ZSTD_DStreamOutSize). */
const TURN = 1 << 17;
/** zstd's ZSTD_inBuffer and ZSTD_outBuffer: address, size and position, 4 bytes each. */
const BUFFER = 12;
/** What zstd gives back below this is the number of an error, as a negative count. */
const MOST_ERRORS = 120;

/**
 * @typedef {{memory: WebAssembly.Memory, malloc: (size: number) => number,
 *            free: (address: number) => void, ZSTD_createDCtx: () => number,
 *            ZSTD_freeDCtx: (context: number) => number,
 *            ZSTD_decompressStream: (context: number, out: number, into: number) => number}} Zstd
 */

/** zstd's code, beside the packs. */
export const ZSTD_CODE = "zstd.wasm";

/**
 * Start zstd's code.
 * @param {BufferSource} code
 * @returns {Promise<Zstd>}
 */
export async function zstdFrom(code) {
  const imports = { env: { emscripten_notify_memory_growth: () => {} } };
  const { instance } = await WebAssembly.instantiate(code, imports);
  return /** @type {any} */ (instance.exports);
}

/**
 * zstd, fetched and started once, when it is first asked for.
 * @param {string} folder the address of the packs
 * @returns {() => Promise<Zstd>}
 */
export function zstdIn(folder) {
  /** @type {Promise<Zstd> | undefined} */
  let started;
  const start = async () => {
    const response = await fetch(folder + ZSTD_CODE);
    if (!response.ok) throw new Error(`${response.url} could not be read (${response.status}).`);
    return zstdFrom(await response.arrayBuffer());
  };
  return () => {
    started ??= start().catch((error) => {
      started = undefined; // a line that was cut may be back for the next try
      throw error;
    });
    return started;
  };
}

/** One zstd stream, unpacked as it comes. */
export class Unpacking {
  #zstd;
  #context;
  #into;
  #out;
  #buffers;
  #left = 1; // 0 at the end of the stream

  /** @param {Zstd} zstd what the decoder's code exports */
  constructor(zstd) {
    this.#zstd = zstd;
    this.#context = zstd.ZSTD_createDCtx();
    this.#into = zstd.malloc(TURN);
    this.#out = zstd.malloc(TURN);
    this.#buffers = zstd.malloc(2 * BUFFER);
  }

  /**
   * @param {Uint8Array} bytes the stream's next bytes
   * @param {(part: Uint8Array) => void} take gets what they hold, part by part
   */
  push(bytes, take) {
    for (let at = 0; at < bytes.length; at += TURN) this.#turn(bytes.subarray(at, at + TURN), take);
  }

  /**
   * @param {Uint8Array} bytes no more than zstd takes in one turn
   * @param {(part: Uint8Array) => void} take
   */
  #turn(bytes, take) {
    const { memory, ZSTD_decompressStream } = this.#zstd;
    const [into, out] = [this.#buffers, this.#buffers + BUFFER];
    new Uint8Array(memory.buffer).set(bytes, this.#into);
    new Uint32Array(memory.buffer, into, 3).set([this.#into, bytes.length, 0]);
    let given = TURN;
    // A full buffer says that there may be more of what was taken in.
    for (let taken = 0; taken < bytes.length || given === TURN; ) {
      new Uint32Array(memory.buffer, out, 3).set([this.#out, TURN, 0]);
      this.#left = ZSTD_decompressStream(this.#context, out, into);
      if (this.#left < 0 && this.#left > -MOST_ERRORS) throw new Error("a pack is damaged");
      // The memory may have grown, and then lies elsewhere.
      taken = new Uint32Array(memory.buffer, into, 3)[2];
      given = new Uint32Array(memory.buffer, out, 3)[2];
      if (given > 0) take(new Uint8Array(memory.buffer, this.#out, given).slice());
    }
  }

  /** Say that the stream has ended, and give its memory back. */
  end() {
    const { free, ZSTD_freeDCtx } = this.#zstd;
    ZSTD_freeDCtx(this.#context);
    for (const address of [this.#into, this.#out, this.#buffers]) free(address);
    if (this.#left !== 0) throw new Error("a pack is cut short");
  }
}
