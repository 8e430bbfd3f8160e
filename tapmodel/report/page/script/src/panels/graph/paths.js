/** Paths of pictures. No elements here. */

/** @typedef {[number, number]} At */

/**
 * @param {number} value
 * @param {number} steps of 1
 */
const short = (value, steps) => String(Math.round(value * steps) / steps);

/**
 * A line from point to point, broken where one of null stands between.
 * @param {(At | null)[]} points
 * @param {number} [steps] of 1: a pixel has a hundred, a mm more
 */
export function line(points, steps = 100) {
  let path = "";
  let pen = "M";
  for (const point of points) {
    if (!point) {
      pen = "M";
      continue;
    }
    path += `${pen}${short(point[0], steps)} ${short(point[1], steps)}`;
    pen = "L";
  }
  return path;
}

/**
 * The area between two lines of as many points.
 * @param {At[]} low
 * @param {At[]} high
 */
export function between(low, high) {
  return low.length ? `${line([...low, ...high.slice().reverse()])}Z` : "";
}

/**
 * Two lists of numbers as points.
 * @param {number[]} xs
 * @param {number[]} ys
 * @param {(x: number) => number} atX
 * @param {(y: number) => number} atY
 * @returns {At[]}
 */
export function points(xs, ys, atX, atY) {
  return xs.map((x, n) => [atX(x), atY(ys[n])]);
}

/**
 * Corners of an arrow's head.
 * @param {At} tail
 * @param {At} tip
 * @param {number} size
 */
export function head(tail, tip, size) {
  const turn = Math.atan2(tip[1] - tail[1], tip[0] - tail[0]);
  /** @param {number} lean @returns {At} */
  const corner = (lean) => [tip[0] - size * Math.cos(turn + lean), tip[1] - size * Math.sin(turn + lean)];
  return `${line([tip, corner(0.35), corner(-0.35)])}Z`;
}
