/** The tap in the making. */

import { tapValues } from "../body.js";
import { Mesh, setAll } from "../card.js";
import { BLANK, BLANK_FRONT } from "../shading/thread.js";
import { blankGrids } from "./grids.js";
import { inMaking } from "./motion.js";
import { plain, WHOLE } from "./scene.js";
import { millSolids } from "./setup.js";

/** @import {Body, Values} from "../body.js" */
/** @import {Camera} from "../looking/camera.js" */
/** @import {Programs} from "./scene.js" */

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
