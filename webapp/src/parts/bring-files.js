/** The ways a file comes in: the file chooser, a drop on the page, the clipboard. */
import { route } from "../router.js";
import { incoming } from "../store/drafts/incoming.js";
import { reportFault } from "../store/index.js";
import { pickFile } from "./pick-file.js";

const PLACE = "files";

/** @param {Iterable<File>} files @param {Record<string, string>} [choices] */
export function bringFiles(files, choices) {
  const some = [...files];
  if (!some.length) return;
  // What was left over from an earlier load is not mixed with this one.
  if (route.now.name !== PLACE) incoming.drop();
  incoming.take(some, choices).catch(reportFault);
  route.go(PLACE);
}

/** @param {string} text */
export function bringText(text) {
  incoming.takeText(text).catch(reportFault);
  route.go(PLACE);
}

/**
 * A button that opens the file chooser. Every kind of file may be chosen: what it is shows in its
 * content, and phones grey out what they do not know by name.
 * @param {object} button
 * @param {string} button.id
 * @param {string} button.label
 * @param {Record<string, string>} [button.choices]  what is known of the files beforehand
 * @param {boolean} [button.main]
 * @param {boolean} [button.folder]
 */
export function fileButton({ id, label, choices, main, folder }) {
  return pickFile({ id, label, main, folder, onFiles: (files) => bringFiles(files, choices) });
}

/** Take what is dropped on the page, and what is pasted outside of a field. */
export function followFiles() {
  document.addEventListener("dragover", (event) => {
    if (event.dataTransfer?.types.includes("Files")) event.preventDefault();
  });
  document.addEventListener("drop", (event) => {
    if (!event.dataTransfer?.files.length) return;
    event.preventDefault();
    bringFiles(event.dataTransfer.files);
  });
  document.addEventListener("paste", (event) => {
    if (/** @type {HTMLElement} */ (event.target).closest("input, textarea")) return;
    const files = event.clipboardData?.files;
    const text = event.clipboardData?.getData("text/plain") ?? "";
    if (files?.length) bringFiles(files);
    else if (text.includes("\n")) bringText(text);
  });
}
