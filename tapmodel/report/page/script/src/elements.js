/** Elements of the page: found, and made. */

/** @import {PageData} from "./types" */

/** @returns {PageData} */
export function pageData() {
  const holder = document.getElementById("page-data");
  return JSON.parse(holder?.textContent ?? "null");
}

/**
 * The element of that id.
 * @template {Element} T
 * @param {string} id
 * @param {new (...args: any) => T} kind that it must be
 * @returns {T}
 */
export function element(id, kind) {
  const found = document.getElementById(id);
  if (!(found instanceof kind)) throw new Error(`the page has no ${kind.name} #${id}`);
  return found;
}

/**
 * A new element with attributes and content.
 * @param {string} tag
 * @param {Record<string, string | number | boolean>} [attributes] true for one without value,
 *   false for none
 * @param {...(Node | string)} content texts stand as they are, never as markup
 */
export function made(tag, attributes = {}, ...content) {
  const node = document.createElement(tag);
  dress(node, attributes);
  node.append(...content);
  return node;
}

/**
 * Have these children in this order; what stays is not moved, so it keeps the focus.
 * @param {HTMLElement} place
 * @param {HTMLElement[]} wanted
 */
export function settle(place, wanted) {
  for (const child of [...place.children])
    if (!wanted.includes(/** @type {HTMLElement} */ (child))) child.remove();
  wanted.forEach((node, n) => {
    if (place.children[n] !== node) place.insertBefore(node, place.children[n] ?? null);
  });
}

const SVG = "http://www.w3.org/2000/svg";

/**
 * The same in a drawing.
 * @param {string} tag
 * @param {Record<string, string | number | boolean>} [attributes]
 * @param {...(Node | string)} content
 */
export function drawn(tag, attributes = {}, ...content) {
  const node = document.createElementNS(SVG, tag);
  dress(node, attributes);
  node.append(...content);
  return node;
}

/**
 * @param {Element} node
 * @param {Record<string, string | number | boolean>} attributes
 */
function dress(node, attributes) {
  for (const [name, value] of Object.entries(attributes))
    if (value === true) node.setAttribute(name, "");
    else if (value !== false) node.setAttribute(name, String(value));
}
