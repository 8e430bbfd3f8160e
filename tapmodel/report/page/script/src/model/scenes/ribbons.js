/** Chips as ribbons that curl into the flute, and where their numbers stand. */

/** @import {Chip, TapShape} from "../../types" */

const STEPS = 48, TURNS = 1.3, CURL = 0.3, WIDER = 0.04;
// Down the face before it curls, of the curl's radius: so that it keeps off the work.
const STRAIGHT = 1.15, ALONG = 0.14;

/**
 * Angle of the cutting face at a radius, from the cutter's axis [rad].
 * @param {TapShape} shape
 * @param {number} r
 */
export function faceAngle({ centre, offset, ball }, r) {
  const across = offset + ball;
  if (r >= Math.hypot(centre, across)) return Math.asin(Math.min(across / r, 1));
  const long = Math.hypot(centre, offset);
  const overlap = (ball * ball - (long - r) ** 2) / (4 * r * long);
  const half = Math.asin(Math.sqrt(Math.min(Math.max(overlap, 0), 1)));
  return Math.atan2(offset, centre) + 2 * half;
}

/**
 * Where a chip leaves the face, in the flute's frame: point, into the void, down the face.
 * @param {TapShape} shape
 * @param {number} r
 */
export function onFace(shape, r) {
  const angle = faceAngle(shape, r);
  const u = r * Math.cos(angle), t = r * Math.sin(angle);
  const inwards = Math.max(shape.centre - u, 0), across = shape.offset - t;
  const long = Math.hypot(inwards, across);
  const out = [inwards / long, across / long];
  return { at: [u, t], out, down: [out[1], -out[0]] };
}

/**
 * The chip of a tooth in the tap's right-hand frame.
 * @param {TapShape} shape
 * @param {Chip} chip
 * @param {number} tone from 0 for the thinnest to 1 for the thickest
 */
export function ribbon(shape, chip, tone) {
  const lean = Math.atan(shape.cone);
  const turn = 2 * Math.PI * chip.land / shape.lands, c = Math.cos(turn), s = Math.sin(turn);
  /** @param {number} u @param {number} t @param {number} z */
  const placed = (u, t, z) => [u * c - t * s, u * s + t * c, z];
  const curl = CURL * shape.ball;
  const middle = onFace(shape, chip.radius);
  /** @type {number[]} */
  const corners = [];
  /** @type {number[]} */
  const triangles = [];
  const heights = [-1, 1].map((side) => {
    const r = chip.radius + side / 2 * chip.width * Math.sin(lean);
    const z = shape.cone > 0 ? (r - shape.point) / shape.cone : chip.z;
    return { r, z: Math.abs(z - chip.z) < 1.5 * shape.pitch ? z : chip.z };
  });
  for (let n = 0; n <= STEPS; n++) {
    const share = n / STEPS, curled = Math.max(share - ALONG, 0) / (1 - ALONG);
    const angle = 2 * Math.PI * TURNS * curled;
    const radius = curl * (1 - WIDER * angle), co = Math.cos(angle), si = Math.sin(angle);
    const out = [0, 1].map((k) => -middle.out[k] * co + middle.down[k] * si);
    const way = STRAIGHT * curl * Math.min(share / ALONG, 1);
    for (const { r, z } of heights) {
      const { at } = onFace(shape, r);
      const place = [0, 1].map((k) => at[k] + way * middle.down[k] + 1.03 * curl * middle.out[k] + radius * out[k]);
      corners.push(...placed(place[0], place[1], z), ...placed(-out[0], -out[1], 0),
        chip.z, share, tone);
    }
    if (n < STEPS) triangles.push(2 * n, 2 * n + 1, 2 * n + 3, 2 * n, 2 * n + 3, 2 * n + 2);
  }
  const top = [0, 1].map((k) => middle.at[k] + STRAIGHT * curl * middle.down[k] + curl * middle.out[k]);
  const z = (heights[0].z + heights[1].z) / 2;
  return { corners, triangles, anchor: placed(top[0], top[1], z), facing: placed(1, 0, 0) };
}

/**
 * All chips as one mesh of nine numbers a corner, and the place of each number.
 * @param {TapShape} shape
 * @param {Chip[]} chips
 */
export function ribbons(shape, chips) {
  const sizes = chips.map((chip) => chip.thickness);
  const least = Math.min(...sizes), most = Math.max(...sizes);
  const made = chips.map((chip) =>
    ribbon(shape, chip, most > least ? (chip.thickness - least) / (most - least) : 1));
  const corners = new Float32Array(made.flatMap((one) => one.corners));
  let base = 0;
  const triangles = new Uint32Array(made.flatMap((one) => {
    const numbers = one.triangles.map((n) => n + base);
    base += one.corners.length / 9;
    return numbers;
  }));
  return { mesh: { corners, triangles }, places: made };
}
