// A form that saves itself: at every keystroke, and there again when it is opened the next time.
import assert from "node:assert/strict";
import { beforeEach, test } from "node:test";
import { MemoryDatabase, setOpen } from "./browser.mjs";

const { drafts, fault } = await import("../../webapp/src/store/index.js");
const { FormDraft } = await import("../../webapp/src/base/form-draft.js");

const host = { addController: () => {}, requestUpdate: () => {} };
let database;

beforeEach(() => {
  database = new MemoryDatabase();
  drafts.database = database;
  drafts.tab = "one";
  setOpen("one", true);
  fault.words = "";
});

const settle = () => new Promise((resolve) => setTimeout(resolve));

/** The form as it is opened, with what was saved of it. */
async function opened(options) {
  const form = new FormDraft(host, {
    name: () => "form",
    blank: () => ({ a: "", b: "1" }),
    ...options,
  });
  form.hostConnected();
  await settle();
  return form;
}

test("what was typed is there when the form is opened again", async () => {
  const form = await opened();
  assert.deepEqual(form.typed, { a: "", b: "1" });
  form.type({ a: "typed" });
  assert.deepEqual(form.typed, { a: "typed", b: "1" });
  await settle();
  assert.deepEqual((await opened()).typed, { a: "typed", b: "1" });
});

test("what is typed before the saved text was read is newer than it, and the rest is still there", async () => {
  (await opened()).type({ a: "of yesterday", b: "2" });
  await settle();
  let of = "";
  const form = new FormDraft(host, {
    name: () => "form",
    blank: () => ({ a: "", b: "1", c: of }),
  });
  of = "the book";
  const { run } = database;
  let arrive;
  database.run = async (...all) => {
    database.run = run;
    const read = await run.apply(database, all);
    await new Promise((resolve) => {
      arrive = resolve;
    });
    return read;
  };
  form.hostConnected();
  await settle();
  form.type({ a: "now" });
  assert.deepEqual(form.typed, { a: "now", b: "1", c: "the book" });
  arrive();
  await settle();
  assert.deepEqual(form.typed, { a: "now", b: "2", c: "the book" });
  await settle();
  assert.deepEqual((await opened()).typed, { a: "now", b: "2", c: "the book" });
});

test("only what is to be saved is, and what stands elsewhere comes from there", async () => {
  let kept = "first";
  const options = {
    blank: () => ({ a: "", b: kept }),
    toSave: ({ a }) => ({ a }),
  };
  (await opened(options)).type({ a: "typed" });
  await settle();
  kept = "second";
  assert.deepEqual((await opened(options)).typed, { a: "typed", b: "second" });
});

test("a form that was kept is blank again, but for what it is told", async () => {
  const form = await opened();
  form.type({ a: "typed", b: "2" });
  await form.clear({ b: "3" });
  assert.deepEqual(form.typed, { a: "", b: "3" });
  assert.deepEqual((await opened()).typed, { a: "", b: "1" });
});

test("what storage refuses is told, and stays typed", async () => {
  const form = await opened();
  database.refuse = "The storage is full.";
  form.type({ a: "typed" });
  await settle();
  assert.match(fault.words, /full/);
  assert.equal(form.typed.a, "typed");
});
