/** Nothing is lost: the job in the address, and a question before it is left unsaved. */

import { fragmentOf, keptIn } from "./address.js";
import { History, same } from "./history.js";

/** @import {Job} from "../types" */
/** @import {Desk} from "./desk.js" */

/** A browser takes no more than some hundred new addresses in half a minute [ms]. */
const PAUSE = 300;

/**
 * Keep a desk's job in the address, and begin with the job that stands there.
 * @param {Desk} desk
 */
export function kept(desk) {
  let timer = 0, written = -Infinity;
  const write = () => {
    timer = 0;
    written = performance.now();
    const fragment = fragmentOf({ job: desk.job, units: desk.units });
    const { saved, refused, history: { jobs, place } } = desk;
    history.replaceState({ saved, refused, steps: { jobs, place } }, "", fragment);
  };
  desk.keepers.push(() => {
    if (!timer) timer = window.setTimeout(write, Math.max(written + PAUSE - performance.now(), 0));
  });
  window.addEventListener("popstate", () => {
    // What still waits is of the address that was left.
    clearTimeout(timer);
    timer = 0;
  });
  window.addEventListener("pagehide", () => {
    if (timer) write();
  });
  window.addEventListener("beforeunload", (event) => {
    // What is still asked for is not in the job yet.
    if (desk.changed || desk.unkept || desk.busy) event.preventDefault();
  });
  window.addEventListener("hashchange", async () => {
    // A link counts as saved; back and forth lead to what was left, saved or not.
    const { saved } = history.state ?? {};
    await begin(desk);
    desk.saved = saved ?? desk.saved;
    for (const keep of desk.keepers) keep();
  });
  return restored(desk, history.state ?? {});
}

/**
 * Work at the job that a link brought.
 * @param {Desk} desk
 */
async function begin(desk) {
  const found = keptIn(location.hash);
  if (!found) return;
  desk.units = found.units ?? desk.units;
  await desk.open(found.job);
}

/**
 * Go on where the page was before it was loaded again.
 * @param {Desk} desk
 * @param {{saved?: string, refused?: Job, steps?: {jobs: Job[], place: number}}} state
 */
async function restored(desk, { saved, refused = {}, steps }) {
  await begin(desk);
  desk.history = new History(desk.job);
  if (steps && same(steps.jobs[steps.place], desk.job)) Object.assign(desk.history, steps);
  desk.saved = saved ?? desk.saved;
  for (const [field, value] of Object.entries(refused)) await desk.set({ [field]: value });
  for (const keep of desk.keepers) keep();
}
