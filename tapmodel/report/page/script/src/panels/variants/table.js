/** Figures of variants beside each other. */

import { drawn, made } from "../../elements.js";
import { against } from "./pinned.js";

/** @import {NamedFigure} from "../../types" */
/** @import {Variant} from "./pinned.js" */

const WORDS = { "▲": "more than now", "▼": "less than now", "≠": "other than now", "": "as now" };

/**
 * @param {NamedFigure[]} now
 * @param {Variant[]} variants
 */
export function figuresTable(now, variants) {
  const head = made("tr", {}, made("th", { scope: "col" }, ""), made("th", { scope: "col" }, "now"),
    ...variants.map((one) => made("th", { scope: "col" }, sample(one.letter), one.letter)));
  const lines = now.map((figure, n) => made("tr", {}, made("th", { scope: "row" }, figure.label),
    made("td", {}, figure.text), ...variants.map((one) => cell(one.figures[n], figure))));
  return made("div", { class: "scroll", tabindex: 0, role: "group", "aria-label": "Figures of the variants" },
    made("table", { class: "variants" }, made("thead", {}, head), made("tbody", {}, ...lines)));
}

/**
 * @param {NamedFigure | undefined} figure
 * @param {NamedFigure} now
 */
function cell(figure, now) {
  if (!figure) return made("td", {}, "–");
  const mark = against(figure, now);
  const sign = made("span", { class: "differs", title: WORDS[mark] }, mark);
  return made("td", { class: mark ? "other" : "" }, figure.text, ...(mark ? [" ", sign] : []));
}

/** @param {string} letter */
export function sample(letter) {
  return drawn("svg", { class: "sample", viewBox: "0 0 34 10", "aria-hidden": "true" },
    drawn("path", { class: `variant ${letter}`, d: "M1 5H33" }));
}
