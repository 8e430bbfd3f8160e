/** Tables and drawings below the model of a live page: made anew when the hands rest. */

import { element } from "../elements.js";
import { RefusedError, sought } from "../live/link.js";
import { Resting } from "../live/resting.js";
import { card } from "./shell/full_size.js";

/** @import {Desk} from "../live/desk.js" */

/** How long nothing must have been changed, where they are looked at and where they are not [ms]. */
const REST = 900, IDLE = 4000;

/** @typedef {{chapters: {key: string, html: string}[], drawings: {name: string, title: string, svg: string}[]}} Papers */

/**
 * They take the server a second in which it redraws slowly: so they are asked for when the hands
 * rest, sooner where they are looked at. Who prints wants them whether they were looked at or not.
 * @param {Desk} desk
 * @param {() => void} arrived told when there are new ones
 * @returns {() => void} told of every new view
 */
export function papersPanel(desk, arrived) {
  const place = element("papers", HTMLElement);
  let stale = true, seen = false, held = false;
  const bringing = new Resting(async (signal) => {
    if (held) return;
    try {
      show(place, await sought("papers", { job: desk.job, units: desk.units }, signal));
      arrived();
    } catch (error) {
      if (!(error instanceof RefusedError)) throw error;
      // Those that stand there are of another tap, and say so on paper; they are asked for again
      // when the program is there again, or something is pressed or looked at.
      return;
    }
    stale = false;
    place.setAttribute("aria-busy", "false");
  });
  const rest = () => bringing.after(seen ? REST : IDLE);
  /** What is asked for already is not asked for anew. */
  const wait = () => {
    if (stale && !bringing.asking) rest();
  };
  /** @param {boolean} down */
  const hold = (down) => () => {
    held = down;
    wait();
  };
  document.addEventListener("pointerdown", hold(true));
  for (const end of ["pointerup", "pointercancel"]) document.addEventListener(end, hold(false));
  // Printing waits for nothing; whoever prints again has them all.
  window.addEventListener("beforeprint", () => {
    if (stale && !bringing.asking) bringing.after(0);
  });
  new IntersectionObserver(([entry]) => {
    seen = entry.isIntersecting;
    if (seen) wait();
  }).observe(place);
  return () => {
    stale = true;
    place.setAttribute("aria-busy", "true");
    rest();
  };
}

/**
 * @param {HTMLElement} place
 * @param {Papers} papers
 */
function show(place, { chapters, drawings }) {
  const tables = chapters.filter(({ key }) => key !== "choices").flatMap(({ html }) => nodes(html));
  const reasons = chapters.filter(({ key }) => key === "choices").flatMap(({ html }) => nodes(html));
  const columns = document.createElement("div");
  columns.className = "columns";
  columns.id = "numbers";
  columns.append(...tables);
  const shown = document.createElement("section");
  shown.id = "drawings";
  const heading = document.createElement("h2");
  heading.textContent = "Drawings";
  const gallery = document.createElement("div");
  gallery.className = "gallery";
  gallery.append(...drawings.map(({ title, svg }) => card(title, drawing(svg, title))));
  shown.append(heading, gallery);
  place.replaceChildren(columns, shown, ...reasons);
}

/**
 * Of this program's own server, which has escaped whatever is not its own.
 * @param {string} html
 */
function nodes(html) {
  const read = new DOMParser().parseFromString(html, "text/html");
  return [...read.body.children].map((node) => document.importNode(node, true));
}

/**
 * @param {string} svg
 * @param {string} title
 */
function drawing(svg, title) {
  const read = new DOMParser().parseFromString(svg, "image/svg+xml");
  const node = document.importNode(read.documentElement, true);
  node.setAttribute("role", "img");
  node.setAttribute("aria-label", title);
  return node;
}
