/** Simple bodies about any axis: turned shapes and boxes, as corners (place, normal) and triangles. */

/** @typedef {{corners: number[], triangles: number[]}} Solid */

const STEPS = 48;

/**
 * Turned about an axis: a side for each piece of the outline, with edges between them.
 * @param {[number, number][]} outline place along the axis and radius
 * @param {(along: number, x: number, y: number) => number[]} place of a point beside the axis
 * @param {number} [smooth] least cosine at which two pieces pass into one another
 * @returns {Solid}
 */
export function turnedSolid(outline, place, smooth = 0.9) {
  /** @type {number[]} */
  const corners = [];
  /** @type {number[]} */
  const triangles = [];
  const origin = place(0, 0, 0);
  const pieces = outline.slice(1).map(([z, r], n) => {
    const [z0, r0] = outline[n];
    const long = Math.hypot(z - z0, r - r0) || 1;
    return [-(r - r0) / long, (z - z0) / long];
  });
  /** @param {number} n @param {number} other */
  const joined = (n, other) => {
    const a = pieces[n], b = pieces[other];
    if (!b || a[0] * b[0] + a[1] * b[1] < smooth) return a;
    const sum = [a[0] + b[0], a[1] + b[1]], long = Math.hypot(...sum);
    return [sum[0] / long, sum[1] / long];
  };
  pieces.forEach((_, n) => {
    const base = corners.length / 6;
    [[outline[n], joined(n, n - 1)], [outline[n + 1], joined(n, n + 1)]].forEach(
      ([[along, radius], [lean, out]]) => {
        for (let k = 0; k <= STEPS; k++) {
          const angle = 2 * Math.PI * k / STEPS, c = Math.cos(angle), s = Math.sin(angle);
          const normal = place(lean, out * c, out * s).map((v, i) => v - origin[i]);
          corners.push(...place(along, radius * c, radius * s), ...normal);
        }
      });
    for (let k = 0; k < STEPS; k++) {
      const a = base + k, b = a + STEPS + 1;
      triangles.push(a, a + 1, b + 1, a, b + 1, b);
    }
  });
  return { corners, triangles };
}

/**
 * A box with its sides along the axes.
 * @param {number[]} low
 * @param {number[]} high
 * @returns {Solid}
 */
export function box(low, high) {
  /** @type {number[]} */
  const corners = [];
  /** @type {number[]} */
  const triangles = [];
  for (let axis = 0; axis < 3; axis++)
    for (const side of [-1, 1]) {
      const base = corners.length / 6;
      const [one, two] = [(axis + 1) % 3, (axis + 2) % 3];
      for (const [p, q] of [[0, 0], [1, 0], [1, 1], [0, 1]]) {
        const at = [0, 0, 0], normal = [0, 0, 0];
        at[axis] = side < 0 ? low[axis] : high[axis];
        at[one] = p ? high[one] : low[one];
        at[two] = q ? high[two] : low[two];
        normal[axis] = side;
        corners.push(...at, ...normal);
      }
      triangles.push(base, base + 1, base + 2, base, base + 2, base + 3);
    }
  return { corners, triangles };
}

/**
 * Several as one.
 * @param {Solid[]} solids
 */
export function joined(solids) {
  let corners = 0, triangles = 0;
  for (const solid of solids) {
    corners += solid.corners.length;
    triangles += solid.triangles.length;
  }
  const out = { corners: new Float32Array(corners), triangles: new Uint32Array(triangles) };
  let from = 0, to = 0;
  for (const solid of solids) {
    out.corners.set(solid.corners, from);
    out.triangles.set(solid.triangles.map((n) => n + from / 6), to);
    from += solid.corners.length;
    to += solid.triangles.length;
  }
  return out;
}

/** Along z, x and y beside it. @param {number} along @param {number} x @param {number} y */
export const alongZ = (along, x, y) => [x, y, along];
/** Upright, over a point of the axis. @param {number} along @param {number} x @param {number} y */
export const alongX = (along, x, y) => [along, x, y];
/** Crosswise. @param {number} along @param {number} x @param {number} y */
export const alongY = (along, x, y) => [x, along, y];
