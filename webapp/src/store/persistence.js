/** Whether the browser promises to keep what is stored, and how much room there is. */

/** Ask for the promise. It may be refused silently; storageState tells the truth. */
export async function askPersistence() {
  return (await navigator.storage?.persist?.()) ?? false;
}

/** @returns {Promise<{persisted: boolean, usage?: number, quota?: number}>} */
export async function storageState() {
  const persisted = (await navigator.storage?.persisted?.()) ?? false;
  const { usage, quota } = (await navigator.storage?.estimate?.()) ?? {};
  return { persisted, usage, quota };
}
