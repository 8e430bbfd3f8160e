/** A bar of what the tap takes on a scale of what it may. */

import { drawn } from "../../elements.js";
import { cleared, hatching, lettering } from "../graph/picture.js";
import { legible, scaleOf, spread, wide, within } from "../graph/scale.js";

/** @import {TorqueView} from "../../types" */

const BAR = 30;
const ROW = 18;

/**
 * @param {SVGElement} svg
 * @param {number} width
 * @param {TorqueView} torque
 */
export function drawLevels(svg, width, torque) {
  const { axis, levels } = torque;
  const foot = 14 + ROW * levels.length + BAR + 8;
  const height = foot + 42;
  cleared(svg, width, height);
  const x = scaleOf(axis, 8, width - 14);
  const top = foot - BAR;
  const risk = hatching(svg, "torque-risk", "risk-line");
  svg.append(drawn("rect", { class: "trough", x: x(axis.low), y: top, width: x(axis.high) - x(axis.low), height: BAR }));
  for (const { key, low, high, beyond } of levels)
    if (high > low && !beyond) {
      const end = within(axis, high);
      svg.append(drawn("rect", { class: `span ${key}`, fill: risk, x: x(low), y: top, width: x(end) - x(low), height: BAR }));
    }
  svg.append(
    drawn("rect", { class: "band", x: x(torque.low), y: top + 7, width: Math.max(x(torque.high) - x(torque.low), 1), height: BAR - 14 },
      drawn("title", {}, torque.text)),
    drawn("path", { class: "likely", d: `M${x(torque.likely)} ${top + 2}v${BAR - 4}` }));
  /** @param {number} n */
  const row = (n) => 12 + ROW * (levels.length - 1 - n);
  levels.forEach(({ key, low }, n) => {
    svg.append(drawn("path", { class: `level ${key}`, d: `M${x(within(axis, low))} ${row(n) + 4}V${foot}` }));
  });
  levels.forEach(({ key, label, text, low, beyond }, n) => {
    const at = x(within(axis, low));
    const words = `${label} ${text}${beyond ? " →" : ""}`;
    const [from] = spread([at - wide(words) + 4], 0, 0, width - wide(words));
    svg.append(lettering(Math.max(from, 0), row(n), words, `halo ${key}`));
  });
  for (const tick of legible(axis.ticks, x, wide)) {
    svg.append(drawn("path", { class: "axis", d: `M${x(tick.at)} ${foot}v4` }));
    svg.append(lettering(x(tick.at), foot + 17, tick.text, "quiet", "middle"));
  }
  svg.append(lettering(width / 2, foot + 34, axis.title, "quiet", "middle"));
}
