// What a light is meant to be: what is kept of it, and what the kernel is asked.
import assert from "node:assert/strict";
import { beforeEach, test } from "node:test";
import "./browser.mjs";

const { book, settings } = await import("../../webapp/src/store/index.js");
const { centreOf, litQuestion, measuredAgainst, roleOf, targetOf } = await import(
  "../../webapp/src/store/log/target.js"
);
const { balanceQuestion } = await import("../../webapp/src/store/log/plan.js");
const { lightsOf } = await import("../../webapp/src/store/log/shoot.js");

let minute = 0;

function take(thing, of, parent, data, after = []) {
  minute += 1;
  const at = new Date(Date.UTC(2026, 9, 27, 17, minute)).toISOString();
  book.take({ id: after.length ? `${of} again` : of, at, thing, of, parent, after, data });
}

function light(id, setup, data = {}, x = "0.4000") {
  take("light", id, setup, { name: id, ...data });
  if (x) take("reading", `${id} read`, id, { x, y: "0.3900" });
}

beforeEach(() => {
  book.forget();
  minute = 0;
  take("production", "p", null, { name: "The Night Ferry" });
  take("location", "l", "p", { name: "Ticket hall" });
  take("setup", "s", "l", { name: "1" });
  settings.values = { ...settings.values, here: "s", white: { cct_K: "4300", duv: "" } };
});

/** What a set's question says that each of its lights is meant to be. */
const asked = (setup = "s") =>
  Object.fromEntries(
    lightsOf(book.thing(setup))
      .map(litQuestion)
      .map((lit) => [lit.name, lit.meant]),
  );

test("a light of which nothing is said is meant to be the white itself", () => {
  light("key", "s");
  assert.deepEqual(asked(), { key: undefined });
  assert.deepEqual(targetOf("key"), { target: { cct_K: "4300", duv: "0" } });
  assert.equal(measuredAgainst("key"), null);
});

test("what is said goes to the kernel as it was typed, and the white stays the centre", () => {
  light("practical", "s", { meant: { warmer_mired: "140" } });
  light("moon", "s", { meant: { cooler_mired: "12,5" } });
  light("sign", "s", { meant: { as: "found" } });
  light("lamp", "s", { meant: { x: "0.45", y: "0.41" } });
  assert.deepEqual(asked(), {
    practical: { warmer_mired: "140" },
    moon: { cooler_mired: "12,5" },
    sign: { as: "found" },
    lamp: { x: "0.45", y: "0.41" },
  });
  assert.deepEqual(centreOf(), { cct_K: "4300", duv: "0" });
  assert.deepEqual(targetOf("practical").meant, { warmer_mired: "140" });
});

test("another light goes by its place in the question, in another question by its reading", () => {
  light("fill", "s", {}, "0.3850");
  light("edge", "s", { meant: { like: "fill" } });
  assert.deepEqual(asked().edge, { like: 0 });
  assert.deepEqual(targetOf("edge").meant, { like: { x: "0.3850", y: "0.3900", name: "fill" } });
});

test("a light like one that has no reading is left to the kernel to refuse, by name", () => {
  light("fill", "s", {}, "");
  light("edge", "s", { meant: { like: "fill" } });
  assert.deepEqual(asked().edge, { like: { name: "fill" } });
});

test("lights like each other stay a circle, which the kernel names", () => {
  light("one", "s", { meant: { like: "two" } });
  light("two", "s", { meant: { like: "one" } });
  assert.deepEqual(asked(), { one: { like: 1 }, two: { like: 0 } });
});

test("a pick-up is meant as it was, unless something else is said of it", () => {
  light("key", "s", {}, "0.3810");
  take("setup", "again", "l", { name: "1, pick-up", pickup_of: "s" });
  light("key 2", "again", { pickup_of: "key" }, "0.3700");
  assert.deepEqual(asked("again")["key 2"], { like: { x: "0.3810", y: "0.3900", name: "key" } });
  assert.equal(measuredAgainst("key 2").itself.id, "key read");
  light("key 3", "again", { pickup_of: "key", meant: { as: "white" } });
  assert.deepEqual(asked("again")["key 3"], { as: "white" });
  assert.equal(measuredAgainst("key 3"), null);
});

test("with a hero the others are meant beside it", () => {
  light("key", "s", {}, "0.3810");
  light("back", "s", { meant: { warmer_mired: "20" } });
  take("setup", "s", "l", { name: "1", hero: "key" }, ["s"]);
  assert.deepEqual(centreOf(), { x: "0.3810", y: "0.3900" });
  assert.equal(measuredAgainst("back").other.id, "key");
  assert.deepEqual(asked(), { key: undefined, back: { warmer_mired: "20" } });
});

test("measured gels that a meaning names come with it, by the gel that the book has", () => {
  const curve = { wavelengths_nm: [400, 700], transmittance: [0.5, 0.9], reference_K: 3200 };
  take("gel", "g", null, { name: "amber", ...curve });
  light("practical", "s", { meant: { as_through: ["amber"], gel_ids: ["g"] } });
  const [lit] = lightsOf(book.thing("s")).map(litQuestion);
  assert.deepEqual(lit.meant, { as_through: ["amber"] });
  assert.deepEqual(lit.own_gels, [{ name: "amber", ...curve }]);
  assert.deepEqual(targetOf("practical").own_gels, [{ name: "amber", ...curve }]);
});

test("a plan is asked for with the same meanings, beside the reading", () => {
  light("fill", "s", {}, "0.3850");
  light("edge", "s", { meant: { like: "fill" }, may: [] });
  light("sign", "s", { meant: { as: "found" } });
  const { lights } = balanceQuestion(lightsOf(book.thing("s")));
  assert.deepEqual(
    lights.map(({ meant, may, reading }) => [meant, may, reading.meant]),
    [
      [undefined, ["gel"], undefined],
      // Left alone is still judged; as found is not.
      [{ like: 0 }, [], undefined],
      [{ as: "found" }, ["gel"], undefined],
    ],
  );
});

test("a part of the book takes along what its lights are meant to match", () => {
  light("key", "s", {}, "0.3810");
  take("reading", "key later", "key", { x: "0.3900", y: "0.3900" });
  light("fill", "s");
  take("setup", "again", "l", { name: "1, pick-up" });
  light("key 2", "again", { pickup_of: "key" }, "");
  take("setup", "third", "l", { name: "1, pick-up again" });
  light("key 3", "third", { pickup_of: "key 2" });
  take("gel", "g", null, { name: "amber" });
  light("back", "third", { meant: { as_through: ["amber"], gel_ids: ["g"] } });
  const part = book.part("third").map(({ of }) => of);
  assert.equal(new Set(part).size, part.length);
  assert.deepEqual(
    part.sort(),
    [
      ...["p", "l", "third", "key 3", "key 3 read", "back", "back read", "g"],
      // The lights themselves, without the setups they stand in.
      ...["key 2", "key", "key later"],
    ].sort(),
  );
});

test("a practical is known by its name, or by what the book says it is", () => {
  assert.deepEqual(roleOf("Practical on the counter"), { role: "practical" });
  assert.deepEqual(roleOf("key"), {});
  assert.deepEqual(roleOf("key", "key"), { role: "key" });
});
