/** What is asked at the machine: wires, gears, dividing, measured sizes. */

import { made } from "../elements.js";
import { dividingBench } from "./bench/dividing.js";
import { gearsBench } from "./bench/gears.js";
import { measuredBench } from "./bench/measured.js";
import { wiresBench } from "./bench/wires.js";
import { slot } from "./graph/slot.js";

/** @import {AtDesk, TapView, Units} from "../types" */

/**
 * @typedef {object} Bench
 * @property {string} title
 * @property {HTMLElement[]} content
 * @property {(pause?: number) => void} ask
 * @property {(units: Units) => void} [tellIn] has its boxes take bare lengths in these units
 */

/**
 * @param {AtDesk} desk
 * @returns {(view: TapView) => void}
 */
export function benchPanel(desk) {
  const body = slot("bench", "At the machine");
  if (!body) return () => {};
  /** @type {((desk: AtDesk) => Bench)[]} */
  const kinds = [wiresBench, gearsBench, dividingBench, measuredBench];
  const benches = kinds.map((bench) => {
    const { title, content, ask, tellIn = () => {} } = bench(desk);
    const whole = /** @type {HTMLDetailsElement} */ (made("details", { class: "tool", name: "bench" },
      made("summary", {}, title), made("div", { class: "tool-body" }, ...content)));
    whole.addEventListener("toggle", () => {
      if (whole.open) ask(0);
    });
    return { whole, ask, tellIn };
  });
  body.append(...benches.map(({ whole }) => whole));
  return ({ units }) => {
    for (const { whole, ask, tellIn } of benches) {
      tellIn(units);
      if (whole.open) ask();
    }
  };
}
