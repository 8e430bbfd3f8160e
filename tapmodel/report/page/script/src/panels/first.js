/** The verdict, and the numbers that matter. */

import { made } from "../elements.js";

/** @import {TapView} from "../types" */

/** @returns {(view: TapView) => void} */
export function firstPanel() {
  const place = document.getElementById("first");
  return (view) => {
    const figures = view.first.map(({ label, text, beside }) =>
      made("div", {}, made("dt", {}, label), made("dd", {}, text, made("small", {}, beside))));
    place?.replaceChildren(...figures);
  };
}
