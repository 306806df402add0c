/** The places of the thumb bar, in their order, and the key of each. */
export const PLACES = /** @type {const} */ (["light", "set", "book", "kit"]);

/** The key of each place (see keys.js): figures are for what is typed. */
export const PLACE_KEYS = /** @type {const} */ ({ light: "l", set: "s", book: "b", kit: "k" });
