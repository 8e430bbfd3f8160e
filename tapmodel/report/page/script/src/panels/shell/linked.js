/** A quiet line while the program that serves the page is busy, or does not answer. */

import { made } from "../../elements.js";
import { link, looked, RefusedError } from "../../live/link.js";

/** @import {Desk} from "../../live/desk.js" */

/** Shorter waits are not told [ms]. */
const PATIENCE = 500;

/** Between two looks whether the program is there again, or has time [ms]. */
const AGAIN = 3000;

const TEXTS = {
  busy: "The program is busy; your change is on its way.",
  lost: "Connection lost: is tapmodel still running? Your job is kept in this page and in its address.",
};

/** @param {Desk} desk */
export function linkedPanel(desk) {
  const line = made("p", { id: "link", role: "status" });
  document.body.append(line);
  /** @type {"there" | "busy" | "lost"} */
  let state = "there";
  let telling = 0, looking = 0;
  const look = async () => {
    try {
      await looked("build");
    } catch (error) {
      if (!(error instanceof RefusedError)) throw error;
      if (state !== "there") looking = window.setTimeout(look, AGAIN);
    }
  };
  link.addEventListener("state", (event) => {
    const newer = /** @type {CustomEvent} */ (event).detail;
    if (newer === state) return;
    state = newer;
    clearTimeout(telling);
    clearTimeout(looking);
    if (newer === "there") {
      line.textContent = "";
      desk.again();
      return;
    }
    telling = window.setTimeout(() => (line.textContent = TEXTS[state === "busy" ? "busy" : "lost"]), PATIENCE);
    // A change that found no answer in time is asked for again once there is one.
    looking = window.setTimeout(look, AGAIN);
  });
}
