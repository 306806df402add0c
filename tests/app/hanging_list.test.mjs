// Who hangs what: twins stand together, once.
import assert from "node:assert/strict";
import { test } from "node:test";
import "./browser.mjs";

const { together } = await import("../../webapp/src/places/set/hanging-list.js");

const part = (name, steps, stops_lost = 0.4) => ({ name, steps, stops_lost, promise: "holds" });

test("twins stand together under both names, with the farther landing", () => {
  const per_light = [
    part("key", 1),
    part("batten 1", 2),
    part("practical", 0),
    part("batten 2", 3),
  ];
  const rows = together({ per_light, twins: [[1, 3]] });
  assert.deepEqual(
    rows.map(({ name, steps }) => [name, steps]),
    [
      ["key", 1],
      ["batten 1, batten 2", 3],
      ["practical", 0],
    ],
  );
});

test("without twins every light stands alone, also in a plan that knows of none", () => {
  const per_light = [part("key", 1), part("fill", 2)];
  assert.deepEqual(together({ per_light, twins: [] }), per_light);
  assert.deepEqual(together({ per_light }), per_light);
});
