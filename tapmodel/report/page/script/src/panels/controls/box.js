/** A box for a number or a text, with a slider where there is a range. */

import { made } from "../../elements.js";
import { listShown, moved, shownAs, stepped, valueOf } from "../../live/typed.js";
import { frame, put } from "./frame.js";

/** @import {Control} from "../../types" */
/** @import {Desk} from "../../live/desk.js" */
/** @import {Row} from "./frame.js" */

/**
 * @param {Control} first
 * @param {Desk} desk
 * @returns {Row}
 */
export function boxRow(first, desk) {
  const { field, kind } = first;
  const around = frame(first, desk);
  const { id } = around;
  const label = made("label", { for: id, id: `${id}-label` }, first.label);
  const list = made("datalist", { id: `${id}-list` });
  const box = /** @type {HTMLInputElement} */ (made("input", {
    type: "text", id, autocomplete: "off", spellcheck: "false", "aria-describedby": `${id}-beside ${id}-wrong`,
    ...(kind === "number" ? { inputmode: "decimal" } : {}),
  }));
  const unit = made("span", { class: "unit" });
  const slider = first.slider
    ? /** @type {HTMLInputElement} */ (made("input", { type: "range", "aria-labelledby": label.id }))
    : null;
  const entry = made("span", { class: "entry" }, box, unit, list);
  const line = made("div", { class: "line" }, made("span", { class: "name" }, label, around.state), entry);
  const beside = made("p", { class: "beside-box", id: `${id}-beside`, hidden: true });
  const below = [beside, around.wrong, around.back, around.why];
  const node = made("div", { class: `field ${kind}` }, line, ...(slider ? [slider] : []), ...below);
  let control = first;
  // An answer to another change comes while somebody types here: what is begun stays.
  let typing = false;
  const send = (/** @type {string} */ key = "") => {
    typing = false;
    const value = valueOf(box.value, control);
    // No rule chooses the thread: an empty box is refused with what may stand in it.
    desk.set({ [field]: value === null && field === "designation" ? "" : value }, key);
  };
  const showAll = () => {
    typing = false;
    box.value = textOf(control, desk);
    if (slider && control.slider) slide(slider, control, control.slider);
  };
  box.addEventListener("input", () => (typing = true));
  box.addEventListener("change", () => send());
  box.addEventListener("blur", () => typing && showAll());
  box.addEventListener("keydown", (event) => {
    const count = { ArrowUp: 1, ArrowDown: -1 }[event.key];
    const next = count && control.slider && moved(box.value, control.slider.step, count);
    if (event.key === "Escape") {
      showAll();
      desk.giveUp(field);
      complain("");
    }
    if (!next) return;
    event.preventDefault();
    box.value = next;
    send(field);
  });
  slider?.addEventListener("input", () => {
    box.value = stepped(Number(slider.value), control.slider?.step ?? 1);
    complain("");
    send(field);
  });
  /** @param {string} message */
  const complain = (message) => {
    around.complain(message);
    // After loading again what was typed is known from the address alone.
    if (message && field in desk.refused && document.activeElement !== box) box.value = shownAs(desk.refused[field] ?? "");
    box.setAttribute("aria-invalid", String(Boolean(message)));
  };
  return {
    node,
    complain,
    recommend: around.recommend,
    show(next) {
      control = next;
      node.dataset.state = next.state;
      put(unit, next.unit);
      put(beside, next.beside);
      beside.hidden = !next.beside;
      list.replaceChildren(...optionsOf(list, next));
      // A list of nothing would show an arrow to press.
      if (next.options.length) box.setAttribute("list", list.id);
      else box.removeAttribute("list");
      around.show(next);
      // The box keeps what it has.
      if (typing || desk.isAhead(field)) return;
      complain("");
      showAll();
    },
  };
}

/**
 * What stands in the box of a control: a text as it was given.
 * @param {Control} control
 * @param {Desk} desk
 */
function textOf({ kind, field, unit, value }, desk) {
  return kind === "text" && field in desk.job ? listShown(desk.job[field], unit) : value;
}

/**
 * @param {HTMLInputElement} slider
 * @param {Control} control
 * @param {{low: number, high: number, step: number}} range
 */
function slide(slider, { value, unit }, { low, high, step }) {
  slider.min = String(low);
  slider.max = String(high);
  slider.step = String(step);
  slider.value = value;
  slider.setAttribute("aria-valuetext", `${value} ${unit}`.trim());
}

/**
 * The options anew where they are others, else as they stand.
 * @param {HTMLElement} list
 * @param {Control} control
 */
function optionsOf(list, { options }) {
  const there = [...list.children];
  const alike = there.length === options.length
    && options.every(({ value }, n) => there[n].getAttribute("value") === value);
  return alike ? there : options.map(({ value }) => made("option", { value }));
}
