/** Variants that are pinned, over each other and beside each other. */

import { made, settle } from "../elements.js";
import { asked, RefusedError } from "../live/link.js";
import { remember, remembered } from "../live/remembered.js";
import { Resting } from "../live/resting.js";
import { picture } from "./graph/picture.js";
import { slot } from "./graph/slot.js";
import { drawOverlay } from "./variants/overlay.js";
import { differences, freeLetter, LETTERS, namesOf, variantOf, way } from "./variants/pinned.js";
import { figuresTable, sample } from "./variants/table.js";

/** @import {AtDesk, TapView, Units} from "../types" */
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
  // Each stays as long as it is pinned: somebody may be at its name or its buttons.
  /** @type {WeakMap<Variant, {node: HTMLElement, tell: () => void}>} */
  const entries = new WeakMap();
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
    for (const one of variants) if (!entries.has(one)) entries.set(one, entry(one));
    const now = variants.flatMap((one) => entries.get(one) ?? []);
    settle(list, now.map(({ node }) => node));
    for (const { tell } of now) tell();
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
    const told = made("small");
    const node = made("li", { "data-letter": variant.letter },
      made("strong", {}, sample(variant.letter), variant.letter), name, back, remove, told);
    const tell = () => {
      const other = differences(variant.job, desk.job, namesOf(view?.fields ?? []));
      told.textContent = other.length ? `unlike now: ${other.join(", ")}` : "the job is the same as now";
    };
    return { node, tell };
  };
  pin.addEventListener("click", () => answered(async () => {
    const job = await desk.settled();
    if (!view) return;
    const pinned = await standing(desk, view);
    // Another may have been pinned meanwhile.
    const letter = freeLetter(variants);
    if (!letter) return;
    path = pinned.section.path;
    change([...variants, variantOf(letter, pinned.name, job, pinned)].sort((a, b) => (a.letter < b.letter ? -1 : 1)));
  }));
  const following = new Resting((signal) => answered(async () => {
    if (!view) return;
    const { units } = view;
    if (variants.length) path = (await standing(desk, view, signal)).section.path;
    redraw();
    await Promise.all(variants.map(async (one) => Object.assign(one, await retold(one, units, signal))));
    change(variants);
  }));
  return (shown) => {
    view = shown;
    if (stands(shown) || !path) path = shown.section.path;
    show();
    const others = variants.some(({ units }) => units !== shown.units);
    if (others || (!stands(shown) && variants.length)) following.after(0);
    // An answer in units that were left again would stay, as nothing asks for another.
    else following.stop();
  };
}

/**
 * Do what needs an answer; where there is none all stays as it is, and the foot of the page tells why.
 * @param {() => Promise<void>} work
 */
async function answered(work) {
  try {
    await work();
  } catch (error) {
    if (!(error instanceof RefusedError)) throw error;
  }
}

/** @param {TapView} view */
const stands = ({ section, marks }) => Math.abs(section.z - marks.standing) < 1e-3;

/**
 * The tap with its section at the height where sections are compared, whatever height is shown.
 * @param {AtDesk} desk
 * @param {TapView} view
 * @param {AbortSignal} [signal] when it is not wanted any more
 * @returns {Promise<TapView>}
 */
async function standing(desk, view, signal) {
  if (stands(view)) return view;
  return (await (await asked("tap", { job: desk.job, units: desk.units }, signal)).json()).view;
}

/**
 * The texts of a variant in other units; none where it has them.
 * @param {Variant} variant
 * @param {Units} units
 * @param {AbortSignal} signal when they are not wanted any more
 * @returns {Promise<Partial<Variant>>}
 */
async function retold({ job, units: told }, units, signal) {
  if (told === units) return {};
  /** @type {{view: TapView}} */
  const { view } = await (await asked("tap", { job, units }, signal)).json();
  return { units, figures: view.figures };
}
