// What is typed and not kept yet: of this tab, of one that was killed, and what storage refused.
import assert from "node:assert/strict";
import { beforeEach, test } from "node:test";
import { MemoryDatabase, setOpen } from "./browser.mjs";

const { Drafts } = await import("../../webapp/src/store/drafts/drafts.js");

let database;

beforeEach(() => {
  database = new MemoryDatabase();
  for (const tab of ["one", "two"]) setOpen(tab, true);
});

function tab(name) {
  const drafts = new Drafts(database);
  drafts.tab = name;
  return drafts;
}

test("each tab has its own", async () => {
  await tab("one").save("light", { x: "0.4" });
  await tab("two").save("light", { x: "0.3" });
  assert.deepEqual(await tab("one").load("light"), { x: "0.4" });
  assert.deepEqual(await tab("two").load("light"), { x: "0.3" });
});

test("a form of another name is another form", async () => {
  await tab("one").save("sun a", { date: "2026-11-25" });
  assert.equal(await tab("one").load("sun"), undefined);
});

test("an open tab's draft is not taken over, a killed one's is, once", async () => {
  await tab("one").save("light", { x: "0.4" });
  assert.equal(await tab("two").load("light"), undefined);
  setOpen("one", false);
  assert.deepEqual(await tab("two").load("light"), { x: "0.4" });
  setOpen("three", true);
  assert.equal(await tab("three").load("light"), undefined);
});

test("of several killed tabs the newest is taken over", async () => {
  const { rows } = database.stores.drafts;
  rows.set("light|dead", { value: { x: "0.1" }, at: 1 });
  rows.set("light|later", { value: { x: "0.2" }, at: 2 });
  assert.deepEqual(await tab("one").load("light"), { x: "0.2" });
});

test("nothing typed any more leaves nothing behind", async () => {
  await tab("one").save("light", { x: "0.4" });
  await tab("one").save("light", undefined);
  assert.equal(await tab("one").load("light"), undefined);
  assert.equal(database.stores.drafts.rows.size, 0);
});

test("what storage refuses is told, and the tab remembers it until it is saved", async () => {
  const drafts = tab("one");
  await drafts.save("light", { x: "0.4" });
  database.refuse = "The storage is full.";
  await assert.rejects(drafts.save("light", { x: "0.41" }), /full/);
  assert.deepEqual(await drafts.load("light"), { x: "0.41" });
  database.refuse = "";
  await drafts.save("light", { x: "0.42" });
  assert.deepEqual(await drafts.load("light"), { x: "0.42" });
});

test("what is not written yet when the page is left comes back in its tab", async () => {
  const drafts = tab("one");
  await drafts.save("light", { x: "0.4" });
  let write;
  const slow = new Promise((resolve) => {
    write = resolve;
  });
  database.run = async (...all) => {
    await slow;
    return MemoryDatabase.prototype.run.apply(database, all);
  };
  const saved = drafts.save("light", { x: "0.41" });
  dispatchEvent(new Event("pagehide"));
  assert.deepEqual(await tab("one").load("light"), { x: "0.41" });
  write();
  await saved;
  await drafts.save("light", { x: "0.42" });
  assert.deepEqual(await tab("one").load("light"), { x: "0.42" });
});
