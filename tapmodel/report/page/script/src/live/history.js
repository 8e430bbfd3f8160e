/** Jobs one behind the other, to go back to and forth again. */

/** @import {Job} from "../types" */

/** Moves of one control that follow each other within this time are one step [ms]. */
export const TOGETHER = 1000;

/** Steps that are kept. */
const MOST = 200;

export class History {
  /** @param {Job} job where it begins */
  constructor(job) {
    this.jobs = [job];
    this.place = 0;
    this.key = "";
    this.at = -Infinity;
  }

  /**
   * Note a job that stands now.
   * @param {Job} job
   * @param {string} key of the control that made it; "" for a step of its own
   * @param {number} began when its first move was made, however late it stands [ms]
   * @param {number} ended its last
   */
  note(job, key, began, ended = began) {
    if (same(job, this.jobs[this.place])) return;
    const goesOn = key !== "" && key === this.key && began - this.at < TOGETHER && this.place > 0;
    this.jobs.splice(goesOn ? this.place : this.place + 1, Infinity, job);
    if (this.jobs.length > MOST) this.jobs.shift();
    this.place = this.jobs.length - 1;
    this.key = key;
    this.at = ended;
  }

  /**
   * The job so many steps away; undefined where there is none.
   * @param {-1 | 1} step
   */
  beside(step) {
    return this.jobs[this.place + step];
  }

  /** @param {-1 | 1} step */
  go(step) {
    this.place += step;
    this.key = "";
  }
}

/**
 * A job as one text, whatever order its fields stand in.
 * @param {Job} job
 */
export function textOf(job) {
  return JSON.stringify(Object.entries(job).sort(([a], [b]) => (a < b ? -1 : 1)));
}

/**
 * @param {Job} a
 * @param {Job} b
 */
export function same(a, b) {
  return textOf(a) === textOf(b);
}
