/** Sections over each other, each with a line, a colour and a letter of its own. */

import { drawn } from "../../elements.js";
import { line } from "../graph/paths.js";
import { cleared, lettering } from "../graph/picture.js";
import { spread } from "../graph/scale.js";

/** @import {TapView} from "../../types" */
/** @import {Variant} from "./pinned.js" */

const BORDER = 26;

/**
 * @param {SVGElement} svg
 * @param {number} room [px]
 * @param {TapView} view
 * @param {string} path of the section as it is, at the height at which others are pinned
 * @param {Variant[]} variants
 */
export function drawOverlay(svg, room, view, path, variants) {
  const width = Math.min(room, 460);
  const reach = Math.max(view.frame.reach, ...variants.map((one) => one.reach));
  const each = (width - 2 * BORDER) / (2 * reach);
  const middle = width / 2;
  cleared(svg, width, width);
  svg.append(drawn("g", { transform: `translate(${middle} ${middle}) scale(${each})` },
    drawn("path", { class: "metal", d: path }),
    ...variants.map(({ letter, path: d }) => drawn("path", { class: `variant ${letter}`, d }))));
  const rising = variants.map((one) => ({ one, x: middle + each * one.edge[0] })).sort((a, b) => a.x - b.x);
  const places = spread(rising.map(({ x }) => x + 10), 16, 10, width - 10);
  rising.forEach(({ one, x }, n) => {
    const tip = /** @type {[number, number]} */ ([x, middle + each * one.edge[1]]);
    svg.append(drawn("path", { class: "leader", d: line([tip, [places[n], 15]]) }),
      lettering(places[n], 12, one.letter, `letter ${one.letter}`, "middle"));
  });
}
