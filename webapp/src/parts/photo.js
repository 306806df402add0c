/** A photo made small enough to travel with the book: a JPEG of at most 40 kB. */
import { t } from "../words/index.js";

const MOST_BYTES = 40_000;
/** Longest side in pixels, and quality, tried from the best to the least. */
const TRIES = [
  [1024, 0.7],
  [800, 0.6],
  [640, 0.5],
  [480, 0.45],
  [320, 0.4],
  [200, 0.3],
];

/** @param {Blob} blob @returns {Promise<string>} */
function dataAddress(blob) {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(String(reader.result));
    reader.onerror = () => reject(reader.error);
    reader.readAsDataURL(blob);
  });
}

/**
 * @param {Blob} file a picture of any size
 * @returns {Promise<string>} its small copy as a data address
 */
export async function smallPhoto(file) {
  let picture;
  try {
    picture = await createImageBitmap(file, { imageOrientation: "from-image" });
  } catch {
    throw new Error(t("photo.unreadable"));
  }
  const canvas = document.createElement("canvas");
  for (const [side, quality] of TRIES) {
    const scale = Math.min(1, side / Math.max(picture.width, picture.height));
    canvas.width = Math.max(1, Math.round(picture.width * scale));
    canvas.height = Math.max(1, Math.round(picture.height * scale));
    canvas.getContext("2d")?.drawImage(picture, 0, 0, canvas.width, canvas.height);
    const blob = await new Promise((/** @type {BlobCallback} */ resolve) =>
      canvas.toBlob(resolve, "image/jpeg", quality),
    );
    if (blob && blob.size <= MOST_BYTES) return dataAddress(blob);
  }
  throw new Error(t("photo.unreadable"));
}
