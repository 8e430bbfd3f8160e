import assert from "node:assert/strict";
import { test } from "node:test";

import { moved, pointed, stepped, valueOf } from "../../../tapmodel/report/page/script/src/live/typed.js";

test("a plain number has the unit of its box", () => {
  assert.equal(valueOf(" 6.35 ", { unit: "mm" }), 6.35);
  assert.equal(valueOf("0.25", { unit: "in" }), "0.25in");
  assert.equal(valueOf("-.5", { unit: "°" }), -0.5);
});

test("whatever else is typed goes to the server as it is", () => {
  for (const text of ["1/4in", "6.35 mm", "1,5", "five", "0x10", "1e3"]) assert.equal(valueOf(text, { unit: "in" }), text);
});

test("the unit of a box may be typed behind its number", () => {
  for (const text of ["8°", "8 °", "8 deg"]) assert.equal(valueOf(text, { unit: "°" }), 8);
  assert.equal(valueOf("62 HRC", { unit: "HRC" }), 62);
  assert.equal(valueOf("4 pitches", { unit: "pitches" }), 4);
  assert.equal(valueOf("8°", { unit: "mm" }), "8°");
  assert.equal(valueOf("8 mm", { unit: "°" }), "8 mm");
  assert.equal(valueOf("deg", { unit: "°" }), "deg");
});

test("a decimal comma is a decimal point in a box of one number", () => {
  const kind = "number";
  assert.equal(valueOf("1,25", { unit: "mm", kind }), 1.25);
  assert.equal(valueOf("1,250", { unit: "mm", kind }), 1.25);
  assert.equal(valueOf("-1,5", { unit: "°", kind }), -1.5);
  assert.equal(valueOf("0,25", { unit: "in", kind }), "0.25in");
  assert.equal(valueOf("6,35 mm", { unit: "in", kind }), "6.35 mm");
  // What may be meant otherwise is for the server to ask about.
  for (const text of ["1,2,3", "1,250.5", "1.250,5"]) assert.equal(valueOf(text, { unit: "mm", kind }), text);
  assert.equal(valueOf("4,5", { unit: "", kind: "text" }), "4,5");
  assert.equal(moved("1,25", 0.5, 1), "1.75");
  assert.equal(pointed("10,45"), "10.45");
});

test("an empty box leaves the value to the rules", () => {
  assert.equal(valueOf("  ", { unit: "mm" }), null);
});

test("a slider writes no more decimals than its step has", () => {
  assert.equal(stepped(-2.7400000000000002, 0.02), "-2.74");
  assert.equal(stepped(0.30000000000000004, 0.05), "0.3");
  assert.equal(stepped(5, 1), "5");
});

test("arrow keys move a number by a step and keep its digits", () => {
  assert.equal(moved("-2.744", 0.02, 1), "-2.724");
  assert.equal(moved("8", 0.5, -1), "7.5");
  assert.equal(moved("1/4in", 0.02, 1), null);
});
