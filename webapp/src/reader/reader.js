// The reader's worker: words and where they stand, from a picture of a display.
// In:  {id, picture: ImageBitmap} · {id, bars: true}, to look at the same picture once more for
//      digits made of bars.
// Out: {id, words, width, height, bars: how many words are made of bars} · {id, failed: words}.
import { scriptAddress } from "../trusted.js";
import { prepare } from "./prepare.js";
import { recogniser } from "./recognise.js";
import { FOLDER } from "./where.js";

/** @typedef {import("./prepare.js").Grey} Grey */

/** A display in a picture is read no better from more pixels. */
const LONGEST = 1280;

const base = new URL("./", self.location.href).href;

/** @param {string} name */
async function unpacked(name) {
  const response = await fetch(`${base}${FOLDER}${name}`);
  if (!response.ok || !response.body) throw new Error(`${name}: ${response.status}`);
  return response.body.pipeThrough(new DecompressionStream("gzip"));
}

async function start() {
  const code = unpacked("core.part");
  const letters = unpacked("letters.part").then((body) => new Response(body).arrayBuffer());
  /** @type {any} */ (self).importScripts(scriptAddress("./reader/core.js"));
  const core = await new Promise((resolve, reject) => {
    const made = /** @type {any} */ (self).TesseractCore({
      print() {},
      printErr() {},
      instantiateWasm(
        /** @type {WebAssembly.Imports} */ imports,
        /** @type {(instance: WebAssembly.Instance, module: WebAssembly.Module) => void} */ done,
      ) {
        code
          .then((body) => new Response(body, { headers: { "Content-Type": "application/wasm" } }))
          .then((response) => WebAssembly.instantiateStreaming(response, imports))
          .then(({ instance, module }) => done(instance, module))
          .catch(reject);
      },
    });
    made.then(resolve, reject);
  });
  return recogniser(core, new Uint8Array(await letters));
}

/** @type {ReturnType<typeof start> | undefined} */
let started;
/** @type {Grey | undefined} */
let last;

/** @param {ImageBitmap} picture @returns {Grey} */
function greyOf(picture) {
  const scale = Math.min(1, LONGEST / Math.max(picture.width, picture.height));
  const width = Math.max(1, Math.round(picture.width * scale));
  const height = Math.max(1, Math.round(picture.height * scale));
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext("2d", { willReadFrequently: true });
  if (!context) throw new Error("no canvas");
  context.imageSmoothingQuality = "high";
  context.drawImage(picture, 0, 0, width, height);
  const { data: colours } = context.getImageData(0, 0, width, height);
  const data = new Uint8Array(width * height);
  for (let at = 0; at < data.length; at++) {
    const [red = 0, green = 0, blue = 0] = [
      colours[4 * at],
      colours[4 * at + 1],
      colours[4 * at + 2],
    ];
    data[at] = (54 * red + 183 * green + 19 * blue) >> 8;
  }
  return { width, height, data };
}

/** @param {Grey} picture @param {boolean} bars */
async function look(picture, bars) {
  started ??= start();
  const read = await started;
  const { width, height } = picture;
  const prepared = prepare(picture, bars);
  if (!prepared) return { words: [], width, height, bars: 0 };
  const lines = read(prepared.page);
  const words = prepared.words.map(({ box, corners, line, bars: number }) => {
    const parts = lines.filter((part) => {
      const middle = (part.top + part.bottom) / 2;
      return middle >= line.top && middle < line.bottom;
    });
    const print = parts.map((part) => part.text).join(" ");
    return {
      text: number ? number.text + (number.unit ? unitOf(print) : "") : print,
      box: [box.left, box.top, box.right, box.bottom],
      corners,
      confidence: number ? 1 : Math.min(1, ...parts.map((part) => part.confidence)),
    };
  });
  const madeOfBars = prepared.words.filter((word) => word.bars && word.bars.text.length > 2).length;
  return { words: words.filter(({ text }) => text), width, height, bars: madeOfBars };
}

/** The unit that a number ends with. @param {string} print */
function unitOf(print) {
  return ` ${/[a-z|·]{1,4}$/i.exec(print)?.[0] ?? ""}`;
}

self.onmessage = async ({ data }) => {
  const { id, picture, bars } = data;
  try {
    if (picture) {
      last = greyOf(picture);
      picture.close();
    }
    if (!last) throw new Error("no picture");
    self.postMessage({ id, ...(await look(last, Boolean(bars))) });
  } catch (error) {
    started = undefined;
    self.postMessage({ id, failed: String(error instanceof Error ? error.message : error) });
  }
};
