/** What every control has about its box: label, where its value comes from, the way back, a refusal. */

import { made } from "../../elements.js";

/** @import {Control, Recommended} from "../../types" */
/** @import {Desk} from "../../live/desk.js" */

const STATES = { given: "given", rule: "recommended", follows: "follows", none: "not told" };

/**
 * A control on the page.
 * @typedef {object} Row
 * @property {HTMLElement} node
 * @property {(control: Control) => void} show
 * @property {(message: string) => void} complain why what was typed cannot be used; "" for nothing
 * @property {(recommended: Recommended | undefined) => void} recommend
 */

/** @param {string} field */
export function idOf(field) {
  return `field-${field.replaceAll(".", "-")}`;
}

/**
 * The parts about the box of a field.
 * @param {Control} control
 * @param {Desk} desk
 */
export function frame({ field, label }, desk) {
  const id = idOf(field);
  const wrong = made("p", { class: "wrong", id: `${id}-wrong`, hidden: true });
  const why = made("p", { class: "why", id: `${id}-why`, hidden: true });
  const words = { type: "button", class: "state", "aria-expanded": "false", "aria-controls": why.id };
  const state = made("button", words);
  state.addEventListener("click", () => {
    why.hidden = !why.hidden;
    state.setAttribute("aria-expanded", String(!why.hidden));
  });
  const back = made("button", { type: "button", class: "back", hidden: true }, "back to recommended");
  back.addEventListener("click", () => desk.set({ [field]: null }));
  /** @type {Recommended | undefined} */
  let ruled;
  /** @type {Control | undefined} */
  let now;
  const tell = () => {
    if (!now) return;
    const given = now.state === "given" && field !== "designation";
    const typed = desk.job[field];
    const other = given && typeof typed === "string" && now.kind === "number" && typed !== now.value;
    put(state, `${STATES[now.state]}${other ? ` as ${typed}` : ""}`);
    put(why, [given && ruled ? `${ruled.value}: ${ruled.why}` : now.why, now.told].filter(Boolean).join(". "));
    state.setAttribute("aria-label", `${label}: ${state.textContent}, why`);
    put(back, ruled ? `back to ${ruled.value}` : "back to recommended");
    back.title = ruled?.why ?? "";
    back.setAttribute("aria-label", `${label}: ${back.textContent}`);
    back.hidden = !given;
  };
  return {
    id,
    wrong,
    why,
    state,
    back,
    /** @param {Control} control */
    show(control) {
      now = control;
      if (control.state !== "given") ruled = undefined;
      tell();
    },
    /** @param {Recommended | undefined} recommended */
    recommend(recommended) {
      ruled = recommended;
      tell();
    },
    /** @param {string} message */
    complain(message) {
      put(wrong, message);
      wrong.hidden = !message;
    },
  };
}

/**
 * @param {Node} node
 * @param {string} text
 */
export function put(node, text) {
  if (node.textContent !== text) node.textContent = text;
}
