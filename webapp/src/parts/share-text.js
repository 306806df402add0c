/** Hand text to another person: the phone's own share sheet, or the clipboard. */
import { t } from "../words/index.js";
import { say } from "./toast.js";

/**
 * Share a text, and say how it went where the phone does not.
 * @param {string} title
 * @param {string} text
 * @param {string} [copied]  what to say when it is on the clipboard
 */
export async function shareText(title, text, copied = t("set.copied")) {
  if (navigator.share) {
    try {
      await navigator.share({ title, text });
      return;
    } catch (error) {
      if (error instanceof DOMException && error.name === "AbortError") return;
    }
  }
  say((await copyText(text)) ? copied : t("set.shareRefused"));
}

/** @param {string} text @returns {Promise<boolean>} whether it is on the clipboard */
export async function copyText(text) {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}
