/** Pictures that are as wide as their place, lettered in the page's own type. */

import { drawn, made } from "../../elements.js";
import { legible, scaleOf, wide } from "./scale.js";

/** @import {Axis, Judged} from "../../types" */

const FOOT = 40;
const HEAD = 8;

/**
 * A picture that is drawn anew whenever its place gets another width.
 * @param {Element} host
 * @param {string} name for whoever cannot see it
 * @param {(svg: SVGElement, width: number) => void} draw
 * @returns {() => void} draws it now
 */
export function picture(host, name, draw) {
  const svg = /** @type {SVGElement} */ (drawn("svg", { class: "graph", role: "img", "aria-label": name }));
  host.append(svg);
  let width = 0;
  const now = () => {
    if (width) draw(svg, width);
  };
  new ResizeObserver(() => {
    const wanted = Math.floor(host.clientWidth);
    if (wanted === width || !wanted) return;
    width = wanted;
    now();
  }).observe(host);
  width = Math.floor(host.clientWidth);
  return now;
}

/**
 * Empty a picture, and give it its size.
 * @param {SVGElement} svg
 * @param {number} width
 * @param {number} height
 */
export function cleared(svg, width, height) {
  svg.setAttribute("viewBox", `0 0 ${width} ${height}`);
  svg.replaceChildren();
}

/**
 * Lettering.
 * @param {number} x
 * @param {number} y
 * @param {string} text
 * @param {string} [kind] of style
 * @param {"start" | "middle" | "end"} [anchor]
 */
export function lettering(x, y, text, kind = "", anchor = "start") {
  return drawn("text", { x, y, class: kind, "text-anchor": anchor }, text);
}

/**
 * A level and an upright scale with their numbers.
 * @param {SVGElement} svg
 * @param {{across: Axis | null, up: Axis, width: number, height: number, right?: number}} of
 *   `right`: room beside the chart [px]
 */
export function scales(svg, { across, up, width, height, right = 8 }) {
  const left = 10 + Math.max(...up.ticks.map((tick) => wide(tick.text)));
  const [top, foot] = [HEAD + 16, height - (across ? FOOT : 22)];
  const x = scaleOf(across ?? { low: 0, high: 1 }, left, width - right);
  const y = scaleOf(up, foot, top);
  svg.append(lettering(0, 12, up.title, "quiet"));
  for (const tick of up.ticks) {
    svg.append(drawn("path", { class: "grid", d: `M${left} ${y(tick.at)}H${width - right}` }));
    svg.append(lettering(left - 6, y(tick.at) + 4, tick.text, "quiet", "end"));
  }
  if (across) {
    for (const tick of legible(across.ticks, x, wide)) {
      svg.append(drawn("path", { class: "axis", d: `M${x(tick.at)} ${foot}v4` }));
      svg.append(lettering(x(tick.at), foot + 17, tick.text, "quiet", "middle"));
    }
    svg.append(lettering((left + width - right) / 2, foot + 34, across.title, "quiet", "middle"));
  }
  svg.append(drawn("path", { class: "axis", d: `M${left} ${top}V${foot}H${width - right}` }));
  return { x, y, left, right: width - right, top, foot };
}

/**
 * A pattern of narrow lines, for what must be told apart without colour.
 * @param {SVGElement} svg
 * @param {string} id of the page's only such pattern
 * @param {string} kind of style
 * @param {number} [turn] [deg]
 */
export function hatching(svg, id, kind, turn = 45) {
  const lines = drawn("path", { class: kind, d: "M0 0V7" });
  const size = { width: 7, height: 7, patternUnits: "userSpaceOnUse" };
  svg.append(drawn("defs", {}, drawn("pattern", { id, ...size, patternTransform: `rotate(${turn})` }, lines)));
  return `url(#${id})`;
}

const WEIGHTS = { good: "fine", note: "note", warning: "warning", error: "error" };

/**
 * One line that says what is to be thought of a part of the tap.
 * @param {Judged} judged
 */
export function judgedLine({ weight, sign, text }) {
  const word = made("span", { class: "weight" }, `${sign} ${WEIGHTS[weight]}`);
  return made("p", { class: `judged ${weight}` }, word, ` ${text}`);
}
