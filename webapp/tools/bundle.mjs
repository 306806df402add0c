// Bundle the web app into a folder:  node bundle.mjs OUT PACK_BYTES EXTENSIONS READER
// PACK_BYTES is the size of Python's packs, which a host that compresses does not tell truly;
// EXTENSIONS a list of the modules of machine code that come in packs of their own, as JSON; READER
// the files of the reader of displays with their sizes and hashes, as JSON.
// The page's script is split: what opens the app, and parts that are read when they are needed.
// The page names the parts that open it, so that they are asked for before the script is read.
// What opens the page, workers and service worker are one classic script each.
import { readFile, writeFile } from "node:fs/promises";
import { basename, join } from "node:path";
import { build } from "esbuild";
import { ZSTD_CODE } from "../src/kernel/zstandard.js";
import { zstdCode } from "./zstd-code.mjs";

const [out, packBytes, extensions, reader] = process.argv.slice(2);
const common = {
  bundle: true,
  minify: true,
  outdir: out,
  target: ["es2022", "chrome109", "firefox115", "safari16.4"],
  legalComments: "linked",
  logLevel: "warning",
  define: { PACK_BYTES: packBytes, EXTENSIONS: extensions, READER: reader },
  logOverride: { "empty-import-meta": "silent" },
};

const [{ metafile }] = await Promise.all([
  build({
    ...common,
    metafile: true,
    entryPoints: ["src/main.js", "src/styles.css"],
    format: "esm",
    splitting: true,
    chunkNames: "part-[hash]",
  }),
  build({
    ...common,
    entryPoints: [
      "src/opening.js",
      "src/kernel/worker.js",
      "src/kernel/unpack.js",
      "src/reader/reader.js",
      "src/sw.js",
    ],
    entryNames: "[name]",
    format: "iife",
    // Pyodide asks for Node's modules only when it runs there.
    external: ["node:*", "ws"],
  }),
]);

await writeFile(join(out, "pyodide", ZSTD_CODE), await zstdCode());

// What opens the app is asked for at once; opening.js has it run when the first fields stand there.
const opened = Object.entries(metafile.outputs).find(([name]) => basename(name) === "main.js");
const parts = opened[1].imports.filter(({ kind }) => kind === "import-statement");
const links = ["main.js", ...parts.map(({ path }) => basename(path))].map(
  (name) => `<link rel="modulepreload" href="./${name}">\n    `,
);
const script = '<script src="./opening.js"';
const page = await readFile("index.html", "utf8");
await writeFile(join(out, "index.html"), page.replace(script, links.join("") + script));
