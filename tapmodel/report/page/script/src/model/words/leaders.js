/** Where the words beside a picture stand: near their points, clear of the model and of each other. */

/**
 * @typedef {object} Wanted
 * @property {number} x of the point that is named [px]
 * @property {number} y
 * @property {number} wide of the words [px]
 * @property {number} high
 */

/** @typedef {{x: number, y: number}} Placed upper left corner of the words */
/** @typedef {{x: number, y: number, r: number}} Disc [px] */
/** @typedef {{left: number, top: number, right: number, bottom: number}} Bounds */

const MARGIN = 6, GAP = 5;
const ANGLES = 32;
const STEP = 12; // of the way out [px]
const OVER_MODEL = 600, OVER_LEADER = 150, OVER_LINE = 900, OVER_WORDS = 4000; // as if it stood so much further [px]

/**
 * @param {Wanted[]} wanted
 * @param {number[]} size of the canvas [px]
 * @param {Disc[]} model what it covers
 * @returns {Placed[]}
 */
export function placedLabels(wanted, size, model) {
  /** @type {Placed[]} */
  const found = new Array(wanted.length);
  /** @type {{bounds: Bounds, from: Wanted}[]} */
  const taken = [];
  const order = wanted.map((_, n) => n).sort((a, b) => wanted[a].x - wanted[b].x);
  for (const n of order) {
    const one = wanted[n];
    let best = Infinity;
    for (const bounds of candidates(one, size)) {
      const cost = costOf(one, bounds, model, taken, best);
      if (cost >= best) continue;
      best = cost;
      found[n] = { x: bounds.left, y: bounds.top };
    }
    taken.push({ bounds: boundsOf(found[n].x, found[n].y, one), from: one });
  }
  return found;
}

/**
 * Boxes round the point, further and further out, all of them on the canvas.
 * @param {Wanted} one
 * @param {number[]} size
 * @returns {Bounds[]}
 */
function candidates(one, [width, height]) {
  const far = Math.hypot(width, height) / 2;
  const found = [];
  for (let way = 24; way < far; way += STEP)
    for (let n = 0; n < ANGLES; n++) {
      const angle = 2 * Math.PI * (n + 0.5) / ANGLES;
      const x = one.x + Math.cos(angle) * (way + one.wide / 2) - one.wide / 2;
      const y = one.y + Math.sin(angle) * (way + one.high / 2) - one.high / 2;
      if (x < MARGIN || y < MARGIN) continue;
      if (x + one.wide > width - MARGIN || y + one.high > height - MARGIN) continue;
      found.push(boundsOf(x, y, one));
    }
  // A canvas too small for any of them: as near as it allows.
  const x = Math.max(Math.min(one.x, width - MARGIN - one.wide), MARGIN);
  const y = Math.max(Math.min(one.y + 2 * MARGIN, height - MARGIN - one.high), MARGIN);
  found.push(boundsOf(x, y, one));
  return found;
}

/** @param {number} x @param {number} y @param {Wanted} one @returns {Bounds} */
function boundsOf(x, y, one) {
  return { left: x, top: y, right: x + one.wide, bottom: y + one.high };
}

/**
 * @param {Wanted} one
 * @param {Bounds} bounds
 * @param {Disc[]} model
 * @param {{bounds: Bounds, from: Wanted}[]} taken
 * @param {number} most that is of any use
 */
function costOf(one, bounds, model, taken, most) {
  const end = nearest(bounds, one.x, one.y);
  let cost = Math.hypot(end.x - one.x, end.y - one.y);
  if (cost >= most) return cost;
  if (model.some((disc) => reaches(disc, bounds))) cost += OVER_MODEL;
  for (const other of taken) {
    const to = nearest(other.bounds, other.from.x, other.from.y);
    if (overlap(bounds, other.bounds)) cost += OVER_WORDS;
    if (crosses(one, end, other.from, to)) cost += OVER_LEADER;
    if (strikes(one, end, other.bounds) || strikes(other.from, to, bounds)) cost += OVER_LINE;
  }
  return cost;
}

/**
 * Where a leader ends: the point of a box nearest to what it names.
 * @param {Bounds} bounds
 * @param {number} x
 * @param {number} y
 */
export function nearest({ left, top, right, bottom }, x, y) {
  return { x: Math.min(Math.max(x, left), right), y: Math.min(Math.max(y, top), bottom) };
}

/** @param {Disc} disc @param {Bounds} bounds */
function reaches(disc, bounds) {
  const { x, y } = nearest(bounds, disc.x, disc.y);
  return Math.hypot(x - disc.x, y - disc.y) < disc.r + GAP;
}

/** @param {Bounds} a @param {Bounds} b */
export function overlap(a, b) {
  return a.left < b.right + GAP && b.left < a.right + GAP && a.top < b.bottom + GAP && b.top < a.bottom + GAP;
}

/** @typedef {{x: number, y: number}} Point */

/** @param {Point} a @param {Point} b @param {Point} c @param {Point} d */
function crosses(a, b, c, d) {
  /** @param {Point} p @param {Point} q @param {Point} r */
  const side = (p, q, r) => Math.sign((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
  return side(a, b, c) !== side(a, b, d) && side(c, d, a) !== side(c, d, b);
}

/**
 * Whether a leader runs over words.
 * @param {Point} a
 * @param {Point} b
 * @param {Bounds} bounds
 */
export function strikes(a, b, { left, top, right, bottom }) {
  let from = 0, to = 1;
  for (const [start, way, low, high] of [[a.x, b.x - a.x, left, right], [a.y, b.y - a.y, top, bottom]]) {
    if (Math.abs(way) < 1e-9) {
      if (start <= low || start >= high) return false;
      continue;
    }
    const [one, two] = [(low - start) / way, (high - start) / way];
    from = Math.max(from, Math.min(one, two));
    to = Math.min(to, Math.max(one, two));
  }
  return from < to;
}

/**
 * What a body of revolution covers: discs along its axis.
 * @param {[number, number][]} outline place along the axis and radius, from the front [mm]
 * @param {(point: number[]) => number[]} project a point of the model [px]
 * @param {number} scale pixels of a millimetre
 * @returns {Disc[]}
 */
export function discsOf(outline, project, scale) {
  const found = [];
  for (let n = 1; n < outline.length; n++) {
    const [z0, r0] = outline[n - 1], [z1, r1] = outline[n];
    const steps = Math.max(Math.ceil(Math.abs(z1 - z0) / Math.max(r0, r1, 1e-3)), 1);
    for (let k = 0; k <= steps; k++) {
      const share = k / steps;
      const [x, y] = project([0, 0, z0 + (z1 - z0) * share]);
      found.push({ x, y, r: (r0 + (r1 - r0) * share) * scale });
    }
  }
  return found;
}
