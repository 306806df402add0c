/** A mark for each place of the thumb bar, drawn by us from plain geometry. */
import { html, svg } from "lit";

const MARKS = {
  light: svg`<circle cx="12" cy="12" r="4.5"></circle><path d="M12 2.5v3M12 18.5v3M2.5 12h3M18.5 12h3"></path>`,
  set: svg`<circle cx="5.5" cy="16" r="3"></circle><circle cx="12" cy="7" r="3"></circle><circle cx="18.5" cy="16" r="3"></circle>`,
  book: svg`<path d="M5 4.5h14v15H5zM9 4.5v15M12 9h4M12 12.5h4"></path>`,
  kit: svg`<path d="M4 7h10v13H4zM8 4h12v13h-6"></path>`,
};

/** @param {keyof typeof MARKS} place */
export function placeIcon(place) {
  return html`<svg viewBox="0 0 24 24" width="24" height="24" class="mark" aria-hidden="true">
    ${MARKS[place]}
  </svg>`;
}
