/** The canvas: programs on the graphics card, the scene that is shown, and when it is drawn. */

import { Body, bodyPrograms } from "./body.js";
import { Camera } from "./looking/camera.js";
import { Cuts } from "./scenes/caps.js";
import { Alone } from "./scenes/alone.js";
import { InHoleScene } from "./scenes/in_hole.js";
import { MillScene } from "./scenes/milling.js";
import { scenePrograms } from "./scenes/scene.js";
import { facingView, VIEWS } from "./looking/views.js";

/** @import {Loaded} from "./packed.js" */

/** @typedef {"alone" | "hole" | "mill"} SceneName */

const MOST_PIXELS = 2; // of a pixel of the page
const LINE_NEARER = 1.5; // so far edges stand before the faces [px]

export class Viewer {
  /** @param {HTMLCanvasElement} canvas */
  constructor(canvas) {
    this.canvas = canvas;
    this.camera = new Camera();
    this.cuts = new Cuts();
    /** @type {(() => void)[]} called behind every picture */
    this.drawn = [];
    /** @type {Loaded | null} */
    this.model = null;
    /** @type {SceneName} */
    this.name = "alone";
    this.waiting = false;
    this.view = "quarter";
    const gl = canvas.getContext("webgl2", { antialias: true, stencil: true, alpha: true });
    if (!gl) throw new Error("no WebGL 2");
    this.gl = gl;
    this.programs = { body: bodyPrograms(gl), scene: scenePrograms(gl) };
    /** @type {Partial<Record<SceneName, Alone | InHoleScene | MillScene>>} */
    this.scenes = {};
    /** @type {Body | null} */
    this.body = null;
    canvas.addEventListener("webglcontextlost", (event) => {
      event.preventDefault();
      this.scenes = {};
      this.body = null;
    });
    canvas.addEventListener("webglcontextrestored", () => {
      this.programs = { body: bodyPrograms(gl), scene: scenePrograms(gl) };
      if (this.model) this.show(this.model);
    });
  }

  /**
   * Another model; the view stays.
   * @param {Loaded} model
   */
  show(model) {
    const { hole, mill } = this;
    const again = this.body !== null;
    for (const scene of Object.values(this.scenes)) scene.drop();
    this.body?.drop();
    this.scenes = {};
    this.model = model;
    this.body = new Body(this.gl, this.programs.body, model);
    if (this.name === "hole" && !model.head.hole) this.name = "alone";
    if (again && hole && this.hole) this.hole.entered = Math.min(hole.entered, model.head.hole?.way ?? 0);
    if (again && mill && this.mill) this.mill.progress = Math.min(mill.progress, model.head.shape.lands);
    if (again && !this.camera.isHome) this.camera.hold(this.scene?.box() ?? this.body.box);
    else this.look(this.view);
    this.draw();
  }

  /** @returns {Alone | InHoleScene | MillScene | null} */
  get scene() {
    const { body, gl, scenes } = this, parts = this.programs.scene;
    if (!body) return null;
    const found = scenes[this.name];
    if (found) return found;
    const made = this.name === "alone" ? new Alone(gl, parts, body, this.cuts)
      : this.name === "hole" ? new InHoleScene(gl, parts, body) : new MillScene(gl, parts, body);
    scenes[this.name] = made;
    return made;
  }

  get hole() { return this.scene instanceof InHoleScene ? this.scene : null; }

  get mill() { return this.scene instanceof MillScene ? this.scene : null; }

  /** @param {SceneName} name */
  choose(name) {
    this.name = name;
    this.look(this.scene?.view ?? "quarter");
  }

  /** @param {string} name */
  look(name) {
    this.view = name;
    const box = this.scene?.box();
    if (box) this.camera.look(VIEWS[name], box);
    this.draw();
  }

  /** As it was at first. */
  reset() { this.look(this.scene?.view ?? "quarter"); }

  /**
   * Turn so that what faces that way is seen.
   * @param {number[]} facing
   */
  face(facing) {
    const box = this.scene?.box();
    if (box) this.camera.look(facingView(facing), box);
    this.draw();
  }

  /** @param {boolean} on */
  quarter(on) {
    this.cuts.takeQuarter(on, this.camera.towards);
    this.draw();
  }

  draw() {
    if (this.waiting) return;
    this.waiting = true;
    requestAnimationFrame(() => {
      this.waiting = false;
      this.drawNow();
    });
  }

  drawNow() {
    const { gl, canvas, camera, body } = this, { scene } = this;
    const wide = canvas.clientWidth || 1, high = canvas.clientHeight || 1;
    const ratio = Math.min(window.devicePixelRatio || 1, MOST_PIXELS);
    const [across, down] = [Math.round(wide * ratio), Math.round(high * ratio)];
    if (canvas.width !== across || canvas.height !== down) {
      canvas.width = across;
      canvas.height = down;
    }
    camera.size = [wide, high];
    if (!scene || !body || gl.isContextLost()) return;
    gl.viewport(0, 0, across, down);
    gl.clearColor(0, 0, 0, 0);
    gl.clearStencil(0);
    gl.clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT | gl.STENCIL_BUFFER_BIT);
    gl.enable(gl.DEPTH_TEST);
    gl.disable(gl.STENCIL_TEST);
    gl.disable(gl.BLEND);
    scene.draw(camera, this._common(wide, high, ratio));
    gl.bindVertexArray(null);
    // Where the model's points are seen: for whoever measures on the picture.
    const [x, y] = camera.project([0, 0, 0]);
    canvas.dataset.seen = JSON.stringify({ turn: camera.turn, scale: camera.scale, origin: [x, y] });
    for (const follow of this.drawn) follow();
  }

  /**
   * @param {number} wide
   * @param {number} high
   * @param {number} ratio
   */
  _common(wide, high, ratio) {
    const { camera } = this, { look } = /** @type {Loaded} */ (this.model).head;
    /** @param {number[]} v */
    const unit = (v) => v.map((part) => part / Math.hypot(...v));
    return {
      turn: camera.turn, middle: camera.middle, shift: camera.shift,
      scale: [2 * camera.scale / wide, 2 * camera.scale / high], deep: 0.3 / camera.reach,
      pixel: [2 / (wide * ratio), 2 / (high * ratio)], wide: 0.35 * ratio,
      nearer: Math.min(6e-4, 0.3 / camera.reach * LINE_NEARER / camera.scale),
      key: unit(look.key), fill: unit(look.fill), sky: look.sky, ground: look.floor,
      keyStrength: look.key_strength, fillStrength: look.fill_strength,
      gleam: look.gleam, sharpness: look.sharpness,
    };
  }
}
