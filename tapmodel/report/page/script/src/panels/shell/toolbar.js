/** Back and forth, units, job file. */

import { element, made } from "../../elements.js";
import { openFile, saveFile, takesFiles } from "../../live/files.js";

/** @import {Units} from "../../types" */
/** @import {Desk} from "../../live/desk.js" */

/** @param {Desk} desk */
export function toolbar(desk) {
  const undo = element("undo", HTMLButtonElement);
  const redo = element("redo", HTMLButtonElement);
  const units = element("units", HTMLSelectElement);
  const saved = element("saved", HTMLElement);
  const file = element("file", HTMLInputElement);
  undo.addEventListener("click", () => desk.go(-1));
  redo.addEventListener("click", () => desk.go(1));
  units.addEventListener("change", () => desk.tellIn(/** @type {Units} */ (units.value)));
  element("open", HTMLButtonElement).addEventListener("click", () => file.click());
  file.addEventListener("change", () => {
    const [picked] = file.files ?? [];
    if (picked) openFile(desk, picked);
    file.value = "";
  });
  element("save", HTMLButtonElement).addEventListener("click", () => saveFile(desk));
  takesFiles(desk);
  byKeys(desk);
  const keep = () => {
    able(undo, desk.history.beside(-1) !== undefined);
    able(redo, desk.history.beside(1) !== undefined);
    // The first of it is left out where there is little room.
    if (desk.changed !== saved.hasChildNodes())
      saved.replaceChildren(...(desk.changed ? [made("span", {}, "changed, "), "not saved"] : []));
  };
  desk.keepers.push(keep);
  desk.followers.push((view) => (units.value = view.units));
  if (desk.view) units.value = desk.view.units;
  keep();
}

/**
 * A button that can do nothing keeps the focus, so it is not disabled.
 * @param {HTMLButtonElement} button
 * @param {boolean} can
 */
function able(button, can) {
  button.setAttribute("aria-disabled", String(!can));
}

/** @param {Desk} desk */
function byKeys(desk) {
  document.addEventListener("keydown", (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const at = event.target;
    // In a box these keys undo what was typed there.
    if (at instanceof HTMLInputElement && ["text", "number"].includes(at.type)) return;
    const key = event.key.toLowerCase();
    const step = key === "y" || (key === "z" && event.shiftKey) ? 1 : key === "z" ? -1 : 0;
    if (!step) return;
    event.preventDefault();
    desk.go(step);
  });
}
