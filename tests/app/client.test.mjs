// The queue of questions before the worker: one at a time, dropped, asked again, given up.
import assert from "node:assert/strict";
import { beforeEach, mock, test } from "node:test";
import "./browser.mjs";

/** Stands for a worker: the test answers for it. */
class FakeWorker {
  /** Those of the kernel, and those beside them that unpack. */
  static all = [];
  static beside = [];
  posted = [];
  ended = false;
  constructor(address) {
    (address.endsWith("/worker.js") ? FakeWorker.all : FakeWorker.beside).push(this);
  }
  postMessage = (message) => this.posted.push(message);
  terminate = () => {
    this.ended = true;
  };
  tell = (data) => this.onmessage({ data });
  ready = () => this.tell({ stage: "ready", part: 1 });
  answer = (reply = {}) => {
    const { id } = this.posted.at(-1);
    this.tell({ id, answer: JSON.stringify(reply) });
  };
  get asked() {
    return this.posted.map(({ request }) => JSON.parse(request).n);
  }
}
globalThis.Worker = FakeWorker;

let count = 0;
let client;
/** The worker that is at work now. */
const worker = () => FakeWorker.all.at(-1);
const settle = async () => {
  for (let i = 0; i < 5; i += 1) await Promise.resolve();
};

beforeEach(async () => {
  mock.timers.reset();
  mock.timers.enable({ apis: ["setTimeout"] });
  FakeWorker.all = [];
  FakeWorker.beside = [];
  count += 1;
  // The queue is one of the whole app: each test reads it anew.
  client = await import(`../../webapp/src/kernel/client.js?${count}`);
});

test("another worker unpacks, and the kernel's hears of all it does", () => {
  client.ask({ n: 1 }).catch(() => {});
  const [unpacks] = FakeWorker.beside;
  unpacks.tell({ name: "library", files: new Uint8Array(1) });
  unpacks.onerror({ message: "no unpack.js", preventDefault: () => {} });
  assert.deepEqual(worker().posted, [
    { name: "library", files: new Uint8Array(1) },
    { lost: "no unpack.js" },
  ]);
});

test("questions are asked one at a time, in their order", async () => {
  const answers = [1, 2].map((n) => client.ask({ n }));
  assert.deepEqual(worker().asked, []);
  worker().ready();
  assert.deepEqual(worker().asked, [1]);
  worker().answer({ words: "one" });
  assert.deepEqual(worker().asked, [1, 2]);
  worker().answer({ words: "two" });
  assert.deepEqual(await Promise.all(answers), [{ words: "one" }, { words: "two" }]);
});

test("a waiting question that is given up is never asked", async () => {
  const given = new AbortController();
  client.ask({ n: 1 });
  const dropped = client.ask({ n: 2 }, { signal: given.signal });
  client.ask({ n: 3 });
  worker().ready();
  given.abort();
  await assert.rejects(dropped, { name: "AbortError" });
  worker().answer();
  assert.deepEqual(worker().asked, [1, 3]);
});

test("an abandoned question keeps others waiting for two seconds, then a fresh worker answers", () => {
  const given = new AbortController();
  client.ask({ n: 1 }, { signal: given.signal }).catch(() => {});
  worker().ready();
  const first = worker();
  given.abort();
  mock.timers.tick(60_000);
  assert.equal(first.ended, false); // nobody waits
  client.ask({ n: 2 });
  mock.timers.tick(1900);
  assert.equal(first.ended, false);
  mock.timers.tick(200);
  assert.ok(first.ended);
  worker().ready();
  assert.deepEqual(worker().asked, [2]);
});

test("a wanted question is waited for", () => {
  client.ask({ n: 1 });
  worker().ready();
  client.ask({ n: 2 });
  mock.timers.tick(60_000);
  assert.equal(FakeWorker.all.length, 1);
});

test("a question that brings the worker down is asked once more, then given up", async () => {
  const answer = client.ask({ n: 1 });
  const next = client.ask({ n: 2 });
  worker().ready();
  worker().tell({ fatal: "out of memory", booting: false });
  worker().ready();
  assert.deepEqual(worker().asked, [1]);
  worker().tell({ fatal: "out of memory", booting: false });
  assert.match((await answer).problem.message, /out of memory/);
  worker().ready();
  worker().answer({ words: "two" });
  assert.deepEqual(await next, { words: "two" });
});

test("a start that fails is told to everyone who waits, until it is tried again", async () => {
  const waiting = client.ask({ n: 1 });
  worker().tell({ fatal: "no machine code", booting: true });
  assert.match((await waiting).problem.message, /no machine code/);
  assert.match((await client.ask({ n: 2 })).problem.message, /no machine code/);
  await assert.rejects(client.ready(), /no machine code/);
  client.restart();
  const ready = client.ready();
  worker().ready();
  await ready;
  const again = client.ask({ n: 3 });
  worker().answer({ words: "three" });
  await settle();
  assert.deepEqual(await again, { words: "three" });
});
