/** Rotations as nine numbers, column by column. */

/**
 * Rotation about an axis through the origin, by columns.
 * @param {number[]} axis of length 1
 * @param {number} angle [rad]
 */
export function turned(axis, angle) {
  const [x, y, z] = axis;
  const c = Math.cos(angle), s = Math.sin(angle), k = 1 - c;
  return [c + x * x * k, x * y * k + z * s, x * z * k - y * s,
    x * y * k - z * s, c + y * y * k, y * z * k + x * s,
    x * z * k + y * s, y * z * k - x * s, c + z * z * k];
}

/**
 * @param {number[]} a
 * @param {number[]} b
 */
export function product(a, b) {
  const out = new Array(9).fill(0);
  for (let col = 0; col < 3; col++)
    for (let row = 0; row < 3; row++)
      for (let n = 0; n < 3; n++) out[3 * col + row] += a[3 * n + row] * b[3 * col + n];
  return out;
}
