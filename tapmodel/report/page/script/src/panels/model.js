/** The model to turn. */

import { element } from "../elements.js";
import { handled } from "../model/handling.js";
import { Viewer } from "../model/viewer.js";
import { unpacked } from "../unpack.js";

/** @import {PackedModel} from "../types" */

/**
 * Show a model; where the browser draws none, say so.
 * @param {PackedModel} model
 * @returns {Promise<{cutAt: (z: number) => void} | null>} what cuts it off below a height [mm]
 */
export async function modelPanel(model) {
  const canvas = element("model", HTMLCanvasElement);
  const cut = element("cut", HTMLInputElement);
  let height = 0;
  try {
    const viewer = new Viewer(canvas, model, await unpacked(model.data));
    handled(viewer);
    const follow = () => {
      viewer.cut = cut.checked ? height : -1e9;
      viewer.draw();
    };
    cut.addEventListener("change", follow);
    return {
      cutAt(z) {
        height = z;
        follow();
      },
    };
  } catch (error) {
    canvas.hidden = true;
    const none = element("no-model", HTMLElement);
    none.hidden = false;
    none.title = String(error);
    return null;
  }
}
