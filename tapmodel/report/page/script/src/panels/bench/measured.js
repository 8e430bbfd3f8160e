/** Measured sizes, and what they mean. */

import { made } from "../../elements.js";
import { handOut } from "../../live/files.js";
import { asked, RefusedError } from "../../live/link.js";
import { keptLength, lengthTyped, pointed } from "../../live/typed.js";
import { remember, remembered } from "../../live/remembered.js";
import { judgedLine } from "../graph/picture.js";
import { boxed, chapterBlocks, complaintOf, notesList, questions, unitOf } from "./boxes.js";

/** @import {AtDesk, MeasuredView, Units} from "../../types" */

/** As the server says that it cannot do something. */
const REFUSED = 422;

/**
 * @typedef {object} Typed
 * @property {Units} units of bare lengths
 * @property {Record<string, string>} texts as they stand in the boxes
 * @property {string[]} others sizes that are no lengths
 * @property {string} file text of the file from which they were read, or into which they were saved
 * @property {string} saved the texts that stand there, as one
 */

/** @param {AtDesk} desk */
export function measuredBench(desk) {
  const kept = remembered("measured-sizes", null);
  /** @type {Typed} */
  const typed = kept ?? { units: "mm", texts: {}, others: [], file: "", saved: "{}" };
  const { texts, others } = typed;
  const wire = boxed("", { id: "measured-wire", inputmode: "decimal", value: texts.wire ?? "" });
  const wireWrong = complaintOf(wire.box);
  const sizes = made("div", { class: "sizes" });
  const chapter = made("div", {});
  /** @type {Map<string, {box: HTMLInputElement, name: HTMLElement, label: string, row: HTMLElement, aim: HTMLElement, said: HTMLElement, wrong: (message: string) => void}>} */
  const rows = new Map();
  const state = made("span", { class: "quiet", role: "status" });
  const save = made("button", { type: "button", id: "measured-save" }, "Save measured sizes");
  const refused = made("p", { role: "alert", class: "wrong" });
  const keep = () => {
    desk.unkept = JSON.stringify(texts) !== typed.saved;
    state.textContent = desk.unkept ? "changed, not saved" : "";
    remember("measured-sizes", typed);
  };
  const question = () => {
    const { wire: over = "", ...found } = Object.fromEntries(Object.entries(texts).map(([key, text]) =>
      [key, others.includes(key) ? pointed(text) : lengthTyped(text, typed.units)]));
    return { job: desk.job, units: desk.units, wire: over, sizes: found };
  };
  const { ask, wrong } = questions("bench/measured", question, ({ measured }) => show(measured), chapter, { refused: () => {
    for (const { said } of rows.values()) said.replaceChildren();
    chapter.replaceChildren();
  } });

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
    refused.textContent = "";
    keep();
    ask();
  };
  wire.box.addEventListener("input", () => entered("wire", wire.box));
  /** @param {Units} units of the page from now on */
  const tellIn = (units) => {
    wire.name.textContent = `the wires, diameter [${unitOf(units)}]`;
    if (units === typed.units) return;
    for (const key of Object.keys(texts)) if (!others.includes(key)) texts[key] = keptLength(texts[key], typed.units, units);
    if (!desk.unkept) typed.saved = JSON.stringify(texts);
    typed.units = units;
    for (const [key, { name, label }] of rows) if (!others.includes(key)) name.textContent = `${label} [${unitOf(units)}]`;
    fill();
  };
  const fill = () => {
    wire.box.value = texts.wire ?? "";
    for (const [key, { box }] of rows) box.value = texts[key] ?? "";
    keep();
  };
  save.addEventListener("click", async () => {
    const now = JSON.stringify(texts);
    try {
      const file = await (await asked("bench/measured/file", { ...question(), file: typed.file })).json();
      handOut(file);
      Object.assign(typed, { file: file.text, saved: now });
      refused.textContent = "";
      keep();
    } catch (error) {
      if (!(error instanceof RefusedError)) throw error;
      refused.textContent = error.message;
    }
  });
  const fillFrom = async (/** @type {string} */ text) => {
    const units = desk.view?.units ?? typed.units;
    const read = await (await asked("bench/measured/read", { text, units })).json();
    for (const key of Object.keys(texts)) delete texts[key];
    Object.assign(texts, read.sizes, read.wire ? { wire: read.wire } : {});
    others.splice(0, others.length, ...read.others);
    Object.assign(typed, { units, file: text, saved: JSON.stringify(texts) });
    fill();
  };
  desk.fillMeasured = async (text) => {
    // No undo would bring them back.
    if (desk.unkept) throw new RefusedError({ message: "the measured sizes on the page are not saved: save or empty them first", field: "" }, REFUSED);
    await fillFrom(text);
    const whole = sizes.closest("details");
    if (whole) whole.open = true;
    whole?.scrollIntoView();
    ask(0);
  };
  keep();
  // It was looked through as the program began; what is wrong with it for this tap stands at its box.
  if (!kept && desk.measured) fillFrom(desk.measured).catch((error) => {
    if (!(error instanceof RefusedError)) throw error;
    refused.textContent = error.message;
  });
  return { title: "Measured sizes", tellIn, content: [wrong, sizes,
    made("p", { class: "keep" }, save, " ", state), refused, chapter], ask };
}
