/** Hand files over: the share sheet where a finger works, else as downloads. */

/**
 * @param {{name: string, media_type: string, text: string}[]} plain
 * @returns {Promise<"shared" | "saved" | "cancelled">}
 */
export async function saveFiles(plain) {
  const files = plain.map(
    ({ name, media_type, text }) => new File([text], name, { type: media_type }),
  );
  const byTouch = matchMedia("(pointer: coarse)").matches;
  if (byTouch && navigator.canShare?.({ files })) {
    try {
      await navigator.share({ files });
      return "shared";
    } catch (error) {
      if (error instanceof DOMException && error.name === "AbortError") return "cancelled";
    }
  }
  for (const file of files) {
    const link = document.createElement("a");
    link.href = URL.createObjectURL(file);
    link.download = file.name;
    link.click();
    // Some browsers read the address only after this task.
    setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
  }
  return "saved";
}
