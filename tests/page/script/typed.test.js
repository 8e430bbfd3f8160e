import assert from "node:assert/strict";
import { test } from "node:test";

import { keptLength, lengthTyped, listShown, moved, pointed, stepped, valueOf } from "../../../tapmodel/report/page/script/src/live/typed.js";

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

test("a bare length means what the page is told in, and keeps that as its units change", () => {
  assert.deepEqual(["inch", "mm", "both"].map((units) => lengthTyped(" 0,72 ", units)), ["0.72in", "0.72", "0.72"]);
  for (const text of ["0.72 mm", "1/4in", "x", ""]) assert.equal(lengthTyped(text, "inch"), text);
  assert.equal(keptLength("18.26", "mm", "inch"), "18.26mm");
  assert.equal(keptLength("0,72", "inch", "both"), "0.72in");
  assert.equal(keptLength("18.26", "mm", "both"), "18.26");
  for (const text of ["0.72in", "18.26mm", "", "x"]) assert.equal(keptLength(text, "mm", "inch"), text);
});

test("in a list of lengths each bare number has the unit of its box, and shows which it has", () => {
  const box = { unit: "in", kind: "text" };
  assert.equal(valueOf("1/2in, 0.25,4mm , .5", box), "1/2in, 0.25in, 4mm, 0.5in");
  assert.equal(valueOf("0.5", box), "0.5in");
  assert.equal(valueOf("1/2in, 4", { ...box, unit: "mm" }), "1/2in, 4");
  assert.equal(valueOf("4", { ...box, unit: "mm" }), 4);
  assert.equal(listShown(["1/2in", 4, 5.5], "in"), "1/2in, 4mm, 5.5mm");
  assert.equal(listShown("1/2in, 4", "in"), "1/2in, 4mm");
  assert.equal(listShown(["1/2in", 4], "mm"), "1/2in, 4");
  assert.equal(listShown("metric, number", ""), "metric, number");
  // What is shown comes back as what it was.
  assert.equal(valueOf(listShown(["1/2in", 4], "in"), box), "1/2in, 4mm");
});
