/** Whether the browser promises to keep what is stored, and how much room there is. */

/** Ask for the promise. It may be refused silently; storageState tells the truth. */
export async function askPersistence() {
  return (await navigator.storage?.persist?.().catch(() => false)) ?? false;
}

/** @returns {Promise<{persisted: boolean, usage?: number, quota?: number}>} */
export async function storageState() {
  const persisted = (await navigator.storage?.persisted?.().catch(() => false)) ?? false;
  const room = await navigator.storage?.estimate?.().catch(() => undefined);
  const { usage, quota } = room ?? {};
  return { persisted, usage, quota };
}
