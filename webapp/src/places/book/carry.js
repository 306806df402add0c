/** Files on their way to others: the phone's share sheet where it takes files, else a download. */

/** @typedef {{name: string, media_type: string, text: string}} Written */

/** @param {Written} written */
export function fileOf({ name, media_type, text }) {
  return new File([text], name, { type: media_type });
}

/** @param {File[]} files */
const shareable = (files) => {
  try {
    return Boolean(navigator.canShare?.({ files }));
  } catch {
    return false;
  }
};

/** @param {File} file */
function download(file) {
  const address = URL.createObjectURL(file);
  const link = document.createElement("a");
  link.href = address;
  link.download = file.name;
  link.click();
  // The download has begun by then; the file's memory is given back.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/**
 * The files have to be there before the tap: browsers forget the tap while one is written.
 * @param {File[]} files
 * @returns {Promise<"shared" | "downloaded" | "cancelled">}
 */
export async function handOver(files) {
  if (shareable(files)) {
    try {
      await navigator.share({ files });
      return "shared";
    } catch (error) {
      if (error instanceof DOMException && error.name === "AbortError") return "cancelled";
    }
  }
  for (const file of files) download(file);
  return "downloaded";
}
