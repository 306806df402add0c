/**
 * IndexedDB, opened once and opened again when the phone closes it under us.
 *
 * What lives where (database "evenkelvin", or "evenkelvin-demo" for the invented shoot):
 *   entries   the book: an append-only log, keyed by entry id (see entries.js)
 *   settings  white, tolerance, units, theme, stock, where we are: key → value
 *   drafts    what is typed and not kept yet: key → value
 */
import { openDB } from "idb";
import { t } from "../words/index.js";

/** What the screen says when storage refuses. The message is a sentence for the person. */
export class StorageFault extends Error {}

/** Errors by which browsers report a connection that was closed while we were away. */
const LOST = new Set(["InvalidStateError", "AbortError", "UnknownError"]);

/** @param {unknown} error */
function asFault(error) {
  const name = error instanceof DOMException ? error.name : "";
  const words = /** @type {const} */ ({
    QuotaExceededError: "storage.full",
    VersionError: "storage.newer", // another tab has opened a newer version of the app
  })[name];
  return new StorageFault(t(words ?? "storage.refused"), { cause: error });
}

export class Database {
  /** @param {string} name */
  constructor(name) {
    this.name = name;
    /** @type {Promise<import("idb").IDBPDatabase> | undefined} */
    this.connection = undefined;
  }

  /** Work on another database from now on. @param {string} name */
  async use(name) {
    const connection = await this.connection?.catch(() => undefined);
    connection?.close();
    this.connection = undefined;
    this.name = name;
  }

  /** @returns {Promise<import("idb").IDBPDatabase>} */
  open() {
    this.connection ??= openDB(this.name, 1, {
      upgrade(db) {
        const entries = db.createObjectStore("entries", { keyPath: "id" });
        entries.createIndex("parent", "parent");
        entries.createIndex("at", "at");
        db.createObjectStore("settings");
        db.createObjectStore("drafts");
      },
      blocking: (_current, _blocked, event) => {
        /** @type {IDBDatabase} */ (event.target).close();
        this.connection = undefined;
      },
      terminated: () => {
        this.connection = undefined;
      },
    });
    return this.connection;
  }

  /**
   * Run `work` on one object store in one transaction; resolves when the transaction is
   * complete. A write is only then durable. A lost connection is opened anew and the work tried
   * once more, so `work` must give the same result when run twice.
   * @template T
   * @param {"entries" | "settings" | "drafts"} name
   * @param {"readonly" | "readwrite"} mode
   * @param {(store: any) => T | Promise<T>} work
   * @param {"strict" | "relaxed"} [durability]
   * @returns {Promise<T>}
   */
  async run(name, mode, work, durability = "strict") {
    const attempt = async () => {
      const db = await this.open();
      const transaction = db.transaction(name, mode, { durability });
      const [result] = await Promise.all([work(transaction.store), transaction.done]);
      return result;
    };
    try {
      return await attempt();
    } catch (error) {
      this.connection = undefined;
      if (!(error instanceof DOMException && LOST.has(error.name))) throw asFault(error);
    }
    try {
      return await attempt();
    } catch (error) {
      this.connection = undefined;
      throw asFault(error);
    }
  }

  /** Forget everything in this database. Only ever called on the demo. */
  async clear() {
    for (const name of /** @type {const} */ (["entries", "settings", "drafts"])) {
      await this.run(name, "readwrite", (store) => store.clear());
    }
  }
}
