/** The section at any height, with the marks of the cutting edge. */

import { drawn, element, made } from "../elements.js";
import { areaText, lengthText, roundLength } from "../units.js";
import { cleared, lettering, picture } from "./graph/picture.js";
import { edgeMarks, names, roundMarks, turningArrow } from "./section/marks.js";

/** @import {Place, Section, TapView} from "../types" */

const BESIDE = 62;
const ABOVE = 34;
const BELOW = 58;
/** Below the circle of a cutter that reaches further down than the tap [px]. */
const UNDER = 6;
/** Width at which the section itself grows no more [px]. */
const WIDEST = 620;

/**
 * Fill the pane of the section.
 * @param {Section[] | null} stations front to rear; null where any height can be asked for
 * @param {(z: number) => void} listener told every height that is shown
 * @param {(z: number) => void} [ask] for the section at a height
 * @returns {(view: TapView) => void}
 */
export function sectionPanel(stations, listener, ask) {
  const pane = element("section-pane", HTMLElement);
  const slider = /** @type {HTMLInputElement} */ (made("input", { type: "range", id: "height", min: 0 }));
  const heightText = made("output", { id: "height-text", for: "height" });
  const region = made("span", { id: "region", "aria-live": "polite" });
  const marked = /** @type {HTMLInputElement} */ (made("input", { type: "checkbox", checked: true, id: "marked" }));
  const legend = made("dl", { class: "legend" });
  const place = made("div", { class: "section-place" });
  pane.replaceChildren(place, made("figcaption", {},
    made("span", {}, "Seen on the cutting end, first flute on top."),
    made("label", { for: "height" }, "Section at ", heightText), slider, region,
    made("label", {}, marked, " marks of the cutting edge")));
  pane.after(made("section", { class: "pane", id: "section-numbers", "aria-label": "The section in numbers" }, legend));

  /** @type {TapView | null} */
  let view = null;
  /** @type {Section | null} */
  let section = null;
  const redraw = picture(place, "Section of the tap, seen on the cutting end", (svg, width) => {
    svg.id = "section";
    if (view && section) drawSection(svg, width, view, section, marked.checked);
  });
  const show = () => {
    if (!view || !section) return;
    const { z, area } = section;
    heightText.textContent = `z = ${lengthText(z, view.units)}`;
    region.textContent = `${section.region}, area ${areaText(area, view.units)}`;
    slider.setAttribute("aria-valuetext", `${lengthText(z, view.units)}, ${section.region}`);
    listener(z);
    redraw();
  };
  slider.addEventListener("input", () => {
    if (!stations) return ask?.(Number(slider.value));
    section = stations[Number(slider.value)];
    show();
  });
  marked.addEventListener("change", show);

  return (shown) => {
    view = shown;
    section = shown.section;
    if (stations) {
      slider.max = String(stations.length - 1);
      slider.value = String(nearest(stations, shown.section.z));
    } else {
      slider.max = String(shown.frame.length);
      slider.step = "0.05";
      if (document.activeElement !== slider) slider.value = String(shown.section.z);
    }
    legend.replaceChildren(...shown.marks.lines.map(legendLine));
    show();
  };
}

/**
 * @param {Section[]} stations
 * @param {number} z
 */
function nearest(stations, z) {
  let best = 0;
  stations.forEach((one, n) => {
    if (Math.abs(one.z - z) < Math.abs(stations[best].z - z)) best = n;
  });
  return best;
}

/** @param {TapView["marks"]["lines"][number]} line */
function legendLine({ kind, label, text }) {
  const sample = drawn("svg", { class: "sample", viewBox: "0 0 34 10", "aria-hidden": "true" },
    drawn("path", { class: `mark ${kind || "none"}`, d: "M1 5H33" }));
  return made("div", {}, made("dt", {}, ...(kind ? [sample] : []), label), made("dd", {}, text));
}

/**
 * @param {SVGElement} svg
 * @param {number} room [px]
 * @param {TapView} view
 * @param {Section} section
 * @param {boolean} marked
 */
function drawSection(svg, room, view, section, marked) {
  const width = Math.min(room, WIDEST);
  const reach = Math.max(view.frame.reach, 1e-3) * 1.13;
  const each = (width - 2 * BESIDE) / (2 * reach);
  /** @type {[number, number]} */
  const middle = [width / 2, ABOVE + reach * each];
  const { centre, radius } = view.marks.cutter;
  const crest = Math.max(...view.marks.circles.map(({ diameter }) => diameter / 2));
  const height = middle[1] + Math.max(reach * each + BELOW, (centre[1] + radius) * each + UNDER);
  cleared(svg, width, height);
  const { marks } = view;
  const whole = section.z >= marks.heights[0] && section.z <= marks.heights[1];
  const inMm = drawn("g", { transform: `translate(${middle[0]} ${middle[1]}) scale(${each})` },
    drawn("path", { class: "metal", d: section.path }),
    ...(marked ? roundMarks(marks) : []),
    ...(marked && whole ? edgeMarks(marks) : []));
  svg.append(inMm);
  if (marked) {
    /** @param {Place} place @returns {[number, number]} */
    const at = ([x, y]) => [middle[0] + each * x, middle[1] + each * y];
    svg.append(...turningArrow(marks.turning, at));
    if (whole) svg.append(...names(marks, { width, height: height - 26, middle, each, crest, cutter: marks.cutter }));
  }
  svg.append(...bar(view, each, middle[0], height));
}

/**
 * A bar of a round length under the section.
 * @param {TapView} view
 * @param {number} each pixels of a mm
 * @param {number} middle
 * @param {number} height
 */
function bar(view, each, middle, height) {
  const length = roundLength(view.frame.reach / 2, view.units);
  const half = (length.mm * each) / 2;
  const y = height - 10;
  return [
    drawn("path", { class: "bar", d: `M${middle - half} ${y - 4}v4h${2 * half}v-4` }),
    lettering(middle + half + 8, y, length.text),
  ];
}
