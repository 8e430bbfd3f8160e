/** A chart of one or two figures against a value. */

import { drawn } from "../../elements.js";
import { line } from "../graph/paths.js";
import { cleared, hatching, lettering } from "../graph/picture.js";
import { legible, scaleOf, wide } from "../graph/scale.js";
import { pieces, zoneEnds } from "./reading.js";

/** @import {Axis, ChartRow, ChartView} from "../../types" */

export const HEIGHT = 300;
const TOP = 46;
const FOOT = HEIGHT - 40;

/**
 * @param {SVGElement} svg
 * @param {number} width
 * @param {ChartView} chart
 * @param {number} cursor row that is read
 * @returns {(x: number) => number} from pixels to the scale of the value
 */
export function drawChart(svg, width, chart, cursor) {
  cleared(svg, width, HEIGHT);
  const room = chart.up.map((axis) => 12 + Math.max(0, ...axis.ticks.map(({ text }) => wide(text))));
  const [left, right] = [room[0], width - (room[1] ?? 10)];
  const x = scaleOf(chart.across, left, right);
  const ups = chart.up.map((axis) => scaleOf(axis, FOOT, TOP));
  svg.append(...titles(chart), ...foot(chart.across, x, left, right));
  chart.up.forEach((axis, n) => svg.append(...side(axis, ups[n], n ? right : left, n ? left : right)));
  svg.append(...zones(svg, chart, x));
  svg.append(...jumps(chart, x), ...chart.figures.flatMap((_, n) => plot(chart, n, x, ups[n])));
  svg.append(...present(chart, x, ups), ...cursorMarks(chart.rows[cursor], x, ups));
  return (px) => chart.across.low + ((px - left) / (right - left)) * (chart.across.high - chart.across.low);
}

/**
 * The line of a figure; a dot where it has one value alone.
 * @param {ChartView} chart
 * @param {number} n
 * @param {(x: number) => number} x
 * @param {(y: number) => number} y
 */
function plot(chart, n, x, y) {
  const found = pieces(chart, n).map((rows) => rows.map((row) => point(row, n, x, y)));
  const dots = found.filter(({ length }) => length === 1).flatMap(([at]) => (at ? [at] : []));
  return [
    drawn("path", { class: `plot plot-${n}`, d: found.map((points) => line(points)).join("") }),
    ...dots.map(([cx, cy]) => drawn("circle", { class: `lone lone-${n}`, cx, cy, r: 3.2 })),
  ];
}

/**
 * Where something is chosen anew.
 * @param {ChartView} chart
 * @param {(x: number) => number} x
 */
function jumps({ rows, jumps: found }, x) {
  return found.map(({ first, last, text }) =>
    drawn("path", { class: "jump", d: `M${x((rows[first].x + rows[last].x) / 2)} ${TOP}V${FOOT}` }, drawn("title", {}, text)));
}

/**
 * @param {ChartRow} row
 * @param {number} n
 * @param {(x: number) => number} x
 * @param {(y: number) => number} y
 * @returns {[number, number] | null}
 */
function point(row, n, x, y) {
  const value = row.y[n];
  return value === null ? null : [x(row.x), y(value)];
}

/** @param {ChartView} chart */
function titles({ up }) {
  return up.flatMap(({ title }, n) => [
    drawn("path", { class: `plot plot-${n}`, d: `M2 ${8 + 17 * n}h30` }),
    lettering(40, 12 + 17 * n, `${title}${up.length > 1 ? [" – left", " – right"][n] : ""}`),
  ]);
}

/**
 * @param {Axis} axis
 * @param {(x: number) => number} x
 * @param {number} left
 * @param {number} right
 */
function foot(axis, x, left, right) {
  return [
    drawn("path", { class: "axis", d: `M${left} ${FOOT}H${right}` }),
    ...legible(axis.ticks, x, wide).flatMap(({ at, text }) => [
      drawn("path", { class: "axis", d: `M${x(at)} ${FOOT}v4` }),
      lettering(x(at), FOOT + 17, text, "quiet", "middle"),
    ]),
    lettering((left + right) / 2, FOOT + 34, axis.title, "quiet", "middle"),
  ];
}

/**
 * @param {Axis} axis
 * @param {(y: number) => number} y
 * @param {number} at its own side
 * @param {number} other
 */
function side(axis, y, at, other) {
  const out = at < other ? -1 : 1;
  return [
    drawn("path", { class: "axis", d: `M${at} ${TOP}V${FOOT}` }),
    ...axis.ticks.flatMap((tick) => [
      ...(out < 0 ? [drawn("path", { class: "grid", d: `M${at} ${y(tick.at)}H${other}` })] : []),
      drawn("path", { class: "axis", d: `M${at} ${y(tick.at)}h${4 * out}` }),
      lettering(at + 7 * out, y(tick.at) + 4, tick.text, "quiet", out < 0 ? "end" : "start"),
    ]),
  ];
}

/**
 * @param {SVGElement} svg
 * @param {ChartView} chart
 * @param {(x: number) => number} x
 */
function zones(svg, chart, x) {
  if (!chart.zones.length) return [];
  const fill = hatching(svg, "chart-broken", "risk-line");
  return zoneEnds(chart).flatMap(({ low, high, text }) => {
    const [from, wideness] = [x(low), Math.max(x(high) - x(low), 3)];
    const box = drawn("rect", { class: "broken", fill, x: from, y: TOP, width: wideness, height: FOOT - TOP },
      drawn("title", {}, text));
    return wideness > 90 ? [box, lettering(from + wideness / 2, TOP + 16, "breaks a rule", "halo", "middle")] : [box];
  });
}

/**
 * @param {ChartView} chart
 * @param {(x: number) => number} x
 * @param {((y: number) => number)[]} ups
 */
function present({ present: now, across, figures }, x, ups) {
  if (now.x < across.low || now.x > across.high) return [];
  const at = x(now.x);
  const dots = figures.map((_, n) => point(now, n, x, ups[n])).filter((one) => one !== null);
  return [
    drawn("path", { class: "now", d: `M${at} ${TOP}V${FOOT}` }),
    lettering(at + 4, FOOT - 6, "now", "halo"),
    ...dots.map(([cx, cy]) => drawn("circle", { class: "dot", cx, cy, r: 4 })),
  ];
}

/**
 * @param {ChartRow} row
 * @param {(x: number) => number} x
 * @param {((y: number) => number)[]} ups
 */
function cursorMarks(row, x, ups) {
  const dots = row.y.map((_, n) => point(row, n, x, ups[n])).filter((one) => one !== null);
  return [
    drawn("path", { class: "cursor", d: `M${x(row.x)} ${TOP}V${FOOT}` }),
    ...dots.map(([cx, cy]) => drawn("circle", { class: "ring", cx, cy, r: 6 })),
  ];
}
