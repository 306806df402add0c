// Finding readings: by every word written in or above them, and by the filters.
import assert from "node:assert/strict";
import { beforeEach, mock, test } from "node:test";
import { MemoryDatabase } from "./browser.mjs";

const { Book } = await import("../../webapp/src/store/log/book.js");
const { ANYTHING, isAnything, matching, Rows } = await import("../../webapp/src/store/log/rows.js");

let book;
let rows;
let hall;
let deck;
let setup;
/** The clock by which slices are cut, and how far each look at it is from the last, in ms. */
let time = 0;
let step = 0;

mock.method(performance, "now", () => {
  time += step;
  return time;
});

beforeEach(async () => {
  step = 0;
  book = new Book(new MemoryDatabase());
  rows = new Rows(book, ({ pack = [] }, lamp) => [...pack, `lamp ${lamp}`]);
  const film = await book.create("production", null, { name: "The Night Ferry" });
  hall = await book.create("location", film, { name: "Ticket hall", place: "pier 4" });
  deck = await book.create("location", film, { name: "Car deck" });
  setup = await book.create("setup", hall, { name: "2 The last sailing", note: "rain" });
  const batten = await book.create("light", setup, { name: "batten 1", lamp: "fluorescent" });
  await book.create("reading", batten, { x: "0.3721", note: "Warmed up", pack: ["1/4 CTO"] });
  const spill = await book.create("light", await book.create("setup", deck, { name: "1" }), {
    name: "sodium spill",
    lamp: "sodium",
  });
  await book.create("reading", spill, { cct_K: "2010" });
});

/** @param {object} wanted */
const found = (wanted, verdictOf = () => undefined) =>
  rows.all
    .filter(matching({ ...ANYTHING, ...wanted }, verdictOf))
    .map((row) => row.light.data.name);

test("by words in any case, in any order, anywhere in or above the reading", () => {
  for (const text of ["batten", "NIGHT batten", "warmed hall", "0.3721", "pier rain", "1/4 cto"]) {
    assert.ok(found({ text }).includes("batten 1"), text);
  }
  assert.deepEqual(found({ text: "lamp sodium" }), ["sodium spill"]);
  assert.deepEqual(found({ text: "batten sodium" }), []);
  assert.deepEqual(found({ text: "  " }).sort(), ["batten 1", "sodium spill"]);
});

test("by place, lamp, day and verdict", () => {
  const day = rows.all[0].day;
  assert.deepEqual(found({ location: deck }), ["sodium spill"]);
  assert.deepEqual(found({ setup }), ["batten 1"]);
  assert.deepEqual(found({ lamp: "fluorescent" }), ["batten 1"]);
  assert.equal(found({ from: day, to: day }).length, 2);
  assert.equal(found({ to: "2000-01-01" }).length, 0);
  const holds = ({ data }) => (data.x ? "holds" : undefined);
  assert.deepEqual(found({ verdict: "holds" }, holds), ["batten 1"]);
  assert.deepEqual(found({ verdict: "near" }, holds), []);
});

test("nothing wanted is anything", () => {
  assert.ok(isAnything(ANYTHING));
  assert.ok(!isAnything({ ...ANYTHING, lamp: "led" }));
});

test("rows follow the book: what is deleted is not found, also by what is above it", async () => {
  assert.equal(rows.all.length, 2);
  await book.remove(hall);
  assert.deepEqual(found({}), ["sodium spill"]);
  await book.edit(deck, { name: "Ramp" });
  assert.deepEqual(found({ text: "ramp" }), ["sodium spill"]);
  assert.deepEqual(found({ text: "deck" }), []);
});

test("a long book comes in slices, the newest first, and tells when it is there", async () => {
  const light = await book.create("light", setup, { name: "many" });
  const entries = [5, 1, 4, 2, 3].map((minute) => ({
    id: `r${minute}`,
    at: new Date(Date.UTC(2026, 0, 1, 0, minute)).toISOString(),
    thing: "reading",
    of: `r${minute}`,
    parent: light,
    after: [],
    data: {},
  }));
  await book.takeOver(entries);
  // A clock on which every row takes longer than a slice may.
  step = 100;
  const there = new Promise((resolve) => rows.addEventListener("change", resolve, { once: true }));
  assert.equal(rows.all, undefined);
  await there;
  assert.equal(rows.all.length, 7);
  assert.ok(rows.all.every((row, i, all) => i === 0 || all[i - 1].time >= row.time));
});

test("a book that moves on while rows are worked out leaves no old ones", async () => {
  step = 100;
  assert.equal(rows.all, undefined);
  await book.remove(hall);
  const there = new Promise((resolve) => rows.addEventListener("change", resolve, { once: true }));
  assert.equal(rows.all, undefined);
  await there;
  assert.deepEqual(found({}), ["sodium spill"]);
});
