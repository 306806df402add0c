/**
 * Hands over from the page as it opens to the app: index.html has the first fields of Light, so that
 * a slow phone can be typed into at once.
 */
import { lightDraft } from "../store/drafts/light-draft.js";
import { spread } from "../words/typed.js";

/**
 * Put the app on the page in place of the opening. What was typed there begins a reading, and the
 * caret stays where it is; nothing is drawn and no key is heard in between.
 * @param {import("lit").LitElement} shell
 * @returns {Promise<import("../store/drafts/light-draft.js").Typed | null>} the half-typed reading of an
 *   earlier time that was put aside for it
 */
export async function handOver(shell) {
  const opening = /** @type {HTMLElement} */ (document.querySelector(".opening"));
  const fields = [...opening.querySelectorAll("input")];
  const typed = fields.filter(({ value }) => value.trim());
  const aside = typed.length && lightDraft.unsaved ? lightDraft.typed : null;
  if (typed.length) {
    const way = typed.some(({ name }) => name === "x" || name === "y") ? "xy" : "cct";
    const pair = fields.filter(({ name }) => (way === "xy") === (name === "x" || name === "y"));
    const order = [...pair.map(({ name }) => name), "illuminance"];
    const values = typed.map(({ name, value }) => spread(order, name, value) ?? { [name]: value });
    lightDraft.start({ way, ...Object.assign({}, ...values) });
  }
  const caret = fields.find((field) => field === document.activeElement);
  // Beside it at first: a phone's keyboard would close with the field that it belongs to.
  document.body.append(shell);
  await shell.updateComplete;
  await /** @type {any} */ (shell.querySelector("main > .here > *"))?.updateComplete;
  const next =
    caret && /** @type {HTMLInputElement | null} */ (shell.querySelector(`#${caret.dataset.next}`));
  next?.focus({ preventScroll: true });
  next?.setSelectionRange(caret?.selectionStart ?? 0, caret?.selectionEnd ?? 0);
  opening.remove();
  return aside;
}
