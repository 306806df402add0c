/** Which door a file or a text belongs to, told by the kernel from how it begins. */
import { ask } from "../../kernel/client.js";

/** So many bytes tell what a file is. */
const HEAD = 4096;

/** @param {Blob} file @returns {Promise<string>} */
export async function base64(file) {
  const bytes = new Uint8Array(await file.arrayBuffer());
  let text = "";
  for (let at = 0; at < bytes.length; at += 0x8000) {
    text += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
  }
  return btoa(text);
}

/**
 * @typedef {object} Door
 * @property {"book" | "link" | "codes" | "light" | "none"} door
 * @property {string} what     it is, where it belongs nowhere
 * @property {string} message  the same with what to do
 */

/** @param {Blob | string} brought @returns {Promise<Door>} */
export async function doorOf(brought) {
  const head =
    typeof brought === "string"
      ? { text: brought.slice(0, HEAD) }
      : { bytes_base64: await base64(brought.slice(0, HEAD)) };
  const answer = await ask({ ask: "recognise", ...head });
  // A kernel in trouble says so itself at whatever is asked next.
  return answer.problem
    ? { door: "light", what: "", message: "" }
    : { door: answer.door, what: answer.what ?? "", message: answer.message ?? "" };
}

/** @param {Door} door */
export const isBook = ({ door }) => door === "book" || door === "link" || door === "codes";
