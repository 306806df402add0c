// What the kernel is told that a lamp did before.
import assert from "node:assert/strict";
import { beforeEach, test } from "node:test";
import "./browser.mjs";

const { book } = await import("../../webapp/src/store/index.js");
const { pastOf } = await import("../../webapp/src/store/log/past.js");
const { litQuestion } = await import("../../webapp/src/store/log/target.js");

const SPECTRUM = { wavelengths_nm: [400, 500, 600, 700], values: [1, 2, 3, 2] };
let minute = 0;

function take(thing, of, parent, data) {
  minute += 1;
  const at = new Date(Date.UTC(2026, 9, 27, 17, minute)).toISOString();
  book.take({ id: of, at, thing, of, parent, after: [], data });
}

const read = (id, light, data) => take("reading", id, light, { lamp: "led", ...data });

beforeEach(() => {
  book.forget();
  minute = 0;
  take("production", "p", null, { name: "The Night Ferry" });
  take("location", "l", "p", { name: "Ticket hall" });
  take("setup", "s", "l", { name: "1" });
  take("setup", "t", "l", { name: "1, pick-up", pickup_of: "s" });
  take("light", "key", "s", { name: "key", lamp: "led" });
});

test("a light that was never read has no past, nor has one that is new", () => {
  assert.deepEqual(pastOf("key", { x: "0.33", y: "0.34", lamp: "led" }), {});
  assert.deepEqual(pastOf(null, { x: "0.33", y: "0.34", lamp: "led" }), {});
});

test("a pick-up brings the spectrum that was measured of the light, under its name", () => {
  read("a", "key", { spectrum: SPECTRUM });
  take("light", "again", "t", { name: "key", lamp: "led", pickup_of: "key" });
  read("b", "again", { x: "0.33", y: "0.34" });
  const lit = { light: book.thing("again"), reading: book.thing("b") };
  assert.deepEqual(litQuestion(lit).before, [
    { reading: { spectrum: SPECTRUM, lamp: "led", name: "key" } },
  ]);
  assert.deepEqual(pastOf("again", { spectrum: SPECTRUM, lamp: "led" }), {});
});

test("what gel did goes as two readings, that which is typed among them", () => {
  read("a", "key", { x: "0.33", y: "0.34" });
  const now = { x: "0.38", y: "0.37", lamp: "led", pack: ["1/2 CTO"] };
  const [{ reading, next }] = pastOf("key", now).before;
  assert.deepEqual(reading, { x: "0.33", y: "0.34", lamp: "led", name: "key" });
  assert.deepEqual(next, { x: "0.38", y: "0.37", lamp: "led", pack: ["1/2 CTO"], name: "key" });
  // Kept, it is not its own past, and what came later is none.
  read("b", "key", now);
  read("c", "key", { x: "0.34", y: "0.35" });
  assert.equal(pastOf("key", book.thing("b").data, "b").before.length, 1);
  assert.equal(pastOf("key", book.thing("a").data, "a").before, undefined);
});

test("a lamp that was dialled or dimmed between two readings tells nothing of gel", () => {
  read("a", "key", { x: "0.33", y: "0.34", dialled: "5600 K" });
  const now = { x: "0.38", y: "0.37", lamp: "led", pack: ["1/2 CTO"] };
  assert.deepEqual(pastOf("key", { ...now, dialled: "3200 K" }), {});
  assert.deepEqual(pastOf("key", { ...now, dialled: "5600 K", dimmer: "50 %" }), {});
  assert.equal(pastOf("key", { ...now, dialled: "5600 K" }).before.length, 1);
});

test("daylight has no past: it changes by itself", () => {
  read("a", "key", { spectrum: SPECTRUM, lamp: "daylight" });
  assert.deepEqual(pastOf("key", { x: "0.33", y: "0.34", lamp: "daylight" }), {});
});
