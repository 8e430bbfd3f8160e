/** The tap alone, cut open where that is wanted. */

import { blended } from "./scene.js";

/** @import {Body, Values} from "../body.js" */
/** @import {Camera} from "../looking/camera.js" */
/** @import {Cuts} from "./caps.js" */
/** @import {Programs, Scene} from "./scene.js" */

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
