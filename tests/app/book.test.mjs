// The book as it is written: durable first, signed, deleted and brought back.
import assert from "node:assert/strict";
import { beforeEach, test } from "node:test";
import { MemoryDatabase } from "./browser.mjs";

const { Book } = await import("../../webapp/src/store/log/book.js");

let database;
let book;
let changes;

beforeEach(() => {
  database = new MemoryDatabase();
  book = new Book(database);
  changes = 0;
  book.addEventListener("change", () => {
    changes += 1;
  });
});

/** The book as another tab, or a later visit, reads it. */
async function reopened() {
  const again = new Book(database);
  await again.load();
  return again;
}

test("what was created is durable when it is told", async () => {
  const id = await book.create("light", "s", { name: "key" });
  assert.equal(changes, 1);
  const again = await reopened();
  assert.deepEqual(again.thing(id).data, { name: "key" });
  assert.ok(again.read);
});

test("what storage refuses is thrown, and does not stand in the book", async () => {
  database.refuse = "The storage is full.";
  await assert.rejects(book.create("light", "s", { name: "key" }), /full/);
  assert.equal(book.below("s").length, 0);
  assert.equal(changes, 0);
});

test("an edit changes the fields that are given and keeps the others", async () => {
  const id = await book.create("light", "s", { name: "key", lamp: "led" });
  await book.edit(id, { name: "fill" });
  const { data, heads } = (await reopened()).thing(id);
  assert.deepEqual(data, { name: "fill", lamp: "led" });
  assert.equal(heads.length, 1);
  assert.equal(book.history(id).length, 2);
});

test("a delete and its undo are entries too", async () => {
  const id = await book.create("light", "s", { name: "key" });
  const undo = await book.remove(id);
  assert.equal((await reopened()).below("s").length, 0);
  await undo();
  assert.deepEqual((await reopened()).thing(id).data, { name: "key" });
  assert.equal(book.size, 3);
});

test("an undo does not take away what was edited elsewhere meanwhile", async () => {
  const id = await book.create("light", "s", { name: "key" });
  const other = await reopened();
  const undo = await book.remove(id);
  await other.edit(id, { name: "key left" });
  await undo();
  const again = await reopened();
  assert.equal(again.thing(id).gone, false);
  assert.deepEqual(
    again
      .thing(id)
      .heads.map(({ data }) => data.name)
      .sort(),
    ["key", "key left"],
  );
});

test("an edit of what was edited in two places settles it", async () => {
  const id = await book.create("light", "s", { name: "key" });
  const other = await reopened();
  await book.edit(id, { name: "here" });
  await other.edit(id, { name: "there" });
  const both = await reopened();
  assert.equal(both.thing(id).heads.length, 2);
  await both.edit(id, { name: "settled" });
  assert.equal(both.thing(id).heads.length, 1);
});

test("an edited reading says when it was taken", async () => {
  const id = await book.create("reading", "k", { x: "0.4" });
  const { at } = book.thing(id);
  await book.edit(id, { x: "0.5" });
  const { read_at, x } = book.thing(id).data;
  assert.deepEqual([read_at, x, book.thing(id).at], [at, "0.5", at]);
});

test("whoever signs signs every entry", async () => {
  book.signature = () => " best boy ";
  const id = await book.create("light", "s", {});
  assert.equal(book.thing(id).heads[0].who, "best boy");
});

test("entries that another tab wrote are read, and a replaced log is read anew", async () => {
  const other = await reopened();
  const id = await other.create("light", "s", { name: "key" });
  await book.refresh([id, "not there"]);
  assert.equal(book.thing(id).data.name, "key");
  await other.edit(id, { name: "fill" });
  await book.catchUp();
  assert.equal(book.thing(id).data.name, "fill");
  database.stores.entries.rows.clear();
  await book.catchUp();
  assert.equal(book.size, 0);
});

test("a long log is read whole, some at a time", async () => {
  const ids = Array.from({ length: 4500 }, (_, i) => String(i).padStart(5, "0"));
  for (const id of ids) {
    const entry = { id, at: "2026-11-25T19:00:00+00:00", thing: "light", of: id, parent: "s" };
    database.stores.entries.rows.set(id, { ...entry, after: [], data: {} });
  }
  assert.equal((await reopened()).below("s").length, 4500);
});

test("a part is what a thing belongs to, itself, all below it and the gels these name", async () => {
  const setup = await book.create("setup", null, {});
  const gel = await book.create("gel", null, { name: "amber" });
  const light = await book.create("light", setup, { planned: { gel_ids: [null, gel] } });
  await book.create("light", "another setup", {});
  const reading = await book.create("reading", light, {});
  await book.edit(reading, { note: "again" });
  const ids = new Set(book.part(light).map(({ of }) => of));
  assert.deepEqual(ids, new Set([setup, light, reading, gel]));
  assert.equal(book.part(light).length, 5);
});

test("a thing below one that was deleted does not stand", async () => {
  const setup = await book.create("setup", null, {});
  const light = await book.create("light", setup, {});
  assert.equal(book.standing(light)?.id, light);
  await book.remove(setup);
  assert.equal(book.standing(light), undefined);
});
