/** What the phone hands over: files and texts that another app shares, files opened with this one. */
import { bringFiles, bringText } from "../parts/bring-files.js";
import { takeShared } from "../shared.js";
import { reportFault } from "../store/index.js";

async function bringShared() {
  const { files, text } = await takeShared(new URL("./", location.href).href);
  bringFiles(files);
  if (text) bringText(text);
}

/** @param {{files?: {getFile(): Promise<File>}[]}} launch */
async function bringLaunched({ files = [] }) {
  bringFiles(await Promise.all(files.map((file) => file.getFile())));
}

/** @type {any} */ (window).launchQueue?.setConsumer((/** @type {any} */ launch) =>
  bringLaunched(launch).catch(reportFault),
);
bringShared().catch(reportFault);
