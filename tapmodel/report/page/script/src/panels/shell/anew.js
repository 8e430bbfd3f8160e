/** A line that tells which tool or count the rules chose anew with a change of another value. */

import { made } from "../../elements.js";
import { TOGETHER, textOf } from "../../live/history.js";

/** @import {Control, TapView} from "../../types" */
/** @import {Desk} from "../../live/desk.js" */

/** What rules choose from a few, and jumps; what runs along with a value is seen in its box. */
const CHOSEN = ["flutes.count", "flutes.cutter_diameter"];

/** Another of these is another tap, of which all is chosen anew; in other units all is written anew. */
const ANOTHER = ["designation", "hole.material"];

/** @typedef {{job: string, whole: string, controls: Control[]}} Stand how a tap stood */

/**
 * @param {Desk} desk
 * @returns {(view: TapView) => void}
 */
export function anewPanel(desk) {
  const line = made("p", { id: "anew", class: "quiet", role: "status" });
  document.getElementById("verdict")?.after(line);
  /** @type {Stand | null} */
  let last = null;
  /** @type {Stand | null} */
  let before = null;
  let moved = -Infinity;
  return (view) => {
    const controls = view.fields.flatMap((group) => group.controls).filter(({ field }) => CHOSEN.includes(field));
    /** @type {Stand} */
    const now = { job: textOf(desk.job), whole: [desk.units, ...ANOTHER.map((field) => desk.job[field])].join(), controls };
    if (now.job === last?.job && now.whole === last.whole) return;
    // Moves of a slider that follow each other are one change.
    if (performance.now() - moved > TOGETHER) before = last;
    moved = performance.now();
    if (before?.whole !== now.whole) before = now;
    const texts = changes(before.controls, controls);
    line.textContent = texts.length ? `With that the rules chose anew: ${texts.join(", ")}.` : "";
    last = now;
  };
}

/**
 * What rules chose before and choose otherwise now.
 * @param {Control[]} before
 * @param {Control[]} now
 */
export function changes(before, now) {
  return now.flatMap(({ field, label, value, unit, state }) => {
    const was = before.find((control) => control.field === field);
    if (!was || was.value === value || was.state !== "rule" || state !== "rule") return [];
    const behind = unit && `\u00a0${unit}`;
    return [`${label} ${value}${behind} instead of ${was.value}${behind}`];
  });
}
