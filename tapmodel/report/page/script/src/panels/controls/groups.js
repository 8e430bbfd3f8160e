/** Controls under their headings; those come and go that a tap has or has not. */

import { made, settle } from "../../elements.js";
import { boxRow } from "./box.js";
import { put } from "./frame.js";
import { flagRow, waysRow, wordsRow } from "./words.js";

/** @import {Control, Group} from "../../types" */
/** @import {Desk} from "../../live/desk.js" */
/** @import {Row} from "./frame.js" */

const ROWS = { number: boxRow, text: boxRow, words: wordsRow, flag: flagRow };

/** Groups that are open at first. */
const OPEN = new Set(["hole", "flutes"]);

/**
 * @param {Group} first
 * @param {Desk} desk
 * @param {Map<string, Row>} rows every control by its field, filled here
 */
export function groupOf(first, desk, rows) {
  const count = made("span", { class: "count" });
  const fields = made("div", { class: "fields" });
  const heading = made("summary", {}, made("h3", {}, first.title), count);
  const node = made("details", { class: "group", open: OPEN.has(first.key) }, heading, fields);
  const ways = first.ways.length ? waysRow(first.key, first.ways, desk) : null;
  return {
    node,
    /** @param {Group} group */
    show(group) {
      const controls = group.controls.map((control) => known(control, desk));
      const own = controls.map((control) => shown(control, desk, rows));
      if (ways) {
        const at = group.controls.findIndex(({ field }) => group.ways[0].fields.includes(field));
        own.splice(at, 0, ways.node);
        ways.show(group.ways);
        led(group, rows);
      }
      settle(fields, own);
      const given = controls.filter(({ state, field }) => state === "given" && field !== "designation");
      put(count, given.length ? `${given.length} given` : "");
    },
  };
}

/**
 * A control with where its value comes from. What is only so or not is no choice of any rule, so
 * that the design tells nothing of it: the job alone knows.
 * @param {Control} control
 * @param {Desk} desk
 * @returns {Control}
 */
function known(control, desk) {
  return control.kind === "flag" && control.field in desk.job ? { ...control, state: "given" } : control;
}

/**
 * The row of a control as it stands now.
 * @param {Control} control
 * @param {Desk} desk
 * @param {Map<string, Row>} rows
 */
function shown(control, desk, rows) {
  const row = rows.get(control.field) ?? ROWS[control.kind](control, desk);
  rows.set(control.field, row);
  row.show(control);
  return row.node;
}

/**
 * What follows from the way that is chosen stands back; whoever types there goes the other way.
 * @param {Group} group
 * @param {Map<string, Row>} rows
 */
function led(group, rows) {
  for (const way of group.ways)
    for (const field of way.fields) rows.get(field)?.node.classList.toggle("led", !way.chosen);
}
