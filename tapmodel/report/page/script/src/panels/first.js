/** The verdict, and the numbers that matter. */

import { made } from "../elements.js";

/** @import {Figure, TapView} from "../types" */

/** @returns {(view: TapView) => void} */
export function firstPanel() {
  const title = document.getElementById("title");
  const under = document.getElementById("under");
  const verdict = document.getElementById("verdict");
  const place = document.getElementById("first");
  /** @type {Map<string, HTMLElement>} */
  const cards = new Map();
  return (view) => {
    tell(title, view.title);
    tell(under, view.under);
    document.title = `${view.title} · tapmodel`;
    if (verdict) {
      verdict.className = `verdict ${view.verdict.weight}`;
      tell(verdict.querySelector(".sign"), view.verdict.sign);
      tell(verdict.querySelector(".text"), view.verdict.text);
    }
    for (const figure of view.first) {
      const card = cards.get(figure.key) ?? begun(figure);
      if (!cards.has(figure.key)) {
        if (!cards.size) place?.replaceChildren();
        cards.set(figure.key, card);
        place?.append(card);
      }
      fill(card, figure);
    }
  };
}

/** @param {Figure} figure */
function begun({ label }) {
  const value = made("dd", {}, made("span", { class: "number" }), made("small"));
  return made("div", { class: "figure" }, made("dt", {}, label), value);
}

/**
 * @param {HTMLElement} card
 * @param {Figure} figure
 */
function fill(card, { label, text, beside }) {
  tell(card.querySelector("dt"), label);
  const number = card.querySelector(".number");
  const moved = number?.textContent && number.textContent !== text;
  tell(number, text);
  tell(card.querySelector("small"), beside);
  if (moved) mark(card);
}

/**
 * Show for a moment that a number is another.
 * @param {HTMLElement} card
 */
function mark(card) {
  if (matchMedia("(prefers-reduced-motion: reduce)").matches) return;
  const ink = getComputedStyle(card).getPropertyValue("--mark");
  card.animate([{ borderColor: ink }, {}], { duration: 900 });
}

/**
 * @param {Element | null} node
 * @param {string} text
 */
function tell(node, text) {
  if (node && node.textContent !== text) node.textContent = text;
}
