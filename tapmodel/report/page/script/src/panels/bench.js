/** What is asked at the machine: wires, gears, dividing, measured sizes. */

import { made } from "../elements.js";
import { dividingBench } from "./bench/dividing.js";
import { gearsBench } from "./bench/gears.js";
import { measuredBench } from "./bench/measured.js";
import { wiresBench } from "./bench/wires.js";
import { slot } from "./graph/slot.js";

/** @import {AtDesk, TapView} from "../types" */

/**
 * @param {AtDesk} desk
 * @returns {(view: TapView) => void}
 */
export function benchPanel(desk) {
  const body = slot("bench", "At the machine");
  if (!body) return () => {};
  const benches = [wiresBench, gearsBench, dividingBench, measuredBench].map((bench) => {
    const { title, content, ask } = bench(desk);
    const whole = /** @type {HTMLDetailsElement} */ (made("details", { class: "tool", name: "bench" },
      made("summary", {}, title), made("div", { class: "tool-body" }, ...content)));
    whole.addEventListener("toggle", () => {
      if (whole.open) ask(0);
    });
    return { whole, ask };
  });
  body.append(...benches.map(({ whole }) => whole));
  return () => {
    for (const { whole, ask } of benches) if (whole.open) ask();
  };
}
