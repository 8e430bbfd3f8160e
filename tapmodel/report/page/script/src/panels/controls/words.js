/** A few words of which one holds, and what is so or not. */

import { made } from "../../elements.js";
import { frame, idOf, put } from "./frame.js";

/** @import {Control, Way} from "../../types" */
/** @import {Desk} from "../../live/desk.js" */
/** @import {Row} from "./frame.js" */

/**
 * Buttons side by side of which one is pressed.
 * @param {string} name
 * @param {string} legend
 * @param {{value: string, label: string}[]} options
 * @param {(value: string) => void} chosen
 */
function segments(name, legend, options, chosen) {
  const buttons = options.map(({ value, label }) => {
    const button = /** @type {HTMLInputElement} */ (made("input", { type: "radio", name, value }));
    button.addEventListener("change", () => chosen(value));
    return { button, node: made("label", {}, button, made("span", {}, label)) };
  });
  const row = made("div", { class: "segments" }, ...buttons.map(({ node }) => node));
  return {
    node: made("fieldset", {}, made("legend", {}, legend), row),
    /** @param {string} value */
    show(value) {
      for (const { button } of buttons) button.checked = button.value === value;
    },
  };
}

/**
 * @param {Control} first
 * @param {Desk} desk
 * @returns {Row}
 */
export function wordsRow(first, desk) {
  const { field, label, options } = first;
  const around = frame(first, desk);
  const set = segments(around.id, label, options, (value) => desk.set({ [field]: value }));
  set.node.setAttribute("aria-describedby", around.wrong.id);
  return pressedRow(first, desk, around, set.node, ({ value }) => set.show(value));
}

/**
 * @param {Control} first
 * @param {Desk} desk
 * @returns {Row}
 */
export function flagRow(first, desk) {
  const { field, label } = first;
  const around = frame(first, desk);
  const box = /** @type {HTMLInputElement} */ (made("input", { type: "checkbox", id: around.id, "aria-describedby": around.wrong.id }));
  box.addEventListener("change", () => desk.set({ [field]: box.checked || null }));
  const line = made("label", { class: "flag", for: around.id }, box, ` ${label}`);
  return pressedRow(first, desk, around, line, () => (box.checked = desk.job[field] === true));
}

/**
 * The row of a control that is pressed, not typed into.
 * @param {Control} first
 * @param {Desk} desk
 * @param {ReturnType<typeof frame>} around
 * @param {HTMLElement} pressed
 * @param {(control: Control) => void} set has it show a value
 * @returns {Row}
 */
function pressedRow({ field, kind }, desk, around, pressed, set) {
  const node = made("div", { class: `field ${kind}` }, pressed, around.state, around.wrong, around.back, around.why);
  return {
    node,
    complain: around.complain,
    recommend: around.recommend,
    show(control) {
      node.dataset.state = control.state;
      around.show(control);
      if (desk.isAhead(field)) return;
      around.complain("");
      set(control);
    },
  };
}

/**
 * The choice between two ways to give the same thing.
 * @param {string} key of the group
 * @param {Way[]} first
 * @param {Desk} desk
 */
export function waysRow(key, first, desk) {
  let ways = first;
  const options = first.map(({ label }) => ({ value: label, label }));
  const set = segments(idOf(`${key}.ways`), "given by", options, (label) => {
    const way = ways.find((one) => one.label === label);
    if (way) desk.set(way.values);
  });
  const note = made("p", { class: "why" });
  return {
    node: made("div", { class: "field ways" }, set.node, note),
    /** @param {Way[]} next */
    show(next) {
      ways = next;
      const now = next.find(({ chosen }) => chosen);
      set.show(now?.label ?? "");
      put(note, now?.note ?? "");
      note.hidden = !note.textContent;
    },
  };
}
