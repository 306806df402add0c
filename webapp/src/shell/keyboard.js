/**
 * Whether somebody types and a phone's keyboard leaves little of the view, for the stylesheet:
 * `data-typing` and `data-short` on the page, and how far the visible part lies below the top, which
 * a browser may move instead of the page.
 */

/** Below this height, in px, only the answer's first line stands above the fields. */
const SHORT = 560;

/** Whether a keyboard comes up for it. @param {EventTarget | null} target */
const typedInto = (target) => target instanceof HTMLInputElement && target.type === "text";

export function followKeyboard() {
  const root = document.documentElement;
  document.addEventListener("focusin", ({ target }) => {
    if (!typedInto(target)) return;
    root.toggleAttribute("data-typing", true);
    // The bar lies over the page's end, so that a field may be covered and yet count as in sight.
    requestAnimationFrame(() => {
      const field = /** @type {HTMLInputElement} */ (target);
      if (root.hasAttribute("data-short")) field.scrollIntoView({ block: "nearest" });
    });
  });
  // Not before a tap is over: what it is meant for must not move from under the thumb.
  for (const end of ["click", "keyup"]) {
    window.addEventListener(end, () => {
      if (!typedInto(document.activeElement)) root.toggleAttribute("data-typing", false);
    });
  }
  const view = window.visualViewport;
  if (!view) return;
  const look = () => {
    // A page that is drawn larger by two fingers is as short, with no keyboard up.
    root.toggleAttribute("data-short", view.height * view.scale < SHORT);
    root.style.setProperty("--view-top", `${Math.round(view.offsetTop)}px`);
  };
  view.addEventListener("resize", look);
  view.addEventListener("scroll", look);
  look();
}
