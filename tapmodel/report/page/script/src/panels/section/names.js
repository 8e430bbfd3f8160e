/** Where the names of marks stand round a section. No elements here. */

/** @import {EdgeName, Place} from "../../types" */

/** What a name and its number take over and under the first line's foot [px]. */
const [OVER, UNDER] = [11, 18];

/** Left free about circles and other names, and between two places that are tried [px]. */
const [CLEAR, STEP] = [5, 3];

/**
 * @typedef {object} PlacedName
 * @property {EdgeName} name
 * @property {number} x of the lettering [px]
 * @property {number} y of its first line
 * @property {"start" | "middle" | "end"} anchor
 * @property {[number, number]} tip what it belongs to
 */

/**
 * @typedef {object} Around what names are to stand clear of
 * @property {number} width [px]
 * @property {number} height
 * @property {[number, number]} middle where the tap's axis stands
 * @property {number} each pixels of a mm
 * @property {number} crest radius of the crests [mm]
 * @property {{centre: Place, radius: number}} cutter [mm]
 */

/** @typedef {{left: number, right: number, top: number, bottom: number}} Box */
/** @typedef {{x: number, y: number, r: number}} Circle */

/**
 * Names outwards of what they belong to, each as near as it can be without lying over the section,
 * the circle of the cutter or a name before it.
 * @param {EdgeName[]} names
 * @param {Around} around
 * @returns {PlacedName[]}
 */
export function placedNames(names, around) {
  const { middle, each, cutter, crest } = around;
  /** @param {Place} place @returns {[number, number]} */
  const at = ([x, y]) => [middle[0] + each * x, middle[1] + each * y];
  const [x, y] = at(cutter.centre);
  const circles = [{ x: middle[0], y: middle[1], r: each * crest }, { x, y, r: each * cutter.radius }];
  /** @type {Box[]} */
  const taken = [];
  return names.map((name) => {
    const sides = sidesOf(name, names);
    const found = sides.map((side) => nearest(name, at(name.at), side, around, circles, taken)).find(Boolean)
      ?? unplaced(name, at(name.at), sides[0], around);
    taken.push(found.box);
    return found.placed;
  });
}

/**
 * On which side a name stands of what it belongs to, -1 for left; in the middle the one that is nearest to it alone.
 * @param {EdgeName} name
 * @param {EdgeName[]} names
 */
function sidesOf(name, names) {
  const across = (/** @type {EdgeName} */ one) => one.at[0] / (Math.hypot(...one.at) || 1);
  const beside = names.some((one) => one !== name && one.at[1] * name.at[1] > 0 && Math.abs(across(one)) < Math.abs(across(name)));
  const side = across(name) < 0 ? -1 : 1;
  return Math.abs(across(name)) >= 0.25 || beside ? [side] : [0, side];
}

/**
 * @param {EdgeName} name
 * @param {[number, number]} tip
 * @param {number} side
 * @param {Around} around
 * @param {Circle[]} circles
 * @param {Box[]} taken
 */
function nearest(name, tip, side, around, circles, taken) {
  const { width, height } = around;
  const room = roomOf(name);
  const begin = Math.min(Math.max(tip[0], side < 0 ? room : 0), side > 0 ? width - room : width);
  /** @type {{placed: PlacedName, box: Box} | null} */
  let best = null;
  let least = Infinity;
  for (let y = OVER; y <= height - UNDER - 4; y += STEP) {
    const found = standing(name, tip, side, y, side ? beyond(begin, side, y, circles) : begin);
    const { box } = found;
    const far = Math.hypot(...apart(tip[0], tip[1], box));
    const free = box.left >= 0 && box.right <= width
      && circles.every(({ x, y: down, r }) => Math.hypot(...apart(x, down, box)) >= r + CLEAR - 1e-6)
      && taken.every((other) => box.right + CLEAR <= other.left || other.right + CLEAR <= box.left
        || box.bottom <= other.top || other.bottom <= box.top);
    if (free && far < least) [best, least] = [found, far];
  }
  return best;
}

/**
 * How far out lettering of a side begins so that it stands outside the circles there.
 * @param {number} x where it would begin [px]
 * @param {number} side
 * @param {number} y
 * @param {Circle[]} circles
 */
function beyond(x, side, y, circles) {
  const ends = circles.map((circle) => {
    const off = Math.max(y - OVER - circle.y, circle.y - y - UNDER, 0);
    const half = Math.sqrt(Math.max((circle.r + CLEAR) ** 2 - off ** 2, 0));
    return half ? side * circle.x + half : -Infinity;
  });
  return side * Math.max(side * x, ...ends);
}

/**
 * A name as it would stand there.
 * @param {EdgeName} name
 * @param {[number, number]} tip
 * @param {number} side
 * @param {number} y
 * @param {number} x
 * @returns {{placed: PlacedName, box: Box}}
 */
function standing(name, tip, side, y, x) {
  const wide = roomOf(name);
  const left = x - (wide * (1 - side)) / 2;
  const anchor = /** @type {const} */ (["end", "middle", "start"])[side + 1];
  return { placed: { name, tip, x, y, anchor }, box: { left, right: left + wide, top: y - OVER, bottom: y + UNDER } };
}

/**
 * A name for which there is no room: within the picture at least.
 * @param {EdgeName} name
 * @param {[number, number]} tip
 * @param {number} side
 * @param {Around} around
 */
function unplaced(name, tip, side, { width, height }) {
  const room = roomOf(name);
  const [before, behind] = [room * (1 - side) / 2, room * (1 + side) / 2];
  const y = Math.min(Math.max(tip[1], OVER), height - UNDER - 4);
  return standing(name, tip, side, y, Math.min(Math.max(tip[0], before), width - behind));
}

/** @param {EdgeName} name */
const roomOf = ({ label, text }) => Math.max(6.4 * label.length, 7.4 * text.length);

/**
 * How far a point lies from a box, across and down.
 * @param {number} x
 * @param {number} y
 * @param {Box} box
 * @returns {[number, number]}
 */
const apart = (x, y, { left, right, top, bottom }) => [Math.max(left - x, x - right, 0), Math.max(top - y, y - bottom, 0)];
