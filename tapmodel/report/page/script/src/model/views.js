/** Sides from which the model is looked at. */

import { product, turned } from "./rotation.js";

// Columns of the rotation: where x, y and z of the tap point on the screen (right, up, towards us).
const SIDE = [0, 0, -1, 0, 1, 0, 1, 0, 0];
/** @type {Record<string, number[]>} */
export const VIEWS = {
  side: SIDE,
  front: [0, 1, 0, 1, 0, 0, 0, 0, -1],
  rear: [1, 0, 0, 0, 1, 0, 0, 0, 1],
  quarter: product(turned([1, 0, 0], 0.4), product(turned([0, 1, 0], 0.65), SIDE)),
};
