// A worker beside the kernel's, which ends a while after its work: it fetches, unpacks and compiles
// what Python is made of, while the kernel's worker reads Pyodide's script.
// Out: what fetch-packs.js gives · {lost: words} when something cannot be read.
import { fetchPacks } from "./fetch-packs.js";
import { zstdIn } from "./zstandard.js";

/** Milliseconds after which the browser has kept what it compiled, which it does for whoever asked. */
const STAY = 20_000;

const folder = new URL("./pyodide/", self.location.href).href;
const zstd = zstdIn(folder);

fetchPacks(folder, zstd, (fetched) => {
  const moved = "files" in fetched ? [fetched.files.buffer] : [];
  self.postMessage(fetched, { transfer: moved });
}).then(
  () => setTimeout(() => self.close(), STAY),
  (error) => self.postMessage({ lost: error instanceof Error ? error.message : String(error) }),
);
zstd().catch(() => {}); // whoever unpacks by it will tell
