/** Builds of the server, from begin to end. */

import { textOf } from "./history.js";
import { asked, looked, RefusedError, removed, waited } from "./link.js";
import { remember, remembered } from "./remembered.js";

/** @import {BuildTold, Job, Offer, Units} from "../types" */

/** Between two looks at a build that runs [ms]. */
const LOOK = 300;

/** What a page that is loaded anew finds of the build that it began. */
const KEPT = "build";

/** @typedef {{id: string, of: string}} Begun a build, and the job that it is of as one text */

/**
 * What can be asked for, and what is being built for whomever.
 * @returns {Promise<Offer>}
 */
export async function offered() {
  return (await looked("build")).json();
}

/**
 * Begin a build.
 * @param {{job: Job, units: Units | null}} desk
 * @param {string[]} formats
 * @param {boolean} force build what breaks a rule
 * @returns {Promise<Begun>}
 */
export async function begun({ job, units }, formats, force) {
  const { id } = await (await asked("build", { job, units, formats, force })).json();
  const build = { id, of: textOf(job) };
  remember(KEPT, build);
  return build;
}

/**
 * The build that this page began before it was loaded anew.
 * @returns {Begun | null}
 */
export function kept() {
  return remembered(KEPT, null);
}

export function forget() {
  remember(KEPT, null);
}

/**
 * Follow a build until it has ended.
 * @param {string} id
 * @param {(told: BuildTold) => void} follow told how far it is
 * @param {AbortSignal} signal when it is not wanted any more
 */
export async function followed(id, follow, signal) {
  for (;;) {
    /** @type {BuildTold} */
    const told = await (await looked(`build/${id}`, signal)).json();
    follow(told);
    if (told.state !== "running") return;
    await waited(LOOK, signal);
  }
}

/**
 * Stop a build; one that is gone already counts as stopped.
 * @param {string} id
 */
export async function stopped(id) {
  try {
    await removed(`build/${id}`);
  } catch (error) {
    if (!(error instanceof RefusedError) || error.status !== 404) throw error;
  }
}

/**
 * The address of a file of a build.
 * @param {string} id
 * @param {string} name with the folders in which it stands
 */
export function addressOf(id, name) {
  return `build/${id}/files/${name.split("/").map(encodeURIComponent).join("/")}`;
}
