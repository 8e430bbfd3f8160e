import assert from "node:assert/strict";
import { test } from "node:test";

import { History, same, TOGETHER } from "../../../tapmodel/report/page/script/src/live/history.js";

const job = (offset) => ({ designation: "M10", "flutes.offset": offset });

test("moves of one control within a second are one step", () => {
  const history = new History({ designation: "M10" });
  for (let n = 0; n < 50; n++) history.note(job(n), "flutes.offset", n * 10);
  assert.equal(history.jobs.length, 2);
  assert.deepEqual(history.beside(-1), { designation: "M10" });
  assert.deepEqual(history.jobs[1], job(49));
});

test("moves that stand late are one step with those before, by when they were made", () => {
  const history = new History({ designation: "M10" });
  history.note(job(1), "flutes.offset", 0, 900);
  history.note(job(2), "flutes.offset", 1000, 5000);
  history.note(job(3), "flutes.offset", 5900);
  assert.equal(history.jobs.length, 2);
  history.note(job(4), "flutes.offset", 5900 + TOGETHER);
  assert.equal(history.jobs.length, 3);
});

test("a pause, another control or a press begins a step of its own", () => {
  const history = new History({ designation: "M10" });
  history.note(job(1), "flutes.offset", 0);
  history.note(job(2), "flutes.offset", TOGETHER + 1);
  history.note(job(3), "flutes.rake", TOGETHER + 2);
  history.note(job(4), "", TOGETHER + 3);
  history.note(job(5), "", TOGETHER + 4);
  assert.equal(history.jobs.length, 6);
});

test("what is the same as before is no step", () => {
  const history = new History({ designation: "M10", "flutes.offset": 1 });
  history.note({ "flutes.offset": 1, designation: "M10" }, "", 0);
  assert.equal(history.jobs.length, 1);
});

test("a change after going back forgets what came after", () => {
  const history = new History(job(0));
  for (const n of [1, 2, 3]) history.note(job(n), "", n);
  history.go(-1);
  history.go(-1);
  assert.deepEqual(history.beside(1), job(2));
  history.note(job(9), "", 9);
  assert.equal(history.beside(1), undefined);
  assert.deepEqual(history.beside(-1), job(1));
});

test("going back ends the run of a control", () => {
  const history = new History(job(0));
  history.note(job(1), "flutes.offset", 0);
  history.note(job(2), "", 1);
  history.go(-1);
  history.note(job(3), "flutes.offset", 2);
  assert.deepEqual(history.beside(-1), job(1));
});

test("no more than two hundred steps are kept, the newest", () => {
  const history = new History(job(0));
  for (let n = 1; n <= 500; n++) history.note(job(n), "", n);
  assert.equal(history.jobs.length, 200);
  assert.deepEqual(history.jobs[199], job(500));
});

test("jobs are the same whatever the order of their fields", () => {
  assert.ok(same({ a: 1, b: [2, 3] }, { b: [2, 3], a: 1 }));
  assert.ok(!same({ a: 1 }, { a: 1.01 }));
});
