"use strict";
(() => {
  // src/live/link.js
  var RefusedError = class extends Error {
    /** @param {Refusal} refusal */
    constructor(refusal) {
      super(refusal.message);
      this.field = refusal.field;
    }
  };
  async function asked(path, body, signal) {
    const headers = { "content-type": "application/json" };
    const wanted = { method: "POST", headers, body: JSON.stringify(body), signal };
    let answer;
    try {
      answer = await fetch(path, wanted);
    } catch (error) {
      if (signal?.aborted) throw error;
      throw new RefusedError({ message: "tapmodel does not answer: is it still running?", field: "" });
    }
    if (!answer.ok) throw new RefusedError((await answer.json()).error);
    return answer;
  }

  // src/live/desk.js
  var Desk = class {
    /** @param {PageData & {live: {job: Job, units: Units | null}}} data */
    constructor({ live, view }) {
      this.job = live.job;
      this.units = live.units;
      this.view = view;
      this.followers = [];
      this.complaints = [];
      this.asking = null;
    }
    /**
     * Lay values over the job.
     * @param {Job} values null for a field that rules shall choose again
     */
    async set(values) {
      const laid = Object.entries({ ...this.job, ...values }).filter(([, value]) => value !== null);
      this.job = Object.fromEntries(laid);
      await this.ask();
    }
    async ask() {
      this.asking?.abort();
      const asking = this.asking = new AbortController();
      try {
        const answer = await asked("tap", { job: this.job, units: this.units }, asking.signal);
        const { view } = await answer.json();
        if (asking.signal.aborted) return;
        this.view = view;
        for (const complain of this.complaints) complain(null);
        for (const follow of this.followers) follow(view);
      } catch (error) {
        if (asking.signal.aborted) return;
        if (!(error instanceof RefusedError)) throw error;
        for (const complain of this.complaints) complain(error);
      }
    }
  };

  // src/elements.js
  function pageData() {
    const holder = document.getElementById("page-data");
    return JSON.parse(holder?.textContent ?? "null");
  }
  function element(id, kind) {
    const found = document.getElementById(id);
    if (!(found instanceof kind)) throw new Error(`the page has no ${kind.name} #${id}`);
    return found;
  }
  function made(tag, attributes = {}, ...content) {
    const node = document.createElement(tag);
    dress(node, attributes);
    node.append(...content);
    return node;
  }
  var SVG = "http://www.w3.org/2000/svg";
  function drawn(tag, attributes = {}, ...content) {
    const node = document.createElementNS(SVG, tag);
    dress(node, attributes);
    node.append(...content);
    return node;
  }
  function dress(node, attributes) {
    for (const [name, value] of Object.entries(attributes))
      if (value === true) node.setAttribute(name, "");
      else if (value !== false) node.setAttribute(name, String(value));
  }

  // src/panels/first.js
  function firstPanel() {
    const place = document.getElementById("first");
    return (view) => {
      const figures = view.first.map(({ label, text, beside }) => made("div", {}, made("dt", {}, label), made("dd", {}, text, made("small", {}, beside))));
      place?.replaceChildren(...figures);
    };
  }

  // src/model/handling.js
  function handled(viewer) {
    const canvas = viewer.canvas;
    const held = /* @__PURE__ */ new Map();
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
      else viewer.spin(dx * 8e-3, dy * 8e-3);
    });
    for (
      const name of
      /** @type {const} */
      ["pointerup", "pointercancel"]
    )
      canvas.addEventListener(name, (event) => held.delete(event.pointerId));
    canvas.addEventListener("contextmenu", (event) => event.preventDefault());
    canvas.addEventListener("wheel", (event) => {
      if (document.activeElement !== canvas) return;
      event.preventDefault();
      viewer.scale(Math.exp(-event.deltaY * 12e-4));
    }, { passive: false });
    const keys = {
      ArrowLeft: () => viewer.spin(-0.12, 0),
      ArrowRight: () => viewer.spin(0.12, 0),
      ArrowUp: () => viewer.spin(0, -0.12),
      ArrowDown: () => viewer.spin(0, 0.12),
      "+": () => viewer.scale(1.2),
      "=": () => viewer.scale(1.2),
      "-": () => viewer.scale(1 / 1.2),
      0: () => viewer.look("quarter"),
      Home: () => viewer.look("quarter")
    };
    canvas.addEventListener("keydown", (event) => {
      if (!(event.key in keys) || event.ctrlKey || event.metaKey || event.altKey) return;
      event.preventDefault();
      keys[event.key]();
    });
    for (const button of document.querySelectorAll("button"))
      if (button.dataset.view) {
        const view = button.dataset.view;
        button.addEventListener("click", () => viewer.look(view));
      }
    new ResizeObserver(() => viewer.fit()).observe(canvas);
    matchMedia("(prefers-color-scheme: dark)").addEventListener("change", () => viewer.draw());
  }

  // src/model/card.js
  function program(gl, [vertex, fragment]) {
    const made2 = gl.createProgram();
    const parts = (
      /** @type {[number, string][]} */
      [
        [gl.VERTEX_SHADER, vertex],
        [gl.FRAGMENT_SHADER, fragment]
      ]
    );
    for (const [kind, text] of parts) {
      const shader = gl.createShader(kind);
      if (!shader) throw new Error("the graphics were lost");
      gl.shaderSource(shader, text);
      gl.compileShader(shader);
      gl.attachShader(made2, shader);
    }
    gl.bindAttribLocation(made2, 0, "place");
    gl.bindAttribLocation(made2, 1, "normal");
    gl.linkProgram(made2);
    if (!gl.getProgramParameter(made2, gl.LINK_STATUS)) throw new Error(gl.getProgramInfoLog(made2) ?? "");
    const at = (name) => gl.getUniformLocation(made2, name);
    return { made: made2, at };
  }
  function buffer(gl, kind, content) {
    const made2 = gl.createBuffer();
    gl.bindBuffer(kind, made2);
    gl.bufferData(kind, content, gl.STATIC_DRAW);
    return made2;
  }

  // src/model/rotation.js
  function turned(axis, angle) {
    const [x, y, z] = axis;
    const c = Math.cos(angle), s = Math.sin(angle), k = 1 - c;
    return [
      c + x * x * k,
      x * y * k + z * s,
      x * z * k - y * s,
      x * y * k - z * s,
      c + y * y * k,
      y * z * k + x * s,
      x * z * k + y * s,
      y * z * k - x * s,
      c + z * z * k
    ];
  }
  function product(a, b) {
    const out = new Array(9).fill(0);
    for (let col = 0; col < 3; col++)
      for (let row = 0; row < 3; row++)
        for (let n = 0; n < 3; n++) out[3 * col + row] += a[3 * n + row] * b[3 * col + n];
    return out;
  }

  // src/model/shaders.js
  var FACES = [`#version 300 es
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
  var LINES = [`#version 300 es
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

  // src/model/views.js
  var SIDE = [0, 0, -1, 0, 1, 0, 1, 0, 0];
  var VIEWS = {
    side: SIDE,
    front: [0, 1, 0, 1, 0, 0, 0, 0, -1],
    rear: [1, 0, 0, 0, 1, 0, 0, 0, 1],
    quarter: product(turned([1, 0, 0], 0.4), product(turned([0, 1, 0], 0.65), SIDE))
  };

  // src/model/viewer.js
  var Viewer = class {
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
    _attribute(place, made2, kind, stride) {
      const gl = this.gl;
      gl.bindBuffer(gl.ARRAY_BUFFER, made2);
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
        const corner = this.span.map((v, k) => n & 1 << k ? v / 2 : -v / 2);
        const at = (row) => this.turn[row] * corner[0] + this.turn[3 + row] * corner[1] + this.turn[6 + row] * corner[2];
        across = Math.max(across, Math.abs(at(0)));
        up = Math.max(up, Math.abs(at(1)));
      }
      this.zoom = 0.92 / Math.max(up, across * h / w);
      this.draw();
    }
    _size() {
      return [this.canvas.clientWidth || 1, this.canvas.clientHeight || 1];
    }
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
      this.zoom = Math.min(Math.max(this.zoom * factor, 1e-3), 100);
      this.shift = this.shift.map((v) => v * factor);
      this.draw();
    }
    draw() {
      if (this.waiting) return;
      this.waiting = true;
      requestAnimationFrame(() => {
        this.waiting = false;
        this._draw();
      });
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
      gl.enable(gl.STENCIL_TEST);
      gl.stencilOpSeparate(gl.FRONT, gl.KEEP, gl.KEEP, gl.ZERO);
      gl.stencilOpSeparate(gl.BACK, gl.KEEP, gl.KEEP, gl.REPLACE);
      const dark = matchMedia("(prefers-color-scheme: dark)").matches;
      for (const array of [this.solid, this.wire]) {
        const { made: made2, at } = array === this.solid ? this.faces : this.lines;
        gl.useProgram(made2);
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
          const ink = dark ? 0.05 : 0.1;
          gl.uniform3f(at("ink"), ink, ink, ink);
          gl.drawArrays(gl.LINES, 0, this.ends);
        }
      }
    }
  };

  // src/unpack.js
  async function unpacked(text) {
    const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
    const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"));
    return new Response(stream).arrayBuffer();
  }
  var CAN_UNPACK = "DecompressionStream" in globalThis;

  // src/panels/model.js
  async function modelPanel(model) {
    const canvas = element("model", HTMLCanvasElement);
    const cut = element("cut", HTMLInputElement);
    let height = 0;
    try {
      const viewer = new Viewer(canvas, model, await unpacked(model.data));
      handled(viewer);
      const follow = () => {
        viewer.cut = cut.checked ? height : -1e9;
        viewer.draw();
      };
      cut.addEventListener("change", follow);
      return {
        cutAt(z) {
          height = z;
          follow();
        }
      };
    } catch (error) {
      canvas.hidden = true;
      const none = element("no-model", HTMLElement);
      none.hidden = false;
      none.title = String(error);
      return null;
    }
  }

  // src/units.js
  var MM_PER_INCH = 25.4;
  function inUnits(units, mm, inches) {
    return { mm, inch: inches, both: `${mm} (${inches})` }[units];
  }
  function lengthText(mm, units) {
    return inUnits(units, `${mm.toFixed(2)} mm`, `${(mm / MM_PER_INCH).toFixed(3)} in`);
  }
  function areaText(mm2, units) {
    return inUnits(units, `${mm2.toFixed(1)} mm²`, `${(mm2 / MM_PER_INCH ** 2).toFixed(4)} in²`);
  }
  function roundLength(most, units) {
    const unit = units === "inch" ? MM_PER_INCH : 1;
    const power = 10 ** Math.floor(Math.log10(most / unit));
    const number = ([5, 2, 1].find((n) => n * power <= most / unit) ?? 1) * power;
    const text = `${Number(number.toPrecision(3))} ${units === "inch" ? "in" : "mm"}`;
    return { mm: number * unit, text };
  }

  // src/panels/section.js
  function sectionPanel(sections, frame, listener) {
    const svg = element("section", SVGSVGElement);
    const slider = element("height", HTMLInputElement);
    const [heightText, regionText] = [element("height-text", HTMLElement), element("region", HTMLElement)];
    const reach = frame.reach * 1.08;
    const thin = reach / 160;
    svg.setAttribute("viewBox", `${-reach} ${-reach} ${2 * reach} ${2.16 * reach}`);
    const metal = drawn("path", { class: "metal", "stroke-width": thin });
    svg.append(metal, ...frame.circles.map((diameter) => circle(diameter, thin)), ...bar(reach, thin, frame.units));
    slider.max = String(sections.length - 1);
    const show = () => {
      const { z, region, area, path } = sections[Number(slider.value)];
      metal.setAttribute("d", path);
      heightText.textContent = `z = ${lengthText(z, frame.units)}`;
      regionText.textContent = `${region}, area ${areaText(area, frame.units)}`;
      slider.setAttribute("aria-valuetext", `${lengthText(z, frame.units)}, ${region}`);
      listener(z);
    };
    slider.addEventListener("input", show);
    const threaded = sections.flatMap((section, n) => section.region === "thread" ? [n] : []);
    slider.value = String(threaded[threaded.length >> 1] || 0);
    show();
  }
  function circle(diameter, thin) {
    const dash = `${4 * thin} ${3 * thin}`;
    const at = { cx: 0, cy: 0, r: diameter / 2 };
    return drawn("circle", { class: "circle", ...at, "stroke-width": thin * 0.7, "stroke-dasharray": dash });
  }
  function bar(reach, thin, units) {
    const length = roundLength(reach / 2, units);
    const low = reach * 1.04;
    const line = `M${-length.mm / 2} ${low}h${length.mm}`;
    const place = { x: length.mm / 2 + 3 * thin, y: low + 3 * thin, "font-size": reach / 11 };
    return [
      drawn("path", { class: "bar", d: line, "stroke-width": 2 * thin }),
      drawn("text", place, length.text)
    ];
  }

  // src/page.js
  async function begin(data) {
    if (!CAN_UNPACK) {
      const tooOld = document.getElementById("too-old");
      if (tooOld) tooOld.hidden = false;
      return;
    }
    const { live, view } = data;
    const follow = firstPanel();
    if (view) follow(view);
    const model = data.model ? await modelPanel(data.model) : null;
    if (view && data.stations) {
      const stations = JSON.parse(new TextDecoder().decode(await unpacked(data.stations)));
      sectionPanel(stations, { ...view.frame, units: view.units }, (z) => model?.cutAt(z));
    }
    if (live) {
      const desk = new Desk({ ...data, live });
      desk.followers.push(follow);
    }
    document.documentElement.dataset.ready = "yes";
  }
  begin(pageData());
})();
