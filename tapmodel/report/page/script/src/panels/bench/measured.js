/** Measured sizes, and what they mean. */

import { made } from "../../elements.js";
import { pointed } from "../../live/typed.js";
import { remember, remembered } from "../../live/remembered.js";
import { judgedLine } from "../graph/picture.js";
import { bareNumbers, boxed, chapterBlocks, complaintOf, notesList, questions } from "./boxes.js";

/** @import {AtDesk, MeasuredView} from "../../types" */

/** @param {AtDesk} desk */
export function measuredBench(desk) {
  /** @type {Record<string, string>} */
  const typed = remembered("measured", {});
  const wire = boxed("the wires, diameter", { id: "measured-wire", inputmode: "decimal", value: typed.wire ?? "" });
  const wireWrong = complaintOf(wire.box);
  const sizes = made("div", { class: "sizes" });
  const chapter = made("div", {});
  /** @type {Map<string, {box: HTMLInputElement, row: HTMLElement, aim: HTMLElement, said: HTMLElement, wrong: (message: string) => void}>} */
  const rows = new Map();
  const { ask, wrong } = questions("bench/measured", () => {
    const { wire: over = "", ...found } = Object.fromEntries(Object.entries(typed).map(([key, text]) => [key, pointed(text)]));
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
    const { box, whole } = boxed(unit ? `${label} [${unit}]` : label,
      { id: `measured-${key}`, inputmode: "decimal", value: typed[key] ?? "" });
    const [aim, said] = [made("span", { class: "quiet aim" }), made("div", {})];
    whole.append(aim);
    const wrong = complaintOf(box);
    const over = key === "over_wires" ? [wire.whole, wireWrong.node] : [];
    const row = made("div", { class: "size" }, whole, wrong.node, ...over, said);
    box.addEventListener("input", () => entered(key, box));
    sizes.append(row);
    const made_ = { box, row, aim, said, wrong: wrong.tell };
    rows.set(key, made_);
    return made_;
  };
  /**
   * @param {string} key
   * @param {HTMLInputElement} box
   */
  const entered = (key, box) => {
    if (box.value.trim()) typed[key] = box.value;
    else delete typed[key];
    remember("measured", typed);
    ask();
  };
  wire.box.addEventListener("input", () => entered("wire", wire.box));
  return { title: "Measured sizes", content: [bareNumbers(), wrong, sizes, chapter], ask };
}
