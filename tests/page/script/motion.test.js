import assert from "node:assert/strict";
import { test } from "node:test";
import { cuttingNow, inHole, inMaking } from "../../../tapmodel/report/page/script/src/model/scenes/motion.js";
import { faceAngle, onFace } from "../../../tapmodel/report/page/script/src/model/scenes/ribbons.js";
import { helixRows, sharesOfPitch } from "../../../tapmodel/report/page/script/src/model/scenes/grids.js";
import { Cuts } from "../../../tapmodel/report/page/script/src/model/scenes/caps.js";
import { hidden } from "../../../tapmodel/report/page/script/src/model/words/sight.js";
import { box, joined, turnedSolid, alongZ } from "../../../tapmodel/report/page/script/src/model/scenes/solids.js";

const profile = {
  crest: { half: 0.1, radius: 5, arc: 0, centre: 0 }, root: { half: 0.2, radius: 4, arc: 0, centre: 0 },
};
const SHAPE = {
  hand: 1, pitch: 1.5, lead: 1.5, first_z: 0.2, major: 10, profile, lands: 4, ball: 3, centre: 4.5,
  offset: 0.6, full_depth: 25, thread_end: 22, point: 4, cone: 0.2,
};

test("a right-hand tap goes one lead forward in one turn towards -theta, a left-hand one towards +theta", () => {
  for (const hand of [1, -1]) {
    const quarter = inHole({ ...SHAPE, hand }, 1.5 / 4);
    assert.ok(Math.abs(quarter.angle + hand * Math.PI / 2) < 1e-12);
    assert.ok(Math.abs(quarter.spin[1] + hand) < 1e-12);
    assert.equal(quarter.moved[2], -0.375);
  }
});

test("a crest stays in the groove that it has cut", () => {
  // A crest middle at theta 0 lies at first_z; it must move along the work's helix.
  for (const hand of [1, -1])
    for (const entered of [0.3, 2.2, 7]) {
      const { angle, moved } = inHole({ ...SHAPE, hand }, entered);
      const helix = SHAPE.first_z + hand * SHAPE.lead * angle / (2 * Math.PI);
      assert.ok(Math.abs(SHAPE.first_z + moved[2] - helix) < 1e-12);
    }
});

test("the cutter stands at its offset, mirrored for a left-hand tap", () => {
  assert.ok(Math.abs(inMaking(SHAPE, 0.3, 90).cutter[1] - 0.6) < 1e-12);
  assert.ok(Math.abs(inMaking({ ...SHAPE, hand: -1 }, 0.3, 90).cutter[1] + 0.6) < 1e-12);
  assert.equal(inMaking(SHAPE, 0.3, 90).cutter[0], 4.5);
});

test("a flute is done when the cutter has come to where it stops", () => {
  assert.deepEqual([0.1, 0.69, 0.71, 1.2, 3.9, 4].map((p) => inMaking(SHAPE, p, 90).done), [0, 0, 1, 1, 4, 4]);
  assert.ok(Math.abs(inMaking(SHAPE, 0.7 - 1e-9).cutter[2] - 25) < 1e-4);
});

test("the head indexes by a share of the turn from flute to flute, and stops after the last", () => {
  for (const [progress, turned] of [[0.5, 0], [1.2, 1], [2.3, 2], [4, 3]]) {
    assert.ok(Math.abs(inMaking(SHAPE, progress, 90).angle + turned * Math.PI / 2) < 1e-12);
    assert.ok(Math.abs(inMaking(SHAPE, progress, 90).crank - 90 * turned * Math.PI / 2) < 1e-9);
  }
});

test("teeth cut while they are in the work", () => {
  const chips = [0.5, 1.5, 4].map((z, n) => ({ number: n + 1, z }));
  const now = (entered) => cuttingNow(SHAPE, { chips, blind: false, depth: 6 }, entered).chips.map((c) => c.number);
  assert.deepEqual(now(0.4), []);
  assert.deepEqual(now(2), [1, 2]);
  assert.deepEqual(now(7.6), [2, 3]);
  assert.equal(cuttingNow(SHAPE, { chips, blind: false, depth: 6 }, 3).turns, 2);
});

test("a chip leaves the face at its radius, and its void lies before it", () => {
  for (const r of [4.1, 4.9]) {
    const { at, out, down } = onFace(SHAPE, r);
    assert.ok(Math.abs(Math.hypot(...at) - r) < 1e-12);
    assert.ok(Math.abs(Math.atan2(at[1], at[0]) - faceAngle(SHAPE, r)) < 1e-12);
    assert.ok(out[1] < 0 && down[0] < 0 && Math.abs(out[0] * down[0] + out[1] * down[1]) < 1e-12);
    const towards = [SHAPE.centre - at[0], SHAPE.offset - at[1]];
    assert.ok(out[0] * towards[0] + out[1] * towards[1] > 0);
  }
});

test("rows of a helix pass every corner of the profile and cover the length", () => {
  const shares = sharesOfPitch(profile, 1.5);
  for (const w of [0.1, 0.55, 0.95, 1.4]) assert.ok(shares.some((share) => Math.abs(share - w / 1.5) < 1e-9));
  const rows = helixRows(SHAPE, [0, 22], [0, 2 * Math.PI]);
  assert.ok(rows[0] + SHAPE.first_z + SHAPE.lead <= 0 && rows.at(-1) + SHAPE.first_z >= 22);
  const back = helixRows(SHAPE, [0, 22], [-Math.PI, 0]);
  assert.ok(back[0] + SHAPE.first_z <= 0 && back.at(-1) + SHAPE.first_z - SHAPE.lead / 2 >= 22);
  rows.slice(1).forEach((z, n) => assert.ok(z > rows[n]));
});

test("a quarter is taken out on the side that is looked at", () => {
  const cuts = new Cuts();
  cuts.takeQuarter(true, [0, -1, 0.2]);
  assert.ok(cuts.gone([0, -1, 5]) && !cuts.gone([0, 1, 5]) && !cuts.gone([1, 0.1, 5]) && !cuts.gone([1, -0.9, 5]));
  assert.equal(cuts.planes.length, 2);
  cuts.height = 6;
  assert.ok(cuts.gone([0, 1, 5]));
  cuts.takeQuarter(false, [0, -1, 0.2]);
  assert.ok(!cuts.gone([0, -1, 7]));
});

test("metal hides what lies behind it, unless it is cut away", () => {
  const places = new Float32Array([-1, -1, 2, 3, -1, 2, -1, 3, 2]);
  const faces = { places, triangles: new Uint16Array([0, 1, 2]) };
  assert.ok(hidden(faces, [0, 0, 0], [0, 0, 1], () => false));
  assert.ok(!hidden(faces, [0, 0, 3], [0, 0, 1], () => false));
  assert.ok(!hidden(faces, [5, 5, 0], [0, 0, 1], () => false));
  assert.ok(!hidden(faces, [0, 0, 0], [0, 0, 1], (p) => p[2] > 1.9));
});

test("simple bodies are as large as they should be, with normals outwards", () => {
  const { corners } = joined([box([0, 0, 0], [1, 2, 3]), turnedSolid([[0, 0], [0, 2], [4, 2]], alongZ)]);
  assert.equal(corners.length % 6, 0);
  for (let n = 24 * 6; n < corners.length; n += 6) {
    const [x, y, z, u, v, w] = corners.slice(n, n + 6);
    assert.ok(z >= 0 && z <= 4 && Math.hypot(x, y) <= 2 + 1e-6);
    if (Math.abs(w) < 0.5) assert.ok(x * u + y * v > 1.99);
    else assert.ok(w < 0);
  }
});
