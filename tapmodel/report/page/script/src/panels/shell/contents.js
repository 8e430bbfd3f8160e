/** The contents that stay: what there is of the page, and where one is in it. */

import { made } from "../../elements.js";

/**
 * Parts that come later are noticed where they stand.
 * @returns {() => void} to be called when the papers are others
 */
export function contentsPanel() {
  const bar = document.getElementById("contents");
  if (!bar) return () => {};
  const live = document.documentElement.classList.contains("live");
  // In the address of a live page stands its job.
  if (live) for (const way of document.querySelectorAll("#contents, .skip, #verdict")) way.addEventListener("click", go);
  for (const menu of bar.querySelectorAll("details")) folds(menu);
  const look = () => {
    chapters(bar);
    for (const link of bar.querySelectorAll(".parts > a")) {
      const part = target(link);
      if (link instanceof HTMLElement) link.hidden = !part || part.offsetHeight === 0;
    }
  };
  const watch = new MutationObserver(look);
  for (const slot of document.querySelectorAll(".slot")) watch.observe(slot, { childList: true });
  return look;
}

/** @param {Event} event */
function go(event) {
  const link = event.target instanceof Element ? event.target.closest("a") : null;
  const part = link && target(link);
  if (!part) return;
  event.preventDefault();
  link.closest("details")?.removeAttribute("open");
  part.scrollIntoView();
  part.tabIndex = -1;
  part.focus({ preventScroll: true });
}

/** @param {Element} link */
function target(link) {
  return document.getElementById(link.getAttribute("href")?.slice(1) ?? "");
}

/**
 * The menu of all chapters, from their headings.
 * @param {HTMLElement} bar
 */
function chapters(bar) {
  const list = bar.querySelector("#chapter-list");
  const found = [...document.querySelectorAll("#papers section[id]")];
  const menu = bar.querySelector("details");
  if (menu) menu.hidden = !found.length;
  if (!list || !found.length) return;
  const links = found.map((part) =>
    made("li", {}, made("a", { href: `#${part.id}` }, part.querySelector("h2")?.textContent ?? "")));
  list.replaceChildren(...links);
}

/**
 * A menu closes by Escape, and when the pointer goes elsewhere.
 * @param {HTMLDetailsElement} menu
 */
function folds(menu) {
  document.addEventListener("pointerdown", (event) => {
    if (event.target instanceof Node && !menu.contains(event.target)) menu.open = false;
  });
  menu.addEventListener("click", (event) => {
    if (event.target instanceof HTMLAnchorElement) menu.open = false;
  });
  menu.addEventListener("keydown", (event) => {
    if (event.key !== "Escape") return;
    menu.open = false;
    menu.querySelector("summary")?.focus();
  });
}
