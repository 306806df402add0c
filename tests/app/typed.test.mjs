// What people type and paste of numbers, told apart as text.
import assert from "node:assert/strict";
import { test } from "node:test";

const { coordinateTyped, decimalsOf, spread, understood, withUnit } = await import(
  "../../webapp/src/words/typed.js"
);

/** Fields that a line of a meter fills. */
const XY = ["x", "y", "illuminance"];
const CCT = ["cct_K", "duv", "illuminance"];
const CUTS = ["cct_mired", "tint_cuts", "illuminance"];
const CC = ["cct_mired", "tint_cc", "illuminance"];

test("four digits or more without a point stand behind one", () => {
  assert.equal(coordinateTyped("4012"), "0.4012");
  assert.equal(coordinateTyped(" 38115 "), "0.38115");
});

test("what can be read in two ways, or is no coordinate, stays as it is", () => {
  for (const text of ["0412", "04012", "401", "1", "0.4012", ".4012", "0,4012", "12345678", ""]) {
    assert.equal(coordinateTyped(text), text);
  }
});

test("only x and y get a point", () => {
  assert.equal(understood("cct_K", "5600"), "5600");
  assert.equal(understood("illuminance", "1200"), "1200");
});

test("a number may have its unit behind it", () => {
  assert.deepEqual(withUnit("941 lx"), { number: "941", unit: "lx" });
  assert.deepEqual(withUnit("941LUX"), { number: "941", unit: "lx" });
  assert.deepEqual(withUnit("87 fc"), { number: "87", unit: "fc" });
  assert.deepEqual(withUnit("12 lx·s"), { number: "12", unit: "lx·s" });
  assert.deepEqual(withUnit("fc"), { number: "fc", unit: "" });
  assert.equal(understood("cct_K", "5600K"), "5600");
  assert.equal(understood("cct_K", "5600 K"), "5600");
  assert.equal(understood("duv", "+0.006"), "+0.006");
  assert.equal(understood("duv", "–0.006"), "-0.006");
});

test("a whole line goes to its fields", () => {
  const line = { x: "0.4012", y: "0.3991", illuminance: "860" };
  for (const text of [
    "0.4012 0.3991 860",
    "4012 3991 860",
    "0.4012, 0.3991, 860",
    "0.4012,0.3991,860",
    "0.4012\t0.3991\t860\n",
    "0.4012;0.3991;860",
    "x 0.4012 y 0.3991 860",
    "x=0.4012 y=0.3991 860",
  ]) {
    assert.deepEqual(spread(XY, "x", text), line, text);
  }
  assert.deepEqual(spread(XY, "x", "0,4012 0,3991"), { x: "0,4012", y: "0,3991" });
  assert.deepEqual(spread(XY, "y", "3991 80 fc"), { y: "0.3991", illuminance: "80 fc" });
  assert.deepEqual(spread(CCT, "cct_K", "5600 K −0.002 860 lx"), {
    cct_K: "5600",
    duv: "-0.002",
    illuminance: "860 lx",
  });
});

test("a line of a meter that gives other forms goes to its fields", () => {
  const line = { cct_mired: "178", tint_cc: "-5", illuminance: "860 lx" };
  for (const text of ["178 mired −5 CC 860 lx", "178 CC -5 860 lx", "178; -5; 860 lx"]) {
    assert.deepEqual(spread(CC, "cct_mired", text), line, text);
  }
  assert.deepEqual(spread(CUTS, "cct_mired", "178 −1/4"), { cct_mired: "178", tint_cuts: "-1/4" });
  assert.equal(understood("cct_mired", "178 mired"), "178");
  assert.equal(understood("tint_cc", "−5 cc"), "-5");
  assert.equal(understood("tint_cuts", "–1/4"), "-1/4");
  assert.equal(understood("tint_cc", "5 lx"), "5 lx");
});

test("what is one value, or more than there is room for, stays where it was typed", () => {
  for (const text of ["0.4012", "0,4012", "0.4012 ", "key light", "1 2 3 4", "1/2 CTO", "941 lx"]) {
    assert.equal(spread(XY, "x", text), null, text);
  }
  assert.equal(spread(XY, "illuminance", "860 3"), null);
  assert.equal(spread(XY, "name", "1 2"), null);
});

test("digits behind the point are counted", () => {
  assert.equal(decimalsOf("0.4012"), 4);
  assert.equal(decimalsOf("38115"), 5);
  assert.equal(decimalsOf("1.2"), 0);
  assert.equal(decimalsOf("0.40120000"), 8);
});
