/** What the rules would choose for the fields that are given: asked when the hands rest. */

import { RefusedError, sought } from "../../live/link.js";
import { Resting } from "../../live/resting.js";

/** @import {Recommended, TapView} from "../../types" */
/** @import {Desk} from "../../live/desk.js" */
/** @import {Row} from "./frame.js" */

/** How long nothing must have been changed [ms]. */
const REST = 250;

/**
 * @param {Desk} desk
 * @param {Map<string, Row>} rows
 * @returns {(view: TapView) => void}
 */
export function recommending(desk, rows) {
  const asking = new Resting(async (signal) => {
    const job = desk.job;
    const changed = Object.keys(job).filter((field) => field !== "designation" && rows.has(field));
    if (!changed.length) return;
    try {
      /** @type {{recommended: Record<string, Recommended>}} */
      const { recommended } = await sought("recommended", { job, units: desk.units, changed }, signal);
      if (job !== desk.job) return;
      for (const field of changed) rows.get(field)?.recommend(recommended[field]);
    } catch (error) {
      // The way back needs no value beside it.
      if (!(error instanceof RefusedError)) throw error;
    }
  });
  return () => asking.after(REST);
}
