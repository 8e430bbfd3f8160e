/** Tables and drawings below the model of a live page: made anew when the hands rest. */

import { element } from "../elements.js";
import { asked, RefusedError } from "../live/link.js";
import { card } from "./full_size.js";

/** @import {Desk} from "../live/desk.js" */

/** How long nothing must have been changed [ms]. */
const REST = 600;

/** @typedef {{chapters: {key: string, html: string}[], drawings: {name: string, title: string, svg: string}[]}} Papers */

/**
 * They take the server seconds, so they are asked for where they are looked at.
 * @param {Desk} desk
 * @param {() => void} arrived told when there are new ones
 * @returns {() => void} told of every new view
 */
export function papersPanel(desk, arrived) {
  const place = element("papers", HTMLElement);
  let timer = 0, busy = false, stale = true, seen = false;
  const bring = async () => {
    if (busy || !stale || !seen) return;
    busy = true;
    stale = false;
    try {
      const answer = await asked("papers", { job: desk.job, units: desk.units });
      show(place, await answer.json());
      arrived();
    } catch (error) {
      // What was wrong is told where it was changed; the papers stay as they are.
      if (!(error instanceof RefusedError)) throw error;
    } finally {
      busy = false;
    }
    place.setAttribute("aria-busy", String(stale));
    wait();
  };
  const wait = () => {
    clearTimeout(timer);
    timer = window.setTimeout(bring, REST);
  };
  new IntersectionObserver(([entry]) => {
    seen = entry.isIntersecting;
    if (seen) wait();
  }).observe(place);
  return () => {
    stale = true;
    place.setAttribute("aria-busy", "true");
    wait();
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
