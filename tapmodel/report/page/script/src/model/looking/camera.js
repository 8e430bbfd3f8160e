/** A parallel camera: how the model stands before it, and where its points come on the canvas. */

import { product, turned } from "./rotation.js";
import { VIEWS } from "./views.js";

const MARGIN = 0.92;
const LEAST = 0.2, MOST = 400;

/** @typedef {{low: number[], high: number[]}} Box in mm */

export class Camera {
  constructor() {
    this.turn = VIEWS.quarter.slice();
    /** Of the middle of the canvas, in halves of its sides. */
    this.shift = [0, 0];
    /** Against the size at which all fits. */
    this.factor = 1;
    /** Half of what is to be seen across and up [mm]. */
    this.half = [1, 1];
    this.middle = [0, 0, 0];
    this.reach = 1;
    /** Of the canvas [px]. */
    this.size = [1, 1];
  }

  /**
   * Look from a side at all of a box.
   * @param {number[]} turn
   * @param {Box} box
   */
  look(turn, box) {
    this.turn = turn.slice();
    this.shift = [0, 0];
    this.factor = 1;
    this.hold(box);
    const sides = box.high.map((v, k) => (v - box.low[k]) / 2);
    this.half = [0, 1].map((row) =>
      sides.reduce((sum, side, k) => sum + Math.abs(this.turn[3 * k + row]) * side, 0));
  }

  /**
   * What is looked at may have another size now; the view stays.
   * @param {Box} box
   */
  hold(box) {
    this.middle = box.low.map((v, k) => (v + box.high[k]) / 2);
    this.reach = Math.hypot(...box.high.map((v, k) => v - box.low[k])) / 2 || 1;
  }

  /** Pixels of a millimetre. */
  get scale() {
    const [w, h] = this.size;
    return MARGIN / 2 * this.factor * Math.min(w / this.half[0], h / this.half[1]);
  }

  get isHome() {
    return this.factor === 1 && this.shift[0] === 0 && this.shift[1] === 0;
  }

  /**
   * @param {number} dx [rad]
   * @param {number} dy
   */
  spin(dx, dy) {
    const step = product(turned([0, 1, 0], dx), turned([1, 0, 0], dy));
    this.turn = product(step, this.turn);
  }

  /**
   * @param {number} dx [px]
   * @param {number} dy
   */
  move(dx, dy) {
    const [w, h] = this.size;
    this.shift = [this.shift[0] + 2 * dx / w, this.shift[1] - 2 * dy / h];
  }

  /** @param {number} by */
  zoom(by) {
    const factor = Math.min(Math.max(this.factor * by, LEAST), MOST);
    this.shift = this.shift.map((v) => v * factor / this.factor);
    this.factor = factor;
  }

  /**
   * A direction of the model as it is seen: right, up, towards us.
   * @param {number[]} v
   */
  seen(v) {
    const t = this.turn;
    return [0, 1, 2].map((row) => t[row] * v[0] + t[3 + row] * v[1] + t[6 + row] * v[2]);
  }

  /**
   * A point [mm] on the canvas: x and y from its upper left corner [px], and how near it is [mm].
   * @param {number[]} point
   */
  project(point) {
    const [x, y, near] = this.seen(point.map((v, k) => v - this.middle[k]));
    const [w, h] = this.size;
    return [
      w / 2 * (1 + this.shift[0]) + x * this.scale,
      h / 2 * (1 - this.shift[1]) - y * this.scale,
      near,
    ];
  }

  /** The direction towards us in the model's frame. */
  get towards() {
    return [this.turn[2], this.turn[5], this.turn[8]];
  }
}
