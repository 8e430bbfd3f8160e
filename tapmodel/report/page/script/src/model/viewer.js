/** The model drawn by the graphics card. */

import { buffer, program } from "./card.js";
import { product, turned } from "./rotation.js";
import { FACES, LINES } from "./shaders.js";
import { VIEWS } from "./views.js";

/** @import {PackedModel} from "../types" */

/** The model on a canvas, turned, moved and cut. */
export class Viewer {
  /**
   * @param {HTMLCanvasElement} canvas
   * @param {PackedModel} packed
   * @param {ArrayBuffer} bytes its data, unpacked
   */
  constructor(canvas, packed, bytes) {
    this.canvas = canvas;
    const gl = canvas.getContext("webgl2", { antialias: true, stencil: true });
    if (!gl) throw new Error("no WebGL 2");
    this.gl = gl;
    this.span = packed.step.map((v) => v * 65535);
    this.low = packed.low;
    this.middle = this.low.map((v, n) => v + this.span[n] / 2);
    this.faces = program(gl, FACES);
    this.lines = program(gl, LINES);
    let from = 0;
    /** @param {keyof PackedModel["lengths"]} name */
    const part = (name) => {
      const length = packed.lengths[name];
      const found = new Uint8Array(bytes, from, length);
      from += length;
      return found;
    };
    this.solid = gl.createVertexArray();
    gl.bindVertexArray(this.solid);
    this._attribute(0, buffer(gl, gl.ARRAY_BUFFER, part("places")), gl.UNSIGNED_SHORT, 6);
    this._attribute(1, buffer(gl, gl.ARRAY_BUFFER, part("normals")), gl.BYTE, 3);
    this.count = packed.lengths.triangles / 4;
    buffer(gl, gl.ELEMENT_ARRAY_BUFFER, part("triangles"));
    this.wire = gl.createVertexArray();
    gl.bindVertexArray(this.wire);
    this.ends = packed.lengths.edges / 6;
    this._attribute(0, buffer(gl, gl.ARRAY_BUFFER, part("edges")), gl.UNSIGNED_SHORT, 6);
    gl.bindVertexArray(null);
    this.cut = -1e9;
    this.waiting = false;
    this.turn = VIEWS.quarter;
    this.shift = [0, 0];
    this.zoom = 1;
    this.look("quarter");
  }

  /**
   * @param {number} place
   * @param {WebGLBuffer} made
   * @param {number} kind
   * @param {number} stride
   */
  _attribute(place, made, kind, stride) {
    const gl = this.gl;
    gl.bindBuffer(gl.ARRAY_BUFFER, made);
    gl.enableVertexAttribArray(place);
    gl.vertexAttribPointer(place, 3, kind, true, stride, 0);
  }

  /** @param {string} name */
  look(name) {
    this.turn = VIEWS[name].slice();
    this.shift = [0, 0];
    this.fit();
  }

  fit() {
    const [w, h] = this._size();
    let across = 0, up = 0;
    for (let n = 0; n < 8; n++) {
      const corner = this.span.map((v, k) => (n & (1 << k) ? v / 2 : -v / 2));
      /** @param {number} row */
      const at = (row) => this.turn[row] * corner[0] + this.turn[3 + row] * corner[1]
        + this.turn[6 + row] * corner[2];
      across = Math.max(across, Math.abs(at(0)));
      up = Math.max(up, Math.abs(at(1)));
    }
    this.zoom = 0.92 / Math.max(up, across * h / w);
    this.draw();
  }

  _size() { return [this.canvas.clientWidth || 1, this.canvas.clientHeight || 1]; }

  /**
   * @param {number} dx [rad]
   * @param {number} dy
   */
  spin(dx, dy) {
    const step = product(turned([0, 1, 0], dx), turned([1, 0, 0], dy));
    this.turn = product(step, this.turn);
    this.draw();
  }

  /**
   * @param {number} dx [px]
   * @param {number} dy
   */
  move(dx, dy) {
    const [w, h] = this._size();
    this.shift = [this.shift[0] + 2 * dx / w, this.shift[1] - 2 * dy / h];
    this.draw();
  }

  /** @param {number} factor */
  scale(factor) {
    this.zoom = Math.min(Math.max(this.zoom * factor, 1e-3), 1e2);
    this.shift = this.shift.map((v) => v * factor);
    this.draw();
  }

  draw() {
    if (this.waiting) return;
    this.waiting = true;
    requestAnimationFrame(() => { this.waiting = false; this._draw(); });
  }

  _draw() {
    const gl = this.gl;
    const ratio = window.devicePixelRatio || 1;
    const [w, h] = this._size();
    const [wide, high] = [Math.round(w * ratio), Math.round(h * ratio)];
    if (this.canvas.width !== wide || this.canvas.height !== high) {
      this.canvas.width = wide;
      this.canvas.height = high;
    }
    gl.viewport(0, 0, wide, high);
    gl.clearColor(0, 0, 0, 0);
    gl.clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT | gl.STENCIL_BUFFER_BIT);
    gl.enable(gl.DEPTH_TEST);
    // The stencil is 1 where the cut face is seen, so that no edge behind it shows through.
    gl.enable(gl.STENCIL_TEST);
    gl.stencilOpSeparate(gl.FRONT, gl.KEEP, gl.KEEP, gl.ZERO);
    gl.stencilOpSeparate(gl.BACK, gl.KEEP, gl.KEEP, gl.REPLACE);
    const dark = matchMedia("(prefers-color-scheme: dark)").matches;
    for (const array of [this.solid, this.wire]) {
      const { made, at } = array === this.solid ? this.faces : this.lines;
      gl.useProgram(made);
      gl.bindVertexArray(array);
      gl.uniformMatrix3fv(at("turn"), false, this.turn);
      gl.uniform3fv(at("low"), this.low);
      gl.uniform3fv(at("span"), this.span);
      gl.uniform3fv(at("middle"), this.middle);
      gl.uniform2f(at("scale"), this.zoom * h / w, this.zoom);
      gl.uniform2fv(at("shift"), this.shift);
      gl.uniform1f(at("deep"), 1.9 / Math.hypot(...this.span));
      gl.uniform1f(at("cut"), this.cut);
      if (array === this.solid) {
        gl.stencilFunc(gl.ALWAYS, 1, 1);
        gl.uniform3f(at("inside"), 0.45, 0.62, 0.82);
        gl.drawElements(gl.TRIANGLES, this.count, gl.UNSIGNED_INT, 0);
      } else {
        gl.stencilFunc(gl.EQUAL, 0, 1);
        const ink = dark ? 0.05 : 0.10;
        gl.uniform3f(at("ink"), ink, ink, ink);
        gl.drawArrays(gl.LINES, 0, this.ends);
      }
    }
  }
}
