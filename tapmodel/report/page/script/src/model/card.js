/** Programs and buffers on the graphics card. */

/**
 * @param {WebGL2RenderingContext} gl
 * @param {string[]} texts vertex and fragment
 */
export function program(gl, [vertex, fragment]) {
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
  }
  gl.bindAttribLocation(made, 0, "place");
  gl.bindAttribLocation(made, 1, "normal");
  gl.linkProgram(made);
  if (!gl.getProgramParameter(made, gl.LINK_STATUS)) throw new Error(gl.getProgramInfoLog(made) ?? "");
  /** @param {string} name */
  const at = (name) => gl.getUniformLocation(made, name);
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
