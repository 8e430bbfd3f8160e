import assert from "node:assert/strict";
import { test } from "node:test";
import { Camera } from "../../../tapmodel/report/page/script/src/model/looking/camera.js";
import { product, turned } from "../../../tapmodel/report/page/script/src/model/looking/rotation.js";
import { facingView, VIEWS } from "../../../tapmodel/report/page/script/src/model/looking/views.js";

const BOX = { low: [-5, -5, 0], high: [5, 5, 80] };
const near = (a, b, by = 1e-9) => a.forEach((v, k) => assert.ok(Math.abs(v - b[k]) <= by, `${a} is not ${b}`));

test("a quarter turn about z brings x to y", () => {
  near(turned([0, 0, 1], Math.PI / 2).slice(0, 3), [0, 1, 0], 1e-12);
});

test("turns about one axis add up, and every view is a rotation", () => {
  near(product(turned([1, 0, 0], 0.3), turned([1, 0, 0], 0.4)), turned([1, 0, 0], 0.7), 1e-12);
  for (const view of [...Object.values(VIEWS), facingView([0.6, 0, 0.8]), facingView([0, -1, 0])]) {
    const [a, b, c] = [view.slice(0, 3), view.slice(3, 6), view.slice(6)];
    const across = [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
    near(across, c, 1e-12);
    assert.ok(Math.abs(Math.hypot(...a) - 1) < 1e-12);
  }
});

test("on the cutting end x is up, y to the right, and the front is nearer than the rear", () => {
  const camera = new Camera();
  camera.size = [400, 400];
  camera.look(VIEWS.front, BOX);
  const [x, y, front] = camera.project([0, 0, 0]);
  const [, up] = camera.project([1, 0, 0]), [right] = camera.project([0, 1, 0]);
  const [, , rear] = camera.project([0, 0, 80]);
  assert.ok(Math.abs(y - up - camera.scale) < 1e-9 && Math.abs(right - x - camera.scale) < 1e-9);
  assert.equal(front - rear, 80);
});

test("all of the box is on the canvas, and touches its margin", () => {
  const camera = new Camera();
  camera.size = [640, 400];
  for (const view of Object.values(VIEWS)) {
    camera.look(view, BOX);
    const corners = Array.from({ length: 8 }, (_, n) =>
      camera.project([0, 1, 2].map((k) => (n >> k) & 1 ? BOX.high[k] : BOX.low[k])));
    const wide = Math.max(...corners.map(([x]) => Math.abs(x - 320))) / 320;
    const high = Math.max(...corners.map(([, y]) => Math.abs(y - 200))) / 200;
    assert.ok(Math.abs(Math.max(wide, high) - 0.92) < 1e-9, `${wide} ${high}`);
  }
});

test("zooming doubles distances about the middle, and spinning keeps them", () => {
  const camera = new Camera();
  camera.size = [640, 400];
  camera.look(VIEWS.quarter, BOX);
  camera.move(30, -12);
  const [x0, y0] = camera.project([2, 3, 10]);
  camera.zoom(2);
  const [x1, y1] = camera.project([2, 3, 10]);
  near([x1 - 320, y1 - 200], [2 * (x0 - 320), 2 * (y0 - 200)], 1e-9);
  const before = camera.seen([1, 2, 3]);
  camera.spin(0.3, -0.2);
  assert.ok(Math.abs(Math.hypot(...camera.seen([1, 2, 3])) - Math.hypot(...before)) < 1e-12);
});

test("what faces a way is turned towards us", () => {
  const camera = new Camera();
  for (const facing of [[1, 0, 0], [0, -1, 0], [-0.8, 0.6, 0], [0.7, 0, -0.714]]) {
    camera.look(facingView(facing), BOX);
    assert.ok(camera.seen(facing)[2] > 0.6, `${facing}: ${camera.seen(facing)}`);
  }
});
