/** Dividing: one place after the other, counted. */

import { made } from "../../elements.js";
import { remember, remembered } from "../../live/remembered.js";
import { boxed, complaintOf, grid, questions } from "./boxes.js";
import { steps } from "./stations.js";

/** @import {AtDesk, DividingView} from "../../types" */

/** @param {AtDesk} desk */
export function dividingBench(desk) {
  const memory = remembered("dividing", { divisions: "", place: 0 });
  const divisions = boxed("divisions, empty for the flutes", { id: "divisions", type: "number", min: 1, max: 400, value: memory.divisions });
  const refused = complaintOf(divisions.box);
  const text = made("div", {});
  const number = made("p", { class: "big", id: "dividing-place" });
  const move = made("p", { class: "big", id: "dividing-move" });
  const reached = made("p", { class: "quiet" });
  const back = /** @type {HTMLButtonElement} */ (made("button", { type: "button" }, "Back"));
  const next = /** @type {HTMLButtonElement} */ (made("button", { type: "button" }, "Next"));
  const all = made("details", {}, made("summary", {}, "All places"));
  const counter = made("div", { class: "counter", role: "group", "aria-label": "Place" },
    made("div", { "aria-live": "polite" }, number, move, reached), made("div", { class: "pair" }, back, next));
  const shown = made("div", {}, counter, text, all);
  /** @type {DividingView | null} */
  let dividing = null;
  const show = () => {
    if (!dividing) return;
    const step = steps(dividing, memory.place);
    [number.textContent, move.textContent, reached.textContent] = [step.place, step.move, step.reached];
    back.disabled = step.first;
    next.disabled = step.last;
    remember("dividing", memory);
  };
  const { ask, wrong } = questions("bench/dividing", () => ({
    job: desk.job, units: desk.units, divisions: divisions.box.value ? Number(divisions.box.value) : null,
  }), (answer) => {
    dividing = /** @type {DividingView} */ (answer.dividing);
    memory.place = Math.min(memory.place, dividing.stations.length - 1);
    text.replaceChildren(made("h4", {}, dividing.on), ...dividing.text.map((one) => made("p", {}, one)));
    all.replaceChildren(all.children[0], grid(["place", "from the first", "off by"],
      dividing.stations.map((one) => [String(one.number), one.reached, one.off || "exact"])));
    show();
  }, shown, { boxes: { divisions: refused } });
  /** @param {number} by */
  const go = (by) => () => {
    memory.place = Math.max(memory.place + by, 0);
    show();
  };
  back.addEventListener("click", go(-1));
  next.addEventListener("click", go(1));
  divisions.box.addEventListener("input", () => {
    memory.divisions = divisions.box.value;
    memory.place = 0;
    ask();
  });
  return { title: "Divide", content: [divisions.whole, refused.node, wrong, shown], ask };
}
