/**
 * How many views stand side by side, and which: on a phone the one of the address; where there is
 * room, beside it the list that it belongs to. Fires "change" when the room changes.
 */
import { book } from "../store/index.js";
import { currentSetup } from "../store/log/shoot.js";

/** In rem, so that text at twice its size counts as half the room: 760 and 1280 px usually. */
const ROOM = ["(min-width: 47.5rem) and (min-height: 30.01rem)", "(min-width: 80rem)"];

/** @typedef {{name: string, rest: string}} Pane */

class Layout extends EventTarget {
  constructor() {
    super();
    this.queries = ROOM.map((query) => matchMedia(query));
    for (const query of this.queries) {
      query.addEventListener("change", () => this.dispatchEvent(new Event("change")));
    }
  }

  /** For how many views there is room: one, two or three. */
  get room() {
    const [two, three] = this.queries.map(({ matches }) => matches);
    return two ? (three ? 3 : 2) : 1;
  }
}

export const layout = new Layout();

/** The setup that a light or a reading of the book is of. @param {string} id */
function setupOf(id) {
  let thing = book.thing(id);
  while (thing && thing.kind !== "setup") thing = book.thing(thing.parent);
  return thing?.id;
}

/**
 * The views to show for an address, from the list to what was chosen of it.
 * @param {Pane} here
 * @param {import("./views.js").View["place"]} place  it belongs to
 * @param {number} room
 * @returns {Pane[]}
 */
export function panes(here, place, room) {
  // What is printed takes it all.
  if (room === 1 || here.name === "report") return [here];
  const set = { name: "set", rest: "" };
  const light = { name: "light", rest: "" };
  switch (place) {
    case "light":
      // Files and exposure stand beside the reading that they are about.
      return here.name === "light" || room === 2 ? [set, here] : [set, light, here];
    case "set":
      if (here.name === "set") return [here, light];
      return room === 2 ? [set, here] : [set, here, light];
    case "book":
      return bookPanes(here, room);
    case "kit":
      return here.name === "kit" ? [here] : [{ name: "kit", rest: "" }, here];
  }
}

/** @param {Pane} here @param {number} room */
function bookPanes(here, room) {
  const list = { name: "book", rest: "" };
  if (here.name === "book") {
    const setup = currentSetup();
    return setup ? [here, { name: "setup", rest: setup.id }] : [here];
  }
  const setup = here.name === "reading" && setupOf(here.rest);
  if (!setup) return [list, here];
  const between = { name: "setup", rest: setup };
  return room === 2 ? [between, here] : [list, between, here];
}
