/** Changes that wait while one is on its way: of the same control only the newest stays. */

/** @import {Job, Units} from "../types" */

/**
 * A change of the job.
 * @typedef {object} Change
 * @property {Job} [values] laid over the job; null for a field that rules shall choose again
 * @property {Job} [whole] a job in place of the one that is there
 * @property {-1 | 1} [step] back, or forth again, in the history
 * @property {string} key changes of one key follow each other as one; "" for one of its own
 * @property {boolean} [opened] whether the whole job comes from a file or a link
 * @property {string} [file] name of that file
 * @property {Units | null} [units] that a job which is opened is told in, where it says so
 */

/**
 * A change that was made, and when.
 * @typedef {Change & {began: number, ended: number}} Made times of its first and last move [ms]
 */

export class Waiting {
  constructor() {
    /** @type {Made[]} */
    this.changes = [];
  }

  /**
   * @param {Change} change
   * @param {number} now [ms]
   */
  add(change, now) {
    const last = this.changes.at(-1);
    if (last && change.key && last.key === change.key && last.values && change.values) {
      last.values = { ...last.values, ...change.values };
      last.ended = now;
    } else this.changes.push({ ...change, began: now, ended: now });
  }

  /** What is asked for next in one go: all values up to a change of another kind, or that one. */
  take() {
    const other = this.changes.findIndex((change) => !change.values);
    const count = other < 0 ? this.changes.length : Math.max(other, 1);
    return this.changes.splice(0, count);
  }
}

/**
 * A job with a change.
 * @param {Job} job
 * @param {Change} change
 * @returns {Job}
 */
export function laid(job, change) {
  if (change.whole) return change.whole;
  const entries = Object.entries({ ...job, ...change.values });
  return Object.fromEntries(entries.filter(([, value]) => value !== null));
}

/**
 * Names of the fields that changes give a value.
 * @param {Change[]} changes
 */
export function given(changes) {
  const values = Object.assign({}, ...changes.map((change) => change.values ?? {}));
  return Object.keys(values).filter((field) => values[field] !== null);
}
