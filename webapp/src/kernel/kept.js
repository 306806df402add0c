/** The name of a kernel's worker whose files the service worker has kept, unpacked. */
export const KEPT = "kept";
