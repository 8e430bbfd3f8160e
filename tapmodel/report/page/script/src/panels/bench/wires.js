/** Measuring over wires. */

import { made } from "../../elements.js";
import { pointed } from "../../live/typed.js";
import { remember, remembered } from "../../live/remembered.js";
import { judgedLine } from "../graph/picture.js";
import { bareNumbers, boxed, grid, notesList, pairsList, questions } from "./boxes.js";

/** @import {AtDesk, WiresView} from "../../types" */

/** @param {AtDesk} desk */
export function wiresBench(desk) {
  const typed = remembered("wires", { measured: "", wire: "", compound: "0" });
  const measured = boxed("measured over wires", { id: "wires-measured", inputmode: "decimal", value: typed.measured });
  const wire = boxed("wire, empty for the one to use", { id: "wires-wire", inputmode: "decimal", value: typed.wire });
  const compound = boxed("compound, from square to the lathe's axis [°]",
    { id: "wires-compound", type: "number", min: 0, max: 80, step: 0.5, value: typed.compound });
  const answer = made("div", { "aria-live": "polite" });
  /** @type {WiresView | null} */
  let last = null;
  const { ask, wrong } = questions("bench/wires", () => ({
    job: desk.job, units: desk.units, measured: pointed(measured.box.value), wire: pointed(wire.box.value), compound: Number(compound.box.value),
  }), ({ wires }) => {
    last = wires;
    answer.replaceChildren(...told(wires));
  }, answer, () => {
    // Of a reading that was replaced nothing is left; wire and limits are those of the thread.
    if (last) answer.replaceChildren(...told({ ...last, judged: null, read: [], compound: null }));
  });
  for (const { box } of [measured, wire, compound])
    box.addEventListener("input", () => {
      remember("wires", { measured: measured.box.value, wire: wire.box.value, compound: compound.box.value });
      ask();
    });
  return { title: "Measure over wires", content: [bareNumbers(), measured.whole, wire.whole, compound.whole, wrong, answer], ask };
}

/** @param {WiresView} wires */
function told({ judged, read, compound, aims, notes }) {
  return [
    ...(judged ? [judgedLine(judged)] : []),
    ...(read.length ? [pairsList(read)] : []),
    ...(compound ? [grid(compound.head, compound.lines)] : []),
    made("h4", {}, "Wire and limits"), pairsList(aims), notesList(notes),
  ];
}
