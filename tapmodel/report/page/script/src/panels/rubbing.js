/** What rubs behind the edge, and the clearance along the land. */

import { drawn, made } from "../elements.js";
import { line } from "./graph/paths.js";
import { cleared, hatching, judgedLine, lettering, picture, scales } from "./graph/picture.js";
import { slot, unforeseen } from "./graph/slot.js";

/** @import {RubbingSurface, RubbingView, TapView} from "../types" */

const HEIGHT = 220;

/** @returns {(view: TapView) => void} */
export function rubbingPanel() {
  const body = slot("rubbing", "Rubbing");
  if (!body) return () => {};
  /** @type {RubbingView | null} */
  let rubbing = null;
  const said = made("div", {});
  const surfaces = made("dl", { class: "legend surfaces" });
  const place = made("div", { class: "graph-place" });
  const caption = made("p", { class: "quiet" });
  const shown = made("div", {}, surfaces, place, caption);
  body.append(said, shown);
  const redraw = picture(place, "Clearance along the land, behind the edge", (svg, width) => {
    if (rubbing) drawClearance(svg, width, rubbing);
  });
  return (view) => {
    rubbing = view.rubbing;
    shown.hidden = !rubbing;
    said.replaceChildren(rubbing ? judgedLine(rubbing.judged) : unforeseen());
    if (!rubbing) return;
    surfaces.replaceChildren(...rubbing.surfaces.map(surfaceLine));
    caption.textContent = `Hatched: ${rubbing.touches_text}.`;
    redraw();
  };
}

/** @param {RubbingSurface} surface */
function surfaceLine({ key, label, rubs, share, clear, binds }) {
  const sample = drawn("svg", { class: "sample", viewBox: "0 0 34 10", "aria-hidden": "true" },
    drawn("path", { class: `curve ${key}`, d: "M1 5H33" }));
  const bar = drawn("svg", { class: "share", viewBox: "0 0 100 8", preserveAspectRatio: "none", "aria-hidden": "true" },
    drawn("rect", { class: "trough", width: 100, height: 8 }),
    drawn("rect", { class: binds ? "part binds" : "part", width: 100 * share, height: 8 }));
  return made("div", {}, made("dt", {}, sample, label),
    made("dd", {}, `${rubs}, `, bar, binds ? `✖ ${clear}` : clear));
}

/**
 * @param {SVGElement} svg
 * @param {number} width
 * @param {RubbingView} rubbing
 */
function drawClearance(svg, width, rubbing) {
  cleared(svg, width, HEIGHT);
  const { along, clearance, touches } = rubbing;
  const { x, y, left, right, top, foot } = scales(svg, { across: along, up: clearance, width, height: HEIGHT, right: 14 });
  const fill = hatching(svg, "touching", "touching-line");
  svg.append(drawn("rect", { class: "touching", fill, x: left, y: y(touches), width: right - left, height: foot - y(touches) }));
  svg.append(drawn("path", { class: "zero", d: `M${left} ${y(0)}H${right}` }));
  for (const surface of rubbing.surfaces) {
    const points = surface.along.map((at, n) => {
      const clear = surface.clearance[n];
      return clear > clearance.high || clear < clearance.low
        ? null : /** @type {[number, number]} */ ([x(at), y(clear)]);
    });
    svg.append(drawn("path", { class: `curve ${surface.key}`, d: line(points) }));
    const gone = points.findIndex((point) => !point);
    if (gone > 0) {
      const last = /** @type {[number, number]} */ (points[gone - 1]);
      const up = surface.clearance[gone] > clearance.high;
      svg.append(lettering(Math.min(last[0] + 4, right - 60), up ? top + 10 : foot - 4, `${surface.key} ${up ? "↑" : "↓"}`, "halo"));
    }
  }
}
