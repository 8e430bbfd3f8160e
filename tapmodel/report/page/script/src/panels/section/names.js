/** Where the names of marks stand round a section. No elements here. */

import { spread } from "../graph/scale.js";

/** @import {EdgeName} from "../../types" */

/** Height of a name over its number [px]. */
const BLOCK = 31;

/**
 * @typedef {object} PlacedName
 * @property {EdgeName} name
 * @property {number} x of the lettering [px]
 * @property {number} y of its first line
 * @property {"start" | "middle" | "end"} anchor
 * @property {[number, number]} tip what it belongs to
 */

/**
 * Where a name of a side begins that had to give way to another: still outside the circle on which
 * what it belongs to stands.
 * @param {PlacedName & {side: number, room: number}} placed
 * @param {[number, number]} middle
 * @param {number} width
 */
function beside({ x, y, side, room, tip }, middle, width) {
  const circle = Math.hypot(tip[0] - middle[0], tip[1] - middle[1]);
  const nearest = Math.max(y - 11 - middle[1], middle[1] - y - 18, 0);
  const clear = Math.sqrt(Math.max(circle ** 2 - nearest ** 2, 0)) + 6;
  if (side > 0) return Math.min(Math.max(x, middle[0] + clear), width - room);
  if (side < 0) return Math.max(Math.min(x, middle[0] - clear), room);
  return x;
}

/**
 * Names outwards of what they belong to, none over another of its side.
 * @param {EdgeName[]} names
 * @param {{width: number, height: number, middle: [number, number], each: number}} view size [px],
 *   where the tap's axis stands, and pixels of a mm
 * @returns {PlacedName[]}
 */
export function placedNames(names, { width, height, middle, each }) {
  const found = names.map((name) => {
    /** @type {[number, number]} */
    const tip = [middle[0] + each * name.at[0], middle[1] + each * name.at[1]];
    const out = Math.hypot(...name.at) || 1;
    const [across, down] = [name.at[0] / out, name.at[1] / out];
    const side = Math.abs(across) < 0.25 ? 0 : Math.sign(across);
    const half = Math.max(6.9 * name.label.length, 7.6 * name.text.length) / 2;
    const anchor = /** @type {const} */ (["end", "middle", "start"])[side + 1];
    const least = side > 0 ? 0 : side < 0 ? 2 * half : half;
    const most = width - (side > 0 ? 2 * half : side < 0 ? 0 : half);
    return {
      name, tip, anchor, side, room: 2 * half,
      x: Math.min(Math.max(tip[0] + 6 * across, least), most),
      y: tip[1] + (down < -0.5 ? -BLOCK / 2 - 2 : down > 0.5 ? 14 : -2),
    };
  });
  for (const side of [-1, 0, 1]) {
    const row = found.filter((one) => one.side === side).sort((a, b) => a.y - b.y);
    const places = spread(row.map((one) => one.y), BLOCK, 11, height - 22);
    row.forEach((one, n) => {
      one.y = places[n];
      one.x = beside(one, middle, width);
    });
  }
  return found;
}
