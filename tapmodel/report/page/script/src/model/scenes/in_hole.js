/** The tap at work in its hole. */

import { tapValues } from "../body.js";
import { Mesh, setAll } from "../card.js";
import { BACK, BORE, CUT_FACE, FACE } from "../shading/thread.js";
import { HATCH } from "./caps.js";
import { workGrids } from "./grids.js";
import { inHole } from "./motion.js";
import { ribbons } from "./ribbons.js";
import { blended, plain, WHOLE } from "./scene.js";
import { workSides } from "./setup.js";

/** @import {Body, Values} from "../body.js" */
/** @import {Camera} from "../looking/camera.js" */
/** @import {Programs} from "./scene.js" */

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

/** @param {import("../../types").Flat} f */
function flat(f) { return [f.half, f.radius, f.arc, f.centre]; }
