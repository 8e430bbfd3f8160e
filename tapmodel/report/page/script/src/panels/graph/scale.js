/** Where values stand in a picture. No elements here. */

/** @import {Axis} from "../../types" */

/**
 * From values of an axis to pixels.
 * @param {{low: number, high: number}} axis
 * @param {number} from where its low end stands [px]
 * @param {number} to where its high end stands
 * @returns {(value: number) => number}
 */
export function scaleOf({ low, high }, from, to) {
  const each = (to - from) / (high - low || 1);
  return (value) => from + each * (value - low);
}

/**
 * A value within an axis; one beyond it at its end.
 * @param {{low: number, high: number}} axis
 * @param {number} value
 */
export function within({ low, high }, value) {
  return Math.min(Math.max(value, low), high);
}

/**
 * Those ticks of a level axis whose numbers do not run into each other: every one, every second ...
 * @param {Axis["ticks"]} ticks
 * @param {(value: number) => number} at
 * @param {(text: string) => number} wide width of a text [px]
 */
export function legible(ticks, at, wide) {
  for (let step = 1; step < ticks.length; step++) {
    const kept = ticks.filter((_, n) => n % step === 0);
    const clear = kept.every((tick, n) => n === 0
      || Math.abs(at(tick.at) - at(kept[n - 1].at)) >= (wide(tick.text) + wide(kept[n - 1].text)) / 2 + 6);
    if (clear) return kept;
  }
  return ticks.slice(0, 1);
}

/** Width of a text in the letters of the pictures [px]; a little more than it is. */
export const wide = (/** @type {string} */ text) => 6.9 * text.length;

/**
 * Numbers that stand at least a gap apart, in the order given, as near as can be to where they
 * belong.
 * @param {number[]} places rising
 * @param {number} gap
 * @param {number} least
 * @param {number} most
 */
export function spread(places, gap, least, most) {
  const found = places.slice();
  for (let n = 0; n < found.length; n++)
    found[n] = Math.max(found[n], n ? found[n - 1] + gap : least);
  for (let n = found.length - 1; n >= 0; n--)
    found[n] = Math.min(found[n], n < found.length - 1 ? found[n + 1] - gap : most);
  return found;
}
