/**
 * The open reader of print behind two functions. It knows only pages of dark print on white: see
 * prepare.js.
 *
 * @typedef {import("./prepare.js").Grey} Grey
 * @typedef {{ text: string, top: number, bottom: number, confidence: number }} Line
 * @typedef {any} Core  the reader's module of machine code
 */

/** Blocks of text: every line of our page is one word. */
const ONE_BLOCK = 6;
const NETWORK_ALONE = 1;

/**
 * @param {Core} core
 * @param {Uint8Array} letters the reader's data
 * @returns {(page: Grey) => Line[]}
 */
export function recogniser(core, letters) {
  core.FS.writeFile("/eng.traineddata", letters);
  const reader = new core.TessBaseAPI();
  if (reader.Init("/", "eng", NETWORK_ALONE)) throw new Error("The reader's data are damaged.");
  // The page is dark on white already.
  reader.SetVariable("tessedit_do_invert", "0");
  reader.SetPageSegMode(ONE_BLOCK);
  return (page) => {
    core.FS.writeFile("/input", bitmap(page));
    reader.SetImageFile(1, 0);
    reader.Recognize(null);
    return linesOf(reader.GetTSVText(0));
  };
}

/**
 * A picture in the plainest of the formats that the reader opens.
 * @param {Grey} page
 */
function bitmap({ width, height, data }) {
  const row = (width + 3) & ~3;
  const start = 54 + 1024;
  const file = new Uint8Array(start + row * height);
  const view = new DataView(file.buffer);
  view.setUint16(0, 0x424d);
  view.setUint32(2, file.length, true);
  view.setUint32(10, start, true);
  view.setUint32(14, 40, true);
  view.setInt32(18, width, true);
  view.setInt32(22, height, true);
  view.setUint16(26, 1, true);
  view.setUint16(28, 8, true);
  view.setUint32(46, 256, true);
  for (let grey = 0; grey < 256; grey++) file.fill(grey, 54 + 4 * grey, 57 + 4 * grey);
  for (let y = 0; y < height; y++) {
    file.set(data.subarray(y * width, (y + 1) * width), start + (height - 1 - y) * row);
  }
  return file;
}

/**
 * What was read, word by word, from the reader's table: level, page, block, paragraph, line, word,
 * left, top, width, height, confidence, text.
 * @param {string} table
 * @returns {Line[]}
 */
function linesOf(table) {
  return table
    .split("\n")
    .map((row) => row.split("\t"))
    .filter((cells) => cells[0] === "5" && cells[11]?.trim())
    .map((cells) => ({
      text: cells[11] ?? "",
      top: Number(cells[7]),
      bottom: Number(cells[7]) + Number(cells[9]),
      confidence: Math.max(0, Math.min(1, Number(cells[10]) / 100)),
    }));
}
