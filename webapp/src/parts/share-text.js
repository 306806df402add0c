/** Hand text to another person: the phone's own share sheet, or the clipboard. */

/**
 * @param {string} title
 * @param {string} text
 * @returns {Promise<"shared" | "copied" | "cancelled" | "refused">}
 */
export async function shareText(title, text) {
  if (navigator.share) {
    try {
      await navigator.share({ title, text });
      return "shared";
    } catch (error) {
      if (error instanceof DOMException && error.name === "AbortError") return "cancelled";
    }
  }
  return (await copyText(text)) ? "copied" : "refused";
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
