/** What the rules would choose for the fields that are given: asked when the hands rest. */

import { asked, RefusedError } from "../../live/link.js";

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
  let timer = 0;
  const ask = async () => {
    const job = desk.job;
    const changed = Object.keys(job).filter((field) => field !== "designation" && rows.has(field));
    if (!changed.length) return;
    try {
      const answer = await asked("recommended", { job, units: desk.units, changed });
      /** @type {{recommended: Record<string, Recommended>}} */
      const { recommended } = await answer.json();
      if (job !== desk.job) return;
      for (const field of changed) rows.get(field)?.recommend(recommended[field]);
    } catch (error) {
      // The way back needs no value beside it.
      if (!(error instanceof RefusedError)) throw error;
    }
  };
  return () => {
    clearTimeout(timer);
    timer = window.setTimeout(ask, REST);
  };
}
