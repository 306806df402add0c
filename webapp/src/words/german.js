/** All that it takes to speak German, in one part of the script that English does without. */
export { default as words } from "./de.js";
export { inOurWords } from "./kernel.js";
