/**
 * The one book, the one set of settings and the drafts of this app, and which database they are
 * in: the person's own, or the demo's, which never mixes with it.
 */

import { Database } from "./database.js";
import { Drafts } from "./drafts/drafts.js";
import { Book } from "./log/book.js";
import { session } from "./session.js";
import { Settings } from "./settings.js";
import { claimTab, listen } from "./tabs.js";

const OWN = "evenkelvin";
const DEMO = "evenkelvin-demo";
const DEMO_KEY = "evenkelvin.demo";

const database = new Database(session.get(DEMO_KEY) ? DEMO : OWN);
export const book = new Book(database);
export const settings = new Settings(database);
export const drafts = new Drafts(database);
book.signature = () => settings.get("who");

/** What storage last refused, as a sentence, until the person has seen it. Fires "change". */
class Fault extends EventTarget {
  words = "";

  /** @param {string} words */
  put(words) {
    this.words = words;
    this.dispatchEvent(new Event("change"));
  }
}
export const fault = new Fault();

/** @param {unknown} error one of a view that was left while it asked is nobody's fault */
export function reportFault(error) {
  if (error instanceof DOMException && error.name === "AbortError") return;
  fault.put(error instanceof Error ? error.message : String(error));
}

async function load() {
  await Promise.all([settings.load(), book.load()]).catch(reportFault);
}

/** @type {Promise<void>} */
let reading = Promise.resolve();

/** Resolves when the book has been read, or was refused. */
export const bookRead = () => reading;

/**
 * Open the store; the book is read meanwhile (see {@link bookRead}). Never rejects: a refused store
 * is reported and the app works from memory.
 */
export async function openStore() {
  listen((news) => {
    if (news.database !== database.name) return;
    const { entries } = news;
    if (entries) reading.then(() => book.refresh(entries)).catch(reportFault);
    if (news.reload) book.load().catch(reportFault);
    if (news.setting) settings.load().catch(reportFault);
  });
  document.addEventListener("visibilitychange", () => {
    // A phone may have frozen this page while another tab wrote.
    if (document.visibilityState !== "visible") return;
    Promise.all([settings.load(), book.catchUp()]).catch(reportFault);
  });
  reading = book.load().catch((error) => {
    book.read = true;
    book.dispatchEvent(new Event("change"));
    reportFault(error);
  });
  [drafts.tab] = await Promise.all([claimTab(), settings.load().catch(reportFault)]);
}

export const inDemo = () => database.name === DEMO;

/**
 * Open the demo book afresh.
 * @param {{entries: import("./log/entries.js").Entry[], settings: Partial<import("./settings.js").Values>}} demo
 */
export async function enterDemo(demo) {
  const { theme, illuminance, length, say, language, who, keys } = settings.values;
  await database.use(DEMO);
  await database.clear();
  await database.run("entries", "readwrite", (store) =>
    Promise.all(demo.entries.map((entry) => store.put(entry))),
  );
  const own = { theme, illuminance, length, say, language, who, keys };
  const values = { ...demo.settings, ...own, welcomed: true };
  await database.run("settings", "readwrite", (store) =>
    Promise.all(Object.entries(values).map(([key, value]) => store.put(value, key))),
  );
  session.set(DEMO_KEY, "1");
  await load();
}

export async function leaveDemo() {
  session.remove(DEMO_KEY);
  await database.use(OWN);
  await load();
}
