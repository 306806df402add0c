// Bundle the web app into a folder:  node bundle.mjs OUT PACK_BYTES
// PACK_BYTES is the size of Python's packs, which a host that compresses does not tell truly.
// The page's script may be split into lazily loaded parts; worker and service worker are one
// classic script each.
import { build } from "esbuild";

const [out, packBytes] = process.argv.slice(2);
const common = {
  bundle: true,
  minify: true,
  outdir: out,
  target: ["es2022", "chrome109", "firefox115", "safari16.4"],
  legalComments: "linked",
  logLevel: "warning",
  logOverride: { "empty-import-meta": "silent" },
};

await Promise.all([
  build({
    ...common,
    entryPoints: ["src/main.js", "src/styles.css"],
    format: "esm",
    splitting: true,
    chunkNames: "part-[hash]",
  }),
  build({
    ...common,
    entryPoints: ["src/kernel/worker.js", "src/sw.js"],
    entryNames: "[name]",
    format: "iife",
    define: { PACK_BYTES: packBytes },
    // Pyodide asks for Node's modules only when it runs there.
    external: ["node:*", "ws"],
  }),
]);
