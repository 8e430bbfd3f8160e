/** Boxes and texts of what is asked at the machine. */

import { made } from "../../elements.js";
import { asked, RefusedError } from "../../live/link.js";
import { Resting } from "../../live/resting.js";

/** @import {Pair, ShownChapter, Units} from "../../types" */

/** Until so long nothing more is typed [ms]. */
const PAUSE = 150;

/**
 * A box with its name, which may be told anew.
 * @param {string} label
 * @param {Record<string, string | number | boolean>} attributes
 */
export function boxed(label, attributes) {
  const box = /** @type {HTMLInputElement} */ (made("input", { type: "text", autocomplete: "off", ...attributes }));
  const name = made("span", {}, label);
  return { box, name, whole: made("label", { class: "boxed" }, name, box) };
}

/**
 * The unit that a bare length has in a box, as at the side.
 * @param {Units} units of the page
 */
export function unitOf(units) {
  return units === "inch" ? "in" : "mm";
}

/** @param {Pair[]} pairs */
export function pairsList(pairs) {
  return made("dl", { class: "legend" }, ...pairs.map(({ label, text }) =>
    made("div", {}, made("dt", {}, label), made("dd", {}, text))));
}

/**
 * @param {string[]} head
 * @param {(string | string[])[][]} lines
 * @param {string} [caption]
 */
export function grid(head, lines, caption = "") {
  const table = made("table", {}, ...(caption ? [made("caption", {}, caption)] : []),
    made("thead", {}, made("tr", {}, ...head.map((word) => made("th", { scope: "col" }, word)))),
    made("tbody", {}, ...lines.map(([first, ...others]) => made("tr", {},
      made("th", { scope: "row" }, ...cell(first)), ...others.map((one) => made("td", {}, ...cell(one)))))));
  return made("div", { class: "scroll", tabindex: 0, role: "group", "aria-label": caption || head.join(", ") }, table);
}

/** @param {string | string[]} texts */
function cell(texts) {
  return typeof texts === "string" ? [texts] : texts.flatMap((text, n) => (n ? [made("br"), text] : [text]));
}

/** @param {string[]} texts */
export function notesList(texts) {
  return made("ul", {}, ...texts.map((text) => made("li", {}, text)));
}

/** @param {ShownChapter} chapter */
export function chapterBlocks({ blocks }) {
  return blocks.map((block) => (Array.isArray(block) ? notesList(block) : grid(block.head, block.lines, block.caption)));
}

/**
 * Asks a question after a pause; the newest counts. After a refusal no old answer looks as though it held.
 * @param {string} path
 * @param {() => object} question
 * @param {(answer: any) => void} show
 * @param {HTMLElement} shown what the answer stands in, dimmed while it is an older one
 * @param {{refused?: () => void, boxes?: Record<string, Complaint>}} [more] what takes away what would be
 *   misread even so; where a refusal stands that has a box to blame, by the name of what is asked
 * @returns {{ask: (pause?: number) => void, wrong: HTMLElement}} with where any other refusal stands
 */
export function questions(path, question, show, shown, { refused = () => {}, boxes = {} } = {}) {
  const reason = made("p", { role: "alert", class: "wrong" });
  const older = made("p", { class: "quiet", hidden: true }, "What is shown below is as it was before.");
  const tell = (message = "", field = "") => {
    for (const [name, box] of Object.entries(boxes)) box.tell(name === field ? message : "");
    reason.textContent = field in boxes ? "" : message;
    shown.classList.toggle("older", Boolean(message));
    older.hidden = !message || !shown.hasChildNodes();
  };
  const asking = new Resting(async (signal) => {
    try {
      const answer = await (await asked(path, question(), signal)).json();
      tell();
      show(answer);
    } catch (error) {
      if (!(error instanceof RefusedError)) throw error;
      refused();
      tell(error.message, error.field);
    }
  });
  return { wrong: made("div", {}, reason, older), ask: (pause = PAUSE) => asking.after(pause) };
}

/**
 * @typedef {object} Complaint
 * @property {HTMLElement} node
 * @property {(message: string) => void} tell "" for nothing
 */

/**
 * Why what stands in a box cannot be used, to be put below it.
 * @param {HTMLInputElement} box
 * @returns {Complaint}
 */
export function complaintOf(box) {
  const node = made("p", { class: "wrong", id: `${box.id}-wrong`, role: "alert" });
  box.setAttribute("aria-describedby", node.id);
  return {
    node,
    tell(message) {
      if (node.textContent !== message) node.textContent = message;
      box.setAttribute("aria-invalid", String(Boolean(message)));
    },
  };
}
