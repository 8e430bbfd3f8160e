/** Sides from which the model is looked at. */

import { product, turned } from "./rotation.js";

// Columns of the rotation: where x, y and z of the tap point on the screen (right, up, towards us).
const SIDE = [0, 0, -1, 0, 1, 0, 1, 0, 0];
const FRONT = [0, 1, 0, 1, 0, 0, 0, 0, -1];
const UPRIGHT = [1, 0, 0, 0, 0, -1, 0, 1, 0];

/**
 * Turned about the upright of the screen, then tilted towards us.
 * @param {number[]} view
 * @param {number} round [rad]
 * @param {number} tilt [rad]
 */
const seen = (view, round, tilt) =>
  product(turned([1, 0, 0], tilt), product(turned([0, 1, 0], round), view));

/** @type {Record<string, number[]>} */
export const VIEWS = {
  side: SIDE,
  front: FRONT,
  rear: [1, 0, 0, 0, 1, 0, 0, 0, 1],
  quarter: seen(SIDE, 0.65, 0.4),
  hole: seen(UPRIGHT, -0.35, 0.28),
  mill: seen(FRONT, -0.8, 0.4),
};

/**
 * The tap lying as in the side view, turned so that a direction looks towards us, and up a little.
 * @param {number[]} facing
 */
export function facingView(facing) {
  const [x, y, z] = facing, round = Math.atan2(y, x);
  // Of the tap turned by -round about its axis, x looks at us in the side view's frame.
  const c = Math.cos(round), s = Math.sin(round);
  const away = [c, -s, 0, s, c, 0, 0, 0, 1];
  const lying = product([0, 0, 1, 0, -1, 0, 1, 0, 0], away);
  const towardsFront = Math.atan2(z, Math.hypot(x, y));
  return seen(lying, 0.35 - towardsFront * 0.5, 0.3);
}
