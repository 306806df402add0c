// What the app's modules look for in a browser when they are read, for Node, and a database in
// memory in place of IndexedDB. Import this first.
const held = new Set();

// Events of the window.
const page = new EventTarget();

Object.assign(globalThis, {
  addEventListener: page.addEventListener.bind(page),
  dispatchEvent: page.dispatchEvent.bind(page),
  location: new URL("https://localhost/app/index.html"),
  // Node's own would keep the process alive for a message that never comes.
  BroadcastChannel: undefined,
  IDBKeyRange: { lowerBound: (from) => from },
});
Object.defineProperty(globalThis, "navigator", {
  configurable: true,
  value: { locks: { query: async () => ({ held: [...held].map((name) => ({ name })) }) } },
});

/** Let a tab count as open, or no more. */
export function setOpen(tab, open) {
  const name = `evenkelvin tab ${tab}`;
  if (open) held.add(name);
  else held.delete(name);
}

/** One object store: what was put is a copy, as in IndexedDB, and keys come sorted. */
class Store {
  rows = new Map();

  keys = () => [...this.rows.keys()].sort();
  get = async (key) => structuredClone(this.rows.get(key));
  getAllKeys = async () => this.keys();
  getAll = async (from = "", most = Number.POSITIVE_INFINITY) =>
    this.keys()
      .filter((key) => key > from)
      .slice(0, most)
      .map((key) => structuredClone(this.rows.get(key)));
  put = async (value, key = value.id) => {
    this.rows.set(key, structuredClone(value));
  };
  delete = async (key) => {
    this.rows.delete(key);
  };
}

/** Stands for store/database.js. `refuse` makes every write fail, and nothing of it is kept. */
export class MemoryDatabase {
  name = "memory";
  refuse = "";
  stores = { entries: new Store(), settings: new Store(), drafts: new Store() };

  async run(name, mode, work) {
    if (mode === "readwrite" && this.refuse) throw new Error(this.refuse);
    return work(this.stores[name]);
  }
}
