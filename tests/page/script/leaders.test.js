import assert from "node:assert/strict";
import { test } from "node:test";
import { discsOf, nearest, overlap, placedLabels, strikes } from
  "../../../tapmodel/report/page/script/src/model/words/leaders.js";

const SIZE = [640, 400];
const bounds = ({ x, y }, { wide, high }) => ({ left: x, top: y, right: x + wide, bottom: y + high });
const MODEL = Array.from({ length: 30 }, (_, n) => ({ x: 80 + 16 * n, y: 200, r: 40 }));
const WANTED = [[150, 190], [170, 200], [160, 230], [200, 170], [140, 240]].map(([x, y]) => ({ x, y, wide: 110, high: 32 }));

test("words overlap neither each other nor the model, and stay on the canvas", () => {
  const boxes = placedLabels(WANTED, SIZE, MODEL).map((place, n) => bounds(place, WANTED[n]));
  boxes.forEach((box, n) => {
    assert.ok(box.left >= 6 && box.top >= 6 && box.right <= 634 && box.bottom <= 394);
    for (const other of boxes.slice(n + 1)) assert.ok(!overlap(box, other));
    for (const { x, y, r } of MODEL) {
      const at = nearest(box, x, y);
      assert.ok(Math.hypot(at.x - x, at.y - y) >= r);
    }
  });
});

test("no leader runs over the words of another", () => {
  const boxes = placedLabels(WANTED, SIZE, MODEL).map((place, n) => bounds(place, WANTED[n]));
  boxes.forEach((box, n) => boxes.forEach((other, m) => {
    if (n !== m) assert.ok(!strikes(WANTED[n], nearest(box, WANTED[n].x, WANTED[n].y), other));
  }));
});

test("a canvas too small for all words still shows each of them on it", () => {
  for (const { x, y } of placedLabels(WANTED, [130, 90], []))
    assert.ok(x >= 6 && x <= 130 - 116 + 1e-9 && y >= 6 && y <= 90 - 38 + 1e-9);
});

test("a line is told from one that passes by", () => {
  const box = { left: 10, top: 10, right: 20, bottom: 20 };
  assert.ok(strikes({ x: 0, y: 15 }, { x: 30, y: 16 }, box));
  assert.ok(!strikes({ x: 0, y: 21 }, { x: 30, y: 22 }, box));
  assert.ok(!strikes({ x: 0, y: 15 }, { x: 9, y: 15 }, box));
});

test("a cone is covered by discs of its own radius from end to end", () => {
  const discs = discsOf([[0, 2], [12, 5]], ([, , z]) => [10 * z, 0], 10);
  assert.deepEqual([discs[0].r, discs[0].x, discs.at(-1).r, discs.at(-1).x], [20, 0, 50, 120]);
  for (let n = 1; n < discs.length; n++) assert.ok(discs[n].x - discs[n - 1].x <= 50);
});
