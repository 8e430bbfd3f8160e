/** What the rules found, and what mends it at one press. */

import { made } from "../elements.js";

/** @import {Found, Job, TapView} from "../types" */

/**
 * @param {(values: Job) => Promise<void>} apply lays the values of a cure over the job
 * @returns {(view: TapView) => void}
 */
export function findingsPanel(apply) {
  const place = document.getElementById("findings");
  const list = place?.querySelector("ul");
  let shown = "";
  return (view) => {
    const now = JSON.stringify(view.findings);
    if (now === shown) return;
    shown = now;
    const none = made("li", { class: "good" }, "None: the design keeps every rule.");
    const items = view.findings.map((found) => item(found, apply, place));
    list?.replaceChildren(...(items.length ? items : [none]));
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
