/** The job that is worked at, and who follows it. */

import { History, textOf } from "./history.js";
import { Waiting, given, laid } from "./latest.js";
import { asked, RefusedError } from "./link.js";

/** @import {Job, PageData, TapView, Units} from "../types" */
/** @import {Change, Made} from "./latest.js" */

/**
 * A change that could not be made, and why.
 * @typedef {object} Complaint
 * @property {string} message
 * @property {string[]} fields to blame, as far as known; all that were changed otherwise
 * @property {boolean} [unanswered] whether the program was not there to answer
 * @property {boolean} [unchanged] whether all that stands on the page holds as before
 * @property {boolean} [done] whether it was made all the same, and there is something to know of it
 */

/**
 * Changes are asked of the server one after the other, and stand once they are answered. What is
 * refused is not in the job: it stays where it was typed, and the last good view stays.
 */
export class Desk {
  /** @param {PageData & {live: NonNullable<PageData["live"]>}} data */
  constructor({ live, view }) {
    this.job = live.job;
    this.units = live.units;
    this.view = view;
    /** @type {number | null} height of the section [mm] */
    this.z = null;
    this.history = new History(live.job);
    this.saved = textOf(live.job);
    this.waiting = new Waiting();
    /** @type {Change[]} refused together with others, and not tried by themselves yet */
    this.behind = [];
    this.busy = false;
    /** The changes that are asked for at this moment. */
    this.asking = Promise.resolve();
    /** @type {Job} values that were refused and still stand where they were typed */
    this.refused = {};
    /** @type {Change[]} changes that nobody answered */
    this.unanswered = [];
    /** @type {((view: TapView) => void)[]} */
    this.followers = [];
    /** @type {((complaint: Complaint | null) => void)[]} told null when all is well again */
    this.complaints = [];
    /** @type {(() => void)[]} told when the job, or what is saved of it, is another */
    this.keepers = [];
    /** Text of the file of measured sizes beside the job that the page was opened with. */
    this.measured = live.measured ?? "";
    /** @type {(text: string) => Promise<void>} has the boxes of measured sizes show such a file */
    this.fillMeasured = async () => {};
    /** Whether measured sizes were typed that no file keeps. */
    this.unkept = false;
  }

  get changed() {
    return textOf(this.job) !== this.saved;
  }

  /**
   * Lay values over the job.
   * @param {Job} values null for a field that rules shall choose again
   * @param {string} [key] of a control that is moved; its moves are undone as one
   */
  set(values, key = "") {
    return this.change({ values, key });
  }

  /**
   * Put a job in the place of this one; it counts as saved.
   * @param {Job} job
   * @param {Units | null} [units] of every text from then on; those of the page where nothing is said
   * @param {string} [file] name of the file that it comes from
   */
  open(job, units = null, file = "") {
    return this.change({ whole: job, key: "", opened: true, units, file });
  }

  /** @param {-1 | 1} step back, or forth again */
  go(step) {
    return this.change({ step, key: "" });
  }

  /**
   * Show the section at a height.
   * @param {number} z [mm]
   */
  cutAt(z) {
    this.z = z;
    return this.change({ values: {}, key: "look" });
  }

  /** @param {Units} units of every text */
  tellIn(units) {
    this.units = units;
    return this.change({ values: {}, key: "look" });
  }

  /** @param {Job} job that was handed out as a file */
  markSaved(job) {
    this.saved = textOf(job);
    for (const keep of this.keepers) keep();
  }

  /** The program answers again: ask once more for what it did not, where nothing newer was typed. */
  again() {
    const changes = this.unanswered.splice(0);
    for (const change of changes) this.change(change);
    // Model and papers may have found no answer either.
    if (!changes.length) this.#show();
  }

  /**
   * Whether a newer value of that field is still on its way, or what was typed was refused.
   * @param {string} field
   */
  isAhead(field) {
    return field in this.refused || [...this.waiting.changes, ...this.behind].some(({ values }) => values && field in values);
  }

  /**
   * What was typed into a box and found no answer, or a refusal, is not wanted any more.
   * @param {string} field
   */
  giveUp(field) {
    this.refused = without(this.refused, field);
    this.unanswered = this.unanswered.map((change) => change.values ? { ...change, values: without(change.values, field) } : change);
    for (const keep of this.keepers) keep();
  }

  /**
   * @param {Change} change
   * @returns {Promise<void>} ends once it is answered, and all that waits with it
   */
  async change(change) {
    const { values } = change;
    this.unanswered = this.unanswered.filter((old) => values && !Object.keys(old.values ?? {}).some((field) => field in values));
    this.waiting.add(change, performance.now());
    if (!this.busy) {
      this.busy = true;
      this.asking = this.#askAll();
    }
    await this.asking;
  }

  /**
   * The job once every change is answered: what is typed stands in its box before it is in the job.
   * @returns {Promise<Job>}
   */
  async settled() {
    while (this.busy) await this.asking.catch(() => {});
    return this.job;
  }

  async #askAll() {
    try {
      while (this.waiting.changes.length) await this.#all(this.waiting.take());
    } finally {
      // In the same breath as the last look at what waits: what comes later is asked for anew.
      this.busy = false;
    }
  }

  /**
   * Several changes in one go; where they are refused together, each by itself.
   * @param {Made[]} changes
   */
  async #all(changes) {
    const complaint = await this.#try(changes);
    if (!complaint) return;
    if (complaint.unanswered) this.unanswered.push(...changes);
    if (changes.length === 1 || complaint.unanswered)
      return changes.forEach((change) => this.#complain(change, complaint));
    for (const [n, change] of changes.entries()) {
      this.behind = changes.slice(n + 1);
      await this.#all([change]);
    }
  }

  /**
   * @param {Change} change
   * @param {Complaint} complaint
   */
  #complain(change, complaint) {
    this.refused = { ...this.refused, ...change.values };
    const { message } = complaint;
    // Of another job no box is on the page that could be to blame.
    const told = change.opened
      ? { ...complaint, message: (change.file ? notOpened(change.file) : "") + message, fields: [], unchanged: true }
      : complaint;
    for (const complain of this.complaints) complain(told);
    for (const keep of this.keepers) keep();
  }

  /**
   * @param {Made[]} changes
   * @returns {Promise<Complaint | null>} why not; null when the changes stand
   */
  async #try(changes) {
    const step = changes[0].step;
    const target = step && this.history.beside(step);
    if (step && !target) return null;
    const job = target || changes.reduce(laid, this.job);
    const changed = given(changes);
    const units = changes[0].units ?? this.units;
    try {
      const { view, dropped = [] } = await this.#ask(job, changed, units);
      this.units = changes[0].units ?? this.units;
      const stands = Object.entries(job).filter(([field]) => !dropped.includes(field));
      this.#stand(Object.fromEntries(stands), view, changes);
      return null;
    } catch (error) {
      if (!(error instanceof RefusedError)) throw error;
      if (!error.status) return { message: error.message, fields: [], unanswered: true };
      const known = changed.includes(error.field) || changed.length === 0;
      return { message: error.message, fields: known ? [error.field] : changed };
    }
  }

  /**
   * @param {Job} job
   * @param {string[]} changed
   * @param {Units | null} units
   * @returns {Promise<{view: TapView, dropped?: string[]}>}
   */
  async #ask(job, changed, units) {
    const answer = await asked("tap", { job, units, z: this.z, changed });
    return answer.json();
  }

  /**
   * @param {Job} job
   * @param {TapView} view
   * @param {Made[]} changes
   */
  #stand(job, view, changes) {
    // Another height or unit looked at meanwhile is no move of the job.
    const moves = changes.filter(({ values }) => !values || Object.keys(values).length);
    const { step, opened, file, key, began, ended } = moves.at(-1) ?? changes[0];
    const lost = opened && file && this.changed;
    // A step back or forth takes along what stands typed in the boxes that it fills anew, no other.
    const done = new Set(step ? differing(this.job, job) : changes.flatMap(({ values }) => Object.keys(values ?? this.refused)));
    this.job = job;
    this.view = view;
    if (step) this.history.go(step);
    else this.history.note(job, key, began, ended);
    if (opened) this.saved = textOf(job);
    this.refused = Object.fromEntries(Object.entries(this.refused).filter(([field]) => !done.has(field)));
    for (const complain of this.complaints) complain(null);
    const message = `${file} is open. What was there was not saved: undo brings it back.`;
    if (lost) for (const complain of this.complaints) complain({ message, fields: [], unchanged: true, done: true });
    this.#show();
    for (const keep of this.keepers) keep();
  }

  #show() {
    if (this.view) for (const follow of this.followers) follow(this.view);
  }
}

/**
 * The fields that two jobs do not have alike.
 * @param {Job} one
 * @param {Job} other
 */
function differing(one, other) {
  return [...new Set([...Object.keys(one), ...Object.keys(other)])]
    .filter((field) => JSON.stringify(one[field]) !== JSON.stringify(other[field]));
}

/**
 * How the reason begins why a file is not opened.
 * @param {string} file
 */
export function notOpened(file) {
  return `${file} was not opened: `;
}

/**
 * A job without a field.
 * @param {Job} job
 * @param {string} field
 * @returns {Job}
 */
function without(job, field) {
  return Object.fromEntries(Object.entries(job).filter(([name]) => name !== field));
}
