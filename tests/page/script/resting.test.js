/** Questions that wait for hands at rest: the newest alone is answered. */

import assert from "node:assert/strict";
import { beforeEach, test } from "node:test";

import { Resting } from "../../../tapmodel/report/page/script/src/live/resting.js";

/** Everything that waits for no timer has happened. */
const settled = () => new Promise((resolve) => setImmediate(resolve));

let begun = [];
let end = [];
const asked = (signal) => new Promise((resolve, reject) => {
  begun.push(signal);
  end.push(resolve);
  signal.addEventListener("abort", () => reject(signal.reason));
});

beforeEach((context) => {
  [begun, end] = [[], []];
  context.mock.timers.enable({ apis: ["setTimeout"] });
});

test("each change puts the question off by the whole pause", (context) => {
  const resting = new Resting(asked);
  resting.after(150);
  context.mock.timers.tick(149);
  resting.after(150);
  context.mock.timers.tick(149);
  assert.equal(begun.length, 0);
  context.mock.timers.tick(1);
  assert.equal(begun.length, 1);
});

test("a change ends the question that is asked, before the next is", async (context) => {
  const resting = new Resting(asked);
  resting.after(0);
  context.mock.timers.tick(0);
  assert.ok(resting.asking);
  resting.after(150);
  assert.ok(begun[0].aborted);
  await settled();
  assert.equal(resting.asking, null);
  context.mock.timers.tick(150);
  assert.equal(begun.length, 2);
  assert.ok(!begun[1].aborted);
  end[1]();
  await settled();
  assert.equal(resting.asking, null);
});

test("what is not wanted any more is neither asked nor answered", async (context) => {
  const resting = new Resting(asked);
  resting.after(0);
  resting.stop();
  context.mock.timers.tick(1);
  assert.equal(begun.length, 0);
  resting.after(0);
  context.mock.timers.tick(0);
  resting.stop();
  await settled();
  assert.ok(begun[0].aborted);
  assert.equal(resting.asking, null);
});
