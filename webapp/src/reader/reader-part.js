/**
 * The reader of displays as a part of its own: whether it is on this device, getting and removing
 * it. Nobody fetches it without being asked. Fires "change".
 */
import { FOLDER, readerCache } from "./where.js";

const scope = new URL("./", document.baseURI).href;
const files = Object.entries(READER);

/** @param {string} name @param {string} hash */
const keyOf = (name, hash) => `${scope}${FOLDER}${name}?version=${encodeURIComponent(hash)}`;

class ReaderPart extends EventTarget {
  /** Whether all of it is here, in the version that belongs to this app. */ got = false;
  /** How much has come while it is being got, from 0 to 1; null while it is not. */
  part = /** @type {number | null} */ (null);
  bytes = files.reduce((sum, [, { bytes }]) => sum + bytes, 0);

  #say(/** @type {{got?: boolean, part?: number | null}} */ now) {
    Object.assign(this, now);
    this.dispatchEvent(new Event("change"));
  }

  /** See whether it is here. */
  async look() {
    // Opening a cache would make one.
    if (!("caches" in globalThis) || !(await caches.has(readerCache(scope)))) return;
    const cache = await caches.open(readerCache(scope));
    const kept = new Set((await cache.keys()).map(({ url }) => url));
    this.#say({ got: files.every(([name, { hash }]) => kept.has(keyOf(name, hash))) });
  }

  /** Fetch it and keep it; the browser refuses bytes other than those built. */
  async get() {
    if (this.part !== null) return;
    this.#say({ part: 0 });
    try {
      const cache = await caches.open(readerCache(scope));
      for (const { url } of await cache.keys()) {
        if (!files.some(([name, { hash }]) => url === keyOf(name, hash))) await cache.delete(url);
      }
      let come = 0;
      for (const [name, { bytes, hash }] of files) {
        const response = await fetch(scope + FOLDER + name, { integrity: hash, cache: "no-cache" });
        if (!response.ok) throw new TypeError(`${name}: ${response.status}`);
        await cache.put(keyOf(name, hash), response);
        come += bytes;
        this.#say({ part: come / this.bytes });
      }
      this.#say({ got: true });
    } finally {
      this.#say({ part: null });
    }
  }

  async remove() {
    await caches.delete(readerCache(scope));
    this.#say({ got: false });
  }
}

export const readerPart = new ReaderPart();
