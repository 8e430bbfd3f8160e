/** Marks of the cutting edge, drawn on a section. */

import { drawn } from "../../elements.js";
import { head, line } from "../graph/paths.js";
import { lettering } from "../graph/picture.js";
import { placedNames } from "./names.js";

/** @import {EdgeMarks, Place} from "../../types" */
/** @import {PlacedName} from "./names.js" */

/**
 * @param {string} kind
 * @param {string} d
 */
const stroke = (kind, d) => drawn("path", { class: kind, d });

/** @param {Place[]} points [mm] */
const inMm = (points) => line(points, 1e4);

/** Circles about the axis and the way the tap turns, at every height.
 * @param {EdgeMarks} marks
 */
export function roundMarks({ circles }) {
  return circles.map(({ kind, diameter }) =>
    drawn("circle", { class: `mark ${kind}`, cx: 0, cy: 0, r: Math.max(diameter, 0) / 2 }));
}

/** What is marked in mm where the flutes have their full depth.
 * @param {EdgeMarks} marks
 */
export function edgeMarks({ rake, land, cutter, margin }) {
  return [
    drawn("circle", { class: "mark cutter", cx: cutter.centre[0], cy: cutter.centre[1], r: cutter.radius }),
    stroke("mark cutter axis", inMm(cutter.axis)),
    stroke("mark fine", inMm(cutter.radial)),
    stroke("mark fine", inMm([cutter.radial[1], cutter.axis[1]])),
    stroke("mark land", land.arc),
    ...(margin ? [stroke("mark margin", margin)] : []),
    stroke("mark fine", inMm([rake.out, rake.radial])),
    stroke("mark edge", inMm([rake.edge, rake.tangent])),
    stroke("mark edge arc", rake.arc),
  ];
}

/**
 * The arrow of the turning, in pixels.
 * @param {Place[]} turning
 * @param {(place: Place) => [number, number]} at
 */
export function turningArrow(turning, at) {
  const way = turning.map(at);
  return [stroke("mark turning", line(way)), stroke("head", head(way[way.length - 3], way[way.length - 1], 11))];
}

/**
 * Names with their numbers, in pixels.
 * @param {EdgeMarks} marks
 * @param {Parameters<typeof placedNames>[1]} view
 */
export function names(marks, view) {
  return placedNames(marks.names, view).flatMap(named);
}

/** @param {PlacedName} placed */
function named({ name, x, y, anchor, tip }) {
  const text = lettering(x, y, name.label, `name quiet`, anchor);
  const number = lettering(x, y + 14, name.text, "name number", anchor);
  number.setAttribute("data-mark", name.key);
  const off = Math.abs(y + 4 - tip[1]);
  // It ends where the lettering begins, above or below.
  const end = tip[1] > y ? y + 18 : y - 11;
  return off > 34 ? [stroke("leader", line([tip, [x, end]])), text, number] : [text, number];
}
