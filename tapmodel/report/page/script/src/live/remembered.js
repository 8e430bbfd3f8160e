/** What the page keeps while its tab is open. */

const NAME = "tapmodel.";

/**
 * @template T
 * @param {string} name
 * @param {T} otherwise where nothing is kept, or nothing that can be read
 * @returns {T}
 */
export function remembered(name, otherwise) {
  try {
    return JSON.parse(sessionStorage.getItem(NAME + name) ?? "null") ?? otherwise;
  } catch {
    return otherwise;
  }
}

/**
 * @param {string} name
 * @param {unknown} value
 */
export function remember(name, value) {
  try {
    sessionStorage.setItem(NAME + name, JSON.stringify(value));
  } catch {
    // A browser that keeps nothing still shows everything.
  }
}
