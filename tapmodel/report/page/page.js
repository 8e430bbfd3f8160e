"use strict";
const data = JSON.parse(document.getElementById("page-data").textContent);

async function unpacked(text) {
  const bytes = Uint8Array.from(atob(text), (c) => c.charCodeAt(0));
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"));
  return new Response(stream).arrayBuffer();
}

// --- the section that follows the slider ------------------------------------------------------

const SVG = "http://www.w3.org/2000/svg";

function drawn(parent, name, attributes) {
  const node = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) node.setAttribute(key, value);
  parent.append(node);
  return node;
}

// A value in the reader's units: mm, inches, or both.
function inUnits(mm, inches) {
  return { mm, inch: inches, both: `${mm} (${inches})` }[data.units];
}

function lengthText(mm) {
  return inUnits(`${mm.toFixed(2)} mm`, `${(mm / 25.4).toFixed(3)} in`);
}

function areaText(mm2) {
  return inUnits(`${mm2.toFixed(1)} mm²`, `${(mm2 / 645.16).toFixed(4)} in²`);
}

function roundLength(length) {
  const power = 10 ** Math.floor(Math.log10(length));
  return [5, 2, 1].map((n) => n * power).find((n) => n <= length);
}

function sectionView(stations, listener) {
  const svg = document.getElementById("section");
  const slider = document.getElementById("height");
  const reach = data.reach * 1.08;
  const thin = reach / 160;
  svg.setAttribute("viewBox", `${-reach} ${-reach} ${2 * reach} ${2.16 * reach}`);
  const metal = drawn(svg, "path", { class: "metal", "stroke-width": thin });
  const dash = `${4 * thin} ${3 * thin}`;
  for (const diameter of data.circles) {
    const circle = { class: "circle", cx: 0, cy: 0, r: diameter / 2, "stroke-width": thin * 0.7 };
    drawn(svg, "circle", { ...circle, "stroke-dasharray": dash });
  }
  const inches = data.units === "inch";
  const bar = inches ? 25.4 * roundLength(reach / 50.8) : roundLength(reach / 2);
  const low = reach * 1.04;
  drawn(svg, "path", { class: "bar", d: `M${-bar / 2} ${low}h${bar}`, "stroke-width": 2 * thin });
  const text = drawn(svg, "text", {
    x: bar / 2 + 3 * thin, y: low + 3 * thin, "font-size": reach / 11 });
  text.textContent = inches ? `${Number((bar / 25.4).toPrecision(3))} in` : `${bar} mm`;
  slider.max = stations.length - 1;
  const show = () => {
    const station = stations[Number(slider.value)];
    metal.setAttribute("d", station.path);
    document.getElementById("height-text").textContent = `z = ${lengthText(station.z)}`;
    const region = document.getElementById("region");
    region.textContent = `${station.region}, area ${areaText(station.area)}`;
    slider.setAttribute("aria-valuetext", `${lengthText(station.z)}, ${station.region}`);
    listener(station.z);
  };
  slider.addEventListener("input", show);
  const threaded = stations.flatMap((s, n) => (s.region === "thread" ? [n] : []));
  slider.value = threaded[threaded.length >> 1] || 0;
  show();
}

// --- the model to turn ------------------------------------------------------------------------

const FACES = [`#version 300 es
in vec3 place; in vec3 normal;
uniform mat3 turn; uniform vec3 low, span, middle; uniform vec2 scale, shift; uniform float deep;
out vec3 facing; out float height;
void main() {
  vec3 at = low + place * span;
  height = at.z;
  vec3 seen = turn * (at - middle);
  facing = turn * normal;
  gl_Position = vec4(seen.xy * scale + shift, -seen.z * deep, 1.0);
}`, `#version 300 es
precision highp float;
in vec3 facing; in float height;
uniform float cut; uniform vec3 inside;
out vec4 colour;
void main() {
  if (height < cut) discard;
  // The inside of the shell, in one colour, stands for the cut face.
  if (!gl_FrontFacing) { colour = vec4(inside, 1.0); return; }
  vec3 n = normalize(facing);
  float key = max(dot(n, normalize(vec3(-0.4, 0.6, 0.7))), 0.0);
  float fill = max(dot(n, normalize(vec3(0.7, -0.2, 0.5))), 0.0);
  float gleam = pow(max(dot(n, normalize(vec3(-0.2, 0.35, 0.9))), 0.0), 30.0);
  colour = vec4(vec3(0.80, 0.83, 0.86) * (0.24 + 0.58 * key + 0.22 * fill) + 0.10 * gleam, 1.0);
}`];

const LINES = [`#version 300 es
in vec3 place;
uniform mat3 turn; uniform vec3 low, span, middle; uniform vec2 scale, shift; uniform float deep;
out float height;
void main() {
  vec3 at = low + place * span;
  height = at.z;
  vec3 seen = turn * (at - middle);
  gl_Position = vec4(seen.xy * scale + shift, -seen.z * deep - 0.0006, 1.0);
}`, `#version 300 es
precision highp float;
in float height;
uniform float cut; uniform vec3 ink;
out vec4 colour;
void main() { if (height < cut) discard; colour = vec4(ink, 1.0); }`];

function program(gl, [vertex, fragment]) {
  const made = gl.createProgram();
  for (const [kind, text] of [[gl.VERTEX_SHADER, vertex], [gl.FRAGMENT_SHADER, fragment]]) {
    const shader = gl.createShader(kind);
    gl.shaderSource(shader, text);
    gl.compileShader(shader);
    gl.attachShader(made, shader);
  }
  gl.bindAttribLocation(made, 0, "place");
  gl.bindAttribLocation(made, 1, "normal");
  gl.linkProgram(made);
  if (!gl.getProgramParameter(made, gl.LINK_STATUS)) throw new Error(gl.getProgramInfoLog(made));
  const at = (name) => gl.getUniformLocation(made, name);
  return { made, at };
}

function buffer(gl, kind, content) {
  const made = gl.createBuffer();
  gl.bindBuffer(kind, made);
  gl.bufferData(kind, content, gl.STATIC_DRAW);
  return made;
}

function turned(axis, angle) {
  const [x, y, z] = axis;
  const c = Math.cos(angle), s = Math.sin(angle), k = 1 - c;
  return [c + x * x * k, x * y * k + z * s, x * z * k - y * s,
    x * y * k - z * s, c + y * y * k, y * z * k + x * s,
    x * z * k + y * s, y * z * k - x * s, c + z * z * k];
}

function product(a, b) {
  const out = new Array(9).fill(0);
  for (let col = 0; col < 3; col++)
    for (let row = 0; row < 3; row++)
      for (let n = 0; n < 3; n++) out[3 * col + row] += a[3 * n + row] * b[3 * col + n];
  return out;
}

// Columns of the rotation: where x, y and z of the tap point on the screen (right, up, towards us).
const SIDE = [0, 0, -1, 0, 1, 0, 1, 0, 0];
const VIEWS = {
  side: SIDE,
  front: [0, 1, 0, 1, 0, 0, 0, 0, -1],
  rear: [1, 0, 0, 0, 1, 0, 0, 0, 1],
  quarter: product(turned([1, 0, 0], 0.4), product(turned([0, 1, 0], 0.65), SIDE)),
};

class Viewer {
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
    this.cut = -Infinity;
    this.height = 0;
    this.look("quarter");
  }

  _attribute(place, made, kind, stride) {
    const gl = this.gl;
    gl.bindBuffer(gl.ARRAY_BUFFER, made);
    gl.enableVertexAttribArray(place);
    gl.vertexAttribPointer(place, 3, kind, true, stride, 0);
  }

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
      const at = (row) => this.turn[row] * corner[0] + this.turn[3 + row] * corner[1]
        + this.turn[6 + row] * corner[2];
      across = Math.max(across, Math.abs(at(0)));
      up = Math.max(up, Math.abs(at(1)));
    }
    this.zoom = 0.92 / Math.max(up, across * h / w);
    this.draw();
  }

  _size() { return [this.canvas.clientWidth || 1, this.canvas.clientHeight || 1]; }

  spin(dx, dy) {
    const step = product(turned([0, 1, 0], dx), turned([1, 0, 0], dy));
    this.turn = product(step, this.turn);
    this.draw();
  }

  move(dx, dy) {
    const [w, h] = this._size();
    this.shift = [this.shift[0] + 2 * dx / w, this.shift[1] - 2 * dy / h];
    this.draw();
  }

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
    for (const [{ made, at }, array] of [[this.faces, this.solid], [this.lines, this.wire]]) {
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

function handled(viewer) {
  const canvas = viewer.canvas;
  const held = new Map();
  const spread = () => {
    const [a, b] = [...held.values()];
    return [Math.hypot(a.x - b.x, a.y - b.y), (a.x + b.x) / 2, (a.y + b.y) / 2];
  };
  canvas.addEventListener("pointerdown", (event) => {
    canvas.setPointerCapture(event.pointerId);
    held.set(event.pointerId, { x: event.clientX, y: event.clientY });
  });
  canvas.addEventListener("pointermove", (event) => {
    const last = held.get(event.pointerId);
    if (!last) return;
    const now = { x: event.clientX, y: event.clientY };
    if (held.size === 2) {
      const [before, x, y] = spread();
      held.set(event.pointerId, now);
      const [after, x2, y2] = spread();
      viewer.move(x2 - x, y2 - y);
      viewer.scale(after / before);
      return;
    }
    held.set(event.pointerId, now);
    const [dx, dy] = [now.x - last.x, now.y - last.y];
    if (event.shiftKey || event.buttons === 2) viewer.move(dx, dy);
    else viewer.spin(dx * 0.008, dy * 0.008);
  });
  for (const name of ["pointerup", "pointercancel"])
    canvas.addEventListener(name, (event) => held.delete(event.pointerId));
  canvas.addEventListener("contextmenu", (event) => event.preventDefault());
  canvas.addEventListener("wheel", (event) => {
    // Else the page could not be scrolled past the model.
    if (document.activeElement !== canvas) return;
    event.preventDefault();
    viewer.scale(Math.exp(-event.deltaY * 0.0012));
  }, { passive: false });
  const keys = {
    ArrowLeft: () => viewer.spin(-0.12, 0), ArrowRight: () => viewer.spin(0.12, 0),
    ArrowUp: () => viewer.spin(0, -0.12), ArrowDown: () => viewer.spin(0, 0.12),
    "+": () => viewer.scale(1.2), "=": () => viewer.scale(1.2), "-": () => viewer.scale(1 / 1.2),
    0: () => viewer.look("quarter"), Home: () => viewer.look("quarter"),
  };
  canvas.addEventListener("keydown", (event) => {
    if (!(event.key in keys) || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    keys[event.key]();
  });
  for (const button of document.querySelectorAll("button[data-view]"))
    button.addEventListener("click", () => viewer.look(button.dataset.view));
  new ResizeObserver(() => viewer.fit()).observe(canvas);
  matchMedia("(prefers-color-scheme: dark)").addEventListener("change", () => viewer.draw());
}

async function begin() {
  let viewer = null;
  let height = 0;
  const cut = document.getElementById("cut");
  const follow = () => {
    if (!viewer) return;
    viewer.cut = cut && cut.checked ? height : -1e9;
    viewer.draw();
  };
  if (!("DecompressionStream" in window)) {
    document.getElementById("too-old").hidden = false;
    return;
  }
  sectionView(JSON.parse(new TextDecoder().decode(await unpacked(data.stations))), (z) => {
    height = z;
    follow();
  });
  if (data.model) {
    const canvas = document.getElementById("model");
    try {
      viewer = new Viewer(canvas, data.model, await unpacked(data.model.data));
      handled(viewer);
      cut.addEventListener("change", follow);
      follow();
    } catch (error) {
      canvas.hidden = true;
      document.getElementById("no-model").hidden = false;
      document.getElementById("no-model").title = String(error);
    }
  }
  document.documentElement.dataset.ready = "yes";
}

begin();
