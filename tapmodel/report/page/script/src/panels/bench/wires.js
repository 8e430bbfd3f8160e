/** Measuring over wires. */

import { made } from "../../elements.js";
import { keptLength, lengthTyped } from "../../live/typed.js";
import { remember, remembered } from "../../live/remembered.js";
import { judgedLine } from "../graph/picture.js";
import { boxed, complaintOf, grid, notesList, pairsList, questions, unitOf } from "./boxes.js";

/** @import {AtDesk, Units, WiresView} from "../../types" */

/** @param {AtDesk} desk */
export function wiresBench(desk) {
  /** @type {{measured: string, wire: string, compound: string, units: Units}} */
  const typed = { measured: "", wire: "", compound: "0", units: "mm", ...remembered("wires", {}) };
  const measured = boxed("", { id: "wires-measured", inputmode: "decimal", value: typed.measured });
  const wire = boxed("", { id: "wires-wire", inputmode: "decimal", value: typed.wire });
  const compound = boxed("compound, from square to the lathe's axis [°]",
    { id: "wires-compound", type: "number", min: 0, max: 80, step: 0.5, value: typed.compound });
  const boxes = { measured: complaintOf(measured.box), wire: complaintOf(wire.box), compound: complaintOf(compound.box) };
  const answer = made("div", { "aria-live": "polite" });
  /** @type {WiresView | null} */
  let last = null;
  const { ask, wrong } = questions("bench/wires", () => ({
    job: desk.job, units: desk.units, compound: Number(compound.box.value),
    measured: lengthTyped(measured.box.value, typed.units), wire: lengthTyped(wire.box.value, typed.units),
  }), ({ wires }) => {
    last = wires;
    answer.replaceChildren(...told(wires));
  }, answer, { boxes, refused: () => {
    // Of a reading that was replaced nothing is left; wire and limits are those of the thread.
    if (last) answer.replaceChildren(...told({ ...last, judged: null, read: [], compound: null }));
  } });
  const keep = () => {
    Object.assign(typed, { measured: measured.box.value, wire: wire.box.value, compound: compound.box.value });
    remember("wires", typed);
  };
  for (const { box } of [measured, wire, compound])
    box.addEventListener("input", () => {
      keep();
      ask();
    });
  /** @param {Units} units of the page from now on */
  const tellIn = (units) => {
    measured.name.textContent = `measured over wires [${unitOf(units)}]`;
    wire.name.textContent = `wire [${unitOf(units)}], empty for the one to use`;
    if (units === typed.units) return;
    for (const { box } of [measured, wire]) box.value = keptLength(box.value, typed.units, units);
    typed.units = units;
    keep();
  };
  return { title: "Measure over wires", tellIn, ask, content: [
    measured.whole, boxes.measured.node, wire.whole, boxes.wire.node, compound.whole, boxes.compound.node, wrong, answer] };
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
