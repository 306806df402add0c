// Run a Python script inside Pyodide under Node, for the build and its tests.
//
//   node in_pyodide.mjs [--boot DIST] [--wheels FOLDER] [--packages a,b] [--mount HOST=GUEST]…
//                       script.py [argument…]
//
// --boot starts from the files of a finished dist/, just as the browser's worker does; without it
// Pyodide starts as it comes from npm, and takes packages from the folder of wheels.
import { rmSync } from "node:fs";
import { cp, mkdtemp, readdir, readFile, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { loadPyodide } from "pyodide";
import { extensionFile, readPythonPack, writePythonPack } from "../src/kernel/python-packs.js";
import { ZSTD_CODE, zstdFrom } from "../src/kernel/zstandard.js";

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    boot: { type: "string" },
    wheels: { type: "string" },
    packages: { type: "string" },
    mount: { type: "string", multiple: true, default: [] },
  },
});

/** @param {string} dist */
async function bootOptions(dist) {
  const zstd = await zstdFrom(await readFile(`${dist}/pyodide/${ZSTD_CODE}`));
  const read = async (/** @type {string} */ name) =>
    readPythonPack(new Response(await readFile(`${dist}/pyodide/${name}`)), async () => zstd);
  const packs = [await read("library.pack"), await read("kernel.pack")];
  const extensions = [];
  for (const name of await readdir(`${dist}/pyodide`)) {
    const [, module] = /^(.*)\.wasm\.pack$/.exec(name) ?? [];
    if (module && module !== "runtime") extensions.push([extensionFile(module), await read(name)]);
  }
  const home = await mkdtemp(join(tmpdir(), "evenkelvin-"));
  process.on("exit", () => rmSync(home, { recursive: true, force: true }));
  await cp(`${dist}/pyodide`, home, { recursive: true });
  await writeFile(join(home, "pyodide.asm.wasm"), await read("runtime.wasm.pack"));
  return {
    indexURL: `${home}/`,
    fsInit: async (FS) => {
      for (const pack of packs) writePythonPack(FS, pack);
      for (const [file, bytes] of extensions) FS.writeFile(file, bytes);
    },
  };
}

const pyodide = await loadPyodide({
  ...(values.boot ? await bootOptions(values.boot) : {}),
  ...(values.wheels ? { packageCacheDir: `${values.wheels}/` } : {}),
  packages: values.packages ? values.packages.split(",") : [],
  env: {
    HOME: "/home/pyodide",
    PYTHONDONTWRITEBYTECODE: "1",
    // Bytecode compiled here keeps its lines, but not the columns, which are a fifth of it.
    PYTHONNODEBUGRANGES: "1",
  },
});

for (const pair of values.mount) {
  const cut = pair.lastIndexOf("=");
  const guest = pair.slice(cut + 1);
  pyodide.FS.mkdirTree(guest);
  pyodide.FS.mount(pyodide.FS.filesystems.NODEFS, { root: pair.slice(0, cut) }, guest);
}

const [script, ...rest] = positionals;
const globals = pyodide.toPy({ __name__: "__main__", argv: rest });
try {
  const text = await readFile(script, "utf8");
  // What the browser gets has no asyncio.
  const runs = values.boot ? pyodide.runPython : pyodide.runPythonAsync;
  const code = await runs(text, { globals, filename: script });
  process.exitCode = typeof code === "number" ? code : 0;
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
