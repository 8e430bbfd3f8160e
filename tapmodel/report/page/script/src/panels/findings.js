/** What the rules found, and what mends it at one press. */

import { made } from "../elements.js";
import { RefusedError, sought } from "../live/link.js";
import { Resting } from "../live/resting.js";

/** @import {Found, Job, TapView} from "../types" */
/** @import {Desk} from "../live/desk.js" */

/** How long nothing must have been changed before cures are sought, which takes longest [ms]. */
const REST = 150;

/**
 * What is found shows at once, what mends it when the hands rest.
 * @param {Desk} desk
 * @returns {(view: TapView) => void}
 */
export function findingsPanel(desk) {
  const place = document.getElementById("findings");
  const list = place?.querySelector("ul");
  let shown = "";
  /** @param {Found[]} findings */
  const show = (findings) => {
    const now = JSON.stringify(findings);
    if (now === shown) return;
    shown = now;
    const none = made("li", { class: "good" }, "None: the design keeps every rule.");
    const items = findings.map((found) => item(found, (values) => desk.set(values), place));
    list?.replaceChildren(...(items.length ? items : [none]));
  };
  const seeking = new Resting(async (signal) => {
    const { job, view } = desk;
    try {
      const { findings } = await sought("cures", { job, units: desk.units }, signal);
      if (view === desk.view) show(findings);
    } catch (error) {
      // A job that stands is not refused; without its cures the findings stand as well.
      if (!(error instanceof RefusedError)) throw error;
    }
  });
  return (view) => {
    show(view.findings);
    const graver = view.findings.some(({ weight, cures }) => weight !== "note" && !cures.length);
    if (graver) seeking.after(REST);
  };
}

/**
 * @param {Found} found
 * @param {(values: Job) => Promise<void>} apply
 * @param {HTMLElement | null} place
 */
function item(found, apply, place) {
  const cures = found.cures.map((cure) => {
    const button = made("button", { type: "button", class: "cure" }, cure.text);
    button.addEventListener("click", async () => {
      await apply(cure.values);
      // The button is gone with its finding; whoever works by keys goes on from here.
      if (!button.isConnected) place?.querySelector("h2")?.focus();
    });
    return made("li", {}, button, ...(cure.cost ? [made("small", {}, ` ${cure.cost}`)] : []));
  });
  return made(
    "li",
    { class: found.weight },
    made("p", {}, made("span", { class: "weight" }, `${found.sign} ${found.weight}`), ` ${found.said}`),
    ...(cures.length ? [made("ul", { class: "cures", "aria-label": "What mends it" }, ...cures)] : []),
    made(
      "details",
      {},
      made("summary", {}, "numbers and source"),
      made("p", {}, `[${found.code}] ${found.numbers}; ${found.source}`),
    ),
  );
}
