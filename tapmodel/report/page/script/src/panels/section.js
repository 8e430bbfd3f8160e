/** The section that follows the slider. */

import { drawn, element } from "../elements.js";
import { areaText, lengthText, roundLength } from "../units.js";

/** @import {Section, Units} from "../types" */

/**
 * @param {Section[]} sections front to rear
 * @param {{reach: number, circles: number[], units: Units}} frame half the width shown [mm], and
 *   diameters drawn as circles
 * @param {(z: number) => void} listener told every height that is shown
 */
export function sectionPanel(sections, frame, listener) {
  const svg = element("section", SVGSVGElement);
  const slider = element("height", HTMLInputElement);
  const [heightText, regionText] = [element("height-text", HTMLElement), element("region", HTMLElement)];
  const reach = frame.reach * 1.08;
  const thin = reach / 160;
  svg.setAttribute("viewBox", `${-reach} ${-reach} ${2 * reach} ${2.16 * reach}`);
  const metal = drawn("path", { class: "metal", "stroke-width": thin });
  svg.append(metal, ...frame.circles.map((diameter) => circle(diameter, thin)), ...bar(reach, thin, frame.units));
  slider.max = String(sections.length - 1);
  const show = () => {
    const { z, region, area, path } = sections[Number(slider.value)];
    metal.setAttribute("d", path);
    heightText.textContent = `z = ${lengthText(z, frame.units)}`;
    regionText.textContent = `${region}, area ${areaText(area, frame.units)}`;
    slider.setAttribute("aria-valuetext", `${lengthText(z, frame.units)}, ${region}`);
    listener(z);
  };
  slider.addEventListener("input", show);
  const threaded = sections.flatMap((section, n) => (section.region === "thread" ? [n] : []));
  slider.value = String(threaded[threaded.length >> 1] || 0);
  show();
}

/**
 * @param {number} diameter
 * @param {number} thin width of a line
 */
function circle(diameter, thin) {
  const dash = `${4 * thin} ${3 * thin}`;
  const at = { cx: 0, cy: 0, r: diameter / 2 };
  return drawn("circle", { class: "circle", ...at, "stroke-width": thin * 0.7, "stroke-dasharray": dash });
}

/**
 * A bar of a round length under the section.
 * @param {number} reach
 * @param {number} thin
 * @param {Units} units
 */
function bar(reach, thin, units) {
  const length = roundLength(reach / 2, units);
  const low = reach * 1.04;
  const line = `M${-length.mm / 2} ${low}h${length.mm}`;
  const place = { x: length.mm / 2 + 3 * thin, y: low + 3 * thin, "font-size": reach / 11 };
  return [
    drawn("path", { class: "bar", d: line, "stroke-width": 2 * thin }),
    drawn("text", place, length.text),
  ];
}
