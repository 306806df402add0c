/**
 * What this tab remembers until it is closed, also over a reload. A browser that forbids storage
 * throws at the mere touch of it; then it is remembered until the page is left.
 */

/** @type {Map<string, string>} */
const memory = new Map();

export const session = {
  /** @param {string} key @returns {string | undefined} */
  get(key) {
    try {
      return sessionStorage.getItem(key) ?? memory.get(key);
    } catch {
      return memory.get(key);
    }
  },

  /** @param {string} key @param {string} value */
  set(key, value) {
    memory.set(key, value);
    try {
      sessionStorage.setItem(key, value);
    } catch {
      // Remembered above.
    }
  },

  /** @param {string} key */
  remove(key) {
    memory.delete(key);
    try {
      sessionStorage.removeItem(key);
    } catch {
      // Nothing was there.
    }
  },
};
