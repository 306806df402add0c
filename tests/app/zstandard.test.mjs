// Unpacking zstd as it comes. The frames were made by zstd's own library (Python's `zstandard`).
import assert from "node:assert/strict";
import { test } from "node:test";
import { Unpacking, zstdFrom } from "../../webapp/src/kernel/zstandard.js";
import { zstdCode } from "../../webapp/tools/zstd-code.mjs";

const zstd = await zstdFrom(await zstdCode());
/** Both hold "0123456789" 40 000 times, more than zstd gives in one turn; only the first says so. */
const SIZED =
  "KLUv/aCAGgYAlAAAUDAxMjM0NTY3ODkBAPP/zQsSRAAAAAEA/f/NCxBEAAAAAQD9/zkAAj0AAAABAH3aAyA=";
const UNSIZED = "KLUv/QCIlAAAUDAxMjM0NTY3ODkBAPP/zQsSRAAAAAEA/f/NCxBEAAAAAQD9/zkAAj0AAAABAH3aAyA=";
const PLAIN = "0123456789".repeat(40_000);

const bytesOf = (text) => new Uint8Array(Buffer.from(text, "base64"));

function unpacked(bytes, step) {
  const unpacking = new Unpacking(zstd);
  const parts = [];
  try {
    for (let at = 0; at < bytes.length; at += step) {
      unpacking.push(bytes.subarray(at, at + step), (part) => parts.push(part));
    }
  } finally {
    unpacking.end();
  }
  return Buffer.concat(parts).toString();
}

for (const [name, frame] of Object.entries({ sized: SIZED, unsized: UNSIZED })) {
  test(`a ${name} frame comes out whole, however it is cut on its way`, () => {
    for (const step of [1, 7, 1000]) assert.equal(unpacked(bytesOf(frame), step), PLAIN);
  });
}

test("what zstd could not make smaller comes out too, over many turns", () => {
  // A frame of raw blocks (RFC 8878, 3.1.1): no content size, window of 256 KiB.
  const plain = Uint8Array.from({ length: 400_000 }, (_, k) => (k * k) % 251);
  const most = 1 << 17;
  const parts = [Uint8Array.from([0x28, 0xb5, 0x2f, 0xfd, 0, 0x40])];
  for (let at = 0; at < plain.length; at += most) {
    const block = plain.subarray(at, at + most);
    const head = (block.length << 3) | Number(at + most >= plain.length);
    parts.push(Uint8Array.from([head, head >> 8, head >> 16]), block);
  }
  const frame = Buffer.concat(parts);
  assert.equal(unpacked(frame, frame.length), Buffer.from(plain).toString());
});

test("a stream that is cut short or damaged is told", () => {
  const frame = bytesOf(SIZED);
  for (let length = 0; length < frame.length; length += 1) {
    assert.throws(() => unpacked(frame.subarray(0, length), 9), /cut short/);
  }
  frame[6] |= 0x06; // the first block's type becomes the reserved one
  assert.throws(() => unpacked(frame, 100), /damaged|cut short/);
});

test("memory is given back", () => {
  for (let n = 0; n < 5; n += 1) unpacked(bytesOf(SIZED), 50);
  const before = zstd.memory.buffer.byteLength;
  for (let n = 0; n < 200; n += 1) unpacked(bytesOf(SIZED), 50);
  assert.equal(zstd.memory.buffer.byteLength, before);
});
