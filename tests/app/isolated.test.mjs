// People's own words one after the other.
import assert from "node:assert/strict";
import { test } from "node:test";
import { joined, listed } from "../../webapp/src/words/isolated.js";

test("names are parted by commas, or by semicolons where one holds a comma itself", () => {
  assert.equal(listed(["key", "batten 1"]), "key, batten 1");
  assert.equal(listed(["key, by the door", "batten 1"]), "key, by the door; batten 1");
  assert.equal(listed(new Set(["key"])), "key");
});

test("what is empty leaves no gap", () => {
  assert.equal(joined(["key", "", null, undefined, false, "3200 K"]), "key · 3200 K");
});

test("a name that is written right to left is set apart", () => {
  assert.equal(listed(["key", "מנורה"]), "key, \u2068מנורה\u2069");
});
