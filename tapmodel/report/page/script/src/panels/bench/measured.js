/** Measured sizes, and what they mean. */

import { made } from "../../elements.js";
import { keptLength, lengthTyped, pointed } from "../../live/typed.js";
import { remember, remembered } from "../../live/remembered.js";
import { judgedLine } from "../graph/picture.js";
import { boxed, chapterBlocks, complaintOf, notesList, questions, unitOf } from "./boxes.js";

/** @import {AtDesk, MeasuredView, Units} from "../../types" */

/** @param {AtDesk} desk */
export function measuredBench(desk) {
  /** @type {{units: Units, texts: Record<string, string>, others: string[]}} units of bare lengths; which are none */
  const typed = remembered("measured-sizes", { units: "mm", texts: {}, others: [] });
  const { texts, others } = typed;
  const wire = boxed("", { id: "measured-wire", inputmode: "decimal", value: texts.wire ?? "" });
  const wireWrong = complaintOf(wire.box);
  const sizes = made("div", { class: "sizes" });
  const chapter = made("div", {});
  /** @type {Map<string, {box: HTMLInputElement, name: HTMLElement, label: string, row: HTMLElement, aim: HTMLElement, said: HTMLElement, wrong: (message: string) => void}>} */
  const rows = new Map();
  const { ask, wrong } = questions("bench/measured", () => {
    const { wire: over = "", ...found } = Object.fromEntries(Object.entries(texts).map(([key, text]) =>
      [key, others.includes(key) ? pointed(text) : lengthTyped(text, typed.units)]));
    return { job: desk.job, units: desk.units, wire: over, sizes: found };
  }, ({ measured }) => show(measured), chapter, () => {
    for (const { said } of rows.values()) said.replaceChildren();
    chapter.replaceChildren();
  });

  /** @param {MeasuredView} measured */
  const show = (measured) => {
    for (const size of measured.sizes) {
      const row = rows.get(size.key) ?? added(size);
      row.aim.textContent = size.aim;
      row.wrong(size.wrong);
      row.said.replaceChildren(...(size.judged ? [judgedLine(size.judged)] : []));
    }
    wireWrong.tell(measured.wire_wrong);
    for (const [key, { row }] of rows) row.hidden = measured.sizes.every((one) => one.key !== key);
    chapter.replaceChildren(...(measured.chapter ? [made("h4", {}, measured.chapter.title), ...chapterBlocks(measured.chapter)] : []),
      notesList(measured.notes));
  };
  /** @param {MeasuredView["sizes"][number]} size */
  const added = ({ key, label, unit }) => {
    if (unit && !others.includes(key)) others.push(key);
    const { box, name, whole } = boxed(`${label} [${unit || unitOf(typed.units)}]`,
      { id: `measured-${key}`, inputmode: "decimal", value: texts[key] ?? "" });
    const [aim, said] = [made("span", { class: "quiet aim" }), made("div", {})];
    whole.append(aim);
    const wrong = complaintOf(box);
    const over = key === "over_wires" ? [wire.whole, wireWrong.node] : [];
    const row = made("div", { class: "size" }, whole, wrong.node, ...over, said);
    box.addEventListener("input", () => entered(key, box));
    sizes.append(row);
    const made_ = { box, name, label, row, aim, said, wrong: wrong.tell };
    rows.set(key, made_);
    return made_;
  };
  /**
   * @param {string} key
   * @param {HTMLInputElement} box
   */
  const entered = (key, box) => {
    if (box.value.trim()) texts[key] = box.value;
    else delete texts[key];
    remember("measured-sizes", typed);
    ask();
  };
  wire.box.addEventListener("input", () => entered("wire", wire.box));
  /** @param {Units} units of the page from now on */
  const tellIn = (units) => {
    wire.name.textContent = `the wires, diameter [${unitOf(units)}]`;
    if (units === typed.units) return;
    for (const key of Object.keys(texts)) if (!others.includes(key)) texts[key] = keptLength(texts[key], typed.units, units);
    typed.units = units;
    wire.box.value = texts.wire ?? "";
    for (const [key, { box, name, label }] of rows) {
      box.value = texts[key] ?? "";
      if (!others.includes(key)) name.textContent = `${label} [${unitOf(units)}]`;
    }
    remember("measured-sizes", typed);
  };
  return { title: "Measured sizes", tellIn, content: [wrong, sizes, chapter], ask };
}
