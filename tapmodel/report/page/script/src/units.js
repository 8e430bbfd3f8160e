/** Numbers that the page itself writes; whatever else is shown comes as text. */

/** @import {Units} from "./types" */

const MM_PER_INCH = 25.4;

/**
 * @param {Units} units
 * @param {string} mm
 * @param {string} inches
 */
function inUnits(units, mm, inches) {
  return { mm, inch: inches, both: `${mm} (${inches})` }[units];
}

/**
 * @param {number} mm
 * @param {Units} units
 */
export function lengthText(mm, units) {
  return inUnits(units, `${mm.toFixed(2)} mm`, `${(mm / MM_PER_INCH).toFixed(3)} in`);
}

/**
 * @param {number} mm2
 * @param {Units} units
 */
export function areaText(mm2, units) {
  return inUnits(units, `${mm2.toFixed(1)} mm²`, `${(mm2 / MM_PER_INCH ** 2).toFixed(4)} in²`);
}

/**
 * The longest round length, 1, 2 or 5 times a power of ten, that is not above `most`.
 * @param {number} most [mm]
 * @param {Units} units
 */
export function roundLength(most, units) {
  const unit = units === "inch" ? MM_PER_INCH : 1;
  const power = 10 ** Math.floor(Math.log10(most / unit));
  const number = ([5, 2, 1].find((n) => n * power <= most / unit) ?? 1) * power;
  const text = `${Number(number.toPrecision(3))} ${units === "inch" ? "in" : "mm"}`;
  return { mm: number * unit, text };
}
