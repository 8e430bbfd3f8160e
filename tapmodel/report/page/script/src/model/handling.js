/** Hands on the model: pointer, wheel, keys, buttons. */

/** @import {Viewer} from "./viewer.js" */

/**
 * Let pointer, wheel, keys and buttons move the model.
 * @param {Viewer} viewer
 */
export function handled(viewer) {
  const canvas = viewer.canvas;
  /** @type {Map<number, {x: number, y: number}>} */
  const held = new Map();
  const spread = () => {
    const [a, b] = [...held.values()];
    return [Math.hypot(a.x - b.x, a.y - b.y), (a.x + b.x) / 2, (a.y + b.y) / 2];
  };
  canvas.addEventListener("pointerdown", (event) => {
    canvas.setPointerCapture(event.pointerId);
    held.set(event.pointerId, { x: event.clientX, y: event.clientY });
  });
  canvas.addEventListener("pointermove", (event) => {
    const last = held.get(event.pointerId);
    if (!last) return;
    const now = { x: event.clientX, y: event.clientY };
    if (held.size === 2) {
      const [before, x, y] = spread();
      held.set(event.pointerId, now);
      const [after, x2, y2] = spread();
      viewer.move(x2 - x, y2 - y);
      viewer.scale(after / before);
      return;
    }
    held.set(event.pointerId, now);
    const [dx, dy] = [now.x - last.x, now.y - last.y];
    if (event.shiftKey || event.buttons === 2) viewer.move(dx, dy);
    else viewer.spin(dx * 0.008, dy * 0.008);
  });
  for (const name of /** @type {const} */ (["pointerup", "pointercancel"]))
    canvas.addEventListener(name, (event) => held.delete(event.pointerId));
  canvas.addEventListener("contextmenu", (event) => event.preventDefault());
  canvas.addEventListener("wheel", (event) => {
    // Else the page could not be scrolled past the model.
    if (document.activeElement !== canvas) return;
    event.preventDefault();
    viewer.scale(Math.exp(-event.deltaY * 0.0012));
  }, { passive: false });
  /** @type {Record<string, () => void>} */
  const keys = {
    ArrowLeft: () => viewer.spin(-0.12, 0), ArrowRight: () => viewer.spin(0.12, 0),
    ArrowUp: () => viewer.spin(0, -0.12), ArrowDown: () => viewer.spin(0, 0.12),
    "+": () => viewer.scale(1.2), "=": () => viewer.scale(1.2), "-": () => viewer.scale(1 / 1.2),
    0: () => viewer.look("quarter"), Home: () => viewer.look("quarter"),
  };
  canvas.addEventListener("keydown", (event) => {
    if (!(event.key in keys) || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    keys[event.key]();
  });
  for (const button of document.querySelectorAll("button"))
    if (button.dataset.view) {
      const view = button.dataset.view;
      button.addEventListener("click", () => viewer.look(view));
    }
  new ResizeObserver(() => viewer.fit()).observe(canvas);
  matchMedia("(prefers-color-scheme: dark)").addEventListener("change", () => viewer.draw());
}
