/** The job that is worked at: what is changed, refused, lost on the way, and given up. */

import assert from "node:assert/strict";
import { beforeEach, test } from "node:test";

import { Desk } from "../../../tapmodel/report/page/script/src/live/desk.js";

const M10 = { designation: "M10" };
const BAD = -1;

/** Questions that the server holds, the oldest first. */
let held = [];
let desk;

/** Everything that waits for no timer has happened. */
const rest = () => new Promise((resolve) => setImmediate(resolve));
const json = (status, body) => new Response(JSON.stringify(body), { status });

/** The server answers what it holds: a job of a bad number is refused. */
async function answers() {
  await rest();
  const { job, resolve } = held.shift();
  const field = Object.keys(job).find((name) => job[name] === BAD);
  resolve(field ? json(422, { error: { message: "no", field } }) : json(200, { view: { of: job } }));
  await rest();
}

/** The server is away until it has been asked as often as a question is. */
async function staysAway(timers) {
  for (let n = 0; n < 6; n++) {
    await rest();
    held.shift().reject(new TypeError("network"));
    await rest();
    timers.tick(3200);
  }
  await rest();
}

beforeEach((context) => {
  held = [];
  context.mock.timers.enable({ apis: ["setTimeout"] });
  context.mock.method(globalThis, "fetch", (_, { body }) => new Promise((resolve, reject) => {
    held.push({ ...JSON.parse(body), resolve, reject });
  }));
  desk = new Desk({ live: { job: M10, units: null }, view: null, model: null, stations: null });
});

test("whoever waits for a change waits until it is answered, though another is on its way", async () => {
  desk.set({ a: 1 });
  let done = false;
  desk.open({ designation: "M6" }).then(() => (done = true));
  await answers();
  assert.equal(done, false);
  await answers();
  assert.equal(done, true);
  assert.deepEqual(desk.job, { designation: "M6" });
  assert.equal(desk.changed, false);
});

test("a change that comes as the last is answered is asked for", async () => {
  desk.followers.push(() => {
    if (!("b" in desk.job)) desk.set({ b: 2 });
  });
  desk.set({ a: 1 });
  await answers();
  await answers();
  assert.deepEqual(desk.job, { ...M10, a: 1, b: 2 });
  assert.equal(desk.busy, false);
});

test("a job that names units is told in them, and one that is refused leaves those of the page", async () => {
  desk.units = "inch";
  desk.open({ designation: "M6", a: BAD }, "mm");
  await answers();
  assert.equal(desk.units, "inch");
  desk.open({ designation: "M6" }, "mm");
  await rest();
  assert.equal(held[0].units, "mm");
  await answers();
  assert.equal(desk.units, "mm");
  desk.open({ designation: "M8" });
  await answers();
  assert.equal(desk.units, "mm");
});

test("a file that cannot be opened is named, blames no box, and leaves all as it was", async () => {
  const told = [];
  desk.complaints.push((complaint) => told.push(complaint));
  desk.open({ designation: "M6", a: BAD }, "mm", "lens.toml");
  await answers();
  assert.deepEqual(told, [{ message: "lens.toml was not opened: no", fields: [], unchanged: true }]);
  assert.deepEqual(desk.job, M10);
  assert.deepEqual(desk.refused, {});
});

test("a file over a job that was not saved says the way back to it", async () => {
  const told = [];
  desk.complaints.push((complaint) => complaint && told.push(complaint));
  desk.open({ designation: "M6" }, "mm", "first.toml");
  await answers();
  assert.deepEqual(told, []);
  desk.set({ a: 1 });
  await answers();
  desk.open({ designation: "M8" }, "mm", "lens.toml");
  await answers();
  const message = "lens.toml is open. What was there was not saved: undo brings it back.";
  assert.deepEqual(told, [{ message, fields: [], unchanged: true, done: true }]);
  desk.go(-1);
  await answers();
  assert.deepEqual(desk.job, { designation: "M6", a: 1 });
  assert.equal(desk.changed, true);
});

test("what is refused with others is found by itself, and stays where it was typed", async () => {
  desk.set({ a: 1 });
  desk.set({ c: 3 });
  desk.set({ b: BAD });
  const ahead = [];
  desk.followers.push(() => ahead.push(["a", "b", "c"].filter((field) => desk.isAhead(field))));
  for (let n = 0; n < 4; n++) await answers();
  assert.deepEqual(desk.job, { ...M10, a: 1, c: 3 });
  assert.deepEqual(desk.refused, { b: BAD });
  // Both wait while the first stands, b alone while c does, before it is tried by itself.
  assert.deepEqual(ahead, [["b", "c"], ["b"]]);
});

test("a step back leaves what is refused in the boxes that it does not fill anew", async () => {
  for (const values of [{ a: 1 }, { a: BAD }, { b: BAD }]) {
    desk.set(values);
    await answers();
  }
  assert.deepEqual(desk.refused, { a: BAD, b: BAD });
  desk.go(-1);
  await answers();
  assert.deepEqual(desk.job, M10);
  assert.deepEqual(desk.refused, { b: BAD });
});

test("of changes that are tried by themselves, one that finds no answer is asked for again", async (context) => {
  desk.set({ a: 1 });
  desk.set({ b: BAD });
  desk.set({ c: 3 });
  await answers();
  await answers();
  await answers();
  await staysAway(context.mock.timers);
  assert.deepEqual(desk.job, { ...M10, a: 1 });
  desk.again();
  await answers();
  assert.deepEqual(desk.job, { ...M10, a: 1, c: 3 });
  assert.deepEqual(desk.refused, { b: BAD });
});

test("once the program answers again, who follows the tap is told it anew", () => {
  const shown = [];
  desk.followers.push((view) => shown.push(view));
  desk.again();
  assert.deepEqual(shown, []);
  desk.view = { title: "M10" };
  desk.again();
  assert.deepEqual(shown, [desk.view]);
});

test("what was given up while nobody answered is not asked for again", async (context) => {
  desk.set({ a: 1, b: 2 });
  await staysAway(context.mock.timers);
  assert.deepEqual(desk.refused, { a: 1, b: 2 });
  let kept = 0;
  desk.keepers.push(() => (kept += 1));
  desk.giveUp("a");
  assert.deepEqual(desk.refused, { b: 2 });
  assert.equal(kept, 1);
  desk.again();
  await answers();
  assert.deepEqual(desk.job, { ...M10, b: 2 });
});

test("another height looked at meanwhile parts no run of moves", async () => {
  desk.set({ a: 1 }, "a");
  await answers();
  desk.set({ a: 2 }, "a");
  await rest();
  desk.set({ a: 3 }, "a");
  desk.cutAt(5);
  await answers();
  await answers();
  desk.set({ a: 4 }, "a");
  await answers();
  assert.equal(desk.history.jobs.length, 2);
  assert.deepEqual(desk.history.beside(-1), M10);
});
