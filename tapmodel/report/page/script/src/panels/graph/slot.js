/** The places of the panels in the page. */

import { made } from "../../elements.js";

/**
 * The body of a panel, empty; null where the page has no place for it.
 * @param {string} name of the panel: it fills `#name-pane`, or `#name` where no chapter has that name
 * @param {string} title of the section, where it has none
 */
export function slot(name, title) {
  const section = document.getElementById(`${name}-pane`) ?? document.getElementById(name);
  if (!section) return null;
  section.hidden = false;
  if (!section.querySelector("h2")) section.prepend(made("h2", {}, title));
  const body = made("div", { class: "panel-body" });
  section.append(body);
  return body;
}

/** What stands where nothing is told of a tap. */
export function unforeseen() {
  return made("p", { class: "judged" }, "Nothing is told of a tap that breaks a rule.");
}
