/**
 * Read before anything is drawn: which fields the page opens with, so that somebody can type before
 * the app itself has been read (see shell/hand-over.js, which hands over). Without this script there
 * are none. The person's own language and theme come with the app.
 */
{
  const place = /^#?([^/=]*)/.exec(location.hash)?.[1];
  let way = "xy";
  /** The fields that a meter's other forms are typed into, each with its label. */
  let forms = "[]";
  try {
    way = localStorage.getItem("evenkelvin.way") ?? way;
    forms = localStorage.getItem("evenkelvin.cct") ?? forms;
  } catch {
    // Every storage is forbidden here.
  }
  document.documentElement.dataset.opening = !place || place === "light" ? way : "none";

  addEventListener("DOMContentLoaded", () => {
    const fields = document.querySelectorAll(".opening .cct .field");
    JSON.parse(forms).forEach(
      (/** @type {[string, string]} */ [name, label], /** @type {number} */ i) => {
        /** @type {HTMLInputElement} */ (fields[i].querySelector("input")).name = name;
        /** @type {HTMLElement} */ (fields[i].querySelector("label")).textContent = label;
      },
    );
  });

  // The app itself runs once the fields stand there, or soon where nothing is drawn.
  const app = "./main.js";
  let asked = false;
  const read = () => {
    if (!asked) import(app);
    asked = true;
  };
  requestAnimationFrame(() => setTimeout(read));
  setTimeout(read, 500);
}
