/** The torque over the depth of the tap's front. */

import { drawn } from "../../elements.js";
import { between, line, points } from "../graph/paths.js";
import { cleared, lettering, scales } from "../graph/picture.js";

/** @import {CourseView, TorqueWay} from "../../types" */

const HEIGHT = 230;

/**
 * @param {SVGElement} svg
 * @param {number} width
 * @param {CourseView} course
 */
export function drawCourse(svg, width, course) {
  cleared(svg, width, HEIGHT);
  const place = scales(svg, { across: course.depth, up: course.torque, width, height: HEIGHT, right: 14 });
  const { x, y, left, right, top, foot } = place;
  for (const way of [course.way_in, course.way_back]) svg.append(...band(way, x, y));
  svg.append(drawn("path", { class: "axis", d: `M${left} ${y(0)}H${right}` }));
  if (course.stop <= course.torque.high) {
    svg.append(drawn("path", { class: "level stop", d: `M${left} ${y(course.stop)}H${right}` }));
    svg.append(lettering(left + 4, y(course.stop) + 13, "stop turning at", "halo stop"));
  }
  if (course.end <= course.depth.high)
    svg.append(drawn("path", { class: "chain", d: `M${x(course.end)} ${top}V${foot}` }));
}

/**
 * @param {TorqueWay} way
 * @param {(x: number) => number} x
 * @param {(y: number) => number} y
 */
function band(way, x, y) {
  const [low, high] = [way.low, way.high].map((torque) => points(way.depth, torque, x, y));
  return [
    drawn("path", { class: "band", d: between(low, high) }),
    drawn("path", { class: "likely", d: line(points(way.depth, way.likely, x, y)) }),
  ];
}
