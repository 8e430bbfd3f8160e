/** Build and verify: what is wanted, how far it is, what came of it. */

import { made } from "../elements.js";
import { begun, followed, forget, kept, offered, stopped } from "../live/builds.js";
import { textOf } from "../live/history.js";
import { RefusedError } from "../live/link.js";
import { remember, remembered } from "../live/remembered.js";
import { resultOf } from "./build/result.js";

/** @import {Begun} from "../live/builds.js" */
/** @import {Desk} from "../live/desk.js" */
/** @import {BuildTold, KindOfFile, TapView} from "../types" */

/** Status of an answer where another build runs. */
const BUSY = 409;

/** What a page that is loaded anew finds of the kinds that were not wanted. */
const UNWANTED = "unwanted files";

/**
 * Fill the section for it.
 * @param {Desk} desk
 * @returns {(view: TapView) => void} to be told every new view
 */
export function buildPanel(desk) {
  const place = document.getElementById("build");
  if (!place) return () => {};
  const panel = new BuildPanel(place, desk);
  panel.open();
  return () => panel.compare();
}

class BuildPanel {
  /**
   * @param {HTMLElement} place
   * @param {Desk} desk
   */
  constructor(place, desk) {
    this.desk = desk;
    /** Of the build that is shown. @type {string | null} */
    this.id = null;
    this.following = new AbortController();
    /** Whether a build was asked for and not answered yet. */
    this.asking = false;
    /** The job that it was built of as one text; empty for none. */
    this.builtOf = "";
    this.kinds = made("fieldset", { class: "kinds" });
    this.kinds.addEventListener("change", () => {
      this.name();
      remember(UNWANTED, this.boxes().filter((box) => !box.checked).map(({ value }) => value));
    });
    this.start = button("Build and verify", () => this.build(false));
    this.force = button("Build it all the same", () => this.build(true));
    this.stop = button("Stop", () => this.end());
    this.bar = /** @type {HTMLProgressElement} */ (made("progress", { max: 1, "aria-label": "build" }));
    this.time = made("span", { class: "time" });
    // Told aloud where it changes, which the seconds do all the time.
    this.stage = made("span", { role: "status", "aria-live": "polite" });
    this.running = made("p", { class: "running" }, this.bar, this.stage, this.time);
    this.refused = made("p", { class: "refused", role: "alert" });
    this.changed = made("p", { class: "changed" }, "The tap was changed since: build again.");
    this.result = made("div", { class: "built" });
    const buttons = made("p", { class: "buttons" }, this.start, this.force, this.stop);
    const parts = [this.kinds, buttons, this.running, this.refused, this.changed, this.result];
    place.replaceChildren(made("h2", {}, "Build"), ...parts);
    this.show("idle");
    this.changed.hidden = true;
  }

  /** Offer the kinds of files, and go on following what was begun before the page was loaded anew. */
  async open() {
    const build = kept();
    await this.trying(async () => {
      const { kinds } = await offered();
      this.kinds.replaceChildren(made("legend", {}, "Files"), ...choices(kinds));
      this.name();
    });
    if (build) await this.trying(() => this.whileKept(() => this.follow(build)));
  }

  /**
   * Follow a build until the server has nothing of it any more.
   * @param {() => Promise<void>} follow
   */
  async whileKept(follow) {
    try {
      await follow();
    } catch (error) {
      if (!(error instanceof RefusedError) || error.status !== 404) throw error;
      forget();
      this.builtOf = "";
      this.compare();
      this.show("idle");
    }
  }

  /** @param {boolean} force */
  async build(force) {
    if (this.asking) return;
    this.asking = true;
    await this.desk.settled();
    this.following = new AbortController();
    await this.trying(async () => {
      const build = await begun(this.desk, this.wanted(), force).finally(() => (this.asking = false));
      await this.follow(build);
    });
  }

  /** @param {Begun} build */
  async follow({ id, of }) {
    this.id = id;
    this.builtOf = of;
    this.compare();
    this.result.replaceChildren();
    await followed(id, (told) => this.tell(told), this.following.signal);
  }

  /** Show how far the build of another page is, so that it can be waited for, or stopped here. */
  async join() {
    const { running } = await offered();
    if (!running) return;
    this.id = running.id;
    const { signal } = this.following;
    // What came of it is for the page that began it.
    await this.whileKept(() => followed(running.id, (told) => this.tell({ ...told, made: null, error: undefined }), signal));
    this.refused.textContent = "";
  }

  /** @param {BuildTold} told */
  tell(told) {
    const { share, stage, time } = told.progress;
    this.bar.value = share;
    this.bar.setAttribute("aria-valuetext", `${stage}, ${time}`);
    if (this.stage.textContent !== stage) this.stage.textContent = stage;
    this.time.textContent = time;
    this.show(told.state === "running" ? "running" : "idle");
    if (told.made) this.result.replaceChildren(...resultOf(told.id, told.made));
    if (told.error) throw new RefusedError(told.error, 422);
  }

  async end() {
    const { id } = this;
    if (!id) return;
    this.following.abort();
    this.following = new AbortController();
    await this.trying(async () => {
      await stopped(id);
      forget();
    });
    this.show("idle");
  }

  /** Say so where the tap is another one than was built. */
  compare() {
    const isOther = this.builtOf !== "" && this.builtOf !== textOf(this.desk.job);
    this.changed.hidden = !isOther;
  }

  wanted() {
    return this.ticked().map(({ value }) => value);
  }

  ticked() {
    return this.boxes().filter((box) => box.checked);
  }

  boxes() {
    return [...this.kinds.querySelectorAll("input")];
  }

  /** Say what the button does: papers alone need no solid. */
  name() {
    const isPapers = this.ticked().every((box) => !box.hasAttribute("data-model"));
    this.start.textContent = isPapers ? "Write the papers" : "Build and verify";
    this.start.toggleAttribute("disabled", !this.ticked().length);
  }

  /** @param {"idle" | "running"} state */
  show(state) {
    const isRunning = state === "running";
    const shown = isRunning ? this.stop : this.start;
    const hadFocus = [this.start, this.force, this.stop].includes(focused());
    shown.hidden = false;
    if (hadFocus) shown.focus();
    this.running.hidden = this.stop.hidden = !isRunning;
    this.start.hidden = isRunning;
    if (isRunning) this.force.hidden = true;
  }

  /**
   * Do something that the server may refuse.
   * @param {() => Promise<void>} work
   */
  async trying(work) {
    this.refused.textContent = "";
    this.force.hidden = true;
    await this.attempt(work);
  }

  /** @param {() => Promise<void>} work */
  async attempt(work) {
    const { signal } = this.following;
    try {
      await work();
    } catch (error) {
      if (signal.aborted) return;
      if (!(error instanceof RefusedError)) throw error;
      this.show("idle");
      this.complain(error);
      if (error.status === BUSY) await this.attempt(() => this.join());
    }
  }

  /** @param {RefusedError} error */
  complain(error) {
    // What the server did not answer about may go on there.
    if (error.status) forget();
    this.refused.textContent = error.message;
    this.force.hidden = !error.forceable;
  }
}

/**
 * @param {string} text
 * @param {() => void} press
 */
function button(text, press) {
  const node = made("button", { type: "button" }, text);
  node.addEventListener("click", press);
  return node;
}

function focused() {
  return /** @type {HTMLElement} */ (document.activeElement);
}

/**
 * All of them are wanted but those that were not before the page was loaded anew.
 * @param {KindOfFile[]} kinds
 */
function choices(kinds) {
  /** @type {string[]} */
  const unwanted = remembered(UNWANTED, []);
  return kinds.map(({ key, label, model }) => {
    const checked = !unwanted.includes(key);
    const box = made("input", { type: "checkbox", value: key, checked, "data-model": model });
    return made("label", {}, box, made("span", {}, label));
  });
}
