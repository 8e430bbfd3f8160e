/** The job that is worked at, and who follows it. */

import { asked, RefusedError } from "./link.js";

/** @import {Job, PageData, TapView, Units} from "../types" */

/** Every change is asked of the server; only the newest answer is shown. */
export class Desk {
  /** @param {PageData & {live: {job: Job, units: Units | null}}} data */
  constructor({ live, view }) {
    this.job = live.job;
    this.units = live.units;
    this.view = view;
    /** @type {((view: TapView) => void)[]} */
    this.followers = [];
    /** @type {((refused: RefusedError | null) => void)[]} */
    this.complaints = [];
    /** @type {AbortController | null} */
    this.asking = null;
  }

  /**
   * Lay values over the job.
   * @param {Job} values null for a field that rules shall choose again
   */
  async set(values) {
    const laid = Object.entries({ ...this.job, ...values }).filter(([, value]) => value !== null);
    this.job = Object.fromEntries(laid);
    await this.ask();
  }

  async ask() {
    this.asking?.abort();
    const asking = (this.asking = new AbortController());
    try {
      const answer = await asked("tap", { job: this.job, units: this.units }, asking.signal);
      const { view } = await answer.json();
      if (asking.signal.aborted) return;
      this.view = view;
      for (const complain of this.complaints) complain(null);
      for (const follow of this.followers) follow(view);
    } catch (error) {
      if (asking.signal.aborted) return;
      if (!(error instanceof RefusedError)) throw error;
      for (const complain of this.complaints) complain(error);
    }
  }
}
