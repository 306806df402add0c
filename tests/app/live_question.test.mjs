// Questions that follow what is on the screen: when they are asked, dropped and asked again.
import assert from "node:assert/strict";
import { beforeEach, mock, test } from "node:test";
import "./browser.mjs";

const { LiveQuestion } = await import("../../webapp/src/base/live-question.js");

/** A view that does nothing but count how often it is to be drawn. */
class Host {
  controllers = [];
  drawn = 0;
  addController = (one) => this.controllers.push(one);
  requestUpdate = () => {
    this.drawn += 1;
  };
}

/** A kernel that answers when the test says so. */
class Kernel {
  asked = [];
  listeners = new Set();
  ask = (request, { signal }) =>
    new Promise((resolve, reject) => {
      signal.addEventListener("abort", () => reject(signal.reason));
      this.asked.push({ request, resolve, reject, signal });
    });
  onStage = (listener) => {
    this.listeners.add(listener);
    listener({ stage: "ready" });
    return () => this.listeners.delete(listener);
  };
  tell = (stage) => {
    for (const listener of this.listeners) listener({ stage });
  };
  get requests() {
    return this.asked.map(({ request }) => request.n);
  }
}

let host;
let kernel;
/** Let everything that was answered arrive. */
const settle = async () => {
  for (let i = 0; i < 5; i += 1) await Promise.resolve();
};

beforeEach(() => {
  mock.timers.reset();
  mock.timers.enable({ apis: ["setTimeout"] });
  host = new Host();
  kernel = new Kernel();
});

function live(options) {
  const question = new LiveQuestion(host, { kernel, ...options });
  question.hostConnected();
  return question;
}

test("only what stands when the typing pauses is asked", () => {
  const question = live();
  for (const n of [1, 2, 3]) {
    question.put({ n });
    mock.timers.tick(30);
  }
  assert.deepEqual(kernel.requests, []);
  mock.timers.tick(60);
  assert.deepEqual(kernel.requests, [3]);
  assert.ok(question.waiting);
});

test("the same question is not asked twice", async () => {
  const question = live();
  question.put({ n: 1 });
  mock.timers.tick(60);
  kernel.asked[0].resolve({ words: "one" });
  await settle();
  question.put({ n: 1 });
  mock.timers.tick(1000);
  assert.deepEqual(kernel.requests, [1]);
  assert.deepEqual(question.answer, { words: "one" });
  assert.equal(question.waiting, false);
  assert.equal(host.drawn, 1);
});

test("an answer that comes too late is not shown", async () => {
  const question = live();
  question.put({ n: 1 });
  mock.timers.tick(60);
  question.put({ n: 2 });
  assert.ok(kernel.asked[0].signal.aborted);
  kernel.asked[0].resolve({ words: "one" });
  await settle();
  assert.equal(question.answer, undefined);
  mock.timers.tick(60);
  kernel.asked[1].resolve({ words: "two" });
  await settle();
  assert.deepEqual(question.answer, { words: "two" });
});

test("the last answer stays while the next is awaited, and goes with the question", async () => {
  const question = live();
  question.put({ n: 1 });
  mock.timers.tick(60);
  kernel.asked[0].resolve({ words: "one" });
  await settle();
  question.put({ n: 2 });
  assert.deepEqual(question.answer, { words: "one" });
  question.put(null);
  assert.equal(question.answer, undefined);
  assert.equal(question.waiting, false);
});

test("a problem takes the answer's place and is found at its path", async () => {
  const question = live();
  question.put({ n: 1 });
  mock.timers.tick(60);
  kernel.asked[0].resolve({ problem: { field: "lights.0.x", message: "x is no number." } });
  await settle();
  assert.equal(question.answer, undefined);
  assert.equal(question.problemAt("lights.0.x"), "x is no number.");
  assert.equal(question.problemAt("lights.0"), undefined);
  assert.equal(question.problemBeside(["lights.0.x"]), undefined);
  assert.equal(question.problemBeside(["lights.0.y"]), "x is no number.");
  assert.equal(question.problemBeside(/^lights\./), undefined);
});

test("in the middle of typing nothing is said to be wrong, but it is known", async () => {
  const field = new EventTarget();
  host.querySelector = () => field;
  const question = live();
  const wrong = { problem: { field: "reading.y", message: "y is too small." } };
  const ask = async (n) => {
    question.put({ n });
    mock.timers.tick(60);
    kernel.asked.at(-1).resolve(n % 2 ? wrong : { n });
    await settle();
  };
  await ask(2);
  await ask(3);
  assert.deepEqual([question.answer.n, question.problem, question.waiting], [2, undefined, true]);
  assert.equal(question.found.message, "y is too small.");
  await ask(4); // typed on before it was told
  mock.timers.tick(2000);
  await settle();
  assert.deepEqual(
    [question.answer.n, question.problem, question.found],
    [4, undefined, undefined],
  );
  await ask(5);
  field.dispatchEvent(new Event("blur"));
  await settle();
  assert.equal(question.problemAt("reading.y"), "y is too small.");
  assert.equal(question.answer, undefined);
  question.put({ n: 6 });
  mock.timers.tick(60);
  kernel.asked.at(-1).resolve({ problem: { field: "reading.y", message: "y is too large." } });
  await settle();
  assert.equal(question.problem.message, "y is too large."); // one is told already
  question.put(null);
  await ask(7);
  mock.timers.tick(2000);
  await settle();
  assert.equal(question.problem.message, "y is too small.");
});

test("a question that fails is a problem of no field", async () => {
  const question = live();
  question.put({ n: 1 });
  mock.timers.tick(60);
  kernel.asked[0].reject(new Error("The kernel is gone."));
  await settle();
  assert.equal(question.problem.message, "The kernel is gone.");
  assert.equal(question.problemBeside([]), "The kernel is gone.");
});

test("what is made from an answer waits for it, then is asked at once", async () => {
  const first = live();
  const second = live({ after: [first] });
  const draw = (n) => {
    first.put({ n });
    second.put(first.answer ? { n: first.answer.n * 10 } : null);
  };
  draw(1);
  mock.timers.tick(60);
  draw(1);
  assert.deepEqual(kernel.requests, [1]);
  kernel.asked[0].resolve({ n: 1 });
  await settle();
  draw(1);
  assert.deepEqual(kernel.requests, [1, 10]);
  kernel.asked[1].resolve({ n: 10 });
  await settle();
  // While the next is typed, what stood there stays and nothing is asked about it.
  draw(2);
  assert.deepEqual(second.answer, { n: 10 });
  mock.timers.tick(60);
  draw(2);
  assert.deepEqual(kernel.requests, [1, 10, 2]);
  kernel.asked[2].resolve({ n: 2 });
  await settle();
  draw(2);
  assert.deepEqual(kernel.requests, [1, 10, 2, 20]);
});

test("a following question that was dropped for typing is asked again", async () => {
  const first = live();
  const second = live({ after: [first] });
  const draw = (n) => {
    first.put({ n });
    second.put(first.answer ? { n: 10 } : null);
  };
  draw(1);
  mock.timers.tick(60);
  kernel.asked[0].resolve({});
  await settle();
  draw(1);
  draw(2);
  assert.ok(kernel.asked[1].signal.aborted);
  mock.timers.tick(60);
  kernel.asked[2].resolve({});
  await settle();
  draw(2);
  assert.deepEqual(kernel.requests, [1, 10, 2, 10]);
});

test("after a failed start the question is asked again", async () => {
  const question = live();
  question.put({ n: 1 });
  mock.timers.tick(60);
  kernel.tell("failed");
  kernel.asked[0].resolve({ problem: { field: "", message: "No start." } });
  await settle();
  assert.equal(question.problem, undefined); // the boot's own progress tells it
  const drawn = host.drawn;
  kernel.tell("ready");
  assert.equal(host.drawn, drawn + 1);
  question.put({ n: 1 });
  mock.timers.tick(60);
  assert.deepEqual(kernel.requests, [1, 1]);
});

test("a view that is left asks nothing more, and asks anew when it is back", () => {
  const question = live();
  question.put({ n: 1 });
  question.hostDisconnected();
  mock.timers.tick(1000);
  assert.deepEqual(kernel.requests, []);
  question.hostConnected();
  question.put({ n: 1 });
  mock.timers.tick(60);
  assert.deepEqual(kernel.requests, [1]);
});

test("what the person gave up is asked again when it changes, or when they say so", async () => {
  const question = live();
  const asked = (n) => {
    question.put({ n });
    mock.timers.tick(60);
  };
  asked(1);
  question.giveUp();
  assert.equal(kernel.asked[0].signal.aborted, true);
  assert.deepEqual([question.waiting, question.stopped], [false, true]);
  asked(1);
  assert.deepEqual(kernel.requests, [1]);
  question.again();
  asked(1);
  assert.deepEqual([kernel.requests, question.stopped], [[1, 1], false]);
  question.giveUp();
  asked(2);
  kernel.asked[2].resolve({ n: "two" });
  await settle();
  assert.deepEqual([question.answer.n, question.stopped], ["two", false]);
});
