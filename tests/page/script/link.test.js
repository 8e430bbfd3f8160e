/** Requests to the server: asked again where it is busy or away, and how the link is told. */

import assert from "node:assert/strict";
import { afterEach, beforeEach, test } from "node:test";

import { asked, link, looked, RefusedError, sought, waited } from "../../../tapmodel/report/page/script/src/live/link.js";

/** What the server answers, one after the other; null where it does not. */
let answers = [];
let requests = [];
let states = [];

const json = (status, body) => new Response(JSON.stringify(body), { status });
const told = (event) => states.push(event.detail);

beforeEach((context) => {
  [answers, requests, states] = [[], [], []];
  context.mock.timers.enable({ apis: ["setTimeout"] });
  context.mock.method(globalThis, "fetch", async (path, wanted) => {
    requests.push([path, wanted]);
    wanted.signal?.throwIfAborted();
    const answer = answers.shift();
    if (!answer) throw new TypeError("network");
    return answer;
  });
  link.addEventListener("state", told);
});
afterEach(() => link.removeEventListener("state", told));

/** Let time pass until a promise has ended. */
async function passed(timers, promise) {
  let ended = false, time = 0;
  promise.then(() => (ended = true), () => (ended = true));
  while (!ended) {
    await new Promise((resolve) => setImmediate(resolve));
    if (ended) break;
    timers.tick(100);
    time += 100;
  }
  return time;
}

test("an answer comes as it is", async () => {
  answers = [json(200, { view: 1 })];
  assert.deepEqual(await (await asked("tap", { job: {} })).json(), { view: 1 });
  const [path, wanted] = requests[0];
  assert.equal(path, "tap");
  assert.equal(wanted.body, '{"job":{}}');
  assert.equal(wanted.headers["content-type"], "application/json");
  assert.deepEqual(states, ["there"]);
});

test("a refusal tells its reason and field", async () => {
  answers = [json(422, { error: { message: "no", field: "flutes.count", forceable: true } })];
  await assert.rejects(asked("tap", {}), { message: "no", field: "flutes.count", forceable: true });
  assert.equal(requests.length, 1);
});

test("a refusal that is no JSON is told all the same", async () => {
  answers = [new Response("<h1>", { status: 500 })];
  await assert.rejects(looked("build"), (error) => error instanceof RefusedError && /500/.test(error.message));
});

test("a server that was asked too often is asked again", async (context) => {
  answers = [json(429, {}), json(429, {}), json(200, {})];
  const asking = asked("tap", {});
  assert.equal(await passed(context.mock.timers, asking), 600);
  assert.equal((await asking).status, 200);
  assert.deepEqual(states, ["busy", "busy", "there"]);
});

test("a server that is away for a moment is asked again, the last pause the longest", async (context) => {
  answers = [null, null, null, null, null, json(200, {})];
  const asking = asked("tap", {});
  assert.equal(await passed(context.mock.timers, asking), 200 + 400 + 800 + 1600 + 3200);
  assert.deepEqual(states, ["lost", "lost", "lost", "lost", "lost", "there"]);
});

test("a server that stays away is told of", async (context) => {
  const asking = asked("tap", {});
  await passed(context.mock.timers, asking);
  await assert.rejects(asking, { message: /is it still running/, field: "" });
  assert.equal(requests.length, 6);
});

test("what nobody wants any more is not asked again", async (context) => {
  const wanted = new AbortController();
  const asking = asked("tap", {}, wanted.signal);
  await new Promise((resolve) => setImmediate(resolve));
  wanted.abort();
  await assert.rejects(asking, { name: "AbortError" });
  context.mock.timers.tick(10_000);
  assert.equal(requests.length, 1);
});

test("a pause that is over leaves nobody listening", async (context) => {
  const wanted = new AbortController();
  const heard = context.mock.method(wanted.signal, "removeEventListener");
  const waiting = waited(300, wanted.signal);
  context.mock.timers.tick(300);
  await waiting;
  assert.equal(heard.mock.callCount(), 1);
  const given = waited(300, wanted.signal);
  wanted.abort();
  await assert.rejects(given, { name: "AbortError" });
});

test("what takes long is asked for one after the other", async (context) => {
  const release = [];
  context.mock.method(globalThis, "fetch", (path, { signal }) => new Promise((resolve, reject) => {
    requests.push(path);
    release.push(() => resolve(json(200, { path })));
    signal.addEventListener("abort", () => reject(signal.reason));
  }));
  const still = new AbortController().signal, gone = new AbortController();
  const turns = [sought("cures", {}, still), sought("papers", {}, gone.signal), sought("chart", {}, still)];
  const rest = () => new Promise((resolve) => setImmediate(resolve));
  await rest();
  assert.deepEqual(requests, ["cures"]);
  // One that nobody wants any more by its turn is never asked for.
  gone.abort();
  release[0]();
  assert.deepEqual(await turns[0], { path: "cures" });
  await assert.rejects(turns[1], { name: "AbortError" });
  await rest();
  assert.deepEqual(requests, ["cures", "chart"]);
  release[1]();
  assert.deepEqual(await turns[2], { path: "chart" });
});
