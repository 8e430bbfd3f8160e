/** Whether a point of the model is seen, or hidden behind metal. */

/** @typedef {{places: Float32Array, triangles: Uint16Array | Uint32Array}} Faces */

/**
 * Whether metal stands between a point and the eye.
 * @param {Faces} faces
 * @param {number[]} from [mm]
 * @param {number[]} towards the eye, of length 1
 * @param {(point: number[]) => boolean} gone what is cut away hides nothing
 */
export function hidden({ places, triangles }, from, towards, gone) {
  const [ox, oy, oz] = from, [dx, dy, dz] = towards;
  for (let n = 0; n < triangles.length; n += 3) {
    const a = 3 * triangles[n], b = 3 * triangles[n + 1], c = 3 * triangles[n + 2];
    const ax = places[a], ay = places[a + 1], az = places[a + 2];
    const ux = places[b] - ax, uy = places[b + 1] - ay, uz = places[b + 2] - az;
    const vx = places[c] - ax, vy = places[c + 1] - ay, vz = places[c + 2] - az;
    const px = dy * vz - dz * vy, py = dz * vx - dx * vz, pz = dx * vy - dy * vx;
    const det = ux * px + uy * py + uz * pz;
    if (det > -1e-12 && det < 1e-12) continue;
    const tx = ox - ax, ty = oy - ay, tz = oz - az;
    const first = (tx * px + ty * py + tz * pz) / det;
    if (first < 0 || first > 1) continue;
    const qx = ty * uz - tz * uy, qy = tz * ux - tx * uz, qz = tx * uy - ty * ux;
    const second = (dx * qx + dy * qy + dz * qz) / det;
    if (second < 0 || first + second > 1) continue;
    const far = (vx * qx + vy * qy + vz * qz) / det;
    if (far <= 0) continue;
    if (!gone([ox + far * dx, oy + far * dy, oz + far * dz])) return true;
  }
  return false;
}
