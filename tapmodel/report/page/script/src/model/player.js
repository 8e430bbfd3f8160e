/** Play, pause, step and scrub: a number that runs from a start to an end. */

import { made } from "../elements.js";

/**
 * @typedef {object} Course
 * @property {number} from
 * @property {number} to
 * @property {number} step of the buttons, and of one press of a key
 * @property {number} perSecond at single speed
 * @property {(value: number) => string} told what is seen at a value
 */

const SPEEDS = [0.25, 0.5, 1, 2, 4];

export class Player {
  /** @param {(value: number) => void} follow called at every new value */
  constructor(follow) {
    this.follow = follow;
    this.value = 0;
    /** @type {Course} */
    this.course = { from: 0, to: 1, step: 1, perSecond: 1, told: String };
    this.still = matchMedia("(prefers-reduced-motion: reduce)");
    this.running = false;
    this.last = 0;
    this.play = made("button", { type: "button", class: "play" }, "play");
    this.back = made("button", { type: "button" }, "step back");
    this.on = made("button", { type: "button" }, "step on");
    this.slider = /** @type {HTMLInputElement} */ (made("input", { type: "range", "aria-label": "place in the work", step: "any" }));
    this.speed = /** @type {HTMLSelectElement} */ (made("select", {},
      ...SPEEDS.map((speed) => made("option", { value: speed, selected: speed === 1 }, `${speed} ×`))));
    this.text = made("output", { class: "told" });
    const pace = made("label", { class: "pace" }, "speed ", this.speed);
    this.element = made("div", { class: "player" },
      made("div", { class: "buttons" }, this.back, this.play, this.on, pace), this.slider, this.text);
    this.play.addEventListener("click", () => this.run(!this.running));
    this.back.addEventListener("click", () => this.go(this._next(-1)));
    this.on.addEventListener("click", () => this.go(this._next(1)));
    this.slider.addEventListener("input", () => this.go(Number(this.slider.value)));
    const calm = () => {
      this.play.hidden = pace.hidden = this.still.matches;
      if (this.still.matches) this.run(false);
    };
    this.still.addEventListener("change", calm);
    calm();
  }

  /**
   * @param {Course} course
   * @param {number} value
   */
  take(course, value) {
    this.course = course;
    this.run(false);
    this.slider.min = String(course.from);
    this.slider.max = String(course.to);
    this.set(value);
  }

  /** The next or the last whole step. @param {number} way */
  _next(way) {
    const { from, step } = this.course;
    const at = (this.value - from) / step;
    return from + step * (way > 0 ? Math.floor(at + 1e-6) + 1 : Math.ceil(at - 1e-6) - 1);
  }

  /** Stop there. @param {number} value */
  go(value) {
    this.run(false);
    this.set(value);
  }

  /** @param {number} value */
  set(value) {
    const { from, to, told } = this.course;
    this.value = Math.min(Math.max(value, from), to);
    this.slider.value = String(this.value);
    this.text.textContent = told(this.value);
    this.slider.setAttribute("aria-valuetext", told(this.value));
    this.follow(this.value);
  }

  /** @param {boolean} on */
  run(on) {
    this.running = on && !this.still.matches;
    this.play.textContent = this.running ? "pause" : "play";
    this.text.setAttribute("aria-live", this.running ? "off" : "polite");
    if (!this.running) return;
    if (this.value >= this.course.to) this.value = this.course.from;
    this.last = performance.now();
    requestAnimationFrame((now) => this._tick(now));
  }

  /** @param {number} now */
  _tick(now) {
    if (!this.running) return;
    if (!this.element.isConnected || this.element.hidden) return this.run(false);
    const passed = Math.min(Math.max(now - this.last, 0) / 1000, 0.1);
    this.last = now;
    this.set(this.value + passed * this.course.perSecond * Number(this.speed.value));
    if (this.value >= this.course.to) return this.run(false);
    requestAnimationFrame((next) => this._tick(next));
  }
}
