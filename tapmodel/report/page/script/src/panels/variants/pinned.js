/** Variants that are pinned: which letter each has, and how they differ. No elements here. */

/** @import {Group, Job, NamedFigure, Place, TapView, Units} from "../../types" */

export const LETTERS = ["A", "B", "C", "D"];

/**
 * @typedef {object} Variant
 * @property {string} letter
 * @property {string} name
 * @property {Job} job
 * @property {Units} units of its texts
 * @property {string} path of its section
 * @property {number} reach of its section [mm]
 * @property {Place} edge of its first land
 * @property {NamedFigure[]} figures
 */

/**
 * @param {string} letter
 * @param {string} name
 * @param {Job} job
 * @param {TapView} view
 * @returns {Variant}
 */
export function variantOf(letter, name, job, view) {
  const { units, section, frame, marks, figures } = view;
  return { letter, name, job: { ...job }, units, path: section.path, reach: frame.reach, edge: marks.rake.edge, figures };
}

/**
 * The first letter that is free; none where all are taken.
 * @param {{letter: string}[]} variants
 */
export function freeLetter(variants) {
  return LETTERS.find((letter) => variants.every((one) => one.letter !== letter));
}

/**
 * What takes one job to another: its values, and null for those that it does not have.
 * @param {Job} from
 * @param {Job} to
 * @returns {Job}
 */
export function way(from, to) {
  const gone = Object.keys(from).filter((name) => !(name in to)).map((name) => [name, null]);
  return { ...Object.fromEntries(gone), ...to };
}

/**
 * The fields in which a job differs from another, in words.
 * @param {Job} job
 * @param {Job} other
 * @param {Map<string, string>} names of fields, as their controls are called
 */
export function differences(job, other, names) {
  const called = (/** @type {string} */ field) => names.get(field) ?? field;
  const own = Object.entries(job)
    .filter(([field, value]) => JSON.stringify(other[field]) !== JSON.stringify(value))
    .map(([field, value]) => `${called(field)} = ${value}`);
  const ruled = Object.keys(other).filter((field) => !(field in job)).map((field) => `${called(field)} by rule`);
  return [...own, ...ruled];
}

/**
 * What the fields are called at the side: the group first, as some labels stand in two.
 * @param {Group[]} groups
 */
export function namesOf(groups) {
  return new Map(groups.flatMap(({ title, controls }) =>
    controls.map(({ field, label }) => /** @type {[string, string]} */ ([field, `${title.toLowerCase()}: ${label}`]))));
}

/** Numbers closer than this are the same one [parts of it]. */
const ALIKE = 1e-9;

/**
 * How a figure stands to that of the tap as it is: more, less, the same as told, or another. Texts may be in
 * other units for a moment; the numbers behind them never are.
 * @param {NamedFigure} figure
 * @param {NamedFigure | undefined} now
 * @returns {"▲" | "▼" | "≠" | ""}
 */
export function against(figure, now) {
  if (!now || figure.text === now.text) return "";
  if (figure.value === null || now.value === null) return figure.value === now.value ? "" : "≠";
  if (Math.abs(figure.value - now.value) <= ALIKE * Math.abs(now.value)) return "";
  return figure.value > now.value ? "▲" : "▼";
}
