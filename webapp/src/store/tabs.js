/**
 * Several tabs of one app: what one writes, the others hear; each has a name of its own, so that
 * two half-typed readings never overwrite each other.
 */

import { newId } from "./log/entries.js";
import { session } from "./session.js";

/**
 * @typedef {object} News
 * @property {string} database
 * @property {string[]} [entries]   ids of new entries
 * @property {string} [setting]     key of a changed setting
 * @property {boolean} [reload]     entries were replaced: read the whole log again
 */

/** @returns {BroadcastChannel | undefined} none where the browser forbids every storage */
function openChannel() {
  try {
    return new BroadcastChannel("evenkelvin");
  } catch {
    return undefined;
  }
}

const channel = openChannel();

/** @param {News} news */
export function announce(news) {
  channel?.postMessage(news);
}

/** @param {(news: News) => void} hear */
export function listen(hear) {
  channel?.addEventListener("message", (event) => hear(event.data));
}

const KEY = "evenkelvin.tab";
const lockOf = (/** @type {string} */ tab) => `evenkelvin tab ${tab}`;

/**
 * Hold the lock `tab` for as long as this page lives. Without a secure connection there are no
 * locks, and every tab takes its name for granted.
 * @param {string} tab
 */
function hold(tab) {
  if (!navigator.locks) return true;
  return new Promise((resolve) => {
    navigator.locks.request(lockOf(tab), { ifAvailable: true }, (lock) => {
      resolve(Boolean(lock));
      return lock ? new Promise(() => {}) : undefined;
    });
  });
}

/**
 * This tab's name: the same after a reload, a new one in a duplicated tab.
 * @returns {Promise<string>}
 */
export async function claimTab() {
  const kept = session.get(KEY);
  if (kept && (await hold(kept))) return kept;
  const fresh = newId();
  await hold(fresh);
  session.set(KEY, fresh);
  return fresh;
}

/**
 * Do something in one tab at a time.
 * @param {string} name
 * @param {() => Promise<void>} work
 */
export async function oneAtATime(name, work) {
  if (navigator.locks) await navigator.locks.request(`evenkelvin ${name}`, work);
  else await work();
}

/** @returns {Promise<(tab: string) => boolean>} whether a tab of that name is open now. */
export async function openTabs() {
  const { held = [] } = (await navigator.locks?.query()) ?? {};
  const names = new Set(held.map((lock) => lock.name));
  return (tab) => names.has(lockOf(tab));
}
