// The service worker: keeps every file of the app, so that it opens with no network; never touches
// what the person has written (IndexedDB).
//
// A new version is fetched beside the agreed one and changes nothing until the person agrees
// (message "apply"): the app is always served whole from one version. Files are kept under
// `address?version=hash`, so versions share what did not change. The cache's name holds the
// app's own address, because other apps may live on the same host.

import { machineCode, unzipped } from "./kernel/python-packs.js";
import { zstdIn } from "./kernel/zstandard.js";
import { FOLDER, readerCache } from "./reader/where.js";
import { putShared, SHARE } from "./shared.js";

/** @typedef {Record<string, string>} Files address within the app → "sha256-…" */

/** @type {any} */
const worker = self;
/** Put in front of this script by the build. @type {{version: string, policy: string, files: Files}} */
const own = worker.EVENKELVIN_BUILD;
const scope = worker.registration.scope;
const CACHE = `evenkelvin 1 ${scope}`;
const AGREED = `${scope}agreed-version`;
const zstd = zstdIn(`${scope}pyodide/`);

/** @type {Promise<{version: string, files: Files} | undefined> | undefined} */
let agreedOnce;

/**
 * @param {string} address
 * @param {string} hash
 */
const keyOf = (address, hash) => `${scope}${address}?version=${encodeURIComponent(hash)}`;

async function readAgreed() {
  const cache = await caches.open(CACHE);
  const kept = await cache.match(AGREED);
  return kept ? kept.json() : undefined;
}

function agreed() {
  agreedOnce ??= readAgreed();
  return agreedOnce;
}

/** Fetch what is missing of a version; the browser refuses bytes other than those built. */
async function fetchFiles(/** @type {Files} */ files) {
  const cache = await caches.open(CACHE);
  for (const [address, hash] of Object.entries(files)) {
    const key = keyOf(address, hash);
    if (await cache.match(key)) continue;
    const response = await fetch(scope + address, { integrity: hash, cache: "no-cache" });
    if (!response.ok) throw new Error(`${address} could not be read (${response.status}).`);
    await cache.put(key, address.endsWith(".pack") ? plain(response) : response);
  }
}

/**
 * A pack, unzipped once and for all; machine code under its own type, so that the browser may keep
 * what it compiles of it.
 * @param {Response} response
 */
function plain(response) {
  const body = unzipped(response, zstd);
  return response.url.endsWith(".wasm.pack") ? machineCode(body) : new Response(body);
}

/** Make this script's own version the one that is served, and drop files of others. */
async function agree() {
  const cache = await caches.open(CACHE);
  await cache.put(AGREED, new Response(JSON.stringify(own)));
  agreedOnce = Promise.resolve(own);
  const wanted = new Set(Object.entries(own.files).map(([a, hash]) => keyOf(a, hash)));
  for (const { url } of await cache.keys()) {
    if (url !== AGREED && !wanted.has(url)) await cache.delete(url);
  }
}

async function install() {
  await fetchFiles(own.files);
  if (!(await readAgreed())) await agree();
  await worker.skipWaiting();
}

/** Whether every file of the version that is shown is kept. @param {Files | undefined} files */
async function whole(files) {
  if (!files) return false;
  const cache = await caches.open(CACHE);
  const kept = new Set((await cache.keys()).map(({ url }) => url));
  return Object.entries(files).every(([address, hash]) => kept.has(keyOf(address, hash)));
}

/** Tell the pages which version they are shown, whether it is whole, and which one is at hand. */
async function state() {
  const shown = await readAgreed();
  return { shown: shown?.version, whole: await whole(shown?.files), newest: own.version };
}

async function tellPages() {
  const message = await state();
  for (const page of await worker.clients.matchAll()) page.postMessage(message);
}

async function activate() {
  await worker.clients.claim();
  await tellPages();
}

/** @param {Request} request */
async function respond(request) {
  const address = request.url.slice(scope.length).replace(/[?#].*$/, "");
  if (address.startsWith(FOLDER)) {
    const reader = await caches.open(readerCache(scope));
    return (await reader.match(request, { ignoreSearch: true })) ?? fetch(request);
  }
  const files = (await agreed())?.files ?? {};
  const name =
    address === "index.html" || (request.mode === "navigate" && !files[address]) ? "" : address;
  const cache = await caches.open(CACHE);
  const kept = files[name] && (await cache.match(keyOf(name, files[name])));
  if (!kept) return fetch(request);
  // On a host that sends no headers the workers would have no policy, and the page half of it.
  if (!["", "worker.js", "unpack.js", "reader.js"].includes(name)) return kept;
  const headers = new Headers(kept.headers);
  headers.set("Content-Security-Policy", own.policy);
  return new Response(kept.body, { headers });
}

/**
 * What another app shares is kept here until the page takes it: no host ever sees it.
 * @param {Request} request
 */
async function shared(request) {
  await putShared(scope, await request.formData());
  return Response.redirect(`${scope}#files`, 303);
}

worker.addEventListener("install", (/** @type {any} */ event) => event.waitUntil(install()));
worker.addEventListener("activate", (/** @type {any} */ event) => event.waitUntil(activate()));

worker.addEventListener("fetch", (/** @type {any} */ event) => {
  const { method, url } = event.request;
  if (method === "POST" && url === scope + SHARE) event.respondWith(shared(event.request));
  if (method === "GET" && url.startsWith(scope)) event.respondWith(respond(event.request));
});

worker.addEventListener("message", (/** @type {any} */ event) => {
  if (event.data === "apply") event.waitUntil(agree().then(tellPages));
  if (event.data === "state") event.waitUntil(mend().then(tellPages));
});

/** A browser short of space may have dropped the cache: fetch it anew while there is a network. */
async function mend() {
  const shown = await readAgreed();
  if (shown && shown.version !== own.version) return;
  try {
    await fetchFiles(own.files);
    if (!shown) await agree();
  } catch {
    // No network now; the next start tries again.
  }
}
