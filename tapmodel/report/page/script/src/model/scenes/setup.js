/** Simple bodies of the set-ups: the work's sides; cutter, dividing head and centre. */

import { alongX, alongY, alongZ, box, joined, turnedSolid } from "./solids.js";

/** @import {TapShape} from "../../types" */

/**
 * Right, left and rear side of the block behind the cut.
 * @param {number} wide half of it [mm]
 * @param {number} back
 * @param {number} deep
 */
export function workSides(wide, back, deep) {
  const whole = box([-wide, 0, -deep], [wide, back, 0]);
  // Sides of x, and the far side of y: what lies in the cut is drawn with the bore.
  const kept = [...whole.triangles.slice(0, 12), ...whole.triangles.slice(18, 24)];
  return joined([{ corners: whole.corners, triangles: kept }]);
}

/**
 * Everything about the blank on the mill; the cutter with the middle of its ball at zero.
 * @param {TapShape} shape
 * @param {number} end of the tap [mm]
 */
export function millSolids(shape, end) {
  const { ball, shank, square_start, major, front_centre } = shape;
  const wide = shank / 2, far = end + 0.5 * wide;
  const cutter = turnedSolid([
    ...arc(ball, 12), [0, ball], [5 * ball, ball], [5 * ball, 0.93 * ball], [8 * ball, 0.93 * ball],
    [8 * ball, 0],
  ], alongX);
  const grip = square_start - 0.4 * wide;
  const chuck = turnedSolid([
    [grip, wide], [grip, 1.35 * wide], [grip + 0.8 * wide, 2.0 * wide], [far, 2.0 * wide], [far, 0],
  ], alongZ);
  const top = 2.5 * wide, depth = far + 3.2 * wide;
  const head = box([-3.2 * wide, -2.3 * wide, far], [top, 2.3 * wide, depth]);
  const spindle = turnedSolid([[depth, 1.1 * wide], [depth + 0.5 * wide, 1.1 * wide], [depth + 0.5 * wide, 0]], alongZ);
  const place = [-0.4 * wide, 2.3 * wide, (far + depth) / 2];
  /** @param {number} along @param {number} x @param {number} y */
  const atSide = (along, x, y) => {
    const [a, b, c] = alongY(along, x, y);
    return [place[0] + a, place[1] + b, place[2] + c];
  };
  const plate = turnedSolid([[0, 0.4 * wide], [0.5 * wide, 0.4 * wide], [0.5 * wide, 2.0 * wide],
    [0.75 * wide, 2.0 * wide], [0.75 * wide, 0]], atSide);
  const crank = merged([
    box([-0.22 * wide, place[1] + 0.8 * wide, -0.22 * wide], [0.22 * wide, place[1] + 1.0 * wide, 1.9 * wide]),
    turnedSolid([[place[1] + 1.0 * wide, 0.2 * wide], [place[1] + 2.0 * wide, 0.2 * wide],
      [place[1] + 2.0 * wide, 0]], (along, x, y) => [x, along, y + 1.65 * wide]),
  ]);
  const rim = Math.max(front_centre / 2, 0.12 * major);
  const tip = rim / Math.tan(Math.PI / 6);
  const tailstock = turnedSolid([[front_centre ? tip : 0, 0], [0, front_centre ? rim : 0.01],
    [-1.2 * tip, 2.2 * rim], [-0.9 * major, 2.2 * rim], [-0.9 * major, 0]], alongZ);
  return {
    cutter, chuck, head: merged([head, spindle]), plate, crank, tailstock,
    crankAt: [place[0], 0, place[2]],
    box: { low: [-2.6 * wide, -2.6 * wide, -0.5 * major], high: [major / 2 + 3.5 * ball, 4.2 * wide, far + 2.2 * wide] },
  };
}

/**
 * Half a ball from its lowest point up to its middle.
 * @param {number} radius
 * @param {number} steps
 * @returns {[number, number][]}
 */
function arc(radius, steps) {
  return Array.from({ length: steps }, (_, n) => {
    const angle = Math.PI / 2 * n / steps;
    return [-radius * Math.cos(angle), radius * Math.sin(angle)];
  });
}

/**
 * @param {import("./solids.js").Solid[]} solids
 * @returns {import("./solids.js").Solid}
 */
function merged(solids) {
  const { corners, triangles } = joined(solids);
  return { corners: Array.from(corners), triangles: Array.from(triangles) };
}
