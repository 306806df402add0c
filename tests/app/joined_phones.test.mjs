// Two and three phones joined by channels in memory: in step whatever is cut, and deaf to the hostile.
import assert from "node:assert/strict";
import { test } from "node:test";
import "./browser.mjs";
import { MemoryDatabase } from "./browser.mjs";
import { chance } from "./chance.mjs";

const { Book } = await import("../../webapp/src/store/log/book.js");
const { Peer } = await import("../../webapp/src/store/together/peer.js");

/** Two ends of a line. `cut` ends it in the middle of whatever is under way. */
function line(most = Number.POSITIVE_INFINITY) {
  let left = most;
  const ends = [0, 1].map(() => ({
    hears: { message: [], close: [] },
    closed: false,
    sent: 0,
    addEventListener(type, hear) {
      this.hears[type]?.push(hear);
    },
    tell(type, event) {
      for (const hear of this.hears[type]) hear(event);
    },
  }));
  const cut = () => {
    for (const end of ends) {
      if (end.closed) continue;
      end.closed = true;
      end.tell("close", {});
    }
  };
  for (const [at, end] of ends.entries()) {
    const other = ends[1 - at];
    end.send = (data) => {
      end.sent += 1;
      if (--left < 0) cut();
      setImmediate(() => !other.closed && other.tell("message", { data }));
    };
    end.close = () => setImmediate(cut);
  }
  return { ends, cut };
}

class Phone {
  constructor(name) {
    this.name = name;
    this.database = new MemoryDatabase();
    this.book = new Book(this.database);
    this.peers = new Set();
    this.scope = undefined;
    this.checked = 0;
    this.book.addEventListener("added", ({ detail }) => {
      for (const peer of this.peers) peer.added(detail);
    });
  }

  home() {
    return {
      shared: () => this.book.part(this.scope),
      entry: (id) => this.book.entry(id),
      check: async (entries) => {
        this.checked += 1;
        return entries.some(({ data }) => data.bad) ? "entry: data.bad: that is bad." : "";
      },
      keep: (entries) => this.book.takeOver(entries),
      who: () => this.name,
      clock: () => Date.now(), // by which the book dates what is added
    };
  }

  talk(channel, leads = false) {
    const peer = new Peer(channel, this.home(), { leads });
    this.peers.add(peer);
    return peer;
  }

  ids = () =>
    this.book
      .part()
      .map(({ id }) => id)
      .sort();
}

let made = 0;
/** An entry as another day's work would have left it. */
function entry(thing, parent, data, more = {}) {
  const id = `${String(made++ * 7919).padStart(9, "0")}${thing[0]}${"x".repeat(12)}`;
  const at = `2026-11-2${made % 6}T10:00:00.000+01:00`;
  return { id, at, thing, of: id, parent, after: [], data, ...more };
}

/** A production with so many readings. */
function shoot(name, readings) {
  const production = entry("production", null, { name });
  const location = entry("location", production.id, { name: "quay" });
  const setup = entry("setup", location.id, { name: "wide" });
  const light = entry("light", setup.id, { name: "key" });
  const read = Array.from({ length: readings }, (_, n) => entry("reading", light.id, { x: n }));
  return [production, location, setup, light, ...read];
}

const until = async (true_, words = "it") => {
  for (let turn = 0; turn < 20_000; turn++) {
    if (true_()) return;
    await new Promise((resolve) => setTimeout(resolve, 1));
  }
  assert.fail(`${words} never came`);
};

/** Join two phones, and wait until both hold the same. */
async function join(one, other, most) {
  const { ends, cut } = line(most);
  const peers = [one.talk(ends[0], true), other.talk(ends[1])];
  await Promise.all(peers.map((peer) => peer.begin()));
  return { peers, ends, cut };
}

const settled = (...peers) =>
  until(() => peers.every((peer) => peer.state === "joined" && !peer.pending.size), "all sent");

test("what either has, both have, and each new entry goes over", async () => {
  const [ana, ben] = [new Phone("Ana"), new Phone("Ben")];
  await ana.book.takeOver(shoot("ferry", 300));
  await ben.book.takeOver(shoot("harbour", 500));
  const { peers } = await join(ana, ben);
  await settled(...peers);
  assert.deepEqual(ana.ids(), ben.ids());
  assert.equal(ana.book.size, 808);
  assert.deepEqual(
    peers.map(({ name }) => name),
    ["Ben", "Ana"],
  );
  const id = await ben.book.create("light", "s", { name: "fill" });
  await until(() => ana.book.thing(id));
  await ana.book.edit(id, { name: "kicker" });
  await until(() => ben.book.thing(id).data.name === "kicker");
  await settled(...peers);
  // What came from the other is not sent back.
  assert.equal(peers[0].pending.size + peers[1].pending.size, 0);
  for (const peer of peers) peer.close();
});

test("a long book that both know costs a few messages", async () => {
  const [ana, ben] = [new Phone("Ana"), new Phone("Ben")];
  const known = shoot("ferry", 20_000);
  await ana.book.takeOver(known);
  await ben.book.takeOver([...known].reverse());
  await ben.book.create("light", "s", { name: "one more" });
  const { peers, ends } = await join(ana, ben);
  await settled(...peers);
  assert.deepEqual(ana.ids(), ben.ids());
  assert.ok(ends[0].sent + ends[1].sent < 30, `${ends[0].sent} and ${ends[1].sent} messages`);
  for (const peer of peers) peer.close();
});

test("200 lines cut anywhere: what arrived hangs together, and in the end both hold the same", async () => {
  const by = chance(21);
  let cuts = 0;
  for (let round = 0; round < 20; round++) {
    const [ana, ben] = [new Phone("Ana"), new Phone("Ben")];
    await ana.book.takeOver(shoot("ferry", Math.floor(by() * 1500)));
    await ben.book.takeOver(shoot("harbour", Math.floor(by() * 1500)));
    for (let cut = 0; cut < 10; cut++, cuts++) {
      const { peers } = await join(ana, ben, Math.floor(by() * 24));
      const phone = by() < 0.5 ? ana : ben;
      await phone.book.create("light", "s", { name: `${round} ${cut}` });
      for (const peer of peers) peer.close();
      await until(() => peers.every(({ state }) => state === "over"));
      assert.deepEqual(
        peers.map(({ why }) => why),
        ["", ""],
      );
      for (const { book } of [ana, ben]) {
        const orphans = book
          .part()
          .filter(({ parent }) => parent && parent !== "s" && !book.thing(parent));
        assert.deepEqual(orphans, []);
      }
    }
    const { peers } = await join(ana, ben);
    await settled(...peers);
    assert.deepEqual(ana.ids(), ben.ids());
    for (const peer of peers) peer.close();
  }
  assert.equal(cuts, 200);
});

test("three phones: what a guest writes goes through the host to the other guest", async () => {
  const [host, ben, cleo] = ["Host", "Ben", "Cleo"].map((name) => new Phone(name));
  await ben.book.takeOver(shoot("ferry", 40));
  await cleo.book.takeOver(shoot("harbour", 40));
  const lines = [await join(host, ben), await join(host, cleo)];
  const peers = lines.flatMap((one) => one.peers);
  await until(() => [host, ben, cleo].every(({ book }) => book.size === 88));
  const id = await cleo.book.create("light", "s", { name: "top" });
  await until(() => ben.book.thing(id));
  await settled(...peers);
  for (const peer of peers) peer.close();
});

test("only what is chosen leaves, whatever is asked for", async () => {
  const [ana, ben] = [new Phone("Ana"), new Phone("Ben")];
  const [open, secret] = [shoot("open", 5), shoot("secret", 5)];
  await ana.book.takeOver([...open, ...secret]);
  ana.scope = open[0].id;
  const { peers } = await join(ana, ben);
  await settled(...peers);
  assert.equal(ben.book.size, open.length);
  const asked = await peers[1].wire.ask({ ask: "give", ids: secret.map(({ id }) => id) });
  assert.deepEqual(asked.entries, []);
  await ana.book.create("light", secret[2].id, { name: "not for you" });
  const shared = await ana.book.create("light", open[2].id, { name: "for you" });
  await until(() => ben.book.thing(shared));
  await settled(...peers);
  assert.equal(ben.book.size, open.length + 1);
  for (const peer of peers) peer.close();
});

test("full storage on one side is said on the other, and nothing is lost", async () => {
  const [ana, ben] = [new Phone("Ana"), new Phone("Ben")];
  const { peers } = await join(ana, ben);
  ben.database.refuse = "The storage of this phone is full.";
  const id = await ana.book.create("light", "s", { name: "key" });
  await until(() => peers[0].trouble);
  assert.match(peers[0].trouble, /full/);
  assert.equal(peers[0].pending.size, 1);
  assert.equal(peers[0].state, "joined");
  ben.database.refuse = "";
  await until(() => ben.book.thing(id));
  await settled(...peers);
  assert.equal(peers[0].trouble, "");
  for (const peer of peers) peer.close();
});

/** What a hostile phone does, by the reason that it is parted for. */
const HOSTILE = {
  "no JSON": ["garbage", ({ end }) => end.send(".{{{{")],
  "no piece": ["garbage", ({ end }) => end.send("hello")],
  bytes: ["garbage", ({ end }) => end.send(new Uint8Array(9))],
  "null in place of a message": ["garbage", ({ end }) => end.send(".null")],
  "an answer that nobody asked for": ["garbage", ({ end }) => end.send('.{"re":99}')],
  "a question without a name": ["garbage", ({ end }) => end.send('.{"n":1,"ask":"__proto__"}')],
  "ranges that are none": [
    "garbage",
    ({ end }) => end.send('.{"n":1,"ask":"compare","ranges":[[1,2,3,4]]}'),
  ],
  "entries that are none": ["garbage", ({ take }) => take([null])],
  "ids that are none": ["garbage", ({ end }) => end.send('.{"n":1,"ask":"give","ids":{}}')],
  "a hundred megabytes in pieces": [
    "large",
    ({ end }) => {
      for (let piece = 0; piece < 6000; piece++) end.send(`+${"a".repeat(16_000)}`);
    },
  ],
  "a flood of questions": [
    "flood",
    ({ end }) => {
      for (let n = 1; n < 100_000; n++) end.send(`.{"n":${n},"ask":"give","ids":[]}`);
    },
  ],
  "a flood of entries": [
    "flood",
    async ({ take }) => {
      for (let n = 0; n < 200; n++) await take(shoot(`flood ${n}`, 480));
    },
  ],
  "a twin of a known entry": [
    "twin",
    ({ take, known }) => take([{ ...known, data: { name: "mine now" } }]),
  ],
  "a clock in 2099": [
    "clock",
    ({ take }) => take([entry("light", "s", { name: "late" }, { at: "2099-01-01T00:00:00Z" })]),
  ],
  "what the kernel refuses": ["refused", ({ take }) => take([entry("light", "s", { bad: true })])],
};

for (const [what, [why, does]] of Object.entries(HOSTILE)) {
  test(`parted for ${why}: ${what}`, async () => {
    const ana = new Phone("Ana");
    const known = entry("production", null, { name: "ferry" });
    await ana.book.takeOver([known]);
    const { ends } = line();
    const peer = ana.talk(ends[0]);
    let n = 1000;
    let end = ends[1];
    const take = (entries) => {
      end.send(`.${JSON.stringify({ n: n++, ask: "take", entries })}`);
      return new Promise(setImmediate);
    };
    await does({ end, take, known });
    await until(() => peer.state === "over", "the parting");
    assert.equal(peer.why, why);
    end = null;
    assert.deepEqual(ana.book.thing(known.id).data, { name: "ferry" });
    const kept = ana.book.part().filter(({ data }) => data.bad || data.name === "late");
    assert.deepEqual(kept, []);
  });
}

test("an endless cutting into ranges is given up", async () => {
  const ana = new Phone("Ana");
  const { ends } = line();
  const peer = ana.talk(ends[0], true);
  ends[1].addEventListener("message", ({ data }) => {
    const { n, ask, ranges } = JSON.parse(data.slice(1));
    if (ask === "hello") ends[1].send(`.{"re":${n},"talk":1,"who":"Eve"}`);
    if (ask !== "compare") return;
    const parts = Array.from({ length: 32 }, (_, at) => [`${at}`, null, 5, "different"]);
    ends[1].send(`.${JSON.stringify({ re: n, found: ranges.map(() => ({ parts })) })}`);
  });
  peer.begin();
  await until(() => peer.state === "over", "the parting");
  assert.equal(peer.why, "flood");
});

test("a goodbye is heard, and no line that was only lost is taken for one", async () => {
  const [ana, ben] = [new Phone("Ana"), new Phone("Ben")];
  const { peers } = await join(ana, ben);
  await settled(...peers);
  await peers[1].leave();
  await until(() => peers[0].state === "over");
  assert.equal(peers[0].left, true);
  const again = await join(ana, ben);
  await settled(...again.peers);
  again.cut();
  assert.equal(again.peers[0].left, false);
});

test("a phone with another version is told so", async () => {
  const { ends } = line();
  const peer = new Phone("Ana").talk(ends[0]);
  ends[1].send('.{"n":1,"ask":"hello","talk":2,"who":"Ben"}');
  await until(() => peer.state === "over");
  assert.equal(peer.why, "version");
});
