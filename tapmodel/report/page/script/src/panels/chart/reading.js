/** What is read off a chart. No elements here. */

/** @import {ChartRow, ChartView, Job} from "../../types" */

/**
 * The row nearest to a place of the scale.
 * @param {ChartRow[]} rows rising
 * @param {number} x
 */
export function nearestRow(rows, x) {
  let best = 0;
  rows.forEach((row, n) => {
    if (Math.abs(row.x - x) < Math.abs(rows[best].x - x)) best = n;
  });
  return best;
}

/**
 * From where to where each zone reaches: to half-way to the neighbour outside.
 * @param {ChartView} chart
 */
export function zoneEnds({ rows, zones }) {
  return zones.map(({ first, last, text }) => ({
    low: first > 0 ? (rows[first - 1].x + rows[first].x) / 2 : rows[0].x,
    high: last < rows.length - 1 ? (rows[last].x + rows[last + 1].x) / 2 : rows[last].x,
    text,
  }));
}

/**
 * The rows that a line runs through, in one piece each: it ends where a rule is broken, and where
 * something is chosen anew.
 * @param {Pick<ChartView, "rows" | "jumps">} chart
 * @param {number} figure
 */
export function pieces({ rows, jumps }, figure) {
  const ends = new Set(jumps.map(({ first }) => first));
  /** @type {ChartRow[][]} */
  const found = [[]];
  rows.forEach((row, n) => {
    if (row.y[figure] !== null) found[found.length - 1].push(row);
    if (row.y[figure] === null || ends.has(n)) found.push([]);
  });
  return found.filter((piece) => piece.length);
}

/**
 * A row in words.
 * @param {ChartView} chart
 * @param {number} number
 */
export function readout(chart, number) {
  const row = chart.rows[number];
  const zone = chart.zones.find(({ first, last }) => number >= first && number <= last);
  if (zone) return `${chart.label} ${row.text}: breaks a rule. ${zone.text}`;
  const told = chart.figures.map(({ label }, n) => `${label} ${row.texts[n]}`);
  return `${chart.label} ${row.text}: ${told.join(", ")}`;
}

/**
 * What a row sets in the job.
 * @param {ChartView} chart
 * @param {number} number
 * @returns {Job}
 */
export function taken(chart, number) {
  return { ...chart.held, [chart.field]: chart.rows[number].value };
}
