/** The chips of the teeth as bars. */

import { drawn, made } from "../elements.js";
import { cleared, judgedLine, lettering, picture, scales } from "./graph/picture.js";
import { spread, wide } from "./graph/scale.js";
import { slot, unforeseen } from "./graph/slot.js";

/** @import {ChipsView, TapView} from "../types" */

const HEIGHT = 210;

/** @returns {(view: TapView) => void} */
export function chipsPanel() {
  const body = slot("chips", "Chips");
  if (!body) return () => {};
  /** @type {ChipsView | null} */
  let chips = null;
  const said = made("div", {});
  const place = made("div", { class: "graph-place" });
  const numbers = made("ol", {});
  const all = made("details", {}, made("summary", {}, "Every tooth in numbers"), numbers);
  const redraw = picture(place, "Thickness of the chip of each tooth", (svg, width) => {
    if (chips) drawChips(svg, width, chips);
  });
  body.append(said, place, all);
  return (view) => {
    chips = view.chips;
    place.hidden = all.hidden = !chips;
    said.replaceChildren(chips ? judgedLine(chips.judged) : unforeseen());
    numbers.replaceChildren(...(chips?.bars ?? []).map(({ text }) => made("li", {}, text)));
    redraw();
  };
}

/**
 * @param {SVGElement} svg
 * @param {number} width
 * @param {ChipsView} chips
 */
function drawChips(svg, width, chips) {
  cleared(svg, width, HEIGHT);
  const { x, y, left, right, top, foot } = scales(svg, { across: null, up: chips.axis, width, height: HEIGHT });
  const step = (right - left) / Math.max(chips.bars.length, 1);
  const every = Math.ceil(18 / step);
  for (const { number, height, text } of chips.bars) {
    const from = x(0) + (number - 1 + 0.15) * step;
    const bar = drawn("rect", { class: "bar-of-chip", x: from, y: y(height), width: 0.7 * step, height: foot - y(height) },
      drawn("title", {}, text));
    svg.append(bar);
    if ((number - 1) % every === 0)
      svg.append(lettering(from + 0.35 * step, foot + 15, String(number), "quiet", "middle"));
  }
  const drawnOnes = chips.limits.filter(({ beyond }) => !beyond);
  for (const { at } of drawnOnes) svg.append(drawn("path", { class: "limit", d: `M${left} ${y(at)}H${right}` }));
  const rising = chips.limits.map(({ at, beyond }) => (beyond ? top - 4 : y(at) - 5)).reverse();
  const places = spread(rising, 15, 12, foot - 3).reverse();
  chips.limits.forEach(({ text, beyond }, n) => {
    const words = beyond ? `${text} ↑` : text;
    svg.append(drawn("rect", { class: "paper", x: right - wide(words), y: places[n] - 11, width: wide(words), height: 14 }),
      lettering(right, places[n], words, "limit-words", "end"));
  });
}
