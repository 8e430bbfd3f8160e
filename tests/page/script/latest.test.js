import assert from "node:assert/strict";
import { test } from "node:test";

import { given, laid, Waiting } from "../../../tapmodel/report/page/script/src/live/latest.js";

test("of two hundred moves of one control the newest waits", () => {
  const waiting = new Waiting();
  for (let n = 1; n <= 200; n++) waiting.add({ values: { "flutes.offset": n / 100 }, key: "flutes.offset" }, n);
  assert.deepEqual(waiting.take(), [{ values: { "flutes.offset": 2 }, key: "flutes.offset", began: 1, ended: 200 }]);
  assert.deepEqual(waiting.changes, []);
});

test("steps back are taken by themselves, in their place", () => {
  const waiting = new Waiting();
  waiting.add({ values: { a: 1 }, key: "" }, 5);
  waiting.add({ values: { b: 2 }, key: "" }, 5);
  waiting.add({ step: -1, key: "" }, 5);
  waiting.add({ values: { c: 3 }, key: "" }, 5);
  assert.equal(waiting.take().length, 2);
  assert.deepEqual(waiting.take(), [{ step: -1, key: "", began: 5, ended: 5 }]);
  assert.deepEqual(waiting.take(), [{ values: { c: 3 }, key: "", began: 5, ended: 5 }]);
});

test("a change that waits is not changed by the one that gave it", () => {
  const change = { values: { a: 1 }, key: "a" };
  const waiting = new Waiting();
  waiting.add(change, 5);
  waiting.add({ values: { a: 2 }, key: "a" }, 5);
  assert.deepEqual(change.values, { a: 1 });
});

test("values are laid over a job, and null takes out", () => {
  const job = { designation: "M10", "flutes.rake": 8 };
  assert.deepEqual(laid(job, { values: { "flutes.rake": null, "flutes.offset": 1 }, key: "" }), {
    designation: "M10",
    "flutes.offset": 1,
  });
  assert.deepEqual(job, { designation: "M10", "flutes.rake": 8 });
  assert.deepEqual(laid(job, { whole: { designation: "M6" }, key: "" }), { designation: "M6" });
});

test("given are the fields that have a value at last", () => {
  const changes = [
    { values: { a: 1, b: 2 }, key: "" },
    { values: { b: null, c: 0 }, key: "" },
  ];
  assert.deepEqual(given(changes).sort(), ["a", "c"]);
});
