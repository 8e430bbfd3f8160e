/** All that can be changed, as a maker thinks of it. */

import { element, made } from "../../elements.js";
import { shownAs } from "../../live/typed.js";
import { drawer } from "./drawer.js";
import { groupOf } from "./groups.js";
import { recommending } from "./recommending.js";

/** @import {TapView} from "../../types" */
/** @import {Desk} from "../../live/desk.js" */
/** @import {Row} from "./frame.js" */

/**
 * @param {Desk} desk
 * @returns {(view: TapView) => void}
 */
export function controlsPanel(desk) {
  const place = element("groups", HTMLElement);
  /** @type {Map<string, Row>} */
  const rows = new Map();
  /** @type {Map<string, ReturnType<typeof groupOf>>} */
  const groups = new Map();
  const others = made("div", { class: "others" });
  drawer();
  const recommend = recommending(desk, rows);
  desk.complaints.push((complaint) => {
    for (const field of complaint?.fields ?? []) reveal(rows.get(field), complaint?.message ?? "");
  });
  return (view) => {
    for (const group of view.fields) {
      const found = groups.get(group.key) ?? groupOf(group, desk, rows);
      if (!groups.has(group.key)) place.append(found.node);
      groups.set(group.key, found);
      found.show(group);
    }
    showOthers(others, view, desk);
    if (others.parentNode !== place) place.append(others);
    recommend(view);
  };
}

/**
 * A refusal at its field, whose group opens.
 * @param {Row | undefined} row
 * @param {string} message
 */
function reveal(row, message) {
  row?.complain(message);
  const group = row?.node.closest("details.group");
  if (group instanceof HTMLDetailsElement) group.open = true;
}

/**
 * What the job gives beside all controls, each with a button to give it no more.
 * @param {HTMLElement} place
 * @param {TapView} view
 * @param {Desk} desk
 */
function showOthers(place, view, desk) {
  const known = new Set(view.fields.flatMap(({ controls }) => controls.map(({ field }) => field)));
  const fields = Object.keys(desk.job).filter((field) => !known.has(field));
  const now = JSON.stringify(fields.map((field) => [field, desk.job[field]]));
  if (place.dataset.shown === now) return;
  place.dataset.shown = now;
  const items = fields.map((field) => {
    const button = made("button", { type: "button", "aria-label": `Take ${field} out of the job` }, "take out");
    button.addEventListener("click", () => desk.set({ [field]: null }));
    return made("li", {}, made("code", {}, `${field} = ${shownAs(desk.job[field])}`), button);
  });
  place.replaceChildren(...(items.length ? [made("h3", {}, "Also in the job"), made("ul", {}, ...items)] : []));
}
