/**
 * The table of views. To add one: write `places/PLACE/NAME.js` (a custom element that extends
 * Page), import it in others.js, and give it a row. `place` is the thumb-bar place it belongs to.
 */
import { html } from "lit";
import { keyed } from "lit/directives/keyed.js";
import "../places/light/light.js";

/**
 * @typedef {object} View
 * @property {import("../words/index.js").WordKey} title
 * @property {"light" | "set" | "book" | "kit"} place
 * @property {(rest: string) => unknown} show  `rest` is what follows the name in the address
 */

/** @type {Promise<unknown> | undefined} */
let reading;

/**
 * Light opens the app and comes with it; the script of all other views is read when there is time
 * or need. Rejects where it cannot be read.
 */
export function readOthers() {
  reading ??= import("./others.js").catch((error) => {
    reading = undefined;
    throw error;
  });
  return reading;
}

/** @type {Record<string, View>} */
export const VIEWS = {
  light: { title: "place.light", place: "light", show: () => html`<ek-light></ek-light>` },
  set: { title: "place.set", place: "set", show: (id) => html`<ek-set .open=${id}></ek-set>` },
  balance: {
    title: "balance.heading",
    place: "set",
    show: () => html`<ek-balance></ek-balance>`,
  },
  dial: {
    title: "dial.title",
    place: "set",
    show: (of) => keyed(of, html`<ek-dial .of=${of}></ek-dial>`),
  },
  dim: {
    title: "dim.title",
    place: "set",
    show: (of) => keyed(of, html`<ek-dim .of=${of}></ek-dim>`),
  },
  mix: { title: "mix.heading", place: "set", show: (of) => html`<ek-mix .of=${of}></ek-mix>` },
  unmix: { title: "unmix.heading", place: "set", show: () => html`<ek-unmix></ek-unmix>` },
  sweep: {
    title: "sweep.heading",
    place: "set",
    show: (id) => keyed(id, html`<ek-sweep .id=${id}></ek-sweep>`),
  },
  hang: { title: "hang.title", place: "set", show: () => html`<ek-hang></ek-hang>` },
  flash: { title: "flash.heading", place: "set", show: () => html`<ek-flash></ek-flash>` },
  book: { title: "place.book", place: "book", show: () => html`<ek-book></ek-book>` },
  setup: {
    title: "place.setup",
    place: "book",
    show: (id) => html`<ek-setup .id=${id}></ek-setup>`,
  },
  reading: {
    title: "book.reading",
    place: "book",
    show: (id) => html`<ek-reading .id=${id}></ek-reading>`,
  },
  share: {
    title: "share.title",
    place: "book",
    show: (rest) => {
      const [id, only = ""] = rest.split("/");
      return html`<ek-share .id=${id} .only=${only}></ek-share>`;
    },
  },
  report: {
    title: "report.title",
    place: "book",
    show: (id) => html`<ek-report .id=${id}></ek-report>`,
  },
  receive: {
    title: "receive.title",
    place: "book",
    show: () => html`<ek-receive></ek-receive>`,
  },
  join: {
    title: "join.title",
    place: "book",
    show: (code) => html`<ek-join .code=${code}></ek-join>`,
  },
  copy: {
    title: "copy.title",
    place: "book",
    show: (link) => html`<ek-copy .link=${link}></ek-copy>`,
  },
  since: {
    title: "since.title",
    place: "book",
    show: (id) => html`<ek-since .id=${id}></ek-since>`,
  },
  kit: { title: "place.kit", place: "kit", show: () => html`<ek-kit></ek-kit>` },
  about: { title: "about.title", place: "kit", show: () => html`<ek-about></ek-about>` },
  cameras: { title: "cameras.title", place: "kit", show: () => html`<ek-cameras></ek-cameras>` },
  cautions: {
    title: "cautions.title",
    place: "kit",
    show: () => html`<ek-cautions></ek-cautions>`,
  },
  tint: { title: "tint.title", place: "kit", show: () => html`<ek-tint></ek-tint>` },
  files: { title: "files.title", place: "light", show: () => html`<ek-files></ek-files>` },
  spectrum: {
    title: "spectrum.title",
    place: "set",
    show: (of) => html`<ek-spectrum .of=${of}></ek-spectrum>`,
  },
  pair: {
    title: "pair.title",
    place: "set",
    show: (of) => html`<ek-pair .of=${of.split("/")}></ek-pair>`,
  },
  exposure: {
    title: "exposure.title",
    place: "light",
    show: () => html`<ek-exposure></ek-exposure>`,
  },
  order: {
    title: "order.title",
    place: "kit",
    show: (scope) => html`<ek-order .scope=${scope || "setup"}></ek-order>`,
  },
  rolls: { title: "rolls.title", place: "kit", show: () => html`<ek-rolls></ek-rolls>` },
  windows: {
    title: "location.windows",
    place: "book",
    show: (of) => keyed(of, html`<ek-windows .of=${of}></ek-windows>`),
  },
  sun: {
    title: "location.sun",
    place: "book",
    show: (of) => keyed(of, html`<ek-sun .of=${of}></ek-sun>`),
  },
  flicker: { title: "flicker.title", place: "kit", show: () => html`<ek-flicker></ek-flicker>` },
  demo: { title: "demo.title", place: "set", show: () => html`<ek-demo></ek-demo>` },
};
