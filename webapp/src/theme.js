/**
 * Dark or daylight. The page starts dark, so that a phone never flashes white on a night set;
 * daylight is put on here once it is known to be wanted.
 */
import { settings } from "./store/index.js";

export const THEMES = /** @type {const} */ (["system", "dark", "daylight"]);

const bright = matchMedia("(prefers-color-scheme: light)");

/** @returns {"dark" | "daylight"} what is on screen */
export function themeNow() {
  const wanted = settings.get("theme");
  return wanted === "system" ? (bright.matches ? "daylight" : "dark") : wanted;
}

function put() {
  document.documentElement.dataset.theme = themeNow();
  const ground = getComputedStyle(document.documentElement).getPropertyValue("--ground");
  document.querySelector("meta[name=theme-color]")?.setAttribute("content", ground);
}

/** Follow the setting and the system from now on. */
export function followTheme() {
  settings.addEventListener("change", put);
  bright.addEventListener("change", put);
  put();
}
