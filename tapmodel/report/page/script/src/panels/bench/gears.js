/** Change gears. */

import { made } from "../../elements.js";
import { boxed, chapterBlocks, notesList, questions } from "./boxes.js";

/** @import {AtDesk} from "../../types" */

/** @param {AtDesk} desk */
export function gearsBench(desk) {
  const screw = boxed("leadscrew, such as 4mm or 8tpi", { id: "gears-leadscrew" });
  const wheels = boxed("wheels at hand, such as 20-65,127", { id: "gears-wheels" });
  const use = made("button", { type: "button" }, "Put into the job");
  const lathe = made("div", { class: "lathe" }, made("p", {}, "The job names no leadscrew or no wheels of the lathe."),
    screw.whole, wheels.whole, use);
  const answer = made("div", { "aria-live": "polite" });
  const { ask, wrong } = questions("bench/gears", () => ({ job: desk.job, units: desk.units }), ({ gears, notes }) => {
    lathe.hidden = gears !== null;
    answer.replaceChildren(...(gears ? [...chapterBlocks(gears), notesList(notes)] : []));
  }, answer);
  const put = () => {
    /** @type {Record<string, unknown>} */
    const named = {};
    if (screw.box.value.trim()) named["shop.leadscrew"] = screw.box.value.trim();
    if (wheels.box.value.trim()) named["shop.gears"] = wheels.box.value.trim();
    desk.set(named);
  };
  use.addEventListener("click", put);
  for (const { box } of [screw, wheels])
    box.addEventListener("keydown", (event) => {
      if (event.key === "Enter") put();
    });
  return { title: "Change gears", content: [wrong, lathe, answer], ask };
}
