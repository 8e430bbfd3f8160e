/** Hands on the model: pointer, wheel, keys. */

/** @import {Viewer} from "../viewer.js" */

const STEP = 0.12; // of a key [rad]
const DRAG = 0.008; // [rad] for a pixel

/**
 * Let pointer, wheel and keys move the model.
 * @param {Viewer} viewer
 */
export function handled(viewer) {
  const { canvas, camera } = viewer;
  /** @param {() => void} change */
  const changed = (change) => {
    change();
    viewer.draw();
  };
  /** @type {Map<number, {x: number, y: number}>} */
  const held = new Map();
  canvas.addEventListener("pointerdown", (event) => {
    canvas.setPointerCapture(event.pointerId);
    held.set(event.pointerId, { x: event.clientX, y: event.clientY });
  });
  const spread = () => {
    const [a, b] = [...held.values()];
    return [Math.hypot(a.x - b.x, a.y - b.y), (a.x + b.x) / 2, (a.y + b.y) / 2];
  };
  canvas.addEventListener("pointermove", (event) => {
    const last = held.get(event.pointerId);
    if (!last) return;
    const now = { x: event.clientX, y: event.clientY };
    if (held.size === 2) {
      const [before, x, y] = spread();
      held.set(event.pointerId, now);
      const [after, x2, y2] = spread();
      changed(() => {
        camera.move(x2 - x, y2 - y);
        if (before > 0) camera.zoom(after / before);
      });
      return;
    }
    held.set(event.pointerId, now);
    const [dx, dy] = [now.x - last.x, now.y - last.y];
    if (event.shiftKey || event.buttons === 2) changed(() => camera.move(dx, dy));
    else changed(() => camera.spin(dx * DRAG, dy * DRAG));
  });
  for (const name of /** @type {const} */ (["pointerup", "pointercancel"]))
    canvas.addEventListener(name, (event) => held.delete(event.pointerId));
  canvas.addEventListener("contextmenu", (event) => event.preventDefault());
  canvas.addEventListener("dblclick", () => viewer.reset());
  canvas.addEventListener("wheel", (event) => {
    // Else the page could not be scrolled past the model.
    if (document.activeElement !== canvas) return;
    event.preventDefault();
    changed(() => camera.zoom(Math.exp(-event.deltaY * 0.0012)));
  }, { passive: false });
  /** @type {Record<string, () => void>} */
  const keys = {
    ArrowLeft: () => camera.spin(-STEP, 0), ArrowRight: () => camera.spin(STEP, 0),
    ArrowUp: () => camera.spin(0, -STEP), ArrowDown: () => camera.spin(0, STEP),
    "+": () => camera.zoom(1.2), "=": () => camera.zoom(1.2), "-": () => camera.zoom(1 / 1.2),
    0: () => viewer.reset(), Home: () => viewer.reset(),
  };
  canvas.addEventListener("keydown", (event) => {
    if (!(event.key in keys) || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    changed(keys[event.key]);
  });
  // Drawn at once: a picture of the old size would flicker.
  new ResizeObserver(() => viewer.drawNow()).observe(canvas);
  matchMedia("(prefers-color-scheme: dark)").addEventListener("change", () => viewer.draw());
}
