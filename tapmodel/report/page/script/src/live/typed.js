/** What is typed into boxes, as a job has it; whether it can be used, the server says. */

/** @import {Control, Units} from "../types" */

const PLAIN = /^[-+]?(\d+\.?\d*|\.\d+)$/;

/** As units are typed, by the unit that stands behind a box; how lengths are written the server knows. */
const TYPED = { "°": /\s*(°|deg|degrees?)$/i, HRC: /\s*HRC$/i, pitches: /\s*pitch(es)?$/i, "%": /\s*%$/ };

/**
 * A text as the value of a field: a plain number has the unit of its box, which may be typed too.
 * @param {string} text
 * @param {Pick<Control, "unit" | "kind">} control
 * @returns {string | number | null} null for nothing, which the rules shall choose
 */
export function valueOf(text, { unit, kind }) {
  const typed = kind === "number" ? pointed(text.trim()) : text.trim();
  if (typed === "") return null;
  const bare = unit in TYPED ? typed.replace(TYPED[/** @type {keyof typeof TYPED} */ (unit)], "") : typed;
  if (bare !== typed && PLAIN.test(bare)) return Number(bare);
  if (kind === "text" && unit === "in") return marked(typed, (entry) => `${Number(entry)}in`);
  if (!PLAIN.test(typed)) return typed;
  return unit === "in" ? `${Number(typed)}in` : Number(typed);
}

/**
 * A list with its bare numbers written otherwise.
 * @param {string} text entries with commas between
 * @param {(entry: string) => string} written
 */
function marked(text, written) {
  const entries = text.split(",").map((entry) => entry.trim());
  return entries.map((entry) => (PLAIN.test(entry) ? written(entry) : entry)).join(", ");
}

/**
 * What is typed into a box of a length on a page in these units; a job and its papers have bare mm.
 * @param {string} text
 * @param {Units} units
 */
export function lengthTyped(text, units) {
  const typed = pointed(text.trim());
  return units === "inch" && PLAIN.test(typed) ? `${typed}in` : typed;
}

/**
 * The same length in its box, where the page is told in other units from then on.
 * @param {string} text
 * @param {Units} before
 * @param {Units} after
 */
export function keptLength(text, before, after) {
  const typed = pointed(text.trim());
  if ((before === "inch") === (after === "inch") || !PLAIN.test(typed)) return text;
  return `${typed}${before === "inch" ? "in" : "mm"}`;
}

/**
 * A list of a job as a box shows it: bare numbers are mm there, and say so in a box of inches.
 * @param {unknown} value
 * @param {string} unit of the box
 */
export function listShown(value, unit) {
  const text = shownAs(value);
  return unit === "in" ? marked(text, (entry) => `${entry}mm`) : text;
}

/**
 * What is typed into a box of one number, its decimal comma as the point that it is meant as.
 * @param {string} text
 */
export function pointed(text) {
  return text.includes(".") ? text : text.replace(/^([^,]*),([^,]*)$/, "$1.$2");
}

/**
 * A number of a slider, with as many decimals as its step needs.
 * @param {number} value
 * @param {number} step
 */
export function stepped(value, step) {
  const decimals = Math.min(6, (String(step).split(".")[1] ?? "").length);
  return String(Number(value.toFixed(decimals)));
}

/**
 * A value of a job as a box shows it.
 * @param {unknown} value
 */
export function shownAs(value) {
  return Array.isArray(value) ? value.join(", ") : String(value);
}

/**
 * The number after so many steps from a text; null where the text is no plain number.
 * @param {string} text
 * @param {number} step
 * @param {number} count
 */
export function moved(text, step, count) {
  const typed = pointed(text.trim());
  if (!PLAIN.test(typed)) return null;
  const places = (/** @type {string} */ number) => (number.split(".")[1] ?? "").length;
  const decimals = Math.min(6, Math.max(places(typed), places(String(step))));
  return String(Number((Number(typed) + count * step).toFixed(decimals)));
}
