/** What can be shown of a tap: alone, in its hole, in the making. */

import { Caps, Cuts, HATCH, NOTHING } from "./caps.js";
import { Mesh, program, setAll } from "./card.js";
import { tapValues } from "./body.js";
import { blankGrids, workGrids } from "./grids.js";
import { millSolids, workSides } from "./setup.js";
import { ribbons } from "./ribbons.js";
import { Shadow } from "./shadow.js";
import { CHIPS, PLAIN } from "./shading/plain.js";
import { BACK, BLANK, BLANK_FRONT, BORE, CUT_FACE, FACE, THREAD } from "./shading/thread.js";
import { inHole, inMaking } from "./motion.js";

/** @import {Body, Values} from "./body.js" */
/** @import {Camera, Box} from "./camera.js" */

/**
 * @typedef {object} Scene
 * @property {string} view from which it is looked at first
 * @property {() => Box} box
 * @property {(camera: Camera, common: Values) => void} draw
 * @property {() => void} drop
 */

/** @param {WebGL2RenderingContext} gl */
export function scenePrograms(gl) {
  return {
    thread: program(gl, THREAD, ["grid"]),
    plain: program(gl, PLAIN, ["place", "normal"]),
    chips: program(gl, CHIPS, ["place", "normal", "told"]),
    caps: new Caps(gl),
    shadow: new Shadow(gl),
  };
}

/** @typedef {ReturnType<typeof scenePrograms>} Programs */

/** Nothing is cut away. */
const WHOLE = { cut: NOTHING, quarterA: [0, 0], quarterB: [0, 0] };

/** @implements {Scene} */
export class Alone {
  /**
   * @param {WebGL2RenderingContext} gl
   * @param {Programs} programs
   * @param {Body} body
   * @param {Cuts} cuts
   */
  constructor(gl, programs, body, cuts) {
    this.gl = gl;
    this.programs = programs;
    this.body = body;
    this.cuts = cuts;
    this.view = "quarter";
  }

  box() { return this.body.box; }

  /** @param {Camera} camera @param {Values} common */
  draw(camera, common) {
    const { gl, body, cuts } = this;
    const all = { ...common, ...cuts.values };
    this.programs.shadow.draw(body, camera, all);
    if (cuts.any) this.programs.caps.draw(body, cuts, camera, all);
    body.draw(all);
    blended(gl, () => body.lines(camera.scale, all));
  }

  drop() {}
}

/** The tap turns into its hole and cuts. */
export class InHoleScene {
  /**
   * @param {WebGL2RenderingContext} gl
   * @param {Programs} programs
   * @param {Body} body
   */
  constructor(gl, programs, body) {
    this.gl = gl;
    this.programs = programs;
    this.body = body;
    this.view = "hole";
    const { shape, hole } = body.head;
    if (!hole) throw new Error("no hole is foreseen");
    this.shape = shape;
    this.hole = hole;
    this.deep = hole.blind ? hole.depth + 0.75 * hole.drill : hole.depth;
    this.half = 1.05 * shape.major;
    const grids = workGrids(shape, this.deep);
    this.bore = new Mesh(gl, grids.bore, [4]);
    this.cuts = grids.cuts.map((one) => new Mesh(gl, one, [4]));
    this.faces = grids.faces.map((one) => new Mesh(gl, one, [4]));
    this.sides = new Mesh(gl, workSides(this.half, BACK * this.half, this.deep), [3, 3]);
    const made = ribbons(shape, hole.chips);
    this.chips = hole.chips.length ? new Mesh(gl, made.mesh, [3, 3, 3]) : null;
    this.numbers = made.places;
    this.entered = 0;
  }

  box() {
    const { half, deep, shape } = this;
    return {
      low: [-half, -BACK * half, -deep],
      high: [half, BACK * half, Math.max(shape.thread_end, 0.6 * deep)],
    };
  }

  /** How the tap stands. */
  get placed() {
    return inHole(this.shape, this.entered);
  }

  /** @param {Camera} camera @param {Values} common */
  draw(camera, common) {
    const { gl, body, shape, hole, programs } = this;
    const { look } = body.head, { spin, moved } = this.placed;
    body.draw(common, WHOLE, { spin, moved });
    const { before } = hole;
    const still = { ...common, spin: [1, 0], moved: [0, 0, 0], hand: shape.hand };
    const work = {
      ...tapValues(shape), ...still, surface: look.work, entered: this.entered,
      blind: hole.blind ? 1 : 0, hole: [hole.drill / 2, hole.depth, this.deep, this.half],
      crestBefore: before ? flat(before.crest) : [0, 0, 0, 0],
      rootBefore: before ? flat(before.root) : [0, 0, 0, 0],
      spacing: HATCH * Math.SQRT2 / camera.scale, frontRim: 0,
    };
    for (const [part, meshes] of /** @type {[number, Mesh[]][]} */ ([
      [BORE, [this.bore]], [CUT_FACE, this.cuts], [FACE, this.faces],
    ])) {
      gl.useProgram(programs.thread.made);
      setAll(gl, programs.thread, { ...work, partNumber: part });
      for (const mesh of meshes) mesh.draw();
    }
    plain(gl, programs, this.sides, { ...still, hand: 1, surface: look.work, polish: 0.6 });
    if (this.chips) {
      gl.useProgram(programs.chips.made);
      setAll(gl, programs.chips, {
        ...common, hand: shape.hand, spin, moved, entered: this.entered, longest: shape.lead,
        bottom: hole.blind ? 1e6 : hole.depth + shape.pitch, thin: look.thin, thick: look.thick,
      });
      this.chips.draw();
    }
    blended(gl, () => body.lines(camera.scale, common, WHOLE, { spin, moved }));
  }

  drop() {
    for (const mesh of [this.bore, ...this.cuts, ...this.faces, this.sides, this.chips]) mesh?.drop();
  }
}

/** Flute by flute, in the dividing head. */
export class MillScene {
  /**
   * @param {WebGL2RenderingContext} gl
   * @param {Programs} programs
   * @param {Body} body
   */
  constructor(gl, programs, body) {
    this.gl = gl;
    this.programs = programs;
    this.body = body;
    this.view = "mill";
    const { shape, mill } = body.head;
    this.shape = shape;
    this.ratio = mill.ratio;
    this.to = Math.min(shape.runout + 0.3 * shape.ball, shape.square_start);
    const grids = blankGrids(shape, this.to);
    this.side = new Mesh(gl, grids.side, [4]);
    this.front = new Mesh(gl, grids.front, [4]);
    const solids = millSolids(shape, body.box.high[2]);
    /** @param {import("./solids.js").Solid} content */
    const mesh = (content) => new Mesh(gl, {
      corners: new Float32Array(content.corners), triangles: new Uint32Array(content.triangles),
    }, [3, 3]);
    this.cutter = mesh(solids.cutter);
    this.chuck = mesh(solids.chuck);
    this.head = mesh(solids.head);
    this.plate = mesh(solids.plate);
    this.crank = mesh(solids.crank);
    this.crankAt = solids.crankAt;
    this.tailstock = mesh(solids.tailstock);
    this.bounds = solids.box;
    this.progress = 0;
  }

  box() { return this.bounds; }

  get placed() { return inMaking(this.shape, this.progress, this.ratio); }

  /** @param {Camera} camera @param {Values} common */
  draw(camera, common) {
    const { gl, body, shape, programs } = this, { look } = body.head;
    const { spin, cutter, done, cutterAt, crank } = this.placed;
    const making = {
      inMaking: 1, generatedTo: this.to, flutesDone: done, cutterAt, spin, moved: [0, 0, 0],
    };
    body.draw(common, WHOLE, making);
    const corners = [...shape.turned.slice(0, 6)];
    while (corners.length < 6) corners.push(corners[corners.length - 1]);
    const blank = {
      ...tapValues(shape), ...common, ...making, surface: look.turned, corners: corners.flat(),
      hole: [0, 0, 0, 1], frontRim: shape.front_centre / 2, entered: 0, blind: 0, spacing: 1,
      crestBefore: [0, 0, 0, 0], rootBefore: [0, 0, 0, 0],
    };
    gl.useProgram(programs.thread.made);
    setAll(gl, programs.thread, { ...blank, partNumber: BLANK });
    this.side.draw();
    setAll(gl, programs.thread, { partNumber: BLANK_FRONT, surface: look.plain });
    this.front.draw();
    const still = { ...common, hand: 1, spin: [1, 0], moved: [0, 0, 0], polish: 0.7 };
    plain(gl, programs, this.head, { ...still, surface: look.head, polish: 0.3 });
    plain(gl, programs, this.plate, { ...still, surface: look.plain });
    plain(gl, programs, this.chuck, { ...still, spin, surface: look.head, polish: 0.8 });
    plain(gl, programs, this.cutter, { ...still, moved: cutter, surface: look.cutter, polish: 1 });
    // In front of the cutting end the centre would hide what is looked at.
    if (camera.towards[2] > -0.9)
      plain(gl, programs, this.tailstock, { ...still, surface: look.head, polish: 0.6 });
    this._crank(common, crank);
  }

  /** The crank turns about its own axis, which lies across the tap's. @param {Values} common @param {number} angle */
  _crank(common, angle) {
    const { gl, programs } = this, { look } = this.body.head;
    const [x, , z] = this.crankAt, c = Math.cos(angle), s = Math.sin(angle);
    const turn = /** @type {number[]} */ (common.turn), middle = /** @type {number[]} */ (common.middle);
    /** @param {number[]} v */
    const column = (v) => [0, 1, 2].map((row) => turn[row] * v[0] + turn[3 + row] * v[1] + turn[6 + row] * v[2]);
    const rotated = [...column([c, 0, s]), ...column([0, 1, 0]), ...column([-s, 0, c])];
    // What is looked at, seen from the crank's own frame.
    const [mx, mz] = [middle[0] - x, middle[2] - z];
    plain(gl, programs, this.crank, {
      ...common, turn: rotated, middle: [c * mx + s * mz, middle[1], -s * mx + c * mz],
      hand: 1, spin: [1, 0], moved: [0, 0, 0], surface: look.cutter, polish: 0.8,
    });
  }

  drop() {
    for (const mesh of [this.side, this.front, this.cutter, this.chuck, this.head, this.plate,
      this.crank, this.tailstock]) mesh.drop();
  }
}

/** @param {import("../types").Flat} f */
function flat(f) { return [f.half, f.radius, f.arc, f.centre]; }

/**
 * @param {WebGL2RenderingContext} gl
 * @param {Programs} programs
 * @param {Mesh} mesh
 * @param {Values} values
 */
function plain(gl, programs, mesh, values) {
  gl.useProgram(programs.plain.made);
  setAll(gl, programs.plain, values);
  mesh.draw();
}

/**
 * @param {WebGL2RenderingContext} gl
 * @param {() => void} draw
 */
function blended(gl, draw) {
  gl.enable(gl.BLEND);
  gl.blendFunc(gl.ONE, gl.ONE_MINUS_SRC_ALPHA);
  gl.depthMask(false);
  draw();
  gl.depthMask(true);
  gl.disable(gl.BLEND);
}
