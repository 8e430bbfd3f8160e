/** Variants that are pinned, over each other and beside each other. */

import { made } from "../elements.js";
import { asked } from "../live/link.js";
import { remember, remembered } from "../live/remembered.js";
import { picture } from "./graph/picture.js";
import { slot } from "./graph/slot.js";
import { drawOverlay } from "./variants/overlay.js";
import { differences, freeLetter, LETTERS, variantOf, way } from "./variants/pinned.js";
import { figuresTable, sample } from "./variants/table.js";

/** @import {AtDesk, TapView} from "../types" */
/** @import {Variant} from "./variants/pinned.js" */

/**
 * @param {AtDesk} desk
 * @returns {(view: TapView) => void}
 */
export function variantsPanel(desk) {
  const body = slot("variants", "Variants");
  if (!body) return () => {};
  /** @type {Variant[]} */
  let variants = remembered("variants", []);
  /** @type {TapView | null} */
  let view = null;
  let path = "";
  const pin = /** @type {HTMLButtonElement} */ (made("button", { type: "button", id: "pin" }, "Pin this"));
  const full = made("span", { class: "quiet", "aria-live": "polite" });
  const list = made("ol", { class: "pinned" });
  const place = made("div", { class: "graph-place overlay" });
  const table = made("div", { class: "variant-figures" });
  const beside = made("div", { class: "beside" }, place, table);
  body.append(made("p", {}, pin, " ", full), list, beside);
  const redraw = picture(place, "Sections of the pinned variants over the tap as it is", (svg, width) => {
    if (view) drawOverlay(svg, width, view, path, variants);
  });
  const show = () => {
    if (!view) return;
    beside.hidden = !variants.length;
    pin.disabled = !freeLetter(variants);
    full.textContent = pin.disabled
      ? `All of ${LETTERS.join(", ")} are pinned: remove one to pin another.`
      : "keeps this tap to compare others with, up to four.";
    list.replaceChildren(...variants.map(entry));
    table.replaceChildren(figuresTable(view.figures, variants));
    redraw();
  };
  /** @param {Variant[]} changed */
  const change = (changed) => {
    variants = changed;
    remember("variants", variants);
    show();
  };
  /** @param {Variant} variant */
  const entry = (variant) => {
    const name = /** @type {HTMLInputElement} */ (made("input", { type: "text", value: variant.name, size: 14, maxlength: 40,
      "aria-label": `Name of ${variant.letter}`, autocomplete: "off" }));
    name.addEventListener("change", () => {
      variant.name = name.value;
      change(variants);
    });
    const back = made("button", { type: "button" }, "Go back to this one");
    back.addEventListener("click", () => desk.set(way(desk.job, variant.job)));
    const remove = made("button", { type: "button", "aria-label": `Remove ${variant.letter}` }, "Remove");
    remove.addEventListener("click", () => {
      change(variants.filter((one) => one !== variant));
      pin.focus();
    });
    const other = differences(variant.job, desk.job);
    const told = other.length ? `unlike now: ${other.join(", ")}` : "the job is the same as now";
    return made("li", { "data-letter": variant.letter }, made("strong", {}, sample(variant.letter), variant.letter), name, back, remove,
      made("small", {}, told));
  };
  pin.addEventListener("click", async () => {
    const letter = freeLetter(variants);
    const job = await desk.settled();
    if (!view || !letter) return;
    const { name } = view;
    const pinned = await standing(desk, view);
    change([...variants, variantOf(letter, name, job, pinned)].sort((a, b) => (a.letter < b.letter ? -1 : 1)));
  });
  return (shown) => {
    view = shown;
    if (stands(shown) || !path) path = shown.section.path;
    if (!stands(shown) && variants.length)
      standing(desk, shown).then((found) => {
        if (view !== shown) return;
        path = found.section.path;
        redraw();
      });
    show();
    if (variants.some(({ units }) => units !== shown.units)) retold(variants, shown).then(change);
  };
}

/** @param {TapView} view */
const stands = ({ section, marks }) => Math.abs(section.z - marks.standing) < 1e-3;

/**
 * The tap with its section at the height where sections are compared, whatever height is shown.
 * @param {AtDesk} desk
 * @param {TapView} view
 * @returns {Promise<TapView>}
 */
async function standing(desk, view) {
  if (stands(view)) return view;
  const answer = await asked("tap", { job: desk.job, units: desk.units });
  const found = (await answer.json()).view;
  return found ?? view;
}

/**
 * Variants with their texts in the units of the view.
 * @param {Variant[]} variants
 * @param {TapView} shown
 */
async function retold(variants, shown) {
  return Promise.all(variants.map(async (one) => {
    if (one.units === shown.units) return one;
    const answer = await asked("tap", { job: one.job, units: shown.units });
    return variantOf(one.letter, one.name, one.job, { ...(await answer.json()).view, units: shown.units });
  }));
}
