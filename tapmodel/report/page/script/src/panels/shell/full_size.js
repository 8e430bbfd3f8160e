/** Drawings and pictures in their full size, at a press. */

import { element, made } from "../../elements.js";

/** Cards are pressed wherever they stand, those too that come later. */
export function fullSize() {
  const dialog = element("full", HTMLDialogElement);
  const [title, place] = [element("full-title", HTMLElement), element("full-place", HTMLElement)];
  document.addEventListener("click", (event) => {
    const button = event.target instanceof Element ? event.target.closest("button.enlarge") : null;
    const card = button?.closest(".card");
    const drawing = card?.querySelector(".paper :is(svg, img)");
    if (!drawing) return;
    title.textContent = card?.querySelector("h3")?.textContent ?? "";
    place.replaceChildren(drawing.cloneNode(true));
    dialog.showModal();
  });
  element("full-close", HTMLButtonElement).addEventListener("click", () => dialog.close());
  dialog.addEventListener("click", (event) => {
    if (event.target === dialog) dialog.close();
  });
}

/**
 * A card for a drawing that comes as text of the server.
 * @param {string} title
 * @param {Node} drawing
 */
export function card(title, drawing) {
  const enlarge = made("button", { type: "button", class: "enlarge", "aria-label": `Full size: ${title}` }, "full size");
  return made("figure", { class: "card" }, made("h3", {}, title), made("div", { class: "paper" }, drawing), enlarge);
}
