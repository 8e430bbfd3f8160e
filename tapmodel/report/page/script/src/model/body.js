/** The tap's mesh on the graphics card. */

import { buffer, program, setAll } from "./card.js";
import { boxOf, edgeEnds, placesOf } from "./packed.js";
import { BODY, COUNTED } from "./shading/body.js";
import { LINES } from "./shading/lines.js";
import { CAST } from "./shading/shadow.js";

/** @import {TapShape} from "../types" */
/** @import {Loaded} from "./packed.js" */
/** @import {Program} from "./card.js" */

/** @typedef {Record<string, number | number[]>} Values */

const FULL = 65535;
const INK = [0.06, 0.07, 0.08];
const OUTLINE = 0.62, PROFILE = 0.45;
// The profile's edges are drawn from so many pixels of a pitch on, and in full at more.
const TOO_CLOSE = 5, APART = 26;

/** @param {WebGL2RenderingContext} gl */
export function bodyPrograms(gl) {
  return {
    body: program(gl, BODY, ["place", "normal", "kind"]),
    lines: program(gl, LINES, ["corner", "first", "last"]),
    counted: program(gl, COUNTED, ["place"]),
    cast: program(gl, CAST, ["place"]),
  };
}

/**
 * The tap's own numbers for the programs.
 * @param {TapShape} shape
 * @returns {Values}
 */
export function tapValues(shape) {
  const { crest, root } = shape.profile;
  return {
    pitch: shape.pitch, lead: shape.lead, firstZ: shape.first_z, edge: shape.edge,
    lands: shape.lands, hand: shape.hand, point: shape.point, cone: shape.cone,
    threadEnd: shape.thread_end, fullDepth: shape.full_depth,
    cutter: [shape.centre, shape.offset, shape.ball],
    crest: [crest.half, crest.radius, crest.arc, crest.centre],
    root: [root.half, root.radius, root.arc, root.centre],
    advance: shape.lead / (2 * Math.PI),
  };
}

export class Body {
  /**
   * @param {WebGL2RenderingContext} gl
   * @param {ReturnType<typeof bodyPrograms>} programs
   * @param {Loaded} model
   */
  constructor(gl, programs, model) {
    this.gl = gl;
    this.programs = programs;
    const { head, arrays } = model;
    this.head = head;
    this.box = boxOf(head);
    this.faces = { places: placesOf(model), triangles: arrays.triangles };
    this.values = {
      low: head.low, span: head.step.map((v) => v * FULL), ...tapValues(head.shape),
      turnedColour: head.look.turned, groundColour: head.look.ground,
      plainColour: head.look.plain, straw: head.look.straw,
      frontRim: head.shape.front_centre / 2,
      inMaking: 0, generatedTo: 0, flutesDone: head.shape.lands, cutterAt: 0,
      spin: [1, 0], moved: [0, 0, 0],
    };
    this.count = 3 * head.triangles;
    this.wide = arrays.triangles.BYTES_PER_ELEMENT === 2 ? gl.UNSIGNED_SHORT : gl.UNSIGNED_INT;
    /** @type {(WebGLBuffer | null)[]} */
    this.buffers = [];
    this.solid = gl.createVertexArray();
    gl.bindVertexArray(this.solid);
    this._attribute(0, arrays.places, 3, gl.UNSIGNED_SHORT, true);
    this._attribute(1, arrays.normals, 2, gl.SHORT, true);
    this._attribute(2, arrays.kinds, 1, gl.UNSIGNED_BYTE, false);
    this.buffers.push(buffer(gl, gl.ELEMENT_ARRAY_BUFFER, arrays.triangles));
    this.wire = gl.createVertexArray();
    gl.bindVertexArray(this.wire);
    const corners = new Float32Array([0, -1, 1, -1, 1, 1, 0, -1, 1, 1, 0, 1]);
    this._attribute(0, corners, 2, gl.FLOAT, false);
    this.ends = buffer(gl, gl.ARRAY_BUFFER, edgeEnds(arrays));
    this.buffers.push(this.ends);
    for (const place of [1, 2]) {
      gl.enableVertexAttribArray(place);
      gl.vertexAttribDivisor(place, 1);
    }
    gl.bindVertexArray(null);
  }

  /**
   * @param {number} place
   * @param {BufferSource} content
   * @param {number} width
   * @param {number} kind
   * @param {boolean} whole numbers stand for shares of one
   */
  _attribute(place, content, width, kind, whole) {
    const gl = this.gl;
    this.buffers.push(buffer(gl, gl.ARRAY_BUFFER, content));
    gl.enableVertexAttribArray(place);
    gl.vertexAttribPointer(place, width, kind, whole, 0, 0);
  }

  /**
   * @param {Program} with_
   * @param {...Values} values
   */
  _triangles(with_, ...values) {
    const gl = this.gl;
    gl.useProgram(with_.made);
    for (const some of [this.values, ...values]) setAll(gl, with_, some);
    gl.bindVertexArray(this.solid);
    gl.drawElements(gl.TRIANGLES, this.count, this.wide, 0);
  }

  /** @param {...Values} values */
  draw(...values) {
    this._triangles(this.programs.body, ...values);
  }

  /** @param {...Values} values */
  cast(...values) {
    this._triangles(this.programs.cast, ...values);
  }

  /**
   * Leave in the stencil where the kept side of a plane is cut.
   * @param {number[]} plane
   * @param {...Values} values
   */
  count_(plane, ...values) {
    const gl = this.gl;
    gl.clear(gl.STENCIL_BUFFER_BIT);
    gl.enable(gl.STENCIL_TEST);
    gl.stencilFunc(gl.ALWAYS, 0, 255);
    gl.stencilOpSeparate(gl.FRONT, gl.KEEP, gl.KEEP, gl.DECR_WRAP);
    gl.stencilOpSeparate(gl.BACK, gl.KEEP, gl.KEEP, gl.INCR_WRAP);
    gl.colorMask(false, false, false, false);
    gl.depthMask(false);
    gl.disable(gl.DEPTH_TEST);
    this._triangles(this.programs.counted, ...values, { plane });
    gl.enable(gl.DEPTH_TEST);
    gl.depthMask(true);
    gl.colorMask(true, true, true, true);
    gl.stencilOp(gl.KEEP, gl.KEEP, gl.KEEP);
  }

  /**
   * Edges where surfaces meet; those of the profile only where they do not run into each other.
   * @param {number} pixels of a millimetre
   * @param {...Values} values
   */
  lines(pixels, ...values) {
    const { gl, head } = this, { lines } = this.programs;
    const room = pixels * head.shape.pitch;
    const clear = Math.min(Math.max((room - TOO_CLOSE) / (APART - TOO_CLOSE), 0), 1);
    gl.useProgram(lines.made);
    for (const some of [this.values, ...values]) setAll(gl, lines, some);
    gl.bindVertexArray(this.wire);
    const parts = [[0, head.edges - head.fine, OUTLINE], [head.edges - head.fine, head.fine, PROFILE * clear]];
    for (const [from, count, strength] of parts) {
      if (count <= 0 || strength <= 0) continue;
      setAll(gl, lines, { ink: [...INK, strength] });
      gl.bindBuffer(gl.ARRAY_BUFFER, this.ends);
      gl.vertexAttribPointer(1, 3, gl.UNSIGNED_SHORT, true, 12, 12 * from);
      gl.vertexAttribPointer(2, 3, gl.UNSIGNED_SHORT, true, 12, 12 * from + 6);
      gl.drawArraysInstanced(gl.TRIANGLES, 0, 6, count);
    }
  }

  drop() {
    this.gl.deleteVertexArray(this.solid);
    this.gl.deleteVertexArray(this.wire);
    for (const made of this.buffers) this.gl.deleteBuffer(made);
  }
}
