/**
 * Whether a phone's keyboard leaves little of the view, for the stylesheet: `data-short` on the page,
 * and how far the visible part lies below the top, which a browser may move instead of the page.
 */

/** Below this height, in px, only the answer's first line stands above the fields. */
const SHORT = 560;

export function followKeyboard() {
  const view = window.visualViewport;
  if (!view) return;
  const root = document.documentElement;
  const look = () => {
    // A page that is drawn larger by two fingers is as short, with no keyboard up.
    root.toggleAttribute("data-short", view.height * view.scale < SHORT);
    root.style.setProperty("--view-top", `${Math.round(view.offsetTop)}px`);
  };
  view.addEventListener("resize", look);
  view.addEventListener("scroll", look);
  look();
}
