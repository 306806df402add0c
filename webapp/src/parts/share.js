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
  try {
    await navigator.clipboard.writeText(text);
    return "copied";
  } catch {
    return "refused";
  }
}
