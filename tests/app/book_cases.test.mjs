// What entries mean: the cases that the kernel runs too (tests/kernel/test_book_cases.py).
import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import { test } from "node:test";
import { Log } from "../../webapp/src/store/log/log.js";

const FOLDER = new URL("../book_cases/", import.meta.url);
const files = readdirSync(FOLDER).filter((name) => name.endsWith(".json"));

/** Every order of a few entries; of many, as they stand and backwards. */
function orders(entries) {
  if (entries.length > 4) return [entries, entries.toReversed()];
  if (entries.length < 2) return [entries];
  return entries.flatMap((first, i) =>
    orders(entries.toSpliced(i, 1)).map((rest) => [first, ...rest]),
  );
}

function check({ things = {}, below = {} }, entries) {
  const log = new Log(entries);
  for (const [id, expected] of Object.entries(things)) {
    const thing = log.thing(id);
    const told = {
      kind: thing.kind,
      parent: thing.parent,
      name: thing.data.name,
      heads: thing.heads.map((head) => head.id).toReversed(),
      gone: thing.gone,
      at: thing.at,
    };
    for (const [key, value] of Object.entries(expected)) assert.deepEqual(told[key], value, key);
  }
  for (const [parent, expected] of Object.entries(below)) {
    const found = log.below(parent).map(({ id }) => id);
    assert.deepEqual(found.toReversed(), expected, `below ${parent}`);
  }
}

for (const name of files) {
  const { cases } = JSON.parse(readFileSync(new URL(name, FOLDER), "utf8"));
  for (const one of cases) {
    test(`${name}: ${one.name}`, () => {
      // Another tab's entries come in any order, and may come twice.
      for (const entries of orders(one.entries)) check(one, [...entries, entries[0]]);
    });
  }
}

test("there are cases", () => assert.ok(files.length >= 4));
