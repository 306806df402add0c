/** All that it takes to speak German, in one part of the script that English does without. */
export { default as words } from "./de.js";
export { default as forms } from "./kernel-de.js";

/**
 * A number that English has written, such as "1,234.5", as German writes it.
 * @param {string} english
 */
export const figure = (english) => english.replace(/[.,]/g, (sign) => (sign === "." ? "," : "."));
