/** Build and verify: what is wanted, how far it is, what came of it. */

import { made } from "../elements.js";
import { addressOf, begun, followed, forget, kept, offered, stopped } from "../live/builds.js";
import { RefusedError } from "../live/link.js";

/** @import {Desk} from "../live/desk.js" */
/** @import {Built, BuildTold, KindOfFile, TapView} from "../types" */

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
    /** What it was built of. */
    this.builtOf = "";
    this.kinds = made("fieldset", { class: "kinds" });
    this.kinds.addEventListener("change", () => this.name());
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
    await this.trying(async () => {
      const { kinds } = await offered();
      this.kinds.replaceChildren(made("legend", {}, "Files"), ...kinds.map(choice));
      this.name();
    });
    const id = kept();
    if (id) await this.trying(() => this.again(id));
  }

  /**
   * Follow what was begun before, unless the server has nothing of it any more.
   * @param {string} id
   */
  async again(id) {
    try {
      await this.follow(id);
    } catch (error) {
      if (!(error instanceof RefusedError) || error.status !== 404) throw error;
      forget();
    }
  }

  /** @param {boolean} force */
  async build(force) {
    if (this.asking) return;
    this.asking = true;
    const of = JSON.stringify(await this.desk.settled());
    this.following = new AbortController();
    await this.trying(async () => {
      const id = await begun(this.desk, this.wanted(), force).finally(() => (this.asking = false));
      this.builtOf = of;
      this.compare();
      await this.follow(id);
    });
  }

  /** @param {string} id */
  async follow(id) {
    this.id = id;
    this.result.replaceChildren();
    await followed(id, (told) => this.tell(told), this.following.signal);
  }

  /** @param {BuildTold} told */
  tell(told) {
    const { share, stage, time } = told.progress;
    this.bar.value = share;
    this.bar.setAttribute("aria-valuetext", `${stage}, ${time}`);
    if (this.stage.textContent !== stage) this.stage.textContent = stage;
    this.time.textContent = time;
    this.show(told.state === "running" ? "running" : "idle");
    if (told.made) this.result.replaceChildren(...shown(told.id, told.made));
    if (told.error) throw new RefusedError(told.error, 422);
  }

  async end() {
    if (!this.id) return;
    this.following.abort();
    forget();
    await this.trying(() => stopped(String(this.id)));
    this.show("idle");
  }

  /** Say so where the tap is another one than was built. */
  compare() {
    const isOther = this.builtOf !== "" && this.builtOf !== JSON.stringify(this.desk.job);
    this.changed.hidden = !isOther;
  }

  wanted() {
    return this.ticked().map((box) => box.getAttribute("value") ?? "");
  }

  ticked() {
    return [...this.kinds.querySelectorAll("input:checked")];
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
    try {
      await work();
    } catch (error) {
      if (this.following.signal.aborted) return;
      if (!(error instanceof RefusedError)) throw error;
      this.show("idle");
      this.complain(error);
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

/** @param {KindOfFile} kind */
function choice({ key, label, model }) {
  const box = made("input", { type: "checkbox", value: key, checked: true, "data-model": model });
  return made("label", {}, box, made("span", {}, label));
}

/**
 * What came of a build: the verdict with what was looked at, and the files; those of folders folded.
 * @param {string} id
 * @param {Built} built
 */
function shown(id, { verdict, rows, notes, files }) {
  const found = rows.map(([label, text]) => made("div", {}, made("dt", {}, label), made("dd", {}, text)));
  const [more, first] = [true, false].map((isInside) =>
    files.filter(({ name }) => name.includes("/") === isInside));
  const folded = made("details", {}, made("summary", {}, `${more.length} more, in folders`), list(id, more));
  return [
    made("p", { class: "verdict", role: "status" }, verdict),
    ...notes.map((note) => made("p", { class: "note" }, note)),
    ...(rows.length ? [made("dl", { class: "proof" }, ...found)] : []),
    made("p", {}, made("a", { href: `build/${id}/all.zip`, download: true }, "All files as one archive")),
    list(id, first),
    ...(more.length ? [folded] : []),
  ];
}

/**
 * @param {string} id
 * @param {Built["files"]} files
 */
function list(id, files) {
  const links = files.map(({ name, size }) =>
    made("li", {}, made("a", { href: addressOf(id, name), download: true }, name), ` ${size}`));
  return made("ul", { class: "files" }, ...links);
}
