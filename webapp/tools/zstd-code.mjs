// zstd's own code as WebAssembly, which the package `zstddec` carries as text in its script.
import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";

/** @returns {Promise<Buffer<ArrayBuffer>>} */
export async function zstdCode() {
  const script = await readFile(fileURLToPath(import.meta.resolve("zstddec/stream")), "utf8");
  const [, code] = /const wasm = "([^"]+)"/.exec(script) ?? [];
  if (!code) throw new Error("zstddec has another form than zstd-code.mjs knows.");
  return Buffer.from(code, "base64");
}
