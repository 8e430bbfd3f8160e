/** Builds of the server, from begin to end. */

import { asked, looked, removed, waited } from "./link.js";

/** @import {BuildTold, Job, Offer, Units} from "../types" */

/** Between two looks at a build that runs [ms]. */
const LOOK = 300;

/** Where a page that is loaded anew finds the build that it began. */
const KEPT = "tapmodel-build";

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
 * @returns {Promise<string>} its id
 */
export async function begun({ job, units }, formats, force) {
  const { id } = await (await asked("build", { job, units, formats, force })).json();
  sessionStorage.setItem(KEPT, id);
  return id;
}

/** The id of the build that this page began before it was loaded anew. */
export function kept() {
  return sessionStorage.getItem(KEPT);
}

export function forget() {
  sessionStorage.removeItem(KEPT);
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

/** @param {string} id */
export async function stopped(id) {
  await removed(`build/${id}`);
}

/**
 * The address of a file of a build.
 * @param {string} id
 * @param {string} name with the folders in which it stands
 */
export function addressOf(id, name) {
  return `build/${id}/files/${name.split("/").map(encodeURIComponent).join("/")}`;
}
