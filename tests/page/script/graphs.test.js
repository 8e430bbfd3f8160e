/** Scales, paths and readings of the pictures. */

import assert from "node:assert/strict";
import { test } from "node:test";

import { steps } from "../../../tapmodel/report/page/script/src/panels/bench/stations.js";
import { nearestRow, pieces, readout, taken, zoneEnds } from "../../../tapmodel/report/page/script/src/panels/chart/reading.js";
import { between, head, line, points } from "../../../tapmodel/report/page/script/src/panels/graph/paths.js";
import { legible, scaleOf, spread, within } from "../../../tapmodel/report/page/script/src/panels/graph/scale.js";
import { placedNames } from "../../../tapmodel/report/page/script/src/panels/section/names.js";
import { against, differences, freeLetter, namesOf, way } from "../../../tapmodel/report/page/script/src/panels/variants/pinned.js";

test("a scale runs from end to end, upwards too", () => {
  const x = scaleOf({ low: -2, high: 6 }, 100, 260);
  assert.deepEqual([-2, 0, 6].map(x), [100, 140, 260]);
  const y = scaleOf({ low: 0, high: 5 }, 200, 20);
  assert.equal(y(2.5), 110);
});

test("what lies beyond a scale stands at its end", () => {
  assert.deepEqual([-9, 3, 99].map((value) => within({ low: 0, high: 5 }, value)), [0, 3, 5]);
});

test("numbers of a narrow scale are left out evenly until none touch", () => {
  const ticks = [0, 1, 2, 3, 4].map((at) => ({ at, text: "0.25" }));
  const wide = () => 28;
  assert.equal(legible(ticks, scaleOf({ low: 0, high: 4 }, 0, 400), wide).length, 5);
  assert.deepEqual(legible(ticks, scaleOf({ low: 0, high: 4 }, 0, 100), wide).map(({ at }) => at), [0, 2, 4]);
  assert.equal(legible(ticks, scaleOf({ low: 0, high: 4 }, 0, 10), wide).length, 1);
});

test("labels are moved apart in their order and stay within", () => {
  assert.deepEqual(spread([10, 12, 50], 15, 0, 100), [10, 25, 50]);
  assert.deepEqual(spread([90, 95], 15, 0, 100), [85, 100]);
  assert.deepEqual(spread([-20], 15, 5, 100), [5]);
});

test("a line is broken where nothing is known", () => {
  assert.equal(line([[0, 0], [1, 2], null, [3, 4], [5.1234, 6]]), "M0 0L1 2M3 4L5.12 6");
  assert.equal(line([]), "");
});

test("a band goes along one line and back along the other", () => {
  assert.equal(between([[0, 5], [9, 4]], [[0, 1], [9, 0]]), "M0 5L9 4L9 0L0 1Z");
  assert.equal(between([], []), "");
  assert.deepEqual(points([1, 2], [3, 4], (x) => 10 * x, (y) => -y), [[10, -3], [20, -4]]);
});

test("an arrow's head points along its line", () => {
  const numbers = head([0, 0], [10, 0], 4).match(/-?[\d.]+/g).map(Number);
  assert.deepEqual(numbers.slice(0, 2), [10, 0]);
  assert.ok(numbers[2] < 7 && numbers[4] < 7);
  assert.equal(numbers[3], -numbers[5]);
});

const chart = {
  held: { "flutes.rake": null },
  field: "flutes.offset", label: "offset",
  figures: [{ key: "rake_crest", label: "rake" }],
  rows: [0, 1, 2, 3].map((x) => ({ x, value: `${x}mm`, text: `${x} mm`, y: [x], texts: [`${x}°`], broken: x > 1 })),
  zones: [{ first: 2, last: 3, text: "No land." }],
};

test("a chart is read at the nearest value", () => {
  assert.equal(nearestRow(chart.rows, 1.4), 1);
  assert.equal(nearestRow(chart.rows, 99), 3);
  assert.equal(readout(chart, 1), "offset 1 mm: rake 1°");
  assert.equal(readout(chart, 3), "offset 3 mm: breaks a rule. No land.");
  assert.deepEqual(taken(chart, 1), { "flutes.rake": null, "flutes.offset": "1mm" });
});

test("a zone reaches half-way to the last good value", () => {
  assert.deepEqual(zoneEnds(chart), [{ low: 1.5, high: 3, text: "No land." }]);
});

test("a line ends where a rule is broken and where something is chosen anew", () => {
  const rows = [0, 1, null, 3, 4, 5].map((y, x) => ({ x, y: [y] }));
  const xs = (/** @type {{first: number}[]} */ jumps) => pieces({ rows, jumps }, 0).map((piece) => piece.map(({ x }) => x));
  assert.deepEqual(xs([]), [[0, 1], [3, 4, 5]]);
  assert.deepEqual(xs([{ first: 1 }, { first: 3 }]), [[0, 1], [3], [4, 5]]);
});

test("names of one side keep clear of each other", () => {
  const name = (key, y) => ({ key, label: "land", text: "3.7 mm", at: [5, y] });
  const view = { width: 300, height: 300, middle: [150, 150], each: 20, crest: 4.4, cutter: { centre: [0, 4], radius: 2 } };
  const placed = placedNames([name("land", 0), name("drop", 0.1)], view);
  assert.ok(Math.abs(placed[1].y - placed[0].y) >= 29);
  assert.deepEqual(placed.map(({ anchor }) => anchor), ["start", "start"]);
  const [top] = placedNames([{ key: "rake", label: "rake", text: "8°", at: [0.1, -5] }], view);
  assert.equal(top.anchor, "middle");
  assert.ok(top.y < 50);
});

/** Of a design: names, where its cutter stands, its greatest radius. */
const SECTIONS = {
  "M14x1.25-LH with six flutes": { cutter: { centre: [5.9332, -0.8931], radius: 2.5 }, crest: 7.035, names: [
    ["rake", "2.50°", [0, -7.9495]], ["land", "1.951 mm", [-1.441, -7.8179]],
    ["offset", "-2.193 mm", [7.4328, -3.0251]], ["heel drops", "0.056 mm", [-2.5076, -7.5437]]] },
  "M14x1.25 with six flutes": { cutter: { centre: [-5.7869, -1.5849], radius: 2.5 }, crest: 7.035, names: [
    ["rake", "8.00°", [0, -7.9495]], ["land", "2.105 mm", [2.2673, -7.6194]],
    ["offset", "-1.521 mm", [-7.2647, -3.3162]], ["heel drops", "0.056 mm", [3.3776, -7.1963]]] },
  "M18x0.75": { cutter: { centre: [-7.5679, 2.744], radius: 4 }, crest: 9.025, names: [
    ["rake", "8.00°", [0, -10.1982]], ["land", "5.633 mm", [4.4516, -9.1754]],
    ["offset", "-2.744 mm", [-10.1982, 1.372]], ["heel drops", "0.072 mm", [7.0539, -7.3653]]] },
  "M10": { cutter: { centre: [-2.7004, 4.7914], radius: 3.5 }, crest: 5.035, names: [
    ["rake", "8.00°", [0, -5.6895]], ["land", "3.771 mm", [2.7981, -4.954]],
    ["offset", "-2.799 mm", [-4.2275, 4.0569]], ["heel drops", "0.040 mm", [4.4164, -3.587]]] },
};

for (const [tap, { cutter, crest, names }] of Object.entries(SECTIONS))
  for (const width of [322, 445, 620])
    test(`what is lettered on a section ${width} wide of ${tap} lies over nothing`, () => {
      const each = (width - 124) / (2 * crest * 1.13), at = ([x, y]) => [width / 2 + each * x, 34 + each * (1.13 * crest + y)];
      const height = Math.max(at([0, 1.13 * crest])[1] + 58, at(cutter.centre)[1] + each * cutter.radius + 6);
      const view = { width, height: height - 26, middle: at([0, 0]), each, cutter, crest };
      const placed = placedNames(names.map(([label, text, place]) => ({ key: label, label, text, at: place })), view);
      const boxes = placed.map(({ name, x, y, anchor }) => {
        const wide = Math.max(6.2 * name.label.length, 7 * name.text.length);
        const left = x - { start: 0, middle: wide / 2, end: wide }[anchor];
        return { left, right: left + wide, top: y - 9, bottom: y + 16, label: name.label };
      });
      const off = ([x, y], box) => Math.hypot(Math.max(box.left - x, x - box.right, 0), Math.max(box.top - y, y - box.bottom, 0));
      boxes.forEach((box, n) => {
        assert.ok(box.left >= 0 && box.right <= width && box.top >= 0 && box.bottom <= height, box.label);
        assert.ok(off(at([0, 0]), box) > each * crest, `${box.label} over the section`);
        assert.ok(off(at(cutter.centre), box) > each * cutter.radius, `${box.label} over the cutter`);
        for (const other of boxes.slice(n + 1))
          assert.ok(box.right < other.left || other.right < box.left || box.bottom < other.top || other.bottom < box.top, `${box.label} over ${other.label}`);
      });
    });

test("a fourth variant is the last that finds a letter", () => {
  assert.equal(freeLetter([{ letter: "A" }, { letter: "C" }]), "B");
  assert.equal(freeLetter(["A", "B", "C", "D"].map((letter) => ({ letter }))), undefined);
});

test("the way back to a variant takes away what it did not have", () => {
  const [now, then] = [{ designation: "M10", "flutes.offset": 1 }, { designation: "M10", "flutes.rake": 4 }];
  assert.deepEqual(way(now, then), { designation: "M10", "flutes.offset": null, "flutes.rake": 4 });
  assert.deepEqual(differences(then, now, new Map()), ["flutes.rake = 4", "flutes.offset by rule"]);
  assert.deepEqual(differences(now, { ...now }, new Map()), []);
});

test("where a variant differs is told by the names at the side", () => {
  const names = namesOf([{ title: "Relief of the thread", controls: [{ field: "relief.thread.kind", label: "kind" }] }]);
  assert.deepEqual(differences({ "relief.thread.kind": "eccentric" }, {}, names), ["relief of the thread: kind = eccentric"]);
  assert.deepEqual(differences({}, { "relief.thread.kind": "eccentric" }, names), ["relief of the thread: kind by rule"]);
});

test("figures differ as they are told", () => {
  const figure = (text, value) => ({ key: "k", label: "l", text, value });
  assert.equal(against(figure("2 mm", 2.001), figure("2 mm", 2)), "");
  assert.equal(against(figure("3 mm", 3), figure("2 mm", 2)), "▲");
  assert.equal(against(figure("1 mm", 1), figure("2 mm", 2)), "▼");
  assert.equal(against(figure("–", null), figure("2 mm", 2)), "≠");
  assert.equal(against(figure("–", null), figure("–", null)), "");
});

test("a figure that is told in other units is the same number", () => {
  const figure = (text, value) => ({ key: "k", label: "l", text, value });
  for (const text of ["0.077 in", "1.95 mm (0.077 in)"]) {
    assert.equal(against(figure("1.95 mm", 1.951), figure(text, 1.951)), "");
    assert.equal(against(figure("1.95 mm", 1.951), figure(text, 1.951 + 1e-12)), "");
    assert.equal(against(figure("1.97 mm", 1.97), figure(text, 1.951)), "▲");
  }
  assert.equal(against(figure("–", null), figure("0 mm", null)), "");
});

test("places of a division are counted from the first to the last", () => {
  const dividing = { on: "", text: [], stations: [
    { number: 1, move: "", reached: "0", off: "" },
    { number: 2, move: "13 turns", reached: "13 turns", off: "" },
    { number: 3, move: "", reached: "26 turns", off: "+0.3′" }] };
  assert.deepEqual(steps(dividing, 0).move, "Begin here");
  assert.deepEqual(steps(dividing, 1), { place: "2 of 3", move: "13 turns", reached: "from the first: 13 turns", first: false, last: false });
  assert.equal(steps(dividing, 2).move, "from the first: 26 turns");
  assert.equal(steps(dividing, 2).reached, "from the first: 26 turns, off by +0.3′");
  assert.ok(steps(dividing, 2).last);
});
