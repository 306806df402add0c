/**
 * The scripts that this app starts by address. With Trusted Types the browser takes no other
 * address for a script, whatever a name, a file or a link may hold.
 */

const OURS = [
  "./worker.js",
  "./unpack.js",
  "./sw.js",
  "./pyodide/pyodide.asm.js",
  "./reader.js",
  "./reader/core.js",
];
const base = globalThis.document?.baseURI ?? globalThis.location.href;

/** @param {string} address */
function createScriptURL(address) {
  if (!OURS.includes(address)) throw new TypeError(`${address} is not a script of this app.`);
  return new URL(address, base).href;
}

/** @type {{createScriptURL: (address: string) => any}} */
const policy = /** @type {any} */ (globalThis).trustedTypes?.createPolicy("evenkelvin", {
  createScriptURL,
}) ?? { createScriptURL };

/**
 * The address of one of our scripts, in the form that this browser wants it.
 * @param {string} address as listed above
 */
export const scriptAddress = (address) => policy.createScriptURL(address);
