/** A soft shadow on a table under the model. The table stands with the eye, not with the model. */

import { Mesh, program, setAll } from "../card.js";
import { BLUR, TABLE } from "../shading/shadow.js";

/** @import {Body, Values} from "../body.js" */
/** @import {Camera} from "../looking/camera.js" */

const SIZE = 256;
const TILT = 0.42; // of the table towards the eye [rad]
const STRENGTH = 0.42;
const BLURRED = 1.1 / SIZE; // from one place that is mixed in to the next
const WIDER = 1.25, FADE = 0.42; // of what is shown: the table, and how high a shadow is cast from

export class Shadow {
  /** @param {WebGL2RenderingContext} gl */
  constructor(gl) {
    this.gl = gl;
    this.blur = program(gl, BLUR, ["corner"]);
    this.table = program(gl, TABLE, ["corner"]);
    const corners = new Float32Array([-1, -1, 1, -1, 1, 1, -1, 1]);
    this.square = new Mesh(gl, { corners, triangles: new Uint32Array([0, 1, 2, 0, 2, 3]) }, [2]);
    this.pictures = [0, 1].map(() => this._picture());
    /** Of what the picture at hand was cast. */
    this.cast = "";
    /** @type {Body | null} */
    this.of = null;
    /** @type {Values} */
    this.values = {};
  }

  _picture() {
    const gl = this.gl, texture = gl.createTexture(), frame = gl.createFramebuffer();
    gl.bindTexture(gl.TEXTURE_2D, texture);
    gl.texStorage2D(gl.TEXTURE_2D, 1, gl.RGBA8, SIZE, SIZE);
    for (const side of [gl.TEXTURE_WRAP_S, gl.TEXTURE_WRAP_T])
      gl.texParameteri(gl.TEXTURE_2D, side, gl.CLAMP_TO_EDGE);
    gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MIN_FILTER, gl.LINEAR);
    gl.bindFramebuffer(gl.FRAMEBUFFER, frame);
    gl.framebufferTexture2D(gl.FRAMEBUFFER, gl.COLOR_ATTACHMENT0, gl.TEXTURE_2D, texture, 0);
    gl.bindFramebuffer(gl.FRAMEBUFFER, null);
    return { texture, frame };
  }

  /**
   * @param {Body} body
   * @param {Camera} camera
   * @param {Values} common
   */
  draw(body, camera, common) {
    const gl = this.gl;
    const cast = JSON.stringify([camera.turn, common.cut]);
    gl.disable(gl.DEPTH_TEST);
    // Zoomed or moved it is the same shadow.
    if (cast !== this.cast || body !== this.of) this._cast(body, camera, common);
    this.cast = cast;
    this.of = body;
    gl.enable(gl.BLEND);
    gl.blendFunc(gl.ONE, gl.ONE_MINUS_SRC_ALPHA);
    gl.bindTexture(gl.TEXTURE_2D, this.pictures[0].texture);
    gl.useProgram(this.table.made);
    for (const some of [common, this.values]) setAll(gl, this.table, some);
    this.square.draw();
    gl.disable(gl.BLEND);
    gl.enable(gl.DEPTH_TEST);
  }

  /**
   * @param {Body} body
   * @param {Camera} camera
   * @param {Values} common
   */
  _cast(body, camera, common) {
    const gl = this.gl, values = (this.values = this._table(body, camera, Number(common.cut)));
    const [first, second] = this.pictures;
    gl.viewport(0, 0, SIZE, SIZE);
    gl.bindFramebuffer(gl.FRAMEBUFFER, first.frame);
    gl.clearColor(0, 0, 0, 0);
    gl.clear(gl.COLOR_BUFFER_BIT);
    gl.enable(gl.BLEND);
    gl.blendEquation(gl.MAX);
    body.cast(common, values);
    gl.blendEquation(gl.FUNC_ADD);
    gl.disable(gl.BLEND);
    gl.useProgram(this.blur.made);
    for (const { from, to, way } of [
      { from: first, to: second, way: [BLURRED, 0] }, { from: second, to: first, way: [0, BLURRED] },
    ]) {
      gl.bindFramebuffer(gl.FRAMEBUFFER, to.frame);
      gl.bindTexture(gl.TEXTURE_2D, from.texture);
      setAll(gl, this.blur, { way });
      this.square.draw();
    }
    gl.bindFramebuffer(gl.FRAMEBUFFER, null);
    gl.viewport(0, 0, gl.drawingBufferWidth, gl.drawingBufferHeight);
  }

  /**
   * Where the table lies: as high as the lowest point, as large as what stands on it.
   * @param {Body} body
   * @param {Camera} camera
   * @param {number} cut
   * @returns {Values}
   */
  _table(body, camera, cut) {
    const t = camera.turn;
    /** Of the model's frame, a direction of the screen. @param {number[]} v */
    const inModel = (v) => [0, 1, 2].map((k) => t[3 * k] * v[0] + t[3 * k + 1] * v[1] + t[3 * k + 2] * v[2]);
    const up = inModel([0, Math.cos(TILT), Math.sin(TILT)]);
    const across = inModel([1, 0, 0]), along = inModel([0, -Math.sin(TILT), Math.cos(TILT)]);
    const reach = extents(body.faces.places, camera.middle, [across, along, up], cut);
    return {
      tableX: across, tableY: along, tableUp: up,
      mid: [0, 1].map((k) => (reach.low[k] + reach.high[k]) / 2),
      half_: [0, 1].map((k) => (reach.high[k] - reach.low[k]) / 2 * WIDER + 0.12 * camera.reach),
      height: reach.low[2], fade: FADE * camera.reach,
      // Of a tap that is looked at end on the shadow would be a long dark road.
      strength: STRENGTH * (1 - camera.towards[2] ** 4),
    };
  }
}

/**
 * Least and greatest of points along three directions.
 * @param {Float32Array} places
 * @param {number[]} middle
 * @param {number[][]} directions
 * @param {number} cut points below it count no more
 */
export function extents(places, middle, directions, cut) {
  const low = [Infinity, Infinity, Infinity], high = [-Infinity, -Infinity, -Infinity];
  for (let n = 0; n < places.length; n += 3) {
    if (places[n + 2] < cut) continue;
    const x = places[n] - middle[0], y = places[n + 1] - middle[1], z = places[n + 2] - middle[2];
    for (let k = 0; k < 3; k++) {
      const d = directions[k], at = x * d[0] + y * d[1] + z * d[2];
      if (at < low[k]) low[k] = at;
      if (at > high[k]) high[k] = at;
    }
  }
  return { low, high };
}
