/** Where the model is cut open: solid, hatched faces on the planes of the cut. */

import { Mesh, program, setAll } from "../card.js";
import { CAP } from "../shading/body.js";

/** @import {Body, Values} from "../body.js" */
/** @import {Camera} from "../looking/camera.js" */

export const HATCH = 9; // from line to line [px]
export const NOTHING = -1e9;

/** What is cut away: all below a height, and a quarter. */
export class Cuts {
  constructor() {
    this.height = NOTHING;
    /** Normals of the quarter's two planes, outwards from the metal that stays. */
    this.quarter = [[0, 0], [0, 0]];
  }

  /**
   * Take out the quarter that is seen best, or put it back.
   * @param {boolean} on
   * @param {number[]} towards the eye
   */
  takeQuarter(on, towards) {
    const angle = Math.atan2(towards[1], towards[0]);
    this.quarter = [-1, 1].map((side) =>
      on ? [Math.cos(angle + side * Math.PI / 4), Math.sin(angle + side * Math.PI / 4)] : [0, 0]);
  }

  get hasQuarter() { return this.quarter[0][0] !== 0 || this.quarter[0][1] !== 0; }

  get any() { return this.hasQuarter || this.height > NOTHING; }

  /** @returns {Values} */
  get values() {
    return { cut: this.height, quarterA: this.quarter[0], quarterB: this.quarter[1] };
  }

  /** @param {number[]} p */
  gone(p) {
    const [a, b] = this.quarter;
    return p[2] < this.height
      || (p[0] * a[0] + p[1] * a[1] > 0 && p[0] * b[0] + p[1] * b[1] > 0);
  }

  /** Planes of the cut: normal out of the metal, distance along it, its number. */
  get planes() {
    /** @type {{normal: number[], far: number, which: number}[]} */
    const found = [];
    if (this.height > NOTHING) found.push({ normal: [0, 0, -1], far: -this.height, which: 0 });
    if (this.hasQuarter)
      this.quarter.forEach(([x, y], n) => found.push({ normal: [x, y, 0], far: 0, which: n + 1 }));
    return found;
  }
}

export class Caps {
  /** @param {WebGL2RenderingContext} gl */
  constructor(gl) {
    this.gl = gl;
    this.program = program(gl, CAP, ["corner"]);
    const corners = new Float32Array([-1, -1, 1, -1, 1, 1, -1, 1]);
    this.square = new Mesh(gl, { corners, triangles: new Uint32Array([0, 1, 2, 0, 2, 3]) }, [2]);
  }

  /**
   * @param {Body} body
   * @param {Cuts} cuts
   * @param {Camera} camera
   * @param {Values} common
   */
  draw(body, cuts, camera, common) {
    const gl = this.gl;
    for (const { normal, far, which } of cuts.planes) {
      const facing = camera.seen(normal);
      if (facing[2] <= 1e-3) continue;
      const plane = [...normal, far];
      body.count_(plane, common);
      gl.stencilFunc(gl.NOTEQUAL, 0, 255);
      gl.useProgram(this.program.made);
      const across = which === 0 ? [1, 0, 0] : [-normal[1], normal[0], 0];
      const up = which === 0 ? [0, 1, 0] : [0, 0, 1];
      const origin = which === 0 ? [0, 0, -far] : [0, 0, camera.middle[2]];
      const values = {
        across, up, origin, plane, facing, reach: 3 * camera.reach, whichNumber: which,
        spacing: HATCH * Math.SQRT2 / camera.scale, capColour: body.head.look.cap,
        spin: [1, 0], moved: [0, 0, 0],
      };
      for (const some of [common, cuts.values, values]) setAll(gl, this.program, some);
      this.square.draw();
      gl.disable(gl.STENCIL_TEST);
    }
  }
}
