/** The model to turn, at work in its hole, and in the making. */

import { element, made } from "../elements.js";
import { asked, RefusedError } from "../live/link.js";
import { Resting } from "../live/resting.js";
import { handled } from "../model/looking/handling.js";
import { Labels } from "../model/words/labels.js";
import { cuttingNow, inMaking } from "../model/scenes/motion.js";
import { fromPage, fromServer } from "../model/packed.js";
import { Player } from "../model/player.js";
import { Viewer } from "../model/viewer.js";
import { lengthText } from "../units.js";
import { NOTHING } from "../model/scenes/caps.js";

/** @import {Job, ModelHead, PackedModel, TapView, Units} from "../types" */
/** @import {Loaded} from "../model/packed.js" */
/** @import {SceneName} from "../model/viewer.js" */

const WAIT = 120; // for a change to be followed by another [ms]

/** @typedef {{job: Job, units: Units | null}} Asking what of the desk the model hangs on */

const HELP = "Drag to turn, shift-drag or two fingers to move; click, then wheel to zoom; "
  + "double-click shows all of it again. Keys: arrows turn, + and − zoom, 0 shows all.";

/**
 * Show a model; where the browser draws none, say so.
 * @param {Asking | null} desk null on a page that stands alone
 * @param {PackedModel | null} packed what is shown first
 * @param {Units} [units]
 */
export async function modelPanel(desk, packed, units = "mm") {
  const panel = new ModelPanel(desk, units);
  if (packed && panel.viewer) panel.show(await fromPage(packed));
  return panel;
}

class ModelPanel {
  /**
   * @param {Asking | null} desk
   * @param {Units} units
   */
  constructor(desk, units) {
    this.desk = desk;
    this.units = units;
    this.pane = element("model-pane", HTMLElement);
    this.parts = furniture();
    this.pane.replaceChildren(...this.parts.all);
    this.height = 0;
    this.key = "";
    this.asking = new Resting((signal) => this._ask(signal));
    /** @type {Viewer | null} */
    this.viewer = null;
    try {
      this.viewer = new Viewer(this.parts.canvas);
    } catch (error) {
      this._none(String(error));
      return;
    }
    handled(this.viewer);
    this.labels = new Labels(this.viewer, this.parts.stage);
    this.player = new Player((value) => this._at(value));
    this.parts.work.append(this.player.element);
    this._connect(this.viewer);
  }

  /** @param {Viewer} viewer */
  _connect(viewer) {
    const { parts } = this;
    for (const [name, button] of Object.entries(parts.views))
      button.addEventListener("click", () => name === "quarter" ? viewer.reset() : viewer.look(name));
    for (const [name, radio] of Object.entries(parts.scenes))
      radio.addEventListener("change", () => this._choose(/** @type {SceneName} */ (name)));
    parts.cut.addEventListener("change", () => this._cut());
    parts.quarter.addEventListener("change", () => viewer.quarter(parts.quarter.checked));
    parts.names.addEventListener("change", () => {
      if (this.labels) this.labels.on = parts.names.checked;
      viewer.draw();
    });
  }

  /** @param {string} why */
  _none(why) {
    const { stage, none, bar } = this.parts;
    stage.hidden = bar.hidden = true;
    none.hidden = false;
    none.title = why;
  }

  /**
   * Where the section is made.
   * @param {number} z [mm]
   */
  cutAt(z) {
    this.height = z;
    if (this.parts.cut.checked) this._cut();
  }

  _cut() {
    if (!this.viewer) return;
    this.viewer.cuts.height = this.parts.cut.checked ? this.height : NOTHING;
    this.viewer.draw();
  }

  /**
   * The design may be another: ask for its model, the latest alone.
   * @param {TapView} view
   */
  update(view) {
    if (!this.desk || !this.viewer) return;
    this.units = view.units;
    if (view.model === this.key) return;
    this.key = view.model;
    this._waiting(true);
    this.asking.after(this.viewer.model ? WAIT : 0);
  }

  /** @param {AbortSignal} signal */
  async _ask(signal) {
    const { desk } = this;
    if (!desk) return;
    try {
      const body = { job: desk.job, units: desk.units };
      const answer = await asked("model", body, signal);
      this.show(fromServer(await answer.arrayBuffer()));
    } catch (error) {
      if (signal.aborted) return;
      // The next change asks again, even one that leads back here.
      this.key = "";
      if (!(error instanceof RefusedError)) throw error;
      this.parts.state.textContent = `no model: ${error.message}`;
    }
  }

  /** @param {boolean} on */
  _waiting(on) {
    this.parts.stage.classList.toggle("waiting", on);
    this.parts.state.textContent = on ? "updating" : "";
  }

  /** @param {Loaded} model */
  show(model) {
    const { viewer, parts, labels } = this;
    if (!viewer || !labels) return;
    labels.clear();
    viewer.show(model);
    this._waiting(false);
    parts.caption.textContent = `${model.head.caption}.`;
    parts.scenes.hole.disabled = !model.head.hole;
    parts.scenes[viewer.name].checked = true;
    this._list(model.head);
    this._course();
    viewer.drawNow();
  }

  /**
   * The same words as a list, whose buttons turn the model so that the place is seen.
   * @param {ModelHead} head
   */
  _list({ marks, hole, mill }) {
    const { viewer, parts } = this;
    if (!viewer) return;
    parts.named.replaceChildren(...marks.map((mark) => {
      const button = made("button", { type: "button" }, made("b", {}, mark.label), ` ${mark.text}`);
      button.addEventListener("click", () => this._face(mark.places[0].facing));
      return made("li", {}, button);
    }));
    parts.chips.replaceChildren(...(hole?.chips ?? []).map((chip) =>
      made("li", {}, made("b", {}, `chip ${chip.number}`), `, land ${chip.land + 1}: ${chip.text}`)));
    parts.stations.replaceChildren(...mill.stations.map(({ name, move }) => made("li", {}, `${name}: ${move}`)));
  }

  /** @param {number[]} facing */
  _face(facing) {
    const { viewer, parts } = this;
    if (!viewer) return;
    parts.scenes.alone.checked = true;
    if (viewer.name !== "alone") this._choose("alone");
    viewer.face(facing);
  }

  /** @param {SceneName} name */
  _choose(name) {
    const { viewer } = this;
    if (!viewer) return;
    viewer.choose(name);
    this._course();
  }

  /** What the player runs through. */
  _course() {
    const { viewer, player, parts } = this;
    if (!viewer?.model || !player) return;
    const { name } = viewer, { head } = viewer.model, { hole, shape, mill } = head;
    for (const part of parts.ofTap) part.hidden = name !== "alone";
    parts.work.hidden = name === "alone";
    player.element.hidden = name === "alone";
    parts.lists.named.hidden = name !== "alone";
    parts.lists.chips.hidden = name !== "hole";
    parts.lists.stations.hidden = name !== "mill";
    parts.thickness.hidden = name !== "hole" || !hole?.chips.length;
    parts.about.textContent = name === "hole" ? hole?.told ?? "" : name === "mill" ? mill.told : "";
    if (name === "hole" && hole) {
      const step = shape.lead / shape.lands;
      player.take({
        from: -2 * shape.pitch, to: hole.way, step, perSecond: 0.5 * shape.lead,
        told: (value) => this._holeTold(value),
      }, viewer.hole?.entered ?? 0);
    }
    if (name === "mill")
      player.take({
        from: 0, to: shape.lands, step: 1, perSecond: 0.25,
        told: (value) => this._millTold(value),
      }, viewer.mill?.progress ?? 0);
    if (name === "alone") player.run(false);
  }

  /** @param {number} value */
  _at(value) {
    const { viewer } = this;
    if (viewer?.hole) viewer.hole.entered = value;
    if (viewer?.mill) viewer.mill.progress = value;
    viewer?.draw();
  }

  /** @param {number} entered [mm] */
  _holeTold(entered) {
    const head = this.viewer?.model?.head;
    if (!head?.hole) return "";
    const { turns, chips } = cuttingNow(head.shape, head.hole, entered);
    const text = lengthText(Math.abs(entered), this.units);
    if (entered <= 0) return `front ${text} above the work`;
    const cutting = chips.length === 0 ? "no tooth cuts yet"
      : chips.length === 1 ? `tooth ${chips[0].number} cuts`
      : `teeth ${chips[0].number} to ${chips[chips.length - 1].number} cut`;
    return `turn ${turns.toFixed(2)}, front ${text} deep; ${cutting}`;
  }

  /** @param {number} progress */
  _millTold(progress) {
    const head = this.viewer?.model?.head;
    if (!head) return "";
    const { flute, done, milling } = inMaking(head.shape, progress, head.mill.ratio);
    if (done >= head.shape.lands) return `all ${done} flutes are milled`;
    const { name, move } = head.mill.stations[milling ? flute : flute + 1];
    if (!milling) return `${move}, to ${name}`;
    return flute ? `milling ${name}; before it ${move}` : `${name}: ${move}`;
  }
}

/** Everything in the pane. */
function furniture() {
  const canvas = /** @type {HTMLCanvasElement} */ (made("canvas", {
    id: "model", tabindex: 0, role: "application", "aria-describedby": "model-help",
    "aria-label": "The tap in three dimensions. Arrow keys turn it, plus and minus zoom, zero shows all of it.",
  }));
  const state = made("span", { class: "state", role: "status" });
  const stage = made("div", { class: "stage" }, canvas, state);
  const none = made("p", { id: "no-model", hidden: true },
    "This browser shows no 3-D graphics (WebGL 2); pictures and drawings stand below.");
  /** @param {string} label @param {string} value @param {boolean} checked */
  const radio = (label, value, checked) => {
    const input = /** @type {HTMLInputElement} */ (made("input", { type: "radio", name: "scene", value, checked }));
    return { input, label: made("label", {}, input, ` ${label}`) };
  };
  const scenes = { alone: radio("the tap", "alone", true), hole: radio("in its hole", "hole", false),
    mill: radio("milling", "mill", false) };
  const chosen = made("fieldset", { class: "scenes" }, made("legend", { class: "unseen" }, "what is shown"),
    ...Object.values(scenes).map((one) => one.label));
  /** @type {Record<string, HTMLElement>} */
  const views = {};
  for (const [name, label] of [["quarter", "three-quarter"], ["front", "cutting end"], ["side", "side"],
    ["rear", "square"]])
    views[name] = made("button", { type: "button", "data-view": name }, label);
  /** @param {string} id @param {string} label @param {boolean} checked */
  const box = (id, label, checked) => {
    const input = /** @type {HTMLInputElement} */ (made("input", { type: "checkbox", id, checked }));
    return { input, label: made("label", {}, input, ` ${label}`) };
  };
  const names = box("model-names", "names and numbers", true);
  const cut = box("cut", "cut at the section", false), quarter = box("cut-quarter", "cut out a quarter", false);
  const bar = made("div", { class: "buttons" }, ...Object.values(views), names.label, cut.label, quarter.label);
  const about = made("p", { class: "about" });
  const thickness = made("p", { class: "thickness" }, "chips: thin ", made("i", { class: "scale", "aria-hidden": "true" }), " thick");
  const work = made("div", { class: "work", hidden: true }, about, thickness);
  const named = made("ul"), chips = made("ul"), stations = made("ul");
  /** @param {string} title @param {HTMLElement} list */
  const details = (title, list) => made("details", { class: "told-list" }, made("summary", {}, title), list);
  const lists = {
    named: details("Names and numbers as a list", named), chips: details("Chips as a list", chips),
    stations: details("Flutes as a list", stations),
  };
  const caption = made("span"), help = made("span", { id: "model-help" }, HELP);
  const under = made("figcaption", {}, made("span", {}, caption, " ", help));
  return {
    canvas, stage, state, none, bar, work, about, thickness, named, chips, stations, lists, caption, views,
    names: names.input, cut: cut.input, quarter: quarter.input,
    ofTap: [cut.label, quarter.label],
    scenes: { alone: scenes.alone.input, hole: scenes.hole.input, mill: scenes.mill.input },
    all: [chosen, stage, none, bar, work, lists.named, lists.chips, lists.stations, under],
  };
}
