/** Where tap, cutter and head stand at a moment of the work. */

/** @import {InHole, TapShape} from "../../types" */

/** Of the way of a flute: milled until here, the cutter out of it until there, indexed behind that. */
const MILLED = 0.7, LIFTED = 0.8;

/**
 * A right-hand tap turns towards -theta as it advances; a left-hand one is its mirror image.
 * @param {TapShape} shape
 * @param {number} entered how far the front stands below the face of the work [mm]
 */
export function inHole({ lead, hand }, entered) {
  const angle = -hand * 2 * Math.PI * entered / lead;
  return { spin: [Math.cos(angle), Math.sin(angle)], moved: [0, 0, -entered], angle };
}

/**
 * @param {number} x from 0 to 1
 */
const eased = (x) => x * x * (3 - 2 * x);

/** @param {number} x */
const within = (x) => Math.min(Math.max(x, 0), 1);

/**
 * Milling after so many flutes, which need not be whole.
 * @param {TapShape} shape
 * @param {number} progress
 * @param {number} ratio turns of the crank for one of the work
 */
export function inMaking(shape, progress, ratio) {
  const { lands, ball, full_depth, major, hand, centre, offset } = shape;
  const flute = Math.min(Math.floor(progress), lands - 1), share = Math.min(progress - flute, 1);
  const start = -1.6 * ball, milled = within(share / MILLED);
  const lifted = within((share - MILLED) / (LIFTED - MILLED));
  const indexed = within((share - LIFTED) / (1 - LIFTED));
  const last = flute === lands - 1;
  const turned = flute + (last ? 0 : eased(indexed));
  const angle = -hand * 2 * Math.PI * turned / lands;
  const clear = major / 2 + 1.4 * ball;
  const up = last ? eased(lifted) : eased(lifted) - (indexed > 0.7 ? eased((indexed - 0.7) / 0.3) : 0);
  const back = last ? 0 : eased(within(indexed / 0.7));
  const along = start + (full_depth - start) * milled;
  return {
    flute, angle, turned,
    spin: [Math.cos(angle), Math.sin(angle)],
    done: flute + (milled >= 1 ? 1 : 0),
    cutterAt: milled >= 1 ? -1e6 : along,
    cutter: [centre + clear * up, offset * hand, along + (start - along) * back],
    crank: 2 * Math.PI * ratio * turned / lands,
    milling: milled < 1,
  };
}

/**
 * Turns made and teeth in the work when the front stands so deep.
 * @param {TapShape} shape
 * @param {InHole} hole
 * @param {number} entered [mm]
 */
export function cuttingNow(shape, hole, entered) {
  const bottom = hole.blind ? Infinity : hole.depth;
  return {
    turns: entered / shape.lead,
    chips: hole.chips.filter(({ z }) => entered - z > 0 && entered - z < bottom + shape.pitch / 2),
  };
}
