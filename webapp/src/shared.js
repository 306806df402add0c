/**
 * What another app shares with this one: the service worker puts it down, the page picks it up. It
 * lies in a cache of its own meanwhile, so that it is still there when the page was not open.
 */

/** The address that a phone sends to, as the manifest names it. */
export const SHARE = "share";

/** No phone shares more at once; the rest is left. */
const MOST_FILES = 100;

const cacheOf = (/** @type {string} */ scope) => `evenkelvin shared ${scope}`;

/** @param {string} scope @param {FormData} form */
export async function putShared(scope, form) {
  const cache = await caches.open(cacheOf(scope));
  const kept = (/** @type {string} */ name, /** @type {Blob | string} */ body) =>
    cache.put(
      `${scope}${SHARE}/${crypto.randomUUID()}?${encodeURIComponent(name)}`,
      new Response(body),
    );
  // A page's title says nothing that its text or address does not.
  const text = ["text", "url"]
    .map((name) => form.get(name))
    .filter(Boolean)
    .join("\n");
  if (text) await kept("", text);
  // Where no file was chosen, a form still sends one without name and content.
  const files = form.getAll("files").flatMap((file) => {
    return file instanceof File && (file.name || file.size) ? [file] : [];
  });
  for (const file of files.slice(0, MOST_FILES)) await kept(file.name || "file", file);
}

/**
 * Take what lies there; it is there no longer.
 * @param {string} scope
 * @returns {Promise<{files: File[], text: string}>}
 */
export async function takeShared(scope) {
  const files = [];
  const texts = [];
  // A page that came by plain HTTP has no caches; a browser that forbids storage refuses them.
  const any = "caches" in globalThis && (await caches.has(cacheOf(scope)).catch(() => false));
  const cache = any ? await caches.open(cacheOf(scope)) : undefined;
  for (const request of (await cache?.keys()) ?? []) {
    const kept = await cache?.match(request);
    if (!kept || !(await cache?.delete(request))) continue;
    const name = decodeURIComponent(new URL(request.url).search.slice(1));
    if (name) files.push(new File([await kept.blob()], name));
    else texts.push(await kept.text());
  }
  return { files, text: texts.join("\n") };
}
