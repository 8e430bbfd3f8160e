/** Grids over threaded surfaces: angle, height, whether it rides on the helix, share outwards. */

import { BACK } from "../shading/thread.js";

/** @import {Flat, Profile, TapShape} from "../../types" */

const ROUND = 64, WHOLE = 112, EVEN = 12;

/**
 * Places within a pitch at which a profile is looked at, from 0 to 1 from the middle of a crest.
 * @param {Profile} profile
 * @param {number} pitch
 */
export function sharesOfPitch({ crest, root }, pitch) {
  const found = [
    crest.half, pitch / 2 - root.half, pitch / 2 + root.half, pitch - crest.half,
  ].map((w) => w / pitch);
  for (let n = 0; n < EVEN; n++) found.push(n / EVEN);
  for (const [flat, middle] of /** @type {[Flat, number][]} */ ([[crest, 0], [root, 0.5]]))
    if (flat.arc !== 0)
      for (let n = -3; n <= 3; n++) found.push((middle + n / 4 * flat.half / pitch + 1) % 1);
  found.sort((a, b) => a - b);
  return found.filter((share, n) => n === 0 || share - found[n - 1] > 1e-6);
}

/**
 * Heights along a helix that cover a length at every angle between two.
 * @param {TapShape} shape
 * @param {number[]} length from and to [mm]
 * @param {number[]} angles from and to [rad]
 */
export function helixRows(shape, [low, high], angles) {
  const { pitch, lead, first_z, profile } = shape;
  const shares = sharesOfPitch(profile, pitch);
  const [least, most] = angles.map((angle) => first_z + lead * angle / (2 * Math.PI));
  const first = Math.floor((low - most) / pitch) - 1;
  const last = Math.ceil((high - least) / pitch) + 1;
  const rows = [];
  for (let n = first; n <= last; n++) for (const share of shares) rows.push((n + share) * pitch);
  return rows;
}

/**
 * @param {number[]} angles
 * @param {number[][]} rows height, whether on the helix, share
 */
export function grid(angles, rows) {
  const wide = angles.length;
  const corners = new Float32Array(4 * wide * rows.length);
  let at = 0;
  for (const [z, onHelix, share] of rows)
    for (const angle of angles) {
      corners.set([angle, z, onHelix, share], at);
      at += 4;
    }
  const triangles = new Uint32Array(6 * (wide - 1) * (rows.length - 1));
  at = 0;
  for (let row = 0; row + 1 < rows.length; row++)
    for (let n = 0; n + 1 < wide; n++) {
      const a = row * wide + n, b = a + wide;
      triangles.set([a, a + 1, b + 1, a, b + 1, b], at);
      at += 6;
    }
  return { corners, triangles };
}

/**
 * @param {number} from
 * @param {number} to
 * @param {number} count of steps
 */
export function evenly(from, to, count) {
  return Array.from({ length: count + 1 }, (_, n) => from + (to - from) * n / count);
}

/**
 * The work, cut open along its axis: bore, both cut faces, upper and lower face.
 * @param {TapShape} shape
 * @param {number} deep of the block [mm]
 */
export function workGrids(shape, deep) {
  // What stays lies behind the axis; of a left-hand tap all is mirrored afterwards.
  const from = shape.hand > 0 ? 0 : -Math.PI, to = from + Math.PI;
  const round = evenly(from, to, ROUND);
  const corner = Math.atan(BACK);
  const outer = [...evenly(from, from + corner, 12), ...evenly(from + corner, to - corner, 40),
    ...evenly(to - corner, to, 12)];
  const helix = helixRows(shape, [-deep, 0], [from, to]).map((z) => [z, 1, 0]);
  /** @param {number} angle */
  const cutFace = (angle) => {
    const { corners, triangles } = grid([angle, angle], helix);
    for (let n = 7; n < corners.length; n += 8) corners[n] = 1;
    return { corners, triangles };
  };
  return {
    bore: grid(round, helix),
    cuts: [cutFace(from), cutFace(to)],
    faces: [grid(outer, [[0, 0, 0], [0, 0, 1]]), grid(outer, [[-deep, 0, 0], [-deep, 0, 1]])],
  };
}

/**
 * The blank with its thread before it is fluted, up to a height, and its front.
 * @param {TapShape} shape
 * @param {number} to [mm]
 */
export function blankGrids(shape, to) {
  const round = evenly(0, 2 * Math.PI, WHOLE);
  const rows = helixRows(shape, [0, shape.thread_end], [0, 2 * Math.PI]).map((z) => [z, 1, 0]);
  const behind = [];
  if (to > shape.thread_end) {
    const least = 1e-4 * shape.major;
    const marks = shape.turned.map(([z]) => z).filter((z) => z > shape.thread_end && z < to);
    for (const z of [shape.thread_end + least, ...marks.flatMap((z) => [z, z + least]), to])
      behind.push([z, 0, 0]);
  }
  return {
    side: grid(round, [...rows, ...behind]),
    front: grid(round, [[0, 0, 1], [0, 0, 0]]),
  };
}
