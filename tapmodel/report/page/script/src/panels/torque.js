/** Torque against its limits, and along the way in and back. */

import { made } from "../elements.js";
import { judgedLine, picture } from "./graph/picture.js";
import { slot, unforeseen } from "./graph/slot.js";
import { drawLevels } from "./torque/levels.js";
import { drawCourse } from "./torque/course.js";

/** @import {TapView, TorqueView} from "../types" */

/** @returns {(view: TapView) => void} */
export function torquePanel() {
  const body = slot("torque", "Torque");
  if (!body) return () => {};
  /** @type {TorqueView | null} */
  let torque = null;
  const said = made("div", {});
  const bullet = made("div", { class: "graph-place" });
  const levels = made("dl", { class: "legend" });
  const way = made("div", { class: "graph-place" });
  const caption = made("p", { class: "quiet" });
  const shown = made("div", {}, bullet, levels, made("h3", {}, "On the way in and back"), way, caption);
  body.append(said, shown);
  const redraw = [
    picture(bullet, "Torque that it takes beside the torques that decide", (svg, width) => {
      if (torque) drawLevels(svg, width, torque);
    }),
    picture(way, "Torque against depth, in and back", (svg, width) => {
      if (torque) drawCourse(svg, width, torque.course);
    }),
  ];
  return (view) => {
    torque = view.torque;
    shown.hidden = !torque;
    said.replaceChildren(torque ? judgedLine(torque.judged) : unforeseen());
    if (!torque) return;
    const rows = [{ label: "takes", text: torque.text }, ...torque.levels];
    levels.replaceChildren(...rows.map(({ label, text }) =>
      made("div", {}, made("dt", {}, label), made("dd", {}, text))));
    caption.textContent = torque.course.text;
    for (const draw of redraw) draw();
  };
}
