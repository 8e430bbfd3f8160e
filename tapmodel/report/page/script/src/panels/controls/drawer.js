/** On a small screen the controls lie in a drawer at its foot. */

import { element } from "../../elements.js";

export function drawer() {
  const button = element("drawer", HTMLButtonElement);
  const place = element("controls", HTMLElement);
  /** @param {boolean} open */
  const pull = (open) => {
    document.body.classList.toggle("drawn", open);
    button.setAttribute("aria-expanded", String(open));
    button.textContent = open ? "Close the controls" : "Change the tap";
  };
  button.addEventListener("click", () => pull(button.getAttribute("aria-expanded") !== "true"));
  place.addEventListener("keydown", (event) => {
    if (event.key !== "Escape" || !document.body.classList.contains("drawn")) return;
    if (event.target instanceof HTMLInputElement && event.target.getAttribute("aria-invalid") === "true") return;
    pull(false);
    button.focus();
  });
}
