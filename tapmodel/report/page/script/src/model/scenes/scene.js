/** What scenes of the tap share: their programs, and how simple parts and edges are drawn. */

import { program, setAll } from "../card.js";
import { CHIPS, PLAIN } from "../shading/plain.js";
import { THREAD } from "../shading/thread.js";
import { Caps, NOTHING } from "./caps.js";
import { Shadow } from "./shadow.js";

/** @import {Values} from "../body.js" */
/** @import {Mesh} from "../card.js" */
/** @import {Box, Camera} from "../looking/camera.js" */

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
export const WHOLE = { cut: NOTHING, quarterA: [0, 0], quarterB: [0, 0] };

/**
 * @param {WebGL2RenderingContext} gl
 * @param {Programs} programs
 * @param {Mesh} mesh
 * @param {Values} values
 */
export function plain(gl, programs, mesh, values) {
  gl.useProgram(programs.plain.made);
  setAll(gl, programs.plain, values);
  mesh.draw();
}

/**
 * @param {WebGL2RenderingContext} gl
 * @param {() => void} draw
 */
export function blended(gl, draw) {
  gl.enable(gl.BLEND);
  gl.blendFunc(gl.ONE, gl.ONE_MINUS_SRC_ALPHA);
  gl.depthMask(false);
  draw();
  gl.depthMask(true);
  gl.disable(gl.BLEND);
}
