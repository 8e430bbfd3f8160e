/** The job as the end of an address, and back. */

/** @import {Job, Units} from "../types" */

/** @typedef {{job: Job, units: Units | null}} Kept */

const BEGINS = "#job=";

/** Longer ends are no job's: a link is pasted by hand. */
const LONGEST = 60000;

/**
 * @param {Kept} kept
 * @returns {string} with its #
 */
export function fragmentOf({ job, units }) {
  const bytes = new TextEncoder().encode(JSON.stringify({ job, units }));
  const letters = Array.from(bytes, (byte) => String.fromCharCode(byte)).join("");
  return BEGINS + btoa(letters).replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "");
}

/**
 * What such an end holds; null for any other.
 * @param {string} fragment
 * @returns {Kept | null}
 */
export function keptIn(fragment) {
  if (!fragment.startsWith(BEGINS) || fragment.length > LONGEST) return null;
  try {
    const coded = fragment.slice(BEGINS.length).replaceAll("-", "+").replaceAll("_", "/");
    const bytes = Uint8Array.from(atob(coded), (letter) => letter.charCodeAt(0));
    const { job, units } = JSON.parse(new TextDecoder("utf-8", { fatal: true }).decode(bytes));
    if (typeof job?.designation !== "string" || Array.isArray(job)) return null;
    return { job, units: ["mm", "inch", "both"].includes(units) ? units : null };
  } catch {
    return null;
  }
}
