/** What is done at each place of a division. No elements here. */

/** @import {DividingView} from "../../types" */

/**
 * One place in words.
 * @param {DividingView} dividing
 * @param {number} at from 0
 */
export function steps({ stations }, at) {
  const station = stations[at];
  const off = station.off ? `, off by ${station.off}` : "";
  return {
    place: `${station.number} of ${stations.length}`,
    move: at === 0 ? "Begin here" : station.move || `from the first: ${station.reached}`,
    reached: at === 0 ? "the first place" : `from the first: ${station.reached}${off}`,
    first: at === 0,
    last: at === stations.length - 1,
  };
}
