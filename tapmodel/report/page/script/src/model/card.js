/** Programs, buffers and textures on the graphics card. */

/**
 * @typedef {object} Program
 * @property {WebGLProgram} made
 * @property {(name: string) => WebGLUniformLocation | null} at
 */

/**
 * @param {WebGL2RenderingContext} gl
 * @param {string[]} texts vertex and fragment
 * @param {string[]} attributes in the order of their places
 * @returns {Program}
 */
export function program(gl, [vertex, fragment], attributes) {
  const made = gl.createProgram();
  const parts = /** @type {[number, string][]} */ ([
    [gl.VERTEX_SHADER, vertex], [gl.FRAGMENT_SHADER, fragment],
  ]);
  for (const [kind, text] of parts) {
    const shader = gl.createShader(kind);
    if (!shader) throw new Error("the graphics were lost");
    gl.shaderSource(shader, text);
    gl.compileShader(shader);
    gl.attachShader(made, shader);
    if (!gl.getShaderParameter(shader, gl.COMPILE_STATUS) && !gl.isContextLost())
      throw new Error(gl.getShaderInfoLog(shader) ?? "");
  }
  attributes.forEach((name, place) => gl.bindAttribLocation(made, place, name));
  gl.linkProgram(made);
  if (!gl.getProgramParameter(made, gl.LINK_STATUS) && !gl.isContextLost())
    throw new Error(gl.getProgramInfoLog(made) ?? "");
  /** @type {Map<string, WebGLUniformLocation | null>} */
  const known = new Map();
  /** @param {string} name */
  const at = (name) => {
    if (!known.has(name)) known.set(name, gl.getUniformLocation(made, name));
    return known.get(name) ?? null;
  };
  return { made, at };
}

/**
 * @param {WebGL2RenderingContext} gl
 * @param {number} kind
 * @param {BufferSource} content
 */
export function buffer(gl, kind, content) {
  const made = gl.createBuffer();
  gl.bindBuffer(kind, made);
  gl.bufferData(kind, content, gl.STATIC_DRAW);
  return made;
}

/**
 * Uniforms by name: a number, two to four, or nine or more for matrices and lists of four.
 * @param {WebGL2RenderingContext} gl
 * @param {Program} into
 * @param {Record<string, number | number[]>} values
 */
export function setAll(gl, into, values) {
  for (const [name, value] of Object.entries(values)) {
    const at = into.at(name);
    if (!at) continue;
    if (typeof value === "number") gl.uniform1f(at, value);
    else if (value.length === 9) gl.uniformMatrix3fv(at, false, value);
    else if (value.length === 2) gl.uniform2fv(at, value);
    else if (value.length === 3) gl.uniform3fv(at, value);
    else gl.uniform4fv(at, value);
  }
}

/** Meshes of the script's own: corners of `per` numbers each, and triangles. */
export class Mesh {
  /**
   * @param {WebGL2RenderingContext} gl
   * @param {{corners: Float32Array<ArrayBuffer>, triangles: Uint32Array<ArrayBuffer>}} content
   * @param {number[]} widths of the attributes, one behind the other
   */
  constructor(gl, { corners, triangles }, widths) {
    this.gl = gl;
    this.count = triangles.length;
    this.array = gl.createVertexArray();
    gl.bindVertexArray(this.array);
    this.buffers = [
      buffer(gl, gl.ARRAY_BUFFER, corners), buffer(gl, gl.ELEMENT_ARRAY_BUFFER, triangles),
    ];
    const stride = 4 * widths.reduce((sum, width) => sum + width, 0);
    let from = 0;
    widths.forEach((width, place) => {
      gl.enableVertexAttribArray(place);
      gl.vertexAttribPointer(place, width, gl.FLOAT, false, stride, from);
      from += 4 * width;
    });
    gl.bindVertexArray(null);
  }

  draw() {
    this.gl.bindVertexArray(this.array);
    this.gl.drawElements(this.gl.TRIANGLES, this.count, this.gl.UNSIGNED_INT, 0);
  }

  drop() {
    this.gl.deleteVertexArray(this.array);
    for (const made of this.buffers) this.gl.deleteBuffer(made);
  }
}
