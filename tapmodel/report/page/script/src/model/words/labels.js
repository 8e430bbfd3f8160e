/** Words over the canvas: leaders to named points of the tap, numbers at its chips. */

import { made } from "../../elements.js";
import { discsOf, nearest, placedLabels } from "./leaders.js";
import { hidden } from "./sight.js";
import { cuttingNow } from "../scenes/motion.js";

/** @import {Mark, Vector} from "../../types" */
/** @import {Viewer} from "../viewer.js" */

const LEAST_FACING = 0.12, CHIP_FACING = 0.45;
const LIFT = 2e-4; // off the surface, of the tap's reach, so that it does not hide its own point
const APART = 18; // of two numbers at chips [px]

export class Labels {
  /**
   * @param {Viewer} viewer
   * @param {HTMLElement} stage that holds the canvas
   */
  constructor(viewer, stage) {
    this.viewer = viewer;
    this.on = true;
    this.lines = /** @type {HTMLCanvasElement} */ (made("canvas", { class: "leaders", "aria-hidden": "true" }));
    this.words = made("div", { class: "labels", "aria-hidden": "true" });
    stage.append(this.lines, this.words);
    /** @type {Map<string, HTMLElement>} */
    this.known = new Map();
    viewer.drawn.push(() => this.follow());
  }

  /**
   * @param {string} key
   * @param {string} kind
   * @param {string} label
   * @param {string} text
   */
  _of(key, kind, label, text) {
    const found = this.known.get(key);
    if (found) return found;
    const word = made("span", { class: kind }, made("b", {}, label));
    if (text) word.append(" ", text);
    this.words.append(word);
    this.known.set(key, word);
    return word;
  }

  /** The model is another one. */
  clear() {
    this.known.clear();
    this.words.replaceChildren();
  }

  follow() {
    for (const word of this.known.values()) word.hidden = true;
    const { viewer } = this, pen = this._pen();
    if (!this.on || !viewer.model) return;
    if (viewer.name === "alone") this._marks(viewer.model.head.marks, pen);
    if (viewer.name === "hole") this._chips();
  }

  /** A clean sheet over the canvas, in its pixels. */
  _pen() {
    const { canvas, camera } = this.viewer, [wide] = camera.size;
    const pen = this.lines.getContext("2d");
    this.lines.width = canvas.width;
    this.lines.height = canvas.height;
    pen?.scale(canvas.width / wide, canvas.width / wide);
    return pen;
  }

  /**
   * @param {Mark[]} marks
   * @param {CanvasRenderingContext2D | null} pen
   */
  _marks(marks, pen) {
    const { camera } = this.viewer;
    const shown = marks.flatMap((mark) => {
      // Made whether it is seen or not: what lies over what must not hang on what was seen first.
      const word = this._of(mark.key, "leader", mark.label, mark.text);
      const at = this.seenPlace(mark);
      word.hidden = !at;
      if (!at) return [];
      const [x, y] = camera.project(at);
      return [{ word, x, y, wide: word.offsetWidth, high: word.offsetHeight, key: mark.key }];
    });
    const places = placedLabels(shown, camera.size, this._covered());
    const ink = getComputedStyle(this.lines).color;
    shown.forEach(({ word, x, y, wide, high, key }, n) => {
      const { x: left, y: top } = places[n];
      word.style.transform = `translate(${left.toFixed(1)}px, ${top.toFixed(1)}px)`;
      word.dataset.key = key;
      word.dataset.at = `${x.toFixed(2)} ${y.toFixed(2)}`;
      const end = nearest({ left, top, right: left + wide, bottom: top + high }, x, y);
      if (pen) leader(pen, [x, y, end.x, end.y], ink);
    });
  }

  /** What the tap covers of the canvas. */
  _covered() {
    const { camera, model } = this.viewer;
    if (!model) return [];
    const { point, major, cone, thread_end, turned } = model.head.shape;
    const chamfer = cone > 0 ? Math.min((major / 2 - point) / cone, thread_end) : 0;
    return discsOf([[0, point], [chamfer, major / 2], [thread_end, major / 2], ...turned],
      (p) => camera.project(p), camera.scale);
  }

  /**
   * Where a mark can be pointed at: the place that faces us best and is not hidden.
   * @param {Mark} mark
   * @returns {Vector | null}
   */
  seenPlace({ places }) {
    const { camera, cuts, body } = this.viewer;
    if (!body) return null;
    const towards = camera.towards, [w, h] = camera.size;
    const facing = places
      .map((place) => ({ place, facing: place.facing.reduce((sum, v, k) => sum + v * towards[k], 0) }))
      .filter((one) => one.facing > LEAST_FACING)
      .sort((a, b) => b.facing - a.facing);
    for (const { place } of facing) {
      const [x, y] = camera.project(place.at);
      if (x < 0 || y < 0 || x > w || y > h || cuts.gone(place.at)) continue;
      const from = place.at.map((v, k) => v + LIFT * camera.reach * (place.facing[k] + towards[k]));
      if (!hidden(body.faces, from, towards, (p) => cuts.gone(p))) return place.at;
    }
    return null;
  }

  _chips() {
    const scene = this.viewer.hole, { camera, model } = this.viewer;
    if (!scene || !model) return;
    const { shape, hole } = scene, towards = camera.towards;
    const { spin, moved } = scene.placed;
    /** @param {number[]} v */
    const turned = ([x, y, z]) => {
      const side = y * shape.hand;
      return [spin[0] * x - spin[1] * side, spin[1] * x + spin[0] * side, z];
    };
    /** @type {number[][]} */
    const taken = [];
    for (const chip of cuttingNow(shape, hole, scene.entered).chips) {
      const { anchor, facing } = scene.numbers[chip.number - 1];
      const out = turned(facing), at = turned(anchor).map((v, k) => v + moved[k]);
      if (out.reduce((sum, v, k) => sum + v * towards[k], 0) < CHIP_FACING) continue;
      const [x, y] = camera.project(at);
      if (taken.some(([a, b]) => Math.abs(a - x) < APART && Math.abs(b - y) < 0.8 * APART)) continue;
      taken.push([x, y]);
      const word = this._of(`chip ${chip.number}`, "chip", String(chip.number), "");
      word.hidden = false;
      word.style.transform = `translate(${x.toFixed(1)}px, ${y.toFixed(1)}px) translate(-50%, -50%)`;
    }
  }
}

/**
 * A line from a point, which gets a dot.
 * @param {CanvasRenderingContext2D} pen
 * @param {number[]} ends
 * @param {string} ink
 */
function leader(pen, [x, y, toX, toY], ink) {
  pen.strokeStyle = pen.fillStyle = ink;
  pen.beginPath();
  pen.moveTo(x, y);
  pen.lineTo(toX, toY);
  pen.stroke();
  pen.beginPath();
  pen.arc(x, y, 2.6, 0, 2 * Math.PI);
  pen.fill();
}
