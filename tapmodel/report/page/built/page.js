"use strict";
(() => {
  // src/live/history.js
  var TOGETHER = 1e3;
  var MOST = 200;
  var History = class {
    /** @param {Job} job where it begins */
    constructor(job) {
      this.jobs = [job];
      this.place = 0;
      this.key = "";
      this.at = -Infinity;
    }
    /**
     * Note a job that stands now.
     * @param {Job} job
     * @param {string} key of the control that made it; "" for a step of its own
     * @param {number} began when its first move was made, however late it stands [ms]
     * @param {number} ended its last
     */
    note(job, key, began, ended = began) {
      if (same(job, this.jobs[this.place])) return;
      const goesOn = key !== "" && key === this.key && began - this.at < TOGETHER && this.place > 0;
      this.jobs.splice(goesOn ? this.place : this.place + 1, Infinity, job);
      if (this.jobs.length > MOST) this.jobs.shift();
      this.place = this.jobs.length - 1;
      this.key = key;
      this.at = ended;
    }
    /**
     * The job so many steps away; undefined where there is none.
     * @param {-1 | 1} step
     */
    beside(step) {
      return this.jobs[this.place + step];
    }
    /** @param {-1 | 1} step */
    go(step) {
      this.place += step;
      this.key = "";
    }
  };
  function textOf(job) {
    return JSON.stringify(Object.entries(job).sort(([a], [b]) => a < b ? -1 : 1));
  }
  function same(a, b) {
    return textOf(a) === textOf(b);
  }

  // src/live/latest.js
  var Waiting = class {
    constructor() {
      this.changes = [];
    }
    /**
     * @param {Change} change
     * @param {number} now [ms]
     */
    add(change, now) {
      const last = this.changes.at(-1);
      if (last && change.key && last.key === change.key && last.values && change.values) {
        last.values = { ...last.values, ...change.values };
        last.ended = now;
      } else this.changes.push({ ...change, began: now, ended: now });
    }
    /** What is asked for next in one go: all values up to a change of another kind, or that one. */
    take() {
      const other = this.changes.findIndex((change) => !change.values);
      const count = other < 0 ? this.changes.length : Math.max(other, 1);
      return this.changes.splice(0, count);
    }
  };
  function laid(job, change) {
    if (change.whole) return change.whole;
    const entries = Object.entries({ ...job, ...change.values });
    return Object.fromEntries(entries.filter(([, value]) => value !== null));
  }
  function given(changes2) {
    const values = Object.assign({}, ...changes2.map((change) => change.values ?? {}));
    return Object.keys(values).filter((field) => values[field] !== null);
  }

  // src/live/link.js
  var RefusedError = class extends Error {
    /**
     * @param {Refusal} refusal
     * @param {number} [status] of the answer; 0 where there was none
     */
    constructor({ message, field, forceable = false }, status = 0) {
      super(message);
      this.status = status;
      this.field = field;
      this.forceable = forceable;
    }
  };
  var link = new EventTarget();
  var PAUSES = [200, 400, 800, 1600, 3200];
  async function asked(path, body, signal) {
    const headers = { "content-type": "application/json" };
    return answered(path, { method: "POST", headers, body: JSON.stringify(body), signal });
  }
  var line = Promise.resolve();
  async function sought(path, body, signal) {
    const turn = line.then(async () => {
      signal.throwIfAborted();
      return (await asked(path, body, signal)).json();
    });
    line = turn.then(() => {
    }, () => {
    });
    return turn;
  }
  async function looked(path, signal) {
    return answered(path, { signal });
  }
  async function removed(path) {
    return answered(path, { method: "DELETE" });
  }
  async function answered(path, wanted) {
    for (const pause of [...PAUSES, 0]) {
      const answer = await come(path, wanted);
      if (answer && answer.status !== 429) {
        tell("there");
        if (answer.ok) return answer;
        throw await refusal(answer);
      }
      tell(answer ? "busy" : "lost");
      if (pause) await waited(pause, wanted.signal);
    }
    throw new RefusedError({ message: "tapmodel does not answer: is it still running?", field: "" });
  }
  async function come(path, wanted) {
    try {
      return await fetch(path, wanted);
    } catch (error) {
      if (wanted.signal?.aborted) throw error;
      return null;
    }
  }
  async function refusal(answer) {
    try {
      return new RefusedError((await answer.json()).error, answer.status);
    } catch {
      return new RefusedError({ message: `tapmodel answers ${answer.status}`, field: "" }, answer.status);
    }
  }
  function tell(state) {
    link.dispatchEvent(new CustomEvent("state", { detail: state }));
  }
  function waited(time, signal) {
    return new Promise((resolve, reject) => {
      const end = () => {
        clearTimeout(timer);
        reject(signal?.reason);
      };
      const timer = setTimeout(() => {
        signal?.removeEventListener("abort", end);
        resolve();
      }, time);
      signal?.addEventListener("abort", end);
    });
  }

  // src/live/desk.js
  var Desk = class {
    /** @param {PageData & {live: NonNullable<PageData["live"]>}} data */
    constructor({ live, view }) {
      this.job = live.job;
      this.units = live.units;
      this.view = view;
      this.z = null;
      this.history = new History(live.job);
      this.saved = textOf(live.job);
      this.waiting = new Waiting();
      this.behind = [];
      this.busy = false;
      this.asking = Promise.resolve();
      this.refused = {};
      this.unanswered = [];
      this.followers = [];
      this.complaints = [];
      this.keepers = [];
      this.measured = live.measured ?? "";
      this.fillMeasured = async () => {
      };
      this.unkept = false;
    }
    get changed() {
      return textOf(this.job) !== this.saved;
    }
    /**
     * Lay values over the job.
     * @param {Job} values null for a field that rules shall choose again
     * @param {string} [key] of a control that is moved; its moves are undone as one
     */
    set(values, key = "") {
      return this.change({ values, key });
    }
    /**
     * Put a job in the place of this one; it counts as saved.
     * @param {Job} job
     * @param {Units | null} [units] of every text from then on; those of the page where nothing is said
     * @param {string} [file] name of the file that it comes from
     */
    open(job, units = null, file = "") {
      return this.change({ whole: job, key: "", opened: true, units, file });
    }
    /** @param {-1 | 1} step back, or forth again */
    go(step) {
      return this.change({ step, key: "" });
    }
    /**
     * Show the section at a height.
     * @param {number} z [mm]
     */
    cutAt(z) {
      this.z = z;
      return this.change({ values: {}, key: "look" });
    }
    /** @param {Units} units of every text */
    tellIn(units) {
      this.units = units;
      return this.change({ values: {}, key: "look" });
    }
    /** @param {Job} job that was handed out as a file */
    markSaved(job) {
      this.saved = textOf(job);
      for (const keep of this.keepers) keep();
    }
    /** The program answers again: ask once more for what it did not, where nothing newer was typed. */
    again() {
      const changes2 = this.unanswered.splice(0);
      for (const change of changes2) this.change(change);
      if (!changes2.length) this.#show();
    }
    /**
     * Whether a newer value of that field is still on its way, or what was typed was refused.
     * @param {string} field
     */
    isAhead(field) {
      return field in this.refused || [...this.waiting.changes, ...this.behind].some(({ values }) => values && field in values);
    }
    /**
     * What was typed into a box and found no answer, or a refusal, is not wanted any more.
     * @param {string} field
     */
    giveUp(field) {
      this.refused = without(this.refused, field);
      this.unanswered = this.unanswered.map((change) => change.values ? { ...change, values: without(change.values, field) } : change);
      for (const keep of this.keepers) keep();
    }
    /**
     * @param {Change} change
     * @returns {Promise<void>} ends once it is answered, and all that waits with it
     */
    async change(change) {
      const { values } = change;
      this.unanswered = this.unanswered.filter((old) => values && !Object.keys(old.values ?? {}).some((field) => field in values));
      this.waiting.add(change, performance.now());
      if (!this.busy) {
        this.busy = true;
        this.asking = this.#askAll();
      }
      await this.asking;
    }
    /**
     * The job once every change is answered: what is typed stands in its box before it is in the job.
     * @returns {Promise<Job>}
     */
    async settled() {
      while (this.busy) await this.asking.catch(() => {
      });
      return this.job;
    }
    async #askAll() {
      try {
        while (this.waiting.changes.length) await this.#all(this.waiting.take());
      } finally {
        this.busy = false;
      }
    }
    /**
     * Several changes in one go; where they are refused together, each by itself.
     * @param {Made[]} changes
     */
    async #all(changes2) {
      const complaint = await this.#try(changes2);
      if (!complaint) return;
      if (complaint.unanswered) this.unanswered.push(...changes2);
      if (changes2.length === 1 || complaint.unanswered)
        return changes2.forEach((change) => this.#complain(change, complaint));
      for (const [n, change] of changes2.entries()) {
        this.behind = changes2.slice(n + 1);
        await this.#all([change]);
      }
    }
    /**
     * @param {Change} change
     * @param {Complaint} complaint
     */
    #complain(change, complaint) {
      this.refused = { ...this.refused, ...change.values };
      const { message } = complaint;
      const told2 = change.opened ? { ...complaint, message: (change.file ? notOpened(change.file) : "") + message, fields: [], unchanged: true } : complaint;
      for (const complain2 of this.complaints) complain2(told2);
      for (const keep of this.keepers) keep();
    }
    /**
     * @param {Made[]} changes
     * @returns {Promise<Complaint | null>} why not; null when the changes stand
     */
    async #try(changes2) {
      const step = changes2[0].step;
      const target2 = step && this.history.beside(step);
      if (step && !target2) return null;
      const job = target2 || changes2.reduce(laid, this.job);
      const changed = given(changes2);
      const units = changes2[0].units ?? this.units;
      try {
        const { view, dropped = [] } = await this.#ask(job, changed, units);
        this.units = changes2[0].units ?? this.units;
        const stands2 = Object.entries(job).filter(([field]) => !dropped.includes(field));
        this.#stand(Object.fromEntries(stands2), view, changes2);
        return null;
      } catch (error) {
        if (!(error instanceof RefusedError)) throw error;
        if (!error.status) return { message: error.message, fields: [], unanswered: true };
        const known2 = changed.includes(error.field) || changed.length === 0;
        return { message: error.message, fields: known2 ? [error.field] : changed };
      }
    }
    /**
     * @param {Job} job
     * @param {string[]} changed
     * @param {Units | null} units
     * @returns {Promise<{view: TapView, dropped?: string[]}>}
     */
    async #ask(job, changed, units) {
      const answer = await asked("tap", { job, units, z: this.z, changed });
      return answer.json();
    }
    /**
     * @param {Job} job
     * @param {TapView} view
     * @param {Made[]} changes
     */
    #stand(job, view, changes2) {
      const moves = changes2.filter(({ values }) => !values || Object.keys(values).length);
      const { step, opened, file, key, began, ended } = moves.at(-1) ?? changes2[0];
      const lost = opened && file && this.changed;
      const done = new Set(step ? differing(this.job, job) : changes2.flatMap(({ values }) => Object.keys(values ?? this.refused)));
      this.job = job;
      this.view = view;
      if (step) this.history.go(step);
      else this.history.note(job, key, began, ended);
      if (opened) this.saved = textOf(job);
      this.refused = Object.fromEntries(Object.entries(this.refused).filter(([field]) => !done.has(field)));
      for (const complain2 of this.complaints) complain2(null);
      const message = `${file} is open. What was there was not saved: undo brings it back.`;
      if (lost) for (const complain2 of this.complaints) complain2({ message, fields: [], unchanged: true, done: true });
      this.#show();
      for (const keep of this.keepers) keep();
    }
    #show() {
      if (this.view) for (const follow of this.followers) follow(this.view);
    }
  };
  function differing(one, other) {
    return [.../* @__PURE__ */ new Set([...Object.keys(one), ...Object.keys(other)])].filter((field) => JSON.stringify(one[field]) !== JSON.stringify(other[field]));
  }
  function notOpened(file) {
    return `${file} was not opened: `;
  }
  function without(job, field) {
    return Object.fromEntries(Object.entries(job).filter(([name]) => name !== field));
  }

  // src/live/address.js
  var BEGINS = "#job=";
  var LONGEST = 6e4;
  function fragmentOf({ job, units }) {
    const bytes = new TextEncoder().encode(JSON.stringify({ job, units }));
    const letters = Array.from(bytes, (byte) => String.fromCharCode(byte)).join("");
    return BEGINS + btoa(letters).replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "");
  }
  function keptIn(fragment) {
    if (!fragment.startsWith(BEGINS) || fragment.length > LONGEST) return null;
    try {
      const coded = fragment.slice(BEGINS.length).replaceAll("-", "+").replaceAll("_", "/");
      const bytes = Uint8Array.from(atob(coded), (letter) => letter.charCodeAt(0));
      const { job, units } = JSON.parse(new TextDecoder("utf-8", { fatal: true }).decode(bytes));
      if (typeof job?.designation !== "string" || Array.isArray(job)) return null;
      return { job, units: ["mm", "inch", "both"].includes(units) ? units : null };
    } catch {
      return null;
    }
  }

  // src/live/keeping.js
  var PAUSE = 300;
  function kept(desk) {
    let timer = 0, written = -Infinity;
    const write = () => {
      timer = 0;
      written = performance.now();
      const fragment = fragmentOf({ job: desk.job, units: desk.units });
      const { saved, refused, history: { jobs, place } } = desk;
      history.replaceState({ saved, refused, steps: { jobs, place } }, "", fragment);
    };
    desk.keepers.push(() => {
      if (!timer) timer = window.setTimeout(write, Math.max(written + PAUSE - performance.now(), 0));
    });
    window.addEventListener("popstate", () => {
      clearTimeout(timer);
      timer = 0;
    });
    window.addEventListener("pagehide", () => {
      if (timer) write();
    });
    window.addEventListener("beforeunload", (event) => {
      if (desk.changed || desk.unkept || desk.busy) event.preventDefault();
    });
    window.addEventListener("hashchange", async () => {
      const { saved } = history.state ?? {};
      await begin(desk);
      desk.saved = saved ?? desk.saved;
      for (const keep of desk.keepers) keep();
    });
    return restored(desk, history.state ?? {});
  }
  async function begin(desk) {
    const found = keptIn(location.hash);
    if (!found) return;
    desk.units = found.units ?? desk.units;
    await desk.open(found.job);
  }
  async function restored(desk, { saved, refused = {}, steps: steps2 }) {
    await begin(desk);
    desk.history = new History(desk.job);
    if (steps2 && same(steps2.jobs[steps2.place], desk.job)) Object.assign(desk.history, steps2);
    desk.saved = saved ?? desk.saved;
    for (const [field, value] of Object.entries(refused)) await desk.set({ [field]: value });
    for (const keep of desk.keepers) keep();
  }

  // src/elements.js
  function pageData() {
    const holder = document.getElementById("page-data");
    return JSON.parse(holder?.textContent ?? "null");
  }
  function element(id, kind) {
    const found = document.getElementById(id);
    if (!(found instanceof kind)) throw new Error(`the page has no ${kind.name} #${id}`);
    return found;
  }
  function made(tag, attributes = {}, ...content) {
    const node = document.createElement(tag);
    dress(node, attributes);
    node.append(...content);
    return node;
  }
  function settle(place, wanted) {
    for (const child of [...place.children])
      if (!wanted.includes(
        /** @type {HTMLElement} */
        child
      )) child.remove();
    wanted.forEach((node, n) => {
      if (place.children[n] !== node) place.insertBefore(node, place.children[n] ?? null);
    });
  }
  var SVG = "http://www.w3.org/2000/svg";
  function drawn(tag, attributes = {}, ...content) {
    const node = document.createElementNS(SVG, tag);
    dress(node, attributes);
    node.append(...content);
    return node;
  }
  function dress(node, attributes) {
    for (const [name, value] of Object.entries(attributes))
      if (value === true) node.setAttribute(name, "");
      else if (value !== false) node.setAttribute(name, String(value));
  }

  // src/live/remembered.js
  var NAME = "tapmodel.";
  function remembered(name, otherwise) {
    try {
      return JSON.parse(sessionStorage.getItem(NAME + name) ?? "null") ?? otherwise;
    } catch {
      return otherwise;
    }
  }
  function remember(name, value) {
    try {
      sessionStorage.setItem(NAME + name, JSON.stringify(value));
    } catch {
    }
  }

  // src/live/resting.js
  var Resting = class {
    /** @param {(signal: AbortSignal) => Promise<void>} ask */
    constructor(ask) {
      this.ask = ask;
      this.timer = void 0;
      this.asking = null;
    }
    /**
     * Ask once nothing more has been changed for so long; what is asked for meanwhile is not wanted.
     * @param {number} pause [ms]
     */
    after(pause) {
      this.stop();
      this.timer = setTimeout(() => this.#now(), pause);
    }
    /** What was asked for is not wanted any more. */
    stop() {
      clearTimeout(this.timer);
      this.asking?.abort();
    }
    async #now() {
      const own = this.asking = new AbortController();
      try {
        await this.ask(own.signal);
      } catch (error) {
        if (!own.signal.aborted) throw error;
      } finally {
        if (this.asking === own) this.asking = null;
      }
    }
  };

  // src/panels/bench/boxes.js
  var PAUSE2 = 150;
  function boxed(label, attributes) {
    const box2 = (
      /** @type {HTMLInputElement} */
      made("input", { type: "text", autocomplete: "off", ...attributes })
    );
    const name = made("span", {}, label);
    return { box: box2, name, whole: made("label", { class: "boxed" }, name, box2) };
  }
  function unitOf(units) {
    return units === "inch" ? "in" : "mm";
  }
  function pairsList(pairs) {
    return made("dl", { class: "legend" }, ...pairs.map(({ label, text }) => made("div", {}, made("dt", {}, label), made("dd", {}, text))));
  }
  function grid(head2, lines, caption = "") {
    const table = made(
      "table",
      {},
      ...caption ? [made("caption", {}, caption)] : [],
      made("thead", {}, made("tr", {}, ...head2.map((word) => made("th", { scope: "col" }, word)))),
      made("tbody", {}, ...lines.map(([first, ...others]) => made(
        "tr",
        {},
        made("th", { scope: "row" }, ...cell(first)),
        ...others.map((one) => made("td", {}, ...cell(one)))
      )))
    );
    return made("div", { class: "scroll", tabindex: 0, role: "group", "aria-label": caption || head2.join(", ") }, table);
  }
  function cell(texts) {
    return typeof texts === "string" ? [texts] : texts.flatMap((text, n) => n ? [made("br"), text] : [text]);
  }
  function notesList(texts) {
    return made("ul", {}, ...texts.map((text) => made("li", {}, text)));
  }
  function chapterBlocks({ blocks }) {
    return blocks.map((block) => Array.isArray(block) ? notesList(block) : grid(block.head, block.lines, block.caption));
  }
  function questions(path, question, show2, shown2, { refused = () => {
  }, boxes = {} } = {}) {
    const reason = made("p", { role: "alert", class: "wrong" });
    const older = made("p", { class: "quiet", hidden: true }, "What is shown below is as it was before.");
    const tell3 = (message = "", field = "") => {
      for (const [name, box2] of Object.entries(boxes)) box2.tell(name === field ? message : "");
      reason.textContent = field in boxes ? "" : message;
      shown2.classList.toggle("older", Boolean(message));
      older.hidden = !message || !shown2.hasChildNodes();
    };
    const asking = new Resting(async (signal) => {
      try {
        const answer = await (await asked(path, question(), signal)).json();
        tell3();
        show2(answer);
      } catch (error) {
        if (!(error instanceof RefusedError)) throw error;
        refused();
        tell3(error.message, error.field);
      }
    });
    return { wrong: made("div", {}, reason, older), ask: (pause = PAUSE2) => asking.after(pause) };
  }
  function complaintOf(box2) {
    const node = made("p", { class: "wrong", id: `${box2.id}-wrong`, role: "alert" });
    box2.setAttribute("aria-describedby", node.id);
    return {
      node,
      tell(message) {
        if (node.textContent !== message) node.textContent = message;
        box2.setAttribute("aria-invalid", String(Boolean(message)));
      }
    };
  }

  // src/panels/bench/stations.js
  function steps({ stations }, at) {
    const station = stations[at];
    const off = station.off ? `, off by ${station.off}` : "";
    return {
      place: `${station.number} of ${stations.length}`,
      move: at === 0 ? "Begin here" : station.move || `from the first: ${station.reached}`,
      reached: at === 0 ? "the first place" : `from the first: ${station.reached}${off}`,
      first: at === 0,
      last: at === stations.length - 1
    };
  }

  // src/panels/bench/dividing.js
  function dividingBench(desk) {
    const memory = remembered("dividing", { divisions: "", place: 0 });
    const divisions = boxed("divisions, empty for the flutes", { id: "divisions", type: "number", min: 1, max: 400, value: memory.divisions });
    const refused = complaintOf(divisions.box);
    const text = made("div", {});
    const number = made("p", { class: "big", id: "dividing-place" });
    const move = made("p", { class: "big", id: "dividing-move" });
    const reached = made("p", { class: "quiet" });
    const back = (
      /** @type {HTMLButtonElement} */
      made("button", { type: "button" }, "Back")
    );
    const next = (
      /** @type {HTMLButtonElement} */
      made("button", { type: "button" }, "Next")
    );
    const all = made("details", {}, made("summary", {}, "All places"));
    const counter = made(
      "div",
      { class: "counter", role: "group", "aria-label": "Place" },
      made("div", { "aria-live": "polite" }, number, move, reached),
      made("div", { class: "pair" }, back, next)
    );
    const shown2 = made("div", {}, counter, text, all);
    let dividing = null;
    const show2 = () => {
      if (!dividing) return;
      const step = steps(dividing, memory.place);
      [number.textContent, move.textContent, reached.textContent] = [step.place, step.move, step.reached];
      back.disabled = step.first;
      next.disabled = step.last;
      remember("dividing", memory);
    };
    const { ask, wrong } = questions("bench/dividing", () => ({
      job: desk.job,
      units: desk.units,
      divisions: divisions.box.value ? Number(divisions.box.value) : null
    }), (answer) => {
      dividing = /** @type {DividingView} */
      answer.dividing;
      memory.place = Math.min(memory.place, dividing.stations.length - 1);
      text.replaceChildren(made("h4", {}, dividing.on), ...dividing.text.map((one) => made("p", {}, one)));
      all.replaceChildren(all.children[0], grid(
        ["place", "from the first", "off by"],
        dividing.stations.map((one) => [String(one.number), one.reached, one.off || "exact"])
      ));
      show2();
    }, shown2, { boxes: { divisions: refused } });
    const go2 = (by) => () => {
      memory.place = Math.max(memory.place + by, 0);
      show2();
    };
    back.addEventListener("click", go2(-1));
    next.addEventListener("click", go2(1));
    divisions.box.addEventListener("input", () => {
      memory.divisions = divisions.box.value;
      memory.place = 0;
      ask();
    });
    return { title: "Divide", content: [divisions.whole, refused.node, wrong, shown2], ask };
  }

  // src/panels/bench/gears.js
  function gearsBench(desk) {
    const screw = boxed("leadscrew, such as 4mm or 8tpi", { id: "gears-leadscrew" });
    const wheels = boxed("wheels at hand, such as 20-65,127", { id: "gears-wheels" });
    const use = made("button", { type: "button" }, "Put into the job");
    const lathe = made(
      "div",
      { class: "lathe" },
      made("p", {}, "The job names no leadscrew or no wheels of the lathe."),
      screw.whole,
      wheels.whole,
      use
    );
    const answer = made("div", { "aria-live": "polite" });
    const { ask, wrong } = questions("bench/gears", () => ({ job: desk.job, units: desk.units }), ({ gears, notes }) => {
      lathe.hidden = gears !== null;
      answer.replaceChildren(...gears ? [...chapterBlocks(gears), notesList(notes)] : []);
    }, answer);
    const put2 = () => {
      const named2 = {};
      if (screw.box.value.trim()) named2["shop.leadscrew"] = screw.box.value.trim();
      if (wheels.box.value.trim()) named2["shop.gears"] = wheels.box.value.trim();
      desk.set(named2);
    };
    use.addEventListener("click", put2);
    for (const { box: box2 } of [screw, wheels])
      box2.addEventListener("keydown", (event) => {
        if (event.key === "Enter") put2();
      });
    return { title: "Change gears", content: [wrong, lathe, answer], ask };
  }

  // src/live/files.js
  var LONGEST2 = 2e5;
  var NO_JOB = "a job is a .toml file, such as “Save job file” writes";
  var MEASURED = /\.measured\.toml$/i;
  var FETCHED = 1e4;
  async function openFile(desk, file) {
    try {
      if (file.size > LONGEST2) throw new RefusedError({ message: "too long for a job file", field: "" });
      if (MEASURED.test(file.name)) return await desk.fillMeasured(await file.text());
      const answer = await asked("read", { text: await file.text() });
      const { job } = await answer.json();
      await desk.open(job, job.units ?? null, file.name);
    } catch (error) {
      const refused = error instanceof RefusedError && (error.status > 0 || file.size > LONGEST2);
      const other = refused && !/\.toml$/i.test(file.name);
      complain(desk, other ? new RefusedError({ message: NO_JOB, field: "" }) : error, notOpened(file.name));
    }
  }
  async function saveFile(desk) {
    try {
      const job = await desk.settled();
      const answer = await asked("job", { job, units: desk.units });
      handOut(await answer.json());
      desk.markSaved(job);
    } catch (error) {
      complain(desk, error);
    }
  }
  function handOut({ text, name }) {
    const address = URL.createObjectURL(new Blob([text], { type: "application/toml" }));
    const link2 = document.createElement("a");
    link2.href = address;
    link2.download = name;
    link2.click();
    setTimeout(() => URL.revokeObjectURL(address), FETCHED);
  }
  function complain(desk, error, before = "") {
    if (!(error instanceof RefusedError)) throw error;
    for (const told2 of desk.complaints) told2({ message: before + error.message, fields: [], unchanged: true });
  }
  function takesFiles(desk) {
    const body = document.body;
    const holds = (event) => event.dataTransfer?.types.includes("Files") ?? false;
    document.addEventListener("dragover", (event) => {
      if (!holds(event)) return;
      event.preventDefault();
      body.classList.add("drop");
    });
    document.addEventListener("dragleave", (event) => {
      if (!event.relatedTarget) body.classList.remove("drop");
    });
    document.addEventListener("drop", (event) => {
      if (!holds(event)) return;
      event.preventDefault();
      body.classList.remove("drop");
      const file = event.dataTransfer?.files[0];
      if (file) openFile(desk, file);
    });
  }

  // src/live/typed.js
  var PLAIN = /^[-+]?(\d+\.?\d*|\.\d+)$/;
  var TYPED = { "°": /\s*(°|deg|degrees?)$/i, HRC: /\s*HRC$/i, pitches: /\s*pitch(es)?$/i, "%": /\s*%$/ };
  function valueOf(text, { unit, kind }) {
    const typed = kind === "number" ? pointed(text.trim()) : text.trim();
    if (typed === "") return null;
    const bare = unit in TYPED ? typed.replace(TYPED[
      /** @type {keyof typeof TYPED} */
      unit
    ], "") : typed;
    if (bare !== typed && PLAIN.test(bare)) return Number(bare);
    if (kind === "text" && unit === "in") return marked(typed, (entry) => `${Number(entry)}in`);
    if (!PLAIN.test(typed)) return typed;
    return unit === "in" ? `${Number(typed)}in` : Number(typed);
  }
  function marked(text, written) {
    const entries = text.split(",").map((entry) => entry.trim());
    return entries.map((entry) => PLAIN.test(entry) ? written(entry) : entry).join(", ");
  }
  function lengthTyped(text, units) {
    const typed = pointed(text.trim());
    return units === "inch" && PLAIN.test(typed) ? `${typed}in` : typed;
  }
  function keptLength(text, before, after) {
    const typed = pointed(text.trim());
    if (before === "inch" === (after === "inch") || !PLAIN.test(typed)) return text;
    return `${typed}${before === "inch" ? "in" : "mm"}`;
  }
  function listShown(value, unit) {
    const text = shownAs(value);
    return unit === "in" ? marked(text, (entry) => `${entry}mm`) : text;
  }
  function pointed(text) {
    return text.includes(".") ? text : text.replace(/^([^,]*),([^,]*)$/, "$1.$2");
  }
  function stepped(value, step) {
    const decimals = Math.min(6, (String(step).split(".")[1] ?? "").length);
    return String(Number(value.toFixed(decimals)));
  }
  function shownAs(value) {
    return Array.isArray(value) ? value.join(", ") : String(value);
  }
  function moved(text, step, count) {
    const typed = pointed(text.trim());
    if (!PLAIN.test(typed)) return null;
    const places = (number) => (number.split(".")[1] ?? "").length;
    const decimals = Math.min(6, Math.max(places(typed), places(String(step))));
    return String(Number((Number(typed) + count * step).toFixed(decimals)));
  }

  // src/panels/graph/scale.js
  function scaleOf({ low, high }, from, to) {
    const each = (to - from) / (high - low || 1);
    return (value) => from + each * (value - low);
  }
  function within({ low, high }, value) {
    return Math.min(Math.max(value, low), high);
  }
  function legible(ticks, at, wide2) {
    for (let step = 1; step < ticks.length; step++) {
      const kept3 = ticks.filter((_, n) => n % step === 0);
      const clear = kept3.every((tick, n) => n === 0 || Math.abs(at(tick.at) - at(kept3[n - 1].at)) >= (wide2(tick.text) + wide2(kept3[n - 1].text)) / 2 + 6);
      if (clear) return kept3;
    }
    return ticks.slice(0, 1);
  }
  var wide = (text) => 6.9 * text.length;
  function spread(places, gap, least, most) {
    const found = places.slice();
    for (let n = 0; n < found.length; n++)
      found[n] = Math.max(found[n], n ? found[n - 1] + gap : least);
    for (let n = found.length - 1; n >= 0; n--)
      found[n] = Math.min(found[n], n < found.length - 1 ? found[n + 1] - gap : most);
    return found;
  }

  // src/panels/graph/picture.js
  var FOOT = 40;
  var HEAD = 8;
  function picture(host, name, draw) {
    const svg = (
      /** @type {SVGElement} */
      drawn("svg", { class: "graph", role: "img", "aria-label": name })
    );
    host.append(svg);
    let width = 0;
    const now = () => {
      if (width) draw(svg, width);
    };
    new ResizeObserver(() => {
      const wanted = Math.floor(host.clientWidth);
      if (wanted === width || !wanted) return;
      width = wanted;
      now();
    }).observe(host);
    width = Math.floor(host.clientWidth);
    return now;
  }
  function cleared(svg, width, height) {
    svg.setAttribute("viewBox", `0 0 ${width} ${height}`);
    svg.replaceChildren();
  }
  function lettering(x, y, text, kind = "", anchor = "start") {
    return drawn("text", { x, y, class: kind, "text-anchor": anchor }, text);
  }
  function scales(svg, { across, up, width, height, right = 8 }) {
    const left = 10 + Math.max(...up.ticks.map((tick) => wide(tick.text)));
    const [top, foot2] = [HEAD + 16, height - (across ? FOOT : 22)];
    const x = scaleOf(across ?? { low: 0, high: 1 }, left, width - right);
    const y = scaleOf(up, foot2, top);
    svg.append(lettering(0, 12, up.title, "quiet"));
    for (const tick of up.ticks) {
      svg.append(drawn("path", { class: "grid", d: `M${left} ${y(tick.at)}H${width - right}` }));
      svg.append(lettering(left - 6, y(tick.at) + 4, tick.text, "quiet", "end"));
    }
    if (across) {
      for (const tick of legible(across.ticks, x, wide)) {
        svg.append(drawn("path", { class: "axis", d: `M${x(tick.at)} ${foot2}v4` }));
        svg.append(lettering(x(tick.at), foot2 + 17, tick.text, "quiet", "middle"));
      }
      svg.append(lettering((left + width - right) / 2, foot2 + 34, across.title, "quiet", "middle"));
    }
    svg.append(drawn("path", { class: "axis", d: `M${left} ${top}V${foot2}H${width - right}` }));
    return { x, y, left, right: width - right, top, foot: foot2 };
  }
  function hatching(svg, id, kind, turn = 45) {
    const lines = drawn("path", { class: kind, d: "M0 0V7" });
    const size = { width: 7, height: 7, patternUnits: "userSpaceOnUse" };
    svg.append(drawn("defs", {}, drawn("pattern", { id, ...size, patternTransform: `rotate(${turn})` }, lines)));
    return `url(#${id})`;
  }
  var WEIGHTS = { good: "fine", note: "note", warning: "warning", error: "error" };
  function judgedLine({ weight, sign, text }) {
    const word = made("span", { class: "weight" }, `${sign} ${WEIGHTS[weight]}`);
    return made("p", { class: `judged ${weight}` }, word, ` ${text}`);
  }

  // src/panels/bench/measured.js
  var REFUSED = 422;
  function measuredBench(desk) {
    const kept3 = remembered("measured-sizes", null);
    const typed = kept3 ?? { units: "mm", texts: {}, others: [], file: "", saved: "{}" };
    const { texts, others } = typed;
    const wire = boxed("", { id: "measured-wire", inputmode: "decimal", value: texts.wire ?? "" });
    const wireWrong = complaintOf(wire.box);
    const sizes = made("div", { class: "sizes" });
    const chapter = made("div", {});
    const rows = /* @__PURE__ */ new Map();
    const state = made("span", { class: "quiet", role: "status" });
    const save = made("button", { type: "button", id: "measured-save" }, "Save measured sizes");
    const refused = made("p", { role: "alert", class: "wrong" });
    const keep = () => {
      desk.unkept = JSON.stringify(texts) !== typed.saved;
      state.textContent = desk.unkept ? "changed, not saved" : "";
      remember("measured-sizes", typed);
    };
    const question = () => {
      const { wire: over = "", ...found } = Object.fromEntries(Object.entries(texts).map(([key, text]) => [key, others.includes(key) ? pointed(text) : lengthTyped(text, typed.units)]));
      return { job: desk.job, units: desk.units, wire: over, sizes: found };
    };
    const { ask, wrong } = questions("bench/measured", question, ({ measured }) => show2(measured), chapter, { refused: () => {
      for (const { said } of rows.values()) said.replaceChildren();
      chapter.replaceChildren();
    } });
    const show2 = (measured) => {
      for (const size of measured.sizes) {
        const row = rows.get(size.key) ?? added(size);
        row.aim.textContent = size.aim;
        row.wrong(size.wrong);
        row.said.replaceChildren(...size.judged ? [judgedLine(size.judged)] : []);
      }
      wireWrong.tell(measured.wire_wrong);
      for (const [key, { row }] of rows) row.hidden = measured.sizes.every((one) => one.key !== key);
      chapter.replaceChildren(
        ...measured.chapter ? [made("h4", {}, measured.chapter.title), ...chapterBlocks(measured.chapter)] : [],
        notesList(measured.notes)
      );
    };
    const added = ({ key, label, unit }) => {
      if (unit && !others.includes(key)) others.push(key);
      const { box: box2, name, whole } = boxed(
        `${label} [${unit || unitOf(typed.units)}]`,
        { id: `measured-${key}`, inputmode: "decimal", value: texts[key] ?? "" }
      );
      const [aim, said] = [made("span", { class: "quiet aim" }), made("div", {})];
      whole.append(aim);
      const wrong2 = complaintOf(box2);
      const over = key === "over_wires" ? [wire.whole, wireWrong.node] : [];
      const row = made("div", { class: "size" }, whole, wrong2.node, ...over, said);
      box2.addEventListener("input", () => entered(key, box2));
      sizes.append(row);
      const made_ = { box: box2, name, label, row, aim, said, wrong: wrong2.tell };
      rows.set(key, made_);
      return made_;
    };
    const entered = (key, box2) => {
      if (box2.value.trim()) texts[key] = box2.value;
      else delete texts[key];
      refused.textContent = "";
      keep();
      ask();
    };
    wire.box.addEventListener("input", () => entered("wire", wire.box));
    const tellIn = (units) => {
      wire.name.textContent = `the wires, diameter [${unitOf(units)}]`;
      if (units === typed.units) return;
      for (const key of Object.keys(texts)) if (!others.includes(key)) texts[key] = keptLength(texts[key], typed.units, units);
      if (!desk.unkept) typed.saved = JSON.stringify(texts);
      typed.units = units;
      for (const [key, { name, label }] of rows) if (!others.includes(key)) name.textContent = `${label} [${unitOf(units)}]`;
      fill3();
    };
    const fill3 = () => {
      wire.box.value = texts.wire ?? "";
      for (const [key, { box: box2 }] of rows) box2.value = texts[key] ?? "";
      keep();
    };
    save.addEventListener("click", async () => {
      const now = JSON.stringify(texts);
      try {
        const file = await (await asked("bench/measured/file", { ...question(), file: typed.file })).json();
        handOut(file);
        Object.assign(typed, { file: file.text, saved: now });
        refused.textContent = "";
        keep();
      } catch (error) {
        if (!(error instanceof RefusedError)) throw error;
        refused.textContent = error.message;
      }
    });
    const fillFrom = async (text) => {
      const units = desk.view?.units ?? typed.units;
      const read = await (await asked("bench/measured/read", { text, units })).json();
      for (const key of Object.keys(texts)) delete texts[key];
      Object.assign(texts, read.sizes, read.wire ? { wire: read.wire } : {});
      others.splice(0, others.length, ...read.others);
      Object.assign(typed, { units, file: text, saved: JSON.stringify(texts) });
      fill3();
    };
    desk.fillMeasured = async (text) => {
      if (desk.unkept) throw new RefusedError({ message: "the measured sizes on the page are not saved: save or empty them first", field: "" }, REFUSED);
      await fillFrom(text);
      const whole = sizes.closest("details");
      if (whole) whole.open = true;
      whole?.scrollIntoView();
      ask(0);
    };
    keep();
    if (!kept3 && desk.measured) fillFrom(desk.measured).catch((error) => {
      if (!(error instanceof RefusedError)) throw error;
      refused.textContent = error.message;
    });
    return { title: "Measured sizes", tellIn, content: [
      wrong,
      sizes,
      made("p", { class: "keep" }, save, " ", state),
      refused,
      chapter
    ], ask };
  }

  // src/panels/bench/wires.js
  function wiresBench(desk) {
    const typed = { measured: "", wire: "", compound: "0", units: "mm", ...remembered("wires", {}) };
    const measured = boxed("", { id: "wires-measured", inputmode: "decimal", value: typed.measured });
    const wire = boxed("", { id: "wires-wire", inputmode: "decimal", value: typed.wire });
    const compound = boxed(
      "compound, from square to the lathe's axis [°]",
      { id: "wires-compound", type: "number", min: 0, max: 80, step: 0.5, value: typed.compound }
    );
    const boxes = { measured: complaintOf(measured.box), wire: complaintOf(wire.box), compound: complaintOf(compound.box) };
    const answer = made("div", { "aria-live": "polite" });
    let last = null;
    const { ask, wrong } = questions("bench/wires", () => ({
      job: desk.job,
      units: desk.units,
      compound: Number(compound.box.value),
      measured: lengthTyped(measured.box.value, typed.units),
      wire: lengthTyped(wire.box.value, typed.units)
    }), ({ wires }) => {
      last = wires;
      answer.replaceChildren(...told(wires));
    }, answer, { boxes, refused: () => {
      if (last) answer.replaceChildren(...told({ ...last, judged: null, read: [], compound: null }));
    } });
    const keep = () => {
      Object.assign(typed, { measured: measured.box.value, wire: wire.box.value, compound: compound.box.value });
      remember("wires", typed);
    };
    for (const { box: box2 } of [measured, wire, compound])
      box2.addEventListener("input", () => {
        keep();
        ask();
      });
    const tellIn = (units) => {
      measured.name.textContent = `measured over wires [${unitOf(units)}]`;
      wire.name.textContent = `wire [${unitOf(units)}], empty for the one to use`;
      if (units === typed.units) return;
      for (const { box: box2 } of [measured, wire]) box2.value = keptLength(box2.value, typed.units, units);
      typed.units = units;
      keep();
    };
    return { title: "Measure over wires", tellIn, ask, content: [
      measured.whole,
      boxes.measured.node,
      wire.whole,
      boxes.wire.node,
      compound.whole,
      boxes.compound.node,
      wrong,
      answer
    ] };
  }
  function told({ judged, read, compound, aims, notes }) {
    return [
      ...judged ? [judgedLine(judged)] : [],
      ...read.length ? [pairsList(read)] : [],
      ...compound ? [grid(compound.head, compound.lines)] : [],
      made("h4", {}, "Wire and limits"),
      pairsList(aims),
      notesList(notes)
    ];
  }

  // src/panels/graph/slot.js
  function slot(name, title) {
    const section = document.getElementById(`${name}-pane`) ?? document.getElementById(name);
    if (!section) return null;
    section.hidden = false;
    if (!section.querySelector("h2")) section.prepend(made("h2", {}, title));
    const body = made("div", { class: "panel-body" });
    section.append(body);
    return body;
  }
  function unforeseen() {
    return made("p", { class: "judged" }, "Nothing is told of a tap that breaks a rule.");
  }

  // src/panels/bench.js
  function benchPanel(desk) {
    const body = slot("bench", "At the machine");
    if (!body) return () => {
    };
    const kinds = [wiresBench, gearsBench, dividingBench, measuredBench];
    const benches = kinds.map((bench) => {
      const { title, content, ask, tellIn = () => {
      } } = bench(desk);
      const whole = (
        /** @type {HTMLDetailsElement} */
        made(
          "details",
          { class: "tool", name: "bench" },
          made("summary", {}, title),
          made("div", { class: "tool-body" }, ...content)
        )
      );
      whole.addEventListener("toggle", () => {
        if (whole.open) ask(0);
      });
      return { whole, ask, tellIn };
    });
    body.append(...benches.map(({ whole }) => whole));
    return ({ units }) => {
      for (const { whole, ask, tellIn } of benches) {
        tellIn(units);
        if (whole.open) ask();
      }
    };
  }

  // src/panels/graph/paths.js
  var short = (value, steps2) => String(Math.round(value * steps2) / steps2);
  function line2(points2, steps2 = 100) {
    let path = "";
    let pen = "M";
    for (const point2 of points2) {
      if (!point2) {
        pen = "M";
        continue;
      }
      path += `${pen}${short(point2[0], steps2)} ${short(point2[1], steps2)}`;
      pen = "L";
    }
    return path;
  }
  function between(low, high) {
    return low.length ? `${line2([...low, ...high.slice().reverse()])}Z` : "";
  }
  function points(xs, ys, atX, atY) {
    return xs.map((x, n) => [atX(x), atY(ys[n])]);
  }
  function head(tail, tip, size) {
    const turn = Math.atan2(tip[1] - tail[1], tip[0] - tail[0]);
    const corner = (lean) => [tip[0] - size * Math.cos(turn + lean), tip[1] - size * Math.sin(turn + lean)];
    return `${line2([tip, corner(0.35), corner(-0.35)])}Z`;
  }

  // src/panels/chart/reading.js
  function nearestRow(rows, x) {
    let best = 0;
    rows.forEach((row, n) => {
      if (Math.abs(row.x - x) < Math.abs(rows[best].x - x)) best = n;
    });
    return best;
  }
  function zoneEnds({ rows, zones: zones2 }) {
    return zones2.map(({ first, last, text }) => ({
      low: first > 0 ? (rows[first - 1].x + rows[first].x) / 2 : rows[0].x,
      high: last < rows.length - 1 ? (rows[last].x + rows[last + 1].x) / 2 : rows[last].x,
      text
    }));
  }
  function pieces({ rows, jumps: jumps2 }, figure) {
    const ends = new Set(jumps2.map(({ first }) => first));
    const found = [[]];
    rows.forEach((row, n) => {
      if (row.y[figure] !== null) found[found.length - 1].push(row);
      if (row.y[figure] === null || ends.has(n)) found.push([]);
    });
    return found.filter((piece) => piece.length);
  }
  function readout(chart, number) {
    const row = chart.rows[number];
    const zone = chart.zones.find(({ first, last }) => number >= first && number <= last);
    if (zone) return `${chart.label} ${row.text}: breaks a rule. ${zone.text}`;
    const told2 = chart.figures.map(({ label }, n) => `${label} ${row.texts[n]}`);
    return `${chart.label} ${row.text}: ${told2.join(", ")}`;
  }
  function taken(chart, number) {
    return { ...chart.held, [chart.field]: chart.rows[number].value };
  }

  // src/panels/chart/drawing.js
  var HEIGHT = 300;
  var TOP = 46;
  var FOOT2 = HEIGHT - 40;
  function drawChart(svg, width, chart, cursor) {
    cleared(svg, width, HEIGHT);
    const room = chart.up.map((axis) => 12 + Math.max(0, ...axis.ticks.map(({ text }) => wide(text))));
    const [left, right] = [room[0], width - (room[1] ?? 10)];
    const x = scaleOf(chart.across, left, right);
    const ups = chart.up.map((axis) => scaleOf(axis, FOOT2, TOP));
    svg.append(...titles(chart), ...foot(chart.across, x, left, right));
    chart.up.forEach((axis, n) => svg.append(...side(axis, ups[n], n ? right : left, n ? left : right)));
    svg.append(...zones(svg, chart, x));
    svg.append(...jumps(chart, x), ...chart.figures.flatMap((_, n) => plot(chart, n, x, ups[n])));
    svg.append(...present(chart, x, ups), ...cursorMarks(chart.rows[cursor], x, ups));
    return (px) => chart.across.low + (px - left) / (right - left) * (chart.across.high - chart.across.low);
  }
  function plot(chart, n, x, y) {
    const found = pieces(chart, n).map((rows) => rows.map((row) => point(row, n, x, y)));
    const dots = found.filter(({ length }) => length === 1).flatMap(([at]) => at ? [at] : []);
    return [
      drawn("path", { class: `plot plot-${n}`, d: found.map((points2) => line2(points2)).join("") }),
      ...dots.map(([cx, cy]) => drawn("circle", { class: `lone lone-${n}`, cx, cy, r: 3.2 }))
    ];
  }
  function jumps({ rows, jumps: found }, x) {
    return found.map(({ first, last, text }) => drawn("path", { class: "jump", d: `M${x((rows[first].x + rows[last].x) / 2)} ${TOP}V${FOOT2}` }, drawn("title", {}, text)));
  }
  function point(row, n, x, y) {
    const value = row.y[n];
    return value === null ? null : [x(row.x), y(value)];
  }
  function titles({ up }) {
    return up.flatMap(({ title }, n) => [
      drawn("path", { class: `plot plot-${n}`, d: `M2 ${8 + 17 * n}h30` }),
      lettering(40, 12 + 17 * n, `${title}${up.length > 1 ? [" – left", " – right"][n] : ""}`)
    ]);
  }
  function foot(axis, x, left, right) {
    return [
      drawn("path", { class: "axis", d: `M${left} ${FOOT2}H${right}` }),
      ...legible(axis.ticks, x, wide).flatMap(({ at, text }) => [
        drawn("path", { class: "axis", d: `M${x(at)} ${FOOT2}v4` }),
        lettering(x(at), FOOT2 + 17, text, "quiet", "middle")
      ]),
      lettering((left + right) / 2, FOOT2 + 34, axis.title, "quiet", "middle")
    ];
  }
  function side(axis, y, at, other) {
    const out = at < other ? -1 : 1;
    return [
      drawn("path", { class: "axis", d: `M${at} ${TOP}V${FOOT2}` }),
      ...axis.ticks.flatMap((tick) => [
        ...out < 0 ? [drawn("path", { class: "grid", d: `M${at} ${y(tick.at)}H${other}` })] : [],
        drawn("path", { class: "axis", d: `M${at} ${y(tick.at)}h${4 * out}` }),
        lettering(at + 7 * out, y(tick.at) + 4, tick.text, "quiet", out < 0 ? "end" : "start")
      ])
    ];
  }
  function zones(svg, chart, x) {
    if (!chart.zones.length) return [];
    const fill3 = hatching(svg, "chart-broken", "risk-line");
    return zoneEnds(chart).flatMap(({ low, high, text }) => {
      const [from, wideness] = [x(low), Math.max(x(high) - x(low), 3)];
      const box2 = drawn(
        "rect",
        { class: "broken", fill: fill3, x: from, y: TOP, width: wideness, height: FOOT2 - TOP },
        drawn("title", {}, text)
      );
      return wideness > 90 ? [box2, lettering(from + wideness / 2, TOP + 16, "breaks a rule", "halo", "middle")] : [box2];
    });
  }
  function present({ present: now, across, figures }, x, ups) {
    if (now.x < across.low || now.x > across.high) return [];
    const at = x(now.x);
    const dots = figures.map((_, n) => point(now, n, x, ups[n])).filter((one) => one !== null);
    return [
      drawn("path", { class: "now", d: `M${at} ${TOP}V${FOOT2}` }),
      lettering(at + 4, FOOT2 - 6, "now", "halo"),
      ...dots.map(([cx, cy]) => drawn("circle", { class: "dot", cx, cy, r: 4 }))
    ];
  }
  function cursorMarks(row, x, ups) {
    const dots = row.y.map((_, n) => point(row, n, x, ups[n])).filter((one) => one !== null);
    return [
      drawn("path", { class: "cursor", d: `M${x(row.x)} ${TOP}V${FOOT2}` }),
      ...dots.map(([cx, cy]) => drawn("circle", { class: "ring", cx, cy, r: 6 }))
    ];
  }

  // src/panels/chart.js
  var PAUSE3 = 180;
  function chartPanel(desk) {
    const body = slot("chart", "Chart");
    if (!body) return () => {
    };
    const usual = "flutes.offset" in desk.job ? "flutes.offset" : "flutes.rake";
    const wanted = { field: usual, start: null, end: null, figures: ["rake_at_wall", "torque_likely"], ...remembered("chart", {}) };
    let chart = null;
    let cursor = 0;
    const [field, first, second] = ["field", "first", "second"].map((name) => (
      /** @type {HTMLSelectElement} */
      made("select", { id: `chart-${name}` })
    ));
    const [start, end] = ["start", "end"].map((name) => (
      /** @type {HTMLInputElement} */
      made("input", { type: "text", id: `chart-${name}`, size: 7, inputmode: "text", autocomplete: "off" })
    ));
    const units = [start, end].map(() => made("span", { class: "unit" }));
    const place = made("div", { class: "graph-place chart-place" });
    const slider = (
      /** @type {HTMLInputElement} */
      made("input", { type: "range", id: "chart-cursor", min: 0, step: 1 })
    );
    const said = made("output", { id: "chart-readout", for: "chart-cursor" });
    const take = made("button", { type: "button", id: "chart-take" }, "Take this value");
    const broken = made("ul", { class: "broken-list" });
    const jumps2 = made("ul");
    const anew = made("details", { class: "jumps" }, made("summary", {}, "What the rules choose anew along the way"), jumps2);
    const wrong = made("p", { role: "alert", class: "wrong" });
    const coming = made("p", { class: "quiet coming" }, "It is drawn when you look here.");
    const choices2 = made(
      "div",
      { class: "chart-choices" },
      labelled("Against", field),
      labelled("from", start, units[0]),
      labelled("to", end, units[1]),
      labelled("Line", first),
      labelled("Second line", second)
    );
    const reader = made("div", { class: "chart-reader" }, made("label", { for: "chart-cursor" }, "Read at"), slider, said, take);
    const note = made("p", { class: "quiet" });
    body.classList.add("awaiting");
    body.append(coming, choices2, wrong, place, anew, note, reader, broken);
    let toValue = () => 0;
    const redraw = picture(place, "Figures of the tap against a value of its job", (svg, width) => {
      if (chart) toValue = drawChart(svg, width, chart, cursor);
    });
    const read = () => {
      if (!chart) return;
      said.textContent = readout(chart, cursor);
      slider.value = String(cursor);
      slider.setAttribute("aria-valuetext", readout(chart, cursor));
      redraw();
    };
    const show2 = (found) => {
      chart = found;
      coming.hidden = true;
      body.classList.remove("awaiting");
      cursor = nearestRow(found.rows, found.present.x);
      slider.max = String(found.rows.length - 1);
      fill(field, found.fields, found.field);
      fill(first, found.choices, found.figures[0].key);
      fill(second, [{ key: "", label: "none" }, ...found.choices], found.figures[1]?.key ?? "");
      if (document.activeElement !== start) start.value = found.start;
      if (document.activeElement !== end) end.value = found.end;
      for (const unit of units) unit.textContent = found.unit;
      jumps2.replaceChildren(...found.jumps.map(({ text }) => made("li", {}, text)));
      anew.classList.toggle("none", !found.jumps.length);
      broken.replaceChildren(...zoneEnds(found).map(({ text }, n) => {
        const { first: from, last: to } = found.zones[n];
        const ends = from === to ? found.rows[from].text : `${found.rows[from].text} to ${found.rows[to].text}`;
        return made("li", {}, `✖ ${ends}: ${text}`);
      }));
      note.textContent = found.note;
      read();
    };
    const asking = asks(desk, wanted, show2, wrong);
    const choose = () => {
      const changed = wanted.field !== field.value;
      wanted.field = field.value;
      wanted.figures = [first.value, ...second.value ? [second.value] : []];
      [wanted.start, wanted.end] = [start, end].map((box2) => changed || !chart ? null : valueOf(box2.value, { unit: chart.unit, kind: "number" }));
      remember("chart", wanted);
      asking.after(0);
    };
    for (const box2 of [field, first, second, start, end]) box2.addEventListener("change", choose);
    slider.addEventListener("input", () => {
      cursor = Number(slider.value);
      read();
    });
    const use = () => {
      if (chart) desk.set(taken(chart, cursor));
    };
    take.addEventListener("click", use);
    slider.addEventListener("keydown", (event) => {
      if (event.key === "Enter") use();
    });
    const point2 = (event) => {
      if (!chart) return;
      cursor = nearestRow(chart.rows, toValue(event.clientX - place.getBoundingClientRect().left));
      read();
    };
    place.addEventListener("pointermove", point2);
    place.addEventListener("click", (event) => {
      point2(event);
      use();
    });
    return whenSeen(body, asking);
  }
  function labelled(label, ...parts) {
    return made("label", {}, `${label} `, ...parts);
  }
  function fill(select, options, chosen) {
    if (select.options.length !== options.length)
      select.replaceChildren(...options.map(({ key, label }) => made("option", { value: key }, label)));
    select.value = chosen;
  }
  function asks(desk, wanted, show2, wrong) {
    return new Resting(async (signal) => {
      try {
        const { chart } = await sought("chart", { job: desk.job, units: desk.units, ...wanted }, signal);
        wrong.textContent = "";
        show2(chart);
      } catch (error) {
        if (!(error instanceof RefusedError)) throw error;
        wrong.textContent = error.message;
      }
    });
  }
  function whenSeen(place, asking) {
    let [seen2, stale] = [false, true];
    new IntersectionObserver((entries) => {
      seen2 = entries.some((entry) => entry.isIntersecting);
      if (seen2 && stale) {
        stale = false;
        asking.after(0);
      }
    }, { rootMargin: "200px" }).observe(place);
    return () => {
      stale = !seen2;
      if (seen2) asking.after(PAUSE3);
    };
  }

  // src/panels/chips.js
  var HEIGHT2 = 210;
  function chipsPanel() {
    const body = slot("chips", "Chips");
    if (!body) return () => {
    };
    let chips = null;
    const said = made("div", {});
    const place = made("div", { class: "graph-place" });
    const numbers = made("ol", {});
    const all = made("details", {}, made("summary", {}, "Every tooth in numbers"), numbers);
    const redraw = picture(place, "Thickness of the chip of each tooth", (svg, width) => {
      if (chips) drawChips(svg, width, chips);
    });
    body.append(said, place, all);
    return (view) => {
      chips = view.chips;
      place.hidden = all.hidden = !chips;
      said.replaceChildren(chips ? judgedLine(chips.judged) : unforeseen());
      numbers.replaceChildren(...(chips?.bars ?? []).map(({ text }) => made("li", {}, text)));
      redraw();
    };
  }
  function drawChips(svg, width, chips) {
    cleared(svg, width, HEIGHT2);
    const { x, y, left, right, top, foot: foot2 } = scales(svg, { across: null, up: chips.axis, width, height: HEIGHT2 });
    const step = (right - left) / Math.max(chips.bars.length, 1);
    const every = Math.ceil(18 / step);
    for (const { number, height, text } of chips.bars) {
      const from = x(0) + (number - 1 + 0.15) * step;
      const bar2 = drawn(
        "rect",
        { class: "bar-of-chip", x: from, y: y(height), width: 0.7 * step, height: foot2 - y(height) },
        drawn("title", {}, text)
      );
      svg.append(bar2);
      if ((number - 1) % every === 0)
        svg.append(lettering(from + 0.35 * step, foot2 + 15, String(number), "quiet", "middle"));
    }
    const drawnOnes = chips.limits.filter(({ beyond: beyond2 }) => !beyond2);
    for (const { at } of drawnOnes) svg.append(drawn("path", { class: "limit", d: `M${left} ${y(at)}H${right}` }));
    const rising = chips.limits.map(({ at, beyond: beyond2 }) => beyond2 ? top - 4 : y(at) - 5).reverse();
    const places = spread(rising, 15, 12, foot2 - 3).reverse();
    chips.limits.forEach(({ text, beyond: beyond2 }, n) => {
      const words = beyond2 ? `${text} ↑` : text;
      svg.append(
        drawn("rect", { class: "paper", x: right - wide(words), y: places[n] - 11, width: wide(words), height: 14 }),
        lettering(right, places[n], words, "limit-words", "end")
      );
    });
  }

  // src/live/builds.js
  var LOOK = 300;
  var KEPT = "build";
  async function offered() {
    return (await looked("build")).json();
  }
  async function begun({ job, units }, formats, force) {
    const { id } = await (await asked("build", { job, units, formats, force })).json();
    const build = { id, of: textOf(job) };
    remember(KEPT, build);
    return build;
  }
  function kept2() {
    return remembered(KEPT, null);
  }
  function forget() {
    remember(KEPT, null);
  }
  async function followed(id, follow, signal) {
    for (; ; ) {
      const told2 = await (await looked(`build/${id}`, signal)).json();
      follow(told2);
      if (told2.state !== "running") return;
      await waited(LOOK, signal);
    }
  }
  async function stopped(id) {
    try {
      await removed(`build/${id}`);
    } catch (error) {
      if (!(error instanceof RefusedError) || error.status !== 404) throw error;
    }
  }
  function addressOf(id, name) {
    return `build/${id}/files/${name.split("/").map(encodeURIComponent).join("/")}`;
  }

  // src/panels/build/result.js
  function resultOf(id, { verdict, rows, notes, files }) {
    const found = rows.map(([label, text]) => made("div", {}, made("dt", {}, label), made("dd", {}, text)));
    const [more, first] = [true, false].map((isInside) => files.filter(({ name }) => name.includes("/") === isInside));
    const folded = made("details", {}, made("summary", {}, `${more.length} more, in folders`), list(id, more));
    return [
      made("p", { class: "verdict", role: "status" }, verdict),
      ...notes.map((note) => made("p", { class: "note" }, note)),
      ...rows.length ? [made("dl", { class: "proof" }, ...found)] : [],
      made("p", {}, made("a", { href: `build/${id}/all.zip`, download: true }, "All files as one archive")),
      list(id, first),
      ...more.length ? [folded] : []
    ];
  }
  function list(id, files) {
    const links = files.map(({ name, size }) => made("li", {}, made("a", { href: addressOf(id, name), download: true }, name), ` ${size}`));
    return made("ul", { class: "files" }, ...links);
  }

  // src/panels/build.js
  var BUSY = 409;
  var UNWANTED = "unwanted files";
  function buildPanel(desk) {
    const place = document.getElementById("build");
    if (!place) return () => {
    };
    const panel = new BuildPanel(place, desk);
    panel.open();
    return () => panel.compare();
  }
  var BuildPanel = class {
    /**
     * @param {HTMLElement} place
     * @param {Desk} desk
     */
    constructor(place, desk) {
      this.desk = desk;
      this.id = null;
      this.following = new AbortController();
      this.asking = false;
      this.builtOf = "";
      this.kinds = made("fieldset", { class: "kinds" });
      this.kinds.addEventListener("change", () => {
        this.name();
        remember(UNWANTED, this.boxes().filter((box2) => !box2.checked).map(({ value }) => value));
      });
      this.start = button("Build and verify", () => this.build(false));
      this.force = button("Build it all the same", () => this.build(true));
      this.stop = button("Stop", () => this.end());
      this.bar = /** @type {HTMLProgressElement} */
      made("progress", { max: 1, "aria-label": "build" });
      this.time = made("span", { class: "time" });
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
      const build = kept2();
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
        const build = await begun(this.desk, this.wanted(), force).finally(() => this.asking = false);
        await this.follow(build);
      });
    }
    /** @param {Begun} build */
    async follow({ id, of }) {
      this.id = id;
      this.builtOf = of;
      this.compare();
      this.result.replaceChildren();
      await followed(id, (told2) => this.tell(told2), this.following.signal);
    }
    /** Show how far the build of another page is, so that it can be waited for, or stopped here. */
    async join() {
      const { running } = await offered();
      if (!running) return;
      this.id = running.id;
      const { signal } = this.following;
      await this.whileKept(() => followed(running.id, (told2) => this.tell({ ...told2, made: null, error: void 0 }), signal));
      this.refused.textContent = "";
    }
    /** @param {BuildTold} told */
    tell(told2) {
      const { share, stage, time } = told2.progress;
      this.bar.value = share;
      this.bar.setAttribute("aria-valuetext", `${stage}, ${time}`);
      if (this.stage.textContent !== stage) this.stage.textContent = stage;
      this.time.textContent = time;
      this.show(told2.state === "running" ? "running" : "idle");
      if (told2.made) this.result.replaceChildren(...resultOf(told2.id, told2.made));
      if (told2.error) throw new RefusedError(told2.error, 422);
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
      return this.boxes().filter((box2) => box2.checked);
    }
    boxes() {
      return [...this.kinds.querySelectorAll("input")];
    }
    /** Say what the button does: papers alone need no solid. */
    name() {
      const isPapers = this.ticked().every((box2) => !box2.hasAttribute("data-model"));
      this.start.textContent = isPapers ? "Write the papers" : "Build and verify";
      this.start.toggleAttribute("disabled", !this.ticked().length);
    }
    /** @param {"idle" | "running"} state */
    show(state) {
      const isRunning = state === "running";
      const shown2 = isRunning ? this.stop : this.start;
      const hadFocus = [this.start, this.force, this.stop].includes(focused());
      shown2.hidden = false;
      if (hadFocus) shown2.focus();
      this.running.hidden = this.stop.hidden = !isRunning;
      this.start.hidden = isRunning;
      if (isRunning) this.force.hidden = true;
    }
    /**
     * Do something that the server may refuse.
     * @param {() => Promise<void>} work
     */
    async trying(work2) {
      this.refused.textContent = "";
      this.force.hidden = true;
      await this.attempt(work2);
    }
    /** @param {() => Promise<void>} work */
    async attempt(work2) {
      const { signal } = this.following;
      try {
        await work2();
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
      if (error.status) forget();
      this.refused.textContent = error.message;
      this.force.hidden = !error.forceable;
    }
  };
  function button(text, press) {
    const node = made("button", { type: "button" }, text);
    node.addEventListener("click", press);
    return node;
  }
  function focused() {
    return (
      /** @type {HTMLElement} */
      document.activeElement
    );
  }
  function choices(kinds) {
    const unwanted = remembered(UNWANTED, []);
    return kinds.map(({ key, label, model }) => {
      const checked = !unwanted.includes(key);
      const box2 = made("input", { type: "checkbox", value: key, checked, "data-model": model });
      return made("label", {}, box2, made("span", {}, label));
    });
  }

  // src/panels/shell/anew.js
  var CHOSEN = ["flutes.count", "flutes.cutter_diameter"];
  var ANOTHER = ["designation", "hole.material"];
  function anewPanel(desk) {
    const line3 = made("p", { id: "anew", class: "quiet", role: "status" });
    document.getElementById("verdict")?.after(line3);
    let last = null;
    let before = null;
    let moved2 = -Infinity;
    return (view) => {
      const controls = view.fields.flatMap((group) => group.controls).filter(({ field }) => CHOSEN.includes(field));
      const now = { job: textOf(desk.job), whole: [desk.units, ...ANOTHER.map((field) => desk.job[field])].join(), controls };
      if (now.job === last?.job && now.whole === last.whole) return;
      if (performance.now() - moved2 > TOGETHER) before = last;
      moved2 = performance.now();
      if (before?.whole !== now.whole) before = now;
      const texts = changes(before.controls, controls);
      line3.textContent = texts.length ? `With that the rules chose anew: ${texts.join(", ")}.` : "";
      last = now;
    };
  }
  function changes(before, now) {
    return now.flatMap(({ field, label, value, unit, state }) => {
      const was = before.find((control) => control.field === field);
      if (!was || was.value === value || was.state !== "rule" || state !== "rule") return [];
      const behind = unit && ` ${unit}`;
      return [`${label} ${value}${behind} instead of ${was.value}${behind}`];
    });
  }

  // src/panels/shell/contents.js
  function contentsPanel() {
    const bar2 = document.getElementById("contents");
    if (!bar2) return () => {
    };
    const live = document.documentElement.classList.contains("live");
    if (live) for (const way2 of document.querySelectorAll("#contents, .skip, #verdict")) way2.addEventListener("click", go);
    for (const menu of bar2.querySelectorAll("details")) folds(menu);
    const look = () => {
      chapters(bar2);
      for (const link2 of bar2.querySelectorAll(".parts > a")) {
        const part = target(link2);
        if (link2 instanceof HTMLElement) link2.hidden = !part || part.offsetHeight === 0;
      }
    };
    const watch = new MutationObserver(look);
    for (const slot2 of document.querySelectorAll(".slot")) watch.observe(slot2, { childList: true });
    return look;
  }
  function go(event) {
    const link2 = event.target instanceof Element ? event.target.closest("a") : null;
    const part = link2 && target(link2);
    if (!part) return;
    event.preventDefault();
    link2.closest("details")?.removeAttribute("open");
    part.scrollIntoView();
    part.tabIndex = -1;
    part.focus({ preventScroll: true });
  }
  function target(link2) {
    return document.getElementById(link2.getAttribute("href")?.slice(1) ?? "");
  }
  function chapters(bar2) {
    const list2 = bar2.querySelector("#chapter-list");
    const found = [...document.querySelectorAll("#papers section[id]")];
    const menu = bar2.querySelector("details");
    if (menu) menu.hidden = !found.length;
    if (!list2 || !found.length) return;
    const links = found.map((part) => made("li", {}, made("a", { href: `#${part.id}` }, part.querySelector("h2")?.textContent ?? "")));
    list2.replaceChildren(...links);
  }
  function folds(menu) {
    document.addEventListener("pointerdown", (event) => {
      if (event.target instanceof Node && !menu.contains(event.target)) menu.open = false;
    });
    menu.addEventListener("click", (event) => {
      if (event.target instanceof HTMLAnchorElement) menu.open = false;
    });
    menu.addEventListener("keydown", (event) => {
      if (event.key !== "Escape") return;
      menu.open = false;
      menu.querySelector("summary")?.focus();
    });
  }

  // src/panels/controls/drawer.js
  function drawer() {
    const button2 = element("drawer", HTMLButtonElement);
    const place = element("controls", HTMLElement);
    const pull = (open) => {
      document.body.classList.toggle("drawn", open);
      button2.setAttribute("aria-expanded", String(open));
      button2.textContent = open ? "Close the controls" : "Change the tap";
    };
    button2.addEventListener("click", () => pull(button2.getAttribute("aria-expanded") !== "true"));
    place.addEventListener("keydown", (event) => {
      if (event.key !== "Escape" || !document.body.classList.contains("drawn")) return;
      if (event.target instanceof HTMLInputElement && event.target.getAttribute("aria-invalid") === "true") return;
      pull(false);
      button2.focus();
    });
  }

  // src/panels/controls/frame.js
  var STATES = { given: "given", rule: "recommended", follows: "follows", none: "not told" };
  function idOf(field) {
    return `field-${field.replaceAll(".", "-")}`;
  }
  function frame({ field, label }, desk) {
    const id = idOf(field);
    const wrong = made("p", { class: "wrong", id: `${id}-wrong`, hidden: true });
    const why = made("p", { class: "why", id: `${id}-why`, hidden: true });
    const words = { type: "button", class: "state", "aria-expanded": "false", "aria-controls": why.id };
    const state = made("button", words);
    state.addEventListener("click", () => {
      why.hidden = !why.hidden;
      state.setAttribute("aria-expanded", String(!why.hidden));
    });
    const back = made("button", { type: "button", class: "back", hidden: true }, "back to recommended");
    back.addEventListener("click", () => desk.set({ [field]: null }));
    let ruled;
    let now;
    const tell3 = () => {
      if (!now) return;
      const given2 = now.state === "given" && field !== "designation";
      const typed = desk.job[field];
      const other = given2 && typeof typed === "string" && now.kind === "number" && typed !== now.value;
      put(state, `${STATES[now.state]}${other ? ` as ${typed}` : ""}`);
      put(why, [given2 && ruled ? `${ruled.value}: ${ruled.why}` : now.why, now.told].filter(Boolean).join(". "));
      state.setAttribute("aria-label", `${label}: ${state.textContent}, why`);
      put(back, ruled ? `back to ${ruled.value}` : "back to recommended");
      back.title = ruled?.why ?? "";
      back.setAttribute("aria-label", `${label}: ${back.textContent}`);
      back.hidden = !given2;
    };
    return {
      id,
      wrong,
      why,
      state,
      back,
      /** @param {Control} control */
      show(control) {
        now = control;
        if (control.state !== "given") ruled = void 0;
        tell3();
      },
      /** @param {Recommended | undefined} recommended */
      recommend(recommended) {
        ruled = recommended;
        tell3();
      },
      /** @param {string} message */
      complain(message) {
        put(wrong, message);
        wrong.hidden = !message;
      }
    };
  }
  function put(node, text) {
    if (node.textContent !== text) node.textContent = text;
  }

  // src/panels/controls/box.js
  function boxRow(first, desk) {
    const { field, kind } = first;
    const around = frame(first, desk);
    const { id } = around;
    const label = made("label", { for: id, id: `${id}-label` }, first.label);
    const list2 = made("datalist", { id: `${id}-list` });
    const box2 = (
      /** @type {HTMLInputElement} */
      made("input", {
        type: "text",
        id,
        autocomplete: "off",
        spellcheck: "false",
        "aria-describedby": `${id}-beside ${id}-wrong`,
        ...kind === "number" ? { inputmode: "decimal" } : {}
      })
    );
    const unit = made("span", { class: "unit" });
    const slider = first.slider ? (
      /** @type {HTMLInputElement} */
      made("input", { type: "range", "aria-labelledby": label.id })
    ) : null;
    const entry = made("span", { class: "entry" }, box2, unit, list2);
    const line3 = made("div", { class: "line" }, made("span", { class: "name" }, label, around.state), entry);
    const beside = made("p", { class: "beside-box", id: `${id}-beside`, hidden: true });
    const below = [beside, around.wrong, around.back, around.why];
    const node = made("div", { class: `field ${kind}` }, line3, ...slider ? [slider] : [], ...below);
    let control = first;
    let typing = false;
    const send = (key = "") => {
      typing = false;
      const value = valueOf(box2.value, control);
      desk.set({ [field]: value === null && field === "designation" ? "" : value }, key);
    };
    const showAll = () => {
      typing = false;
      box2.value = textOf2(control, desk);
      if (slider && control.slider) slide(slider, control, control.slider);
    };
    box2.addEventListener("input", () => typing = true);
    box2.addEventListener("change", () => send());
    box2.addEventListener("blur", () => typing && showAll());
    box2.addEventListener("keydown", (event) => {
      const count = { ArrowUp: 1, ArrowDown: -1 }[event.key];
      const next = count && control.slider && moved(box2.value, control.slider.step, count);
      if (event.key === "Escape") {
        showAll();
        desk.giveUp(field);
        complain2("");
      }
      if (!next) return;
      event.preventDefault();
      box2.value = next;
      send(field);
    });
    slider?.addEventListener("input", () => {
      box2.value = stepped(Number(slider.value), control.slider?.step ?? 1);
      complain2("");
      send(field);
    });
    const complain2 = (message) => {
      around.complain(message);
      if (message && field in desk.refused && document.activeElement !== box2) box2.value = shownAs(desk.refused[field] ?? "");
      box2.setAttribute("aria-invalid", String(Boolean(message)));
    };
    return {
      node,
      complain: complain2,
      recommend: around.recommend,
      show(next) {
        control = next;
        node.dataset.state = next.state;
        put(unit, next.unit);
        put(beside, next.beside);
        beside.hidden = !next.beside;
        list2.replaceChildren(...optionsOf(list2, next));
        if (next.options.length) box2.setAttribute("list", list2.id);
        else box2.removeAttribute("list");
        around.show(next);
        if (typing || desk.isAhead(field)) return;
        complain2("");
        showAll();
      }
    };
  }
  function textOf2({ kind, field, unit, value }, desk) {
    return kind === "text" && field in desk.job ? listShown(desk.job[field], unit) : value;
  }
  function slide(slider, { value, unit }, { low, high, step }) {
    slider.min = String(low);
    slider.max = String(high);
    slider.step = String(step);
    slider.value = value;
    slider.setAttribute("aria-valuetext", `${value} ${unit}`.trim());
  }
  function optionsOf(list2, { options }) {
    const there = [...list2.children];
    const alike = there.length === options.length && options.every(({ value }, n) => there[n].getAttribute("value") === value);
    return alike ? there : options.map(({ value }) => made("option", { value }));
  }

  // src/panels/controls/words.js
  function segments(name, legend, options, chosen) {
    const buttons = options.map(({ value, label }) => {
      const button2 = (
        /** @type {HTMLInputElement} */
        made("input", { type: "radio", name, value })
      );
      button2.addEventListener("change", () => chosen(value));
      return { button: button2, node: made("label", {}, button2, made("span", {}, label)) };
    });
    const row = made("div", { class: "segments" }, ...buttons.map(({ node }) => node));
    return {
      node: made("fieldset", {}, made("legend", {}, legend), row),
      /** @param {string} value */
      show(value) {
        for (const { button: button2 } of buttons) button2.checked = button2.value === value;
      }
    };
  }
  function wordsRow(first, desk) {
    const { field, label, options } = first;
    const around = frame(first, desk);
    const set = segments(around.id, label, options, (value) => desk.set({ [field]: value }));
    set.node.setAttribute("aria-describedby", around.wrong.id);
    return pressedRow(first, desk, around, set.node, ({ value }) => set.show(value));
  }
  function flagRow(first, desk) {
    const { field, label } = first;
    const around = frame(first, desk);
    const box2 = (
      /** @type {HTMLInputElement} */
      made("input", { type: "checkbox", id: around.id, "aria-describedby": around.wrong.id })
    );
    box2.addEventListener("change", () => desk.set({ [field]: box2.checked || null }));
    const line3 = made("label", { class: "flag", for: around.id }, box2, ` ${label}`);
    return pressedRow(first, desk, around, line3, () => box2.checked = desk.job[field] === true);
  }
  function pressedRow({ field, kind }, desk, around, pressed, set) {
    const node = made("div", { class: `field ${kind}` }, pressed, around.state, around.wrong, around.back, around.why);
    return {
      node,
      complain: around.complain,
      recommend: around.recommend,
      show(control) {
        node.dataset.state = control.state;
        around.show(control);
        if (desk.isAhead(field)) return;
        around.complain("");
        set(control);
      }
    };
  }
  function waysRow(key, first, desk) {
    let ways = first;
    const options = first.map(({ label }) => ({ value: label, label }));
    const set = segments(idOf(`${key}.ways`), "given by", options, (label) => {
      const way2 = ways.find((one) => one.label === label);
      if (way2) desk.set(way2.values);
    });
    const note = made("p", { class: "why" });
    return {
      node: made("div", { class: "field ways" }, set.node, note),
      /** @param {Way[]} next */
      show(next) {
        ways = next;
        const now = next.find(({ chosen }) => chosen);
        set.show(now?.label ?? "");
        put(note, now?.note ?? "");
        note.hidden = !note.textContent;
      }
    };
  }

  // src/panels/controls/groups.js
  var ROWS = { number: boxRow, text: boxRow, words: wordsRow, flag: flagRow };
  var OPEN = /* @__PURE__ */ new Set(["hole", "flutes"]);
  function groupOf(first, desk, rows) {
    const count = made("span", { class: "count" });
    const fields = made("div", { class: "fields" });
    const heading = made("summary", {}, made("h3", {}, first.title), count);
    const node = made("details", { class: "group", open: OPEN.has(first.key) }, heading, fields);
    const ways = first.ways.length ? waysRow(first.key, first.ways, desk) : null;
    return {
      node,
      /** @param {Group} group */
      show(group) {
        const controls = group.controls.map((control) => known(control, desk));
        const own = controls.map((control) => shown(control, desk, rows));
        if (ways) {
          const at = group.controls.findIndex(({ field }) => group.ways[0].fields.includes(field));
          own.splice(at, 0, ways.node);
          ways.show(group.ways);
          led(group, rows);
        }
        settle(fields, own);
        const given2 = controls.filter(({ state, field }) => state === "given" && field !== "designation");
        put(count, given2.length ? `${given2.length} given` : "");
      }
    };
  }
  function known(control, desk) {
    return control.kind === "flag" && control.field in desk.job ? { ...control, state: "given" } : control;
  }
  function shown(control, desk, rows) {
    const row = rows.get(control.field) ?? ROWS[control.kind](control, desk);
    rows.set(control.field, row);
    row.show(control);
    return row.node;
  }
  function led(group, rows) {
    for (const way2 of group.ways)
      for (const field of way2.fields) rows.get(field)?.node.classList.toggle("led", !way2.chosen);
  }

  // src/panels/controls/recommending.js
  var REST = 250;
  function recommending(desk, rows) {
    const asking = new Resting(async (signal) => {
      const job = desk.job;
      const changed = Object.keys(job).filter((field) => field !== "designation" && rows.has(field));
      if (!changed.length) return;
      try {
        const { recommended } = await sought("recommended", { job, units: desk.units, changed }, signal);
        if (job !== desk.job) return;
        for (const field of changed) rows.get(field)?.recommend(recommended[field]);
      } catch (error) {
        if (!(error instanceof RefusedError)) throw error;
      }
    });
    return () => asking.after(REST);
  }

  // src/panels/controls/panel.js
  function controlsPanel(desk) {
    const place = element("groups", HTMLElement);
    const rows = /* @__PURE__ */ new Map();
    const groups = /* @__PURE__ */ new Map();
    const others = made("div", { class: "others" });
    drawer();
    const recommend = recommending(desk, rows);
    desk.complaints.push((complaint) => {
      for (const field of complaint?.fields ?? []) reveal(rows.get(field), complaint?.message ?? "");
    });
    return (view) => {
      for (const group of view.fields) {
        const found = groups.get(group.key) ?? groupOf(group, desk, rows);
        if (!groups.has(group.key)) place.append(found.node);
        groups.set(group.key, found);
        found.show(group);
      }
      showOthers(others, view, desk);
      if (others.parentNode !== place) place.append(others);
      recommend(view);
    };
  }
  function reveal(row, message) {
    row?.complain(message);
    const group = row?.node.closest("details.group");
    if (group instanceof HTMLDetailsElement) group.open = true;
  }
  function showOthers(place, view, desk) {
    const known2 = new Set(view.fields.flatMap(({ controls }) => controls.map(({ field }) => field)));
    const fields = Object.keys(desk.job).filter((field) => !known2.has(field));
    const now = JSON.stringify(fields.map((field) => [field, desk.job[field]]));
    if (place.dataset.shown === now) return;
    place.dataset.shown = now;
    const items = fields.map((field) => {
      const button2 = made("button", { type: "button", "aria-label": `Take ${field} out of the job` }, "take out");
      button2.addEventListener("click", () => desk.set({ [field]: null }));
      return made("li", {}, made("code", {}, `${field} = ${shownAs(desk.job[field])}`), button2);
    });
    place.replaceChildren(...items.length ? [made("h3", {}, "Also in the job"), made("ul", {}, ...items)] : []);
  }

  // src/panels/findings.js
  var REST2 = 150;
  function findingsPanel(desk) {
    const place = document.getElementById("findings");
    const list2 = place?.querySelector("ul");
    let shown2 = "";
    const show2 = (findings) => {
      const now = JSON.stringify(findings);
      if (now === shown2) return;
      shown2 = now;
      const none = made("li", { class: "good" }, "None: the design keeps every rule.");
      const items = findings.map((found) => item(found, (values) => desk.set(values), place));
      list2?.replaceChildren(...items.length ? items : [none]);
    };
    const seeking = new Resting(async (signal) => {
      const { job, view } = desk;
      try {
        const { findings } = await sought("cures", { job, units: desk.units }, signal);
        if (view === desk.view) show2(findings);
      } catch (error) {
        if (!(error instanceof RefusedError)) throw error;
      }
    });
    return (view) => {
      show2(view.findings);
      const graver = view.findings.some(({ weight, cures }) => weight !== "note" && !cures.length);
      if (graver) seeking.after(REST2);
    };
  }
  function item(found, apply, place) {
    const cures = found.cures.map((cure) => {
      const button2 = made("button", { type: "button", class: "cure" }, cure.text);
      button2.addEventListener("click", async () => {
        await apply(cure.values);
        if (!button2.isConnected) place?.querySelector("h2")?.focus();
      });
      return made("li", {}, button2, ...cure.cost ? [made("small", {}, ` ${cure.cost}`)] : []);
    });
    return made(
      "li",
      { class: found.weight },
      made("p", {}, made("span", { class: "weight" }, `${found.sign} ${found.weight}`), ` ${found.said}`),
      ...cures.length ? [made("ul", { class: "cures", "aria-label": "What mends it" }, ...cures)] : [],
      made(
        "details",
        {},
        made("summary", {}, "numbers and source"),
        made("p", {}, `[${found.code}] ${found.numbers}; ${found.source}`)
      )
    );
  }

  // src/panels/first.js
  function firstPanel() {
    const title = document.getElementById("title");
    const under = document.getElementById("under");
    const verdict = document.getElementById("verdict");
    const place = document.getElementById("first");
    const cards = /* @__PURE__ */ new Map();
    return (view) => {
      tell2(title, view.title);
      tell2(under, view.under);
      document.title = `${view.title} · tapmodel`;
      if (verdict) {
        verdict.className = `verdict ${view.verdict.weight}`;
        tell2(verdict.querySelector(".sign"), view.verdict.sign);
        tell2(verdict.querySelector(".text"), view.verdict.text);
      }
      for (const figure of view.first) {
        const card2 = cards.get(figure.key) ?? begun2(figure);
        if (!cards.has(figure.key)) {
          if (!cards.size) place?.replaceChildren();
          cards.set(figure.key, card2);
          place?.append(card2);
        }
        fill2(card2, figure);
      }
    };
  }
  function begun2({ label }) {
    const value = made("dd", {}, made("span", { class: "number" }), made("small"));
    return made("div", { class: "figure" }, made("dt", {}, label), value);
  }
  function fill2(card2, { label, text, beside }) {
    tell2(card2.querySelector("dt"), label);
    const number = card2.querySelector(".number");
    const moved2 = number?.textContent && number.textContent !== text;
    tell2(number, text);
    tell2(card2.querySelector("small"), beside);
    if (moved2) mark(card2);
  }
  function mark(card2) {
    if (matchMedia("(prefers-reduced-motion: reduce)").matches) return;
    const ink = getComputedStyle(card2).getPropertyValue("--mark");
    card2.animate([{ borderColor: ink }, {}], { duration: 900 });
  }
  function tell2(node, text) {
    if (node && node.textContent !== text) node.textContent = text;
  }

  // src/panels/shell/full_size.js
  function fullSize() {
    const dialog = element("full", HTMLDialogElement);
    const [title, place] = [element("full-title", HTMLElement), element("full-place", HTMLElement)];
    document.addEventListener("click", (event) => {
      const button2 = event.target instanceof Element ? event.target.closest("button.enlarge") : null;
      const card2 = button2?.closest(".card");
      const drawing2 = card2?.querySelector(".paper :is(svg, img)");
      if (!drawing2) return;
      title.textContent = card2?.querySelector("h3")?.textContent ?? "";
      place.replaceChildren(drawing2.cloneNode(true));
      dialog.showModal();
    });
    element("full-close", HTMLButtonElement).addEventListener("click", () => dialog.close());
    dialog.addEventListener("click", (event) => {
      if (event.target === dialog) dialog.close();
    });
  }
  function card(title, drawing2) {
    const enlarge = made("button", { type: "button", class: "enlarge", "aria-label": `Full size: ${title}` }, "full size");
    return made("figure", { class: "card" }, made("h3", {}, title), made("div", { class: "paper" }, drawing2), enlarge);
  }

  // src/panels/shell/linked.js
  var PATIENCE = 500;
  var AGAIN = 3e3;
  var TEXTS = {
    busy: "The program is busy; your change is on its way.",
    lost: "Connection lost: is tapmodel still running? Your job is kept in this page and in its address."
  };
  function linkedPanel(desk) {
    const line3 = made("p", { id: "link", role: "status" });
    document.body.append(line3);
    let state = "there";
    let telling = 0, looking = 0;
    const look = async () => {
      try {
        await looked("build");
      } catch (error) {
        if (!(error instanceof RefusedError)) throw error;
        if (state !== "there") looking = window.setTimeout(look, AGAIN);
      }
    };
    link.addEventListener("state", (event) => {
      const newer = (
        /** @type {CustomEvent} */
        event.detail
      );
      if (newer === state) return;
      state = newer;
      clearTimeout(telling);
      clearTimeout(looking);
      if (newer === "there") {
        line3.textContent = "";
        desk.again();
        return;
      }
      telling = window.setTimeout(() => line3.textContent = TEXTS[state === "busy" ? "busy" : "lost"], PATIENCE);
      looking = window.setTimeout(look, AGAIN);
    });
  }

  // src/model/looking/handling.js
  var STEP = 0.12;
  var DRAG = 8e-3;
  function handled(viewer) {
    const { canvas, camera } = viewer;
    const changed = (change) => {
      change();
      viewer.draw();
    };
    const held = /* @__PURE__ */ new Map();
    canvas.addEventListener("pointerdown", (event) => {
      canvas.setPointerCapture(event.pointerId);
      held.set(event.pointerId, { x: event.clientX, y: event.clientY });
    });
    const spread2 = () => {
      const [a, b] = [...held.values()];
      return [Math.hypot(a.x - b.x, a.y - b.y), (a.x + b.x) / 2, (a.y + b.y) / 2];
    };
    canvas.addEventListener("pointermove", (event) => {
      const last = held.get(event.pointerId);
      if (!last) return;
      const now = { x: event.clientX, y: event.clientY };
      if (held.size === 2) {
        const [before, x, y] = spread2();
        held.set(event.pointerId, now);
        const [after, x2, y2] = spread2();
        changed(() => {
          camera.move(x2 - x, y2 - y);
          if (before > 0) camera.zoom(after / before);
        });
        return;
      }
      held.set(event.pointerId, now);
      const [dx, dy] = [now.x - last.x, now.y - last.y];
      if (event.shiftKey || event.buttons === 2) changed(() => camera.move(dx, dy));
      else changed(() => camera.spin(dx * DRAG, dy * DRAG));
    });
    for (
      const name of
      /** @type {const} */
      ["pointerup", "pointercancel"]
    )
      canvas.addEventListener(name, (event) => held.delete(event.pointerId));
    canvas.addEventListener("contextmenu", (event) => event.preventDefault());
    canvas.addEventListener("dblclick", () => viewer.reset());
    canvas.addEventListener("wheel", (event) => {
      if (document.activeElement !== canvas) return;
      event.preventDefault();
      changed(() => camera.zoom(Math.exp(-event.deltaY * 12e-4)));
    }, { passive: false });
    const keys = {
      ArrowLeft: () => camera.spin(-STEP, 0),
      ArrowRight: () => camera.spin(STEP, 0),
      ArrowUp: () => camera.spin(0, -STEP),
      ArrowDown: () => camera.spin(0, STEP),
      "+": () => camera.zoom(1.2),
      "=": () => camera.zoom(1.2),
      "-": () => camera.zoom(1 / 1.2),
      0: () => viewer.reset(),
      Home: () => viewer.reset()
    };
    canvas.addEventListener("keydown", (event) => {
      if (!(event.key in keys) || event.ctrlKey || event.metaKey || event.altKey) return;
      event.preventDefault();
      changed(keys[event.key]);
    });
    new ResizeObserver(() => viewer.drawNow()).observe(canvas);
    matchMedia("(prefers-color-scheme: dark)").addEventListener("change", () => viewer.draw());
  }

  // src/model/words/leaders.js
  var MARGIN = 6;
  var GAP = 5;
  var ANGLES = 32;
  var STEP2 = 12;
  var OVER_MODEL = 600;
  var OVER_LEADER = 150;
  var OVER_LINE = 900;
  var OVER_WORDS = 4e3;
  function placedLabels(wanted, size, model) {
    const found = new Array(wanted.length);
    const taken2 = [];
    const order = wanted.map((_, n) => n).sort((a, b) => wanted[a].x - wanted[b].x);
    for (const n of order) {
      const one = wanted[n];
      let best = Infinity;
      for (const bounds of candidates(one, size)) {
        const cost = costOf(one, bounds, model, taken2, best);
        if (cost >= best) continue;
        best = cost;
        found[n] = { x: bounds.left, y: bounds.top };
      }
      taken2.push({ bounds: boundsOf(found[n].x, found[n].y, one), from: one });
    }
    return found;
  }
  function candidates(one, [width, height]) {
    const far = Math.hypot(width, height) / 2;
    const found = [];
    for (let way2 = 24; way2 < far; way2 += STEP2)
      for (let n = 0; n < ANGLES; n++) {
        const angle = 2 * Math.PI * (n + 0.5) / ANGLES;
        const x2 = one.x + Math.cos(angle) * (way2 + one.wide / 2) - one.wide / 2;
        const y2 = one.y + Math.sin(angle) * (way2 + one.high / 2) - one.high / 2;
        if (x2 < MARGIN || y2 < MARGIN) continue;
        if (x2 + one.wide > width - MARGIN || y2 + one.high > height - MARGIN) continue;
        found.push(boundsOf(x2, y2, one));
      }
    const x = Math.max(Math.min(one.x, width - MARGIN - one.wide), MARGIN);
    const y = Math.max(Math.min(one.y + 2 * MARGIN, height - MARGIN - one.high), MARGIN);
    found.push(boundsOf(x, y, one));
    return found;
  }
  function boundsOf(x, y, one) {
    return { left: x, top: y, right: x + one.wide, bottom: y + one.high };
  }
  function costOf(one, bounds, model, taken2, most) {
    const end = nearest(bounds, one.x, one.y);
    let cost = Math.hypot(end.x - one.x, end.y - one.y);
    if (cost >= most) return cost;
    if (model.some((disc) => reaches(disc, bounds))) cost += OVER_MODEL;
    for (const other of taken2) {
      const to = nearest(other.bounds, other.from.x, other.from.y);
      if (overlap(bounds, other.bounds)) cost += OVER_WORDS;
      if (crosses(one, end, other.from, to)) cost += OVER_LEADER;
      if (strikes(one, end, other.bounds) || strikes(other.from, to, bounds)) cost += OVER_LINE;
    }
    return cost;
  }
  function nearest({ left, top, right, bottom }, x, y) {
    return { x: Math.min(Math.max(x, left), right), y: Math.min(Math.max(y, top), bottom) };
  }
  function reaches(disc, bounds) {
    const { x, y } = nearest(bounds, disc.x, disc.y);
    return Math.hypot(x - disc.x, y - disc.y) < disc.r + GAP;
  }
  function overlap(a, b) {
    return a.left < b.right + GAP && b.left < a.right + GAP && a.top < b.bottom + GAP && b.top < a.bottom + GAP;
  }
  function crosses(a, b, c, d) {
    const side2 = (p, q, r) => Math.sign((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
    return side2(a, b, c) !== side2(a, b, d) && side2(c, d, a) !== side2(c, d, b);
  }
  function strikes(a, b, { left, top, right, bottom }) {
    let from = 0, to = 1;
    for (const [start, way2, low, high] of [[a.x, b.x - a.x, left, right], [a.y, b.y - a.y, top, bottom]]) {
      if (Math.abs(way2) < 1e-9) {
        if (start <= low || start >= high) return false;
        continue;
      }
      const [one, two] = [(low - start) / way2, (high - start) / way2];
      from = Math.max(from, Math.min(one, two));
      to = Math.min(to, Math.max(one, two));
    }
    return from < to;
  }
  function discsOf(outline, project, scale) {
    const found = [];
    for (let n = 1; n < outline.length; n++) {
      const [z0, r0] = outline[n - 1], [z1, r1] = outline[n];
      const steps2 = Math.max(Math.ceil(Math.abs(z1 - z0) / Math.max(r0, r1, 1e-3)), 1);
      for (let k = 0; k <= steps2; k++) {
        const share = k / steps2;
        const [x, y] = project([0, 0, z0 + (z1 - z0) * share]);
        found.push({ x, y, r: (r0 + (r1 - r0) * share) * scale });
      }
    }
    return found;
  }

  // src/model/words/sight.js
  function hidden({ places, triangles }, from, towards, gone) {
    const [ox, oy, oz] = from, [dx, dy, dz] = towards;
    for (let n = 0; n < triangles.length; n += 3) {
      const a = 3 * triangles[n], b = 3 * triangles[n + 1], c = 3 * triangles[n + 2];
      const ax = places[a], ay = places[a + 1], az = places[a + 2];
      const ux = places[b] - ax, uy = places[b + 1] - ay, uz = places[b + 2] - az;
      const vx = places[c] - ax, vy = places[c + 1] - ay, vz = places[c + 2] - az;
      const px = dy * vz - dz * vy, py = dz * vx - dx * vz, pz = dx * vy - dy * vx;
      const det = ux * px + uy * py + uz * pz;
      if (det > -1e-12 && det < 1e-12) continue;
      const tx = ox - ax, ty = oy - ay, tz = oz - az;
      const first = (tx * px + ty * py + tz * pz) / det;
      if (first < 0 || first > 1) continue;
      const qx = ty * uz - tz * uy, qy = tz * ux - tx * uz, qz = tx * uy - ty * ux;
      const second = (dx * qx + dy * qy + dz * qz) / det;
      if (second < 0 || first + second > 1) continue;
      const far = (vx * qx + vy * qy + vz * qz) / det;
      if (far <= 0) continue;
      if (!gone([ox + far * dx, oy + far * dy, oz + far * dz])) return true;
    }
    return false;
  }

  // src/model/scenes/motion.js
  var MILLED = 0.7;
  var LIFTED = 0.8;
  function inHole({ lead, hand }, entered) {
    const angle = -hand * 2 * Math.PI * entered / lead;
    return { spin: [Math.cos(angle), Math.sin(angle)], moved: [0, 0, -entered], angle };
  }
  var eased = (x) => x * x * (3 - 2 * x);
  var within2 = (x) => Math.min(Math.max(x, 0), 1);
  function inMaking(shape, progress, ratio) {
    const { lands, ball, full_depth, major, hand, centre, offset } = shape;
    const flute = Math.min(Math.floor(progress), lands - 1), share = Math.min(progress - flute, 1);
    const start = -1.6 * ball, milled = within2(share / MILLED);
    const lifted = within2((share - MILLED) / (LIFTED - MILLED));
    const indexed = within2((share - LIFTED) / (1 - LIFTED));
    const last = flute === lands - 1;
    const turned2 = flute + (last ? 0 : eased(indexed));
    const angle = -hand * 2 * Math.PI * turned2 / lands;
    const clear = major / 2 + 1.4 * ball;
    const up = last ? eased(lifted) : eased(lifted) - (indexed > 0.7 ? eased((indexed - 0.7) / 0.3) : 0);
    const back = last ? 0 : eased(within2(indexed / 0.7));
    const along = start + (full_depth - start) * milled;
    return {
      flute,
      angle,
      turned: turned2,
      spin: [Math.cos(angle), Math.sin(angle)],
      done: flute + (milled >= 1 ? 1 : 0),
      cutterAt: milled >= 1 ? -1e6 : along,
      cutter: [centre + clear * up, offset * hand, along + (start - along) * back],
      crank: 2 * Math.PI * ratio * turned2 / lands,
      milling: milled < 1
    };
  }
  function cuttingNow(shape, hole, entered) {
    const bottom = hole.blind ? Infinity : hole.depth;
    return {
      turns: entered / shape.lead,
      chips: hole.chips.filter(({ z }) => entered - z > 0 && entered - z < bottom + shape.pitch / 2)
    };
  }

  // src/model/words/labels.js
  var LEAST_FACING = 0.12;
  var CHIP_FACING = 0.45;
  var LIFT = 2e-4;
  var APART = 18;
  var Labels = class {
    /**
     * @param {Viewer} viewer
     * @param {HTMLElement} stage that holds the canvas
     */
    constructor(viewer, stage) {
      this.viewer = viewer;
      this.on = true;
      this.lines = /** @type {HTMLCanvasElement} */
      made("canvas", { class: "leaders", "aria-hidden": "true" });
      this.words = made("div", { class: "labels", "aria-hidden": "true" });
      stage.append(this.lines, this.words);
      this.known = /* @__PURE__ */ new Map();
      viewer.drawn.push(() => this.follow());
    }
    /**
     * @param {string} key
     * @param {string} kind
     * @param {string} label
     * @param {string} text
     */
    _of(key, kind, label, text) {
      const found = this.known.get(key);
      if (found) return found;
      const word = made("span", { class: kind }, made("b", {}, label));
      if (text) word.append(" ", text);
      this.words.append(word);
      this.known.set(key, word);
      return word;
    }
    /** The model is another one. */
    clear() {
      this.known.clear();
      this.words.replaceChildren();
    }
    follow() {
      for (const word of this.known.values()) word.hidden = true;
      const { viewer } = this, pen = this._pen();
      if (!this.on || !viewer.model) return;
      if (viewer.name === "alone") this._marks(viewer.model.head.marks, pen);
      if (viewer.name === "hole") this._chips();
    }
    /** A clean sheet over the canvas, in its pixels. */
    _pen() {
      const { canvas, camera } = this.viewer, [wide2] = camera.size;
      const pen = this.lines.getContext("2d");
      this.lines.width = canvas.width;
      this.lines.height = canvas.height;
      pen?.scale(canvas.width / wide2, canvas.width / wide2);
      return pen;
    }
    /**
     * @param {Mark[]} marks
     * @param {CanvasRenderingContext2D | null} pen
     */
    _marks(marks, pen) {
      const { camera } = this.viewer;
      const shown2 = marks.flatMap((mark2) => {
        const word = this._of(mark2.key, "leader", mark2.label, mark2.text);
        const at = this.seenPlace(mark2);
        word.hidden = !at;
        if (!at) return [];
        const [x, y] = camera.project(at);
        return [{ word, x, y, wide: word.offsetWidth, high: word.offsetHeight, key: mark2.key }];
      });
      const places = placedLabels(shown2, camera.size, this._covered());
      const ink = getComputedStyle(this.lines).color;
      shown2.forEach(({ word, x, y, wide: wide2, high, key }, n) => {
        const { x: left, y: top } = places[n];
        word.style.transform = `translate(${left.toFixed(1)}px, ${top.toFixed(1)}px)`;
        word.dataset.key = key;
        word.dataset.at = `${x.toFixed(2)} ${y.toFixed(2)}`;
        const end = nearest({ left, top, right: left + wide2, bottom: top + high }, x, y);
        if (pen) leader(pen, [x, y, end.x, end.y], ink);
      });
    }
    /** What the tap covers of the canvas. */
    _covered() {
      const { camera, model } = this.viewer;
      if (!model) return [];
      const { point: point2, major, cone, thread_end, turned: turned2 } = model.head.shape;
      const chamfer = cone > 0 ? Math.min((major / 2 - point2) / cone, thread_end) : 0;
      return discsOf(
        [[0, point2], [chamfer, major / 2], [thread_end, major / 2], ...turned2],
        (p) => camera.project(p),
        camera.scale
      );
    }
    /**
     * Where a mark can be pointed at: the place that faces us best and is not hidden.
     * @param {Mark} mark
     * @returns {Vector | null}
     */
    seenPlace({ places }) {
      const { camera, cuts, body } = this.viewer;
      if (!body) return null;
      const towards = camera.towards, [w, h] = camera.size;
      const facing = places.map((place) => ({ place, facing: place.facing.reduce((sum, v, k) => sum + v * towards[k], 0) })).filter((one) => one.facing > LEAST_FACING).sort((a, b) => b.facing - a.facing);
      for (const { place } of facing) {
        const [x, y] = camera.project(place.at);
        if (x < 0 || y < 0 || x > w || y > h || cuts.gone(place.at)) continue;
        const from = place.at.map((v, k) => v + LIFT * camera.reach * (place.facing[k] + towards[k]));
        if (!hidden(body.faces, from, towards, (p) => cuts.gone(p))) return place.at;
      }
      return null;
    }
    _chips() {
      const scene = this.viewer.hole, { camera, model } = this.viewer;
      if (!scene || !model) return;
      const { shape, hole } = scene, towards = camera.towards;
      const { spin, moved: moved2 } = scene.placed;
      const turned2 = ([x, y, z]) => {
        const side2 = y * shape.hand;
        return [spin[0] * x - spin[1] * side2, spin[1] * x + spin[0] * side2, z];
      };
      const taken2 = [];
      for (const chip of cuttingNow(shape, hole, scene.entered).chips) {
        const { anchor, facing } = scene.numbers[chip.number - 1];
        const out = turned2(facing), at = turned2(anchor).map((v, k) => v + moved2[k]);
        if (out.reduce((sum, v, k) => sum + v * towards[k], 0) < CHIP_FACING) continue;
        const [x, y] = camera.project(at);
        if (taken2.some(([a, b]) => Math.abs(a - x) < APART && Math.abs(b - y) < 0.8 * APART)) continue;
        taken2.push([x, y]);
        const word = this._of(`chip ${chip.number}`, "chip", String(chip.number), "");
        word.hidden = false;
        word.style.transform = `translate(${x.toFixed(1)}px, ${y.toFixed(1)}px) translate(-50%, -50%)`;
      }
    }
  };
  function leader(pen, [x, y, toX, toY], ink) {
    pen.strokeStyle = pen.fillStyle = ink;
    pen.beginPath();
    pen.moveTo(x, y);
    pen.lineTo(toX, toY);
    pen.stroke();
    pen.beginPath();
    pen.arc(x, y, 2.6, 0, 2 * Math.PI);
    pen.fill();
  }

  // src/unpack.js
  async function unpacked(text) {
    const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
    const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"));
    return new Response(stream).arrayBuffer();
  }
  var CAN_UNPACK = "DecompressionStream" in globalThis;

  // src/model/packed.js
  var SHORT = 65536;
  function arraysOf(head2, bytes, from) {
    const starts = {};
    for (const [name, length] of Object.entries(head2.lengths)) {
      starts[name] = from;
      from += Math.ceil(length / 4) * 4;
    }
    const Numbers = head2.vertices <= SHORT ? Uint16Array : Uint32Array;
    return {
      places: new Uint16Array(bytes, starts.places, 3 * head2.vertices),
      normals: new Int16Array(bytes, starts.normals, 2 * head2.vertices),
      triangles: new Numbers(bytes, starts.triangles, 3 * head2.triangles),
      edges: new Numbers(bytes, starts.edges, 2 * head2.edges),
      kinds: new Uint8Array(bytes, starts.kinds, head2.vertices)
    };
  }
  async function fromPage(packed) {
    return { head: packed, arrays: arraysOf(packed, await unpacked(packed.data), 0) };
  }
  function fromServer(bytes) {
    const length = new DataView(bytes).getUint32(0, true);
    const head2 = JSON.parse(new TextDecoder().decode(new Uint8Array(bytes, 4, length)));
    return { head: head2, arrays: arraysOf(head2, bytes, 4 + length) };
  }
  function placesOf({ head: head2, arrays }) {
    const out = new Float32Array(arrays.places.length);
    for (let n = 0; n < out.length; n++)
      out[n] = head2.low[n % 3] + arrays.places[n] * head2.step[n % 3];
    return out;
  }
  function edgeEnds({ places, edges }) {
    const out = new Uint16Array(3 * edges.length);
    for (let n = 0; n < edges.length; n++)
      for (let k = 0; k < 3; k++) out[3 * n + k] = places[3 * edges[n] + k];
    return out;
  }
  function boxOf({ low, step }) {
    return { low, high: low.map((v, k) => v + 65535 * step[k]) };
  }

  // src/model/player.js
  var SPEEDS = [0.25, 0.5, 1, 2, 4];
  var Player = class {
    /** @param {(value: number) => void} follow called at every new value */
    constructor(follow) {
      this.follow = follow;
      this.value = 0;
      this.course = { from: 0, to: 1, step: 1, perSecond: 1, told: String };
      this.still = matchMedia("(prefers-reduced-motion: reduce)");
      this.running = false;
      this.last = 0;
      this.play = made("button", { type: "button", class: "play" }, "play");
      this.back = made("button", { type: "button" }, "step back");
      this.on = made("button", { type: "button" }, "step on");
      this.slider = /** @type {HTMLInputElement} */
      made("input", { type: "range", "aria-label": "place in the work", step: "any" });
      this.speed = /** @type {HTMLSelectElement} */
      made(
        "select",
        {},
        ...SPEEDS.map((speed) => made("option", { value: speed, selected: speed === 1 }, `${speed} ×`))
      );
      this.text = made("output", { class: "told" });
      const pace = made("label", { class: "pace" }, "speed ", this.speed);
      this.element = made(
        "div",
        { class: "player" },
        made("div", { class: "buttons" }, this.back, this.play, this.on, pace),
        this.slider,
        this.text
      );
      this.play.addEventListener("click", () => this.run(!this.running));
      this.back.addEventListener("click", () => this.go(this._next(-1)));
      this.on.addEventListener("click", () => this.go(this._next(1)));
      this.slider.addEventListener("input", () => this.go(Number(this.slider.value)));
      const calm = () => {
        this.play.hidden = pace.hidden = this.still.matches;
        if (this.still.matches) this.run(false);
      };
      this.still.addEventListener("change", calm);
      calm();
    }
    /**
     * @param {Course} course
     * @param {number} value
     */
    take(course, value) {
      this.course = course;
      this.run(false);
      this.slider.min = String(course.from);
      this.slider.max = String(course.to);
      this.set(value);
    }
    /** The next or the last whole step. @param {number} way */
    _next(way2) {
      const { from, step } = this.course;
      const at = (this.value - from) / step;
      return from + step * (way2 > 0 ? Math.floor(at + 1e-6) + 1 : Math.ceil(at - 1e-6) - 1);
    }
    /** Stop there. @param {number} value */
    go(value) {
      this.run(false);
      this.set(value);
    }
    /** @param {number} value */
    set(value) {
      const { from, to, told: told2 } = this.course;
      this.value = Math.min(Math.max(value, from), to);
      this.slider.value = String(this.value);
      this.text.textContent = told2(this.value);
      this.slider.setAttribute("aria-valuetext", told2(this.value));
      this.follow(this.value);
    }
    /** @param {boolean} on */
    run(on) {
      this.running = on && !this.still.matches;
      this.play.textContent = this.running ? "pause" : "play";
      this.text.setAttribute("aria-live", this.running ? "off" : "polite");
      if (!this.running) return;
      if (this.value >= this.course.to) this.value = this.course.from;
      this.last = performance.now();
      requestAnimationFrame((now) => this._tick(now));
    }
    /** @param {number} now */
    _tick(now) {
      if (!this.running) return;
      if (!this.element.isConnected || this.element.hidden) return this.run(false);
      const passed = Math.min(Math.max(now - this.last, 0) / 1e3, 0.1);
      this.last = now;
      this.set(this.value + passed * this.course.perSecond * Number(this.speed.value));
      if (this.value >= this.course.to) return this.run(false);
      requestAnimationFrame((next) => this._tick(next));
    }
  };

  // src/model/card.js
  function program(gl, [vertex, fragment], attributes) {
    const made2 = gl.createProgram();
    const parts = (
      /** @type {[number, string][]} */
      [
        [gl.VERTEX_SHADER, vertex],
        [gl.FRAGMENT_SHADER, fragment]
      ]
    );
    for (const [kind, text] of parts) {
      const shader = gl.createShader(kind);
      if (!shader) throw new Error("the graphics were lost");
      gl.shaderSource(shader, text);
      gl.compileShader(shader);
      gl.attachShader(made2, shader);
      if (!gl.getShaderParameter(shader, gl.COMPILE_STATUS) && !gl.isContextLost())
        throw new Error(gl.getShaderInfoLog(shader) ?? "");
    }
    attributes.forEach((name, place) => gl.bindAttribLocation(made2, place, name));
    gl.linkProgram(made2);
    if (!gl.getProgramParameter(made2, gl.LINK_STATUS) && !gl.isContextLost())
      throw new Error(gl.getProgramInfoLog(made2) ?? "");
    const known2 = /* @__PURE__ */ new Map();
    const at = (name) => {
      if (!known2.has(name)) known2.set(name, gl.getUniformLocation(made2, name));
      return known2.get(name) ?? null;
    };
    return { made: made2, at };
  }
  function buffer(gl, kind, content) {
    const made2 = gl.createBuffer();
    gl.bindBuffer(kind, made2);
    gl.bufferData(kind, content, gl.STATIC_DRAW);
    return made2;
  }
  function setAll(gl, into, values) {
    for (const [name, value] of Object.entries(values)) {
      const at = into.at(name);
      if (!at) continue;
      if (typeof value === "number") gl.uniform1f(at, value);
      else if (value.length === 9) gl.uniformMatrix3fv(at, false, value);
      else if (value.length === 2) gl.uniform2fv(at, value);
      else if (value.length === 3) gl.uniform3fv(at, value);
      else gl.uniform4fv(at, value);
    }
  }
  var Mesh = class {
    /**
     * @param {WebGL2RenderingContext} gl
     * @param {{corners: Float32Array<ArrayBuffer>, triangles: Uint32Array<ArrayBuffer>}} content
     * @param {number[]} widths of the attributes, one behind the other
     */
    constructor(gl, { corners, triangles }, widths) {
      this.gl = gl;
      this.count = triangles.length;
      this.array = gl.createVertexArray();
      gl.bindVertexArray(this.array);
      this.buffers = [
        buffer(gl, gl.ARRAY_BUFFER, corners),
        buffer(gl, gl.ELEMENT_ARRAY_BUFFER, triangles)
      ];
      const stride = 4 * widths.reduce((sum, width) => sum + width, 0);
      let from = 0;
      widths.forEach((width, place) => {
        gl.enableVertexAttribArray(place);
        gl.vertexAttribPointer(place, width, gl.FLOAT, false, stride, from);
        from += 4 * width;
      });
      gl.bindVertexArray(null);
    }
    draw() {
      this.gl.bindVertexArray(this.array);
      this.gl.drawElements(this.gl.TRIANGLES, this.count, this.gl.UNSIGNED_INT, 0);
    }
    drop() {
      this.gl.deleteVertexArray(this.array);
      for (const made2 of this.buffers) this.gl.deleteBuffer(made2);
    }
  };

  // src/model/shading/common.js
  var HEAD2 = `#version 300 es
precision highp float;
precision highp int;
`;
  var ONTO_CANVAS = `
uniform mat3 turn; uniform vec3 middle, moved; uniform vec2 scale, shift, spin; uniform float deep;
vec3 turnedBy(vec3 v) { return vec3(spin.x * v.x - spin.y * v.y, spin.y * v.x + spin.x * v.y, v.z); }
vec3 inWorld(vec3 p) { return turnedBy(p) + moved; }
vec4 onCanvas(vec3 p) {
  vec3 seen = turn * (p - middle);
  return vec4(seen.xy * scale + shift, -seen.z * deep, 1.0);
}
`;
  var CUT = `
uniform float cut; uniform vec2 quarterA, quarterB;
bool gone(vec3 p) {
  return p.z < cut || (dot(p.xy, quarterA) > 0.0 && dot(p.xy, quarterB) > 0.0);
}
`;
  var LIGHT = `
uniform vec3 key, fill, sky, ground; uniform float keyStrength, fillStrength, gleam, sharpness;
vec3 linear(vec3 c) { return pow(c, vec3(2.2)); }
vec3 lit(vec3 n, vec3 colour, float open, float polish) {
  vec3 base = linear(colour);
  vec3 around = mix(linear(ground), linear(sky), 0.5 + 0.5 * n.y);
  float first = max(dot(n, key), 0.0), second = max(dot(n, fill), 0.0);
  float high = pow(max(dot(n, normalize(key + vec3(0.0, 0.0, 1.0))), 0.0), sharpness);
  float low = pow(max(dot(n, normalize(fill + vec3(0.0, 0.0, 1.0))), 0.0), 0.5 * sharpness);
  float mirrored = reflect(vec3(0.0, 0.0, -1.0), n).y;
  float band = smoothstep(-0.35, 0.75, mirrored) - 0.55 * smoothstep(0.80, 1.0, mirrored);
  vec3 out_ = base * (around * open * 1.05 + (keyStrength * first + fillStrength * second) * mix(open, 1.0, 0.35));
  out_ += polish * open * mix(vec3(1.0), base * 1.6, 0.5) * (gleam * high + 0.3 * gleam * low + 0.16 * band);
  out_ = out_ / (1.0 + 0.22 * out_);
  return pow(out_, vec3(1.0 / 2.2));
}
`;
  var TAP = `
const float TURN = 6.283185307179586;
uniform float pitch, lead, firstZ, edge, lands, hand, point, cone, threadEnd, fullDepth;
uniform vec3 cutter; // outwards, along +theta, radius of the ball
uniform vec4 crest, root; // half, radius, arc, its centre
float onFlat(vec4 f, float away) {
  return f.z == 0.0 ? f.y : f.w + sign(f.z) * sqrt(max(f.z * f.z - away * away, 0.0));
}
float profileOf(vec4 top, vec4 low, float w) {
  float away = abs(w - pitch * round(w / pitch)), begin = 0.5 * pitch - low.x;
  if (away < top.x) return onFlat(top, away);
  if (away > begin) return onFlat(low, 0.5 * pitch - away);
  return mix(top.y, low.y, (away - top.x) / (begin - top.x));
}
// Angle of a wall of the first flute at a radius: side 1 the cutting face, -1 the heel.
float wallAngle(float r, float side) {
  float across = cutter.y + side * cutter.z, long_ = length(cutter.xy);
  if (r >= length(vec2(cutter.x, across))) return asin(clamp(across / r, -1.0, 1.0));
  float overlap = (cutter.z * cutter.z - (long_ - r) * (long_ - r)) / (4.0 * r * long_);
  return atan(cutter.y, cutter.x) + side * 2.0 * asin(sqrt(clamp(overlap, 0.0, 1.0)));
}
// A point in the frame of the nearest flute: outwards, along +theta, and the flute's number.
vec3 inFlute(vec3 q) {
  float r = max(length(q.xy), length(cutter.xy) - cutter.z + 1e-4);
  float middle = 0.5 * (wallAngle(r, 1.0) + wallAngle(r, -1.0));
  float number = round((atan(q.y, q.x) - middle) * lands / TURN);
  float turned = number * TURN / lands, c = cos(turned), s = sin(turned);
  return vec3(q.x * c + q.y * s, q.y * c - q.x * s, mod(number + lands, lands));
}
`;
  var MILLED2 = `
uniform float flutesDone, cutterAt;
float reachedIn(float flute) {
  return flute < flutesDone - 0.5 ? fullDepth : flute < flutesDone + 0.5 ? min(cutterAt, fullDepth) : -1e6;
}
// How far a point lies outside what the cutter has taken off in its flute; negative within.
float offMilled(vec3 q) {
  vec3 f = inFlute(q);
  vec3 way = vec3(max(cutter.x - f.x, 0.0), cutter.y - f.y, max(q.z - reachedIn(f.z), 0.0));
  return f.x < 0.0 ? 1.0 : length(way) - cutter.z;
}
`;

  // src/model/shading/body.js
  var BODY = [`${HEAD2}
in vec3 place; in vec2 normal; in float kind;
uniform vec3 low, span;
${ONTO_CANVAS}
out vec3 own, world, facing; flat out int made;
void main() {
  own = low + place * span;
  vec3 n = vec3(normal, 1.0 - abs(normal.x) - abs(normal.y));
  if (n.z < 0.0) n.xy = (1.0 - abs(n.yx)) * vec2(n.x < 0.0 ? -1.0 : 1.0, n.y < 0.0 ? -1.0 : 1.0);
  world = inWorld(own);
  facing = turn * turnedBy(normalize(n));
  made = int(kind + 0.5);
  gl_Position = onCanvas(world);
}`, `${HEAD2}
in vec3 own, world, facing; flat in int made;
uniform vec3 turnedColour, groundColour, plainColour, straw;
uniform float inMaking, generatedTo, frontRim;
${CUT}${LIGHT}${TAP}${MILLED2}
out vec4 colour;
void main() {
  if (gone(world)) discard;
  vec3 q = vec3(own.x, own.y * hand, own.z);
  float r = length(q.xy);
  if (inMaking > 0.5) {
    if (made == 1 && offMilled(q) > 2e-3 * cutter.z) discard;
    if (made != 1 && q.z < generatedTo && !(made == 3 && r < 1.001 * frontRim)) discard;
  }
  vec3 base = made == 1 ? groundColour : made == 3 ? plainColour : turnedColour;
  float core = length(cutter.xy) - cutter.z, open = 1.0, warm = 0.0;
  float edgeRadius = min(crest.y, point + cone * q.z);
  float within = 1.0 - smoothstep(threadEnd - 0.5 * pitch, threadEnd + 0.5 * pitch, q.z);
  if (made == 0) {
    float sunk = clamp((crest.y - r) / (crest.y - root.y), 0.0, 1.0);
    open = 1.0 - 0.34 * sunk * within;
    float spacing = TURN / lands, behind = mod(atan(q.y, q.x) - wallAngle(r, 1.0), spacing);
    behind = behind > 0.97 * spacing ? 0.0 : behind;
    warm = exp(-pow(r * behind / (0.16 * crest.y), 1.3)) * within;
  } else if (made == 1) {
    vec3 f = inFlute(q);
    float sunk = clamp((crest.y - r) / (crest.y - core), 0.0, 1.0);
    open = 1.0 - 0.40 * sunk * sunk * (1.0 - smoothstep(fullDepth, fullDepth + cutter.z, q.z));
    float beside = smoothstep(0.0, 0.3 * cutter.z, f.y - cutter.y);
    warm = beside * exp(-pow(max(edgeRadius - r, 0.0) / (0.15 * crest.y), 1.3)) * within;
  }
  vec3 n = normalize(facing);
  base = mix(base, straw, 0.95 * warm * (1.0 - inMaking));
  colour = vec4(lit(n, base, open, made == 1 ? 1.0 : 0.8), 1.0);
}`];
  var COUNTED = [`${HEAD2}
in vec3 place;
uniform vec3 low, span;
${ONTO_CANVAS}
out vec3 world;
void main() { world = inWorld(low + place * span); gl_Position = onCanvas(world); }`, `${HEAD2}
in vec3 world;
uniform vec4 plane;
out vec4 colour;
void main() { if (dot(world, plane.xyz) > plane.w) discard; colour = vec4(0.0); }`];
  var CAP = [`${HEAD2}
in vec2 corner;
uniform vec3 across, up, origin; uniform float reach;
${ONTO_CANVAS}
out vec3 world; out vec2 flatPlace;
void main() {
  flatPlace = corner * reach;
  world = origin + across * flatPlace.x + up * flatPlace.y;
  gl_Position = onCanvas(world);
}`, `${HEAD2}
in vec3 world; in vec2 flatPlace;
uniform vec4 plane; uniform vec3 capColour, facing; uniform float spacing, whichNumber;
#define which int(whichNumber + 0.5)
${CUT}${LIGHT}
out vec4 colour;
void main() {
  if (which > 0 && world.z < cut) discard;
  if (which == 0 && dot(world.xy, quarterA) > 0.0 && dot(world.xy, quarterB) > 0.0) discard;
  if (which == 1 && dot(world.xy, quarterB) <= 0.0) discard;
  if (which == 2 && dot(world.xy, quarterA) <= 0.0) discard;
  float line = (flatPlace.x + flatPlace.y) / spacing, wide = fwidth(line);
  float away = abs(fract(line) - 0.5);
  float ink = 1.0 - smoothstep(0.25 * wide, 0.85 * wide, away);
  vec3 base = mix(capColour, lit(normalize(facing), capColour, 1.0, 0.0), 0.4);
  colour = vec4(mix(base, base * 0.45, 0.7 * ink), 1.0);
}`];

  // src/model/shading/lines.js
  var LINES = [`${HEAD2}
in vec2 corner; in vec3 first, last;
uniform vec3 low, span; uniform vec2 pixel; uniform float wide, nearer;
${ONTO_CANVAS}
out vec3 world; out float aside;
void main() {
  vec3 a = inWorld(low + first * span), b = inWorld(low + last * span);
  vec4 from = onCanvas(a), to = onCanvas(b);
  vec2 way = (to.xy - from.xy) / pixel;
  float long_ = length(way);
  vec2 along = long_ > 1e-6 ? way / long_ : vec2(1.0, 0.0);
  world = mix(a, b, corner.x);
  aside = corner.y * (wide + 1.0);
  vec2 moved_ = vec2(-along.y, along.x) * aside + along * (corner.x - 0.5) * 0.5;
  gl_Position = mix(from, to, corner.x);
  gl_Position.xy += moved_ * pixel;
  gl_Position.z -= nearer;
}`, `${HEAD2}
in vec3 world; in float aside;
uniform vec4 ink; uniform float wide;
${CUT}
out vec4 colour;
void main() {
  if (gone(world)) discard;
  float seen = 1.0 - smoothstep(wide - 0.5, wide + 1.0, abs(aside));
  colour = vec4(ink.rgb, 1.0) * ink.a * seen;
}`];

  // src/model/shading/shadow.js
  var CAST = [`${HEAD2}
in vec3 place;
uniform vec3 low, span, middle, moved, tableX, tableY, tableUp; uniform vec2 spin, mid, half_;
uniform float height, fade;
out float above; out float axial;
void main() {
  vec3 p = low + place * span;
  axial = p.z;
  vec3 q = vec3(spin.x * p.x - spin.y * p.y, spin.y * p.x + spin.x * p.y, p.z) + moved - middle;
  above = (dot(q, tableUp) - height) / fade;
  gl_Position = vec4((vec2(dot(q, tableX), dot(q, tableY)) - mid) / half_, 0.0, 1.0);
}`, `${HEAD2}
in float above, axial; uniform float cut;
out vec4 colour;
void main() { if (axial < cut) discard; colour = vec4(exp(-2.2 * max(above, 0.0))); }`];
  var BLUR = [`${HEAD2}
in vec2 corner; out vec2 at;
void main() { at = corner * 0.5 + 0.5; gl_Position = vec4(corner, 0.0, 1.0); }`, `${HEAD2}
in vec2 at; uniform sampler2D picture; uniform vec2 way;
out vec4 colour;
void main() {
  float sum = 0.0, all = 0.0;
  for (int n = -9; n <= 9; n++) {
    float weight = exp(-float(n * n) / 32.0);
    sum += weight * texture(picture, at + way * float(n)).r;
    all += weight;
  }
  colour = vec4(sum / all);
}`];
  var TABLE = [`${HEAD2}
in vec2 corner;
uniform mat3 turn; uniform vec3 tableX, tableY, tableUp; uniform vec2 scale, shift, mid, half_;
uniform float height;
out vec2 at;
void main() {
  at = corner * 0.5 + 0.5;
  vec2 flat_ = mid + corner * half_;
  vec3 seen = turn * (tableX * flat_.x + tableY * flat_.y + tableUp * height);
  gl_Position = vec4(seen.xy * scale + shift, 0.0, 1.0);
}`, `${HEAD2}
in vec2 at; uniform sampler2D picture; uniform float strength;
out vec4 colour;
void main() {
  vec2 border = smoothstep(vec2(0.0), vec2(0.06), at) * smoothstep(vec2(0.0), vec2(0.06), 1.0 - at);
  colour = vec4(0.0, 0.0, 0.0, strength * texture(picture, at).r * border.x * border.y);
}`];

  // src/model/body.js
  var FULL = 65535;
  var INK = [0.06, 0.07, 0.08];
  var OUTLINE = 0.62;
  var PROFILE = 0.45;
  var TOO_CLOSE = 5;
  var APART2 = 26;
  function bodyPrograms(gl) {
    return {
      body: program(gl, BODY, ["place", "normal", "kind"]),
      lines: program(gl, LINES, ["corner", "first", "last"]),
      counted: program(gl, COUNTED, ["place"]),
      cast: program(gl, CAST, ["place"])
    };
  }
  function tapValues(shape) {
    const { crest, root } = shape.profile;
    return {
      pitch: shape.pitch,
      lead: shape.lead,
      firstZ: shape.first_z,
      edge: shape.edge,
      lands: shape.lands,
      hand: shape.hand,
      point: shape.point,
      cone: shape.cone,
      threadEnd: shape.thread_end,
      fullDepth: shape.full_depth,
      cutter: [shape.centre, shape.offset, shape.ball],
      crest: [crest.half, crest.radius, crest.arc, crest.centre],
      root: [root.half, root.radius, root.arc, root.centre],
      advance: shape.lead / (2 * Math.PI)
    };
  }
  var Body = class {
    /**
     * @param {WebGL2RenderingContext} gl
     * @param {ReturnType<typeof bodyPrograms>} programs
     * @param {Loaded} model
     */
    constructor(gl, programs, model) {
      this.gl = gl;
      this.programs = programs;
      const { head: head2, arrays } = model;
      this.head = head2;
      this.box = boxOf(head2);
      this.faces = { places: placesOf(model), triangles: arrays.triangles };
      this.values = {
        low: head2.low,
        span: head2.step.map((v) => v * FULL),
        ...tapValues(head2.shape),
        turnedColour: head2.look.turned,
        groundColour: head2.look.ground,
        plainColour: head2.look.plain,
        straw: head2.look.straw,
        frontRim: head2.shape.front_centre / 2,
        inMaking: 0,
        generatedTo: 0,
        flutesDone: head2.shape.lands,
        cutterAt: 0,
        spin: [1, 0],
        moved: [0, 0, 0]
      };
      this.count = 3 * head2.triangles;
      this.wide = arrays.triangles.BYTES_PER_ELEMENT === 2 ? gl.UNSIGNED_SHORT : gl.UNSIGNED_INT;
      this.buffers = [];
      this.solid = gl.createVertexArray();
      gl.bindVertexArray(this.solid);
      this._attribute(0, arrays.places, 3, gl.UNSIGNED_SHORT, true);
      this._attribute(1, arrays.normals, 2, gl.SHORT, true);
      this._attribute(2, arrays.kinds, 1, gl.UNSIGNED_BYTE, false);
      this.buffers.push(buffer(gl, gl.ELEMENT_ARRAY_BUFFER, arrays.triangles));
      this.wire = gl.createVertexArray();
      gl.bindVertexArray(this.wire);
      const corners = new Float32Array([0, -1, 1, -1, 1, 1, 0, -1, 1, 1, 0, 1]);
      this._attribute(0, corners, 2, gl.FLOAT, false);
      this.ends = buffer(gl, gl.ARRAY_BUFFER, edgeEnds(arrays));
      this.buffers.push(this.ends);
      for (const place of [1, 2]) {
        gl.enableVertexAttribArray(place);
        gl.vertexAttribDivisor(place, 1);
      }
      gl.bindVertexArray(null);
    }
    /**
     * @param {number} place
     * @param {BufferSource} content
     * @param {number} width
     * @param {number} kind
     * @param {boolean} whole numbers stand for shares of one
     */
    _attribute(place, content, width, kind, whole) {
      const gl = this.gl;
      this.buffers.push(buffer(gl, gl.ARRAY_BUFFER, content));
      gl.enableVertexAttribArray(place);
      gl.vertexAttribPointer(place, width, kind, whole, 0, 0);
    }
    /**
     * @param {Program} with_
     * @param {...Values} values
     */
    _triangles(with_, ...values) {
      const gl = this.gl;
      gl.useProgram(with_.made);
      for (const some of [this.values, ...values]) setAll(gl, with_, some);
      gl.bindVertexArray(this.solid);
      gl.drawElements(gl.TRIANGLES, this.count, this.wide, 0);
    }
    /** @param {...Values} values */
    draw(...values) {
      this._triangles(this.programs.body, ...values);
    }
    /** @param {...Values} values */
    cast(...values) {
      this._triangles(this.programs.cast, ...values);
    }
    /**
     * Leave in the stencil where the kept side of a plane is cut.
     * @param {number[]} plane
     * @param {...Values} values
     */
    count_(plane, ...values) {
      const gl = this.gl;
      gl.clear(gl.STENCIL_BUFFER_BIT);
      gl.enable(gl.STENCIL_TEST);
      gl.stencilFunc(gl.ALWAYS, 0, 255);
      gl.stencilOpSeparate(gl.FRONT, gl.KEEP, gl.KEEP, gl.DECR_WRAP);
      gl.stencilOpSeparate(gl.BACK, gl.KEEP, gl.KEEP, gl.INCR_WRAP);
      gl.colorMask(false, false, false, false);
      gl.depthMask(false);
      gl.disable(gl.DEPTH_TEST);
      this._triangles(this.programs.counted, ...values, { plane });
      gl.enable(gl.DEPTH_TEST);
      gl.depthMask(true);
      gl.colorMask(true, true, true, true);
      gl.stencilOp(gl.KEEP, gl.KEEP, gl.KEEP);
    }
    /**
     * Edges where surfaces meet; those of the profile only where they do not run into each other.
     * @param {number} pixels of a millimetre
     * @param {...Values} values
     */
    lines(pixels, ...values) {
      const { gl, head: head2 } = this, { lines } = this.programs;
      const room = pixels * head2.shape.pitch;
      const clear = Math.min(Math.max((room - TOO_CLOSE) / (APART2 - TOO_CLOSE), 0), 1);
      gl.useProgram(lines.made);
      for (const some of [this.values, ...values]) setAll(gl, lines, some);
      gl.bindVertexArray(this.wire);
      const parts = [[0, head2.edges - head2.fine, OUTLINE], [head2.edges - head2.fine, head2.fine, PROFILE * clear]];
      for (const [from, count, strength] of parts) {
        if (count <= 0 || strength <= 0) continue;
        setAll(gl, lines, { ink: [...INK, strength] });
        gl.bindBuffer(gl.ARRAY_BUFFER, this.ends);
        gl.vertexAttribPointer(1, 3, gl.UNSIGNED_SHORT, true, 12, 12 * from);
        gl.vertexAttribPointer(2, 3, gl.UNSIGNED_SHORT, true, 12, 12 * from + 6);
        gl.drawArraysInstanced(gl.TRIANGLES, 0, 6, count);
      }
    }
    drop() {
      this.gl.deleteVertexArray(this.solid);
      this.gl.deleteVertexArray(this.wire);
      for (const made2 of this.buffers) this.gl.deleteBuffer(made2);
    }
  };

  // src/model/looking/rotation.js
  function turned(axis, angle) {
    const [x, y, z] = axis;
    const c = Math.cos(angle), s = Math.sin(angle), k = 1 - c;
    return [
      c + x * x * k,
      x * y * k + z * s,
      x * z * k - y * s,
      x * y * k - z * s,
      c + y * y * k,
      y * z * k + x * s,
      x * z * k + y * s,
      y * z * k - x * s,
      c + z * z * k
    ];
  }
  function product(a, b) {
    const out = new Array(9).fill(0);
    for (let col = 0; col < 3; col++)
      for (let row = 0; row < 3; row++)
        for (let n = 0; n < 3; n++) out[3 * col + row] += a[3 * n + row] * b[3 * col + n];
    return out;
  }

  // src/model/looking/views.js
  var SIDE = [0, 0, -1, 0, 1, 0, 1, 0, 0];
  var FRONT = [0, 1, 0, 1, 0, 0, 0, 0, -1];
  var UPRIGHT = [1, 0, 0, 0, 0, -1, 0, 1, 0];
  var seen = (view, round, tilt) => product(turned([1, 0, 0], tilt), product(turned([0, 1, 0], round), view));
  var VIEWS = {
    side: SIDE,
    front: FRONT,
    rear: [1, 0, 0, 0, 1, 0, 0, 0, 1],
    quarter: seen(SIDE, 0.65, 0.4),
    hole: seen(UPRIGHT, -0.35, 0.28),
    mill: seen(FRONT, -0.8, 0.4)
  };
  function facingView(facing) {
    const [x, y, z] = facing, round = Math.atan2(y, x);
    const c = Math.cos(round), s = Math.sin(round);
    const away = [c, -s, 0, s, c, 0, 0, 0, 1];
    const lying = product([0, 0, 1, 0, -1, 0, 1, 0, 0], away);
    const towardsFront = Math.atan2(z, Math.hypot(x, y));
    return seen(lying, 0.35 - towardsFront * 0.5, 0.3);
  }

  // src/model/looking/camera.js
  var MARGIN2 = 0.92;
  var LEAST = 0.2;
  var MOST2 = 400;
  var Camera = class {
    constructor() {
      this.turn = VIEWS.quarter.slice();
      this.shift = [0, 0];
      this.factor = 1;
      this.half = [1, 1];
      this.middle = [0, 0, 0];
      this.reach = 1;
      this.size = [1, 1];
    }
    /**
     * Look from a side at all of a box.
     * @param {number[]} turn
     * @param {Box} box
     */
    look(turn, box2) {
      this.turn = turn.slice();
      this.shift = [0, 0];
      this.factor = 1;
      this.hold(box2);
      const sides = box2.high.map((v, k) => (v - box2.low[k]) / 2);
      this.half = [0, 1].map((row) => sides.reduce((sum, side2, k) => sum + Math.abs(this.turn[3 * k + row]) * side2, 0));
    }
    /**
     * What is looked at may have another size now; the view stays.
     * @param {Box} box
     */
    hold(box2) {
      this.middle = box2.low.map((v, k) => (v + box2.high[k]) / 2);
      this.reach = Math.hypot(...box2.high.map((v, k) => v - box2.low[k])) / 2 || 1;
    }
    /** Pixels of a millimetre. */
    get scale() {
      const [w, h] = this.size;
      return MARGIN2 / 2 * this.factor * Math.min(w / this.half[0], h / this.half[1]);
    }
    get isHome() {
      return this.factor === 1 && this.shift[0] === 0 && this.shift[1] === 0;
    }
    /**
     * @param {number} dx [rad]
     * @param {number} dy
     */
    spin(dx, dy) {
      const step = product(turned([0, 1, 0], dx), turned([1, 0, 0], dy));
      this.turn = product(step, this.turn);
    }
    /**
     * @param {number} dx [px]
     * @param {number} dy
     */
    move(dx, dy) {
      const [w, h] = this.size;
      this.shift = [this.shift[0] + 2 * dx / w, this.shift[1] - 2 * dy / h];
    }
    /** @param {number} by */
    zoom(by) {
      const factor = Math.min(Math.max(this.factor * by, LEAST), MOST2);
      this.shift = this.shift.map((v) => v * factor / this.factor);
      this.factor = factor;
    }
    /**
     * A direction of the model as it is seen: right, up, towards us.
     * @param {number[]} v
     */
    seen(v) {
      const t = this.turn;
      return [0, 1, 2].map((row) => t[row] * v[0] + t[3 + row] * v[1] + t[6 + row] * v[2]);
    }
    /**
     * A point [mm] on the canvas: x and y from its upper left corner [px], and how near it is [mm].
     * @param {number[]} point
     */
    project(point2) {
      const [x, y, near] = this.seen(point2.map((v, k) => v - this.middle[k]));
      const [w, h] = this.size;
      return [
        w / 2 * (1 + this.shift[0]) + x * this.scale,
        h / 2 * (1 - this.shift[1]) - y * this.scale,
        near
      ];
    }
    /** The direction towards us in the model's frame. */
    get towards() {
      return [this.turn[2], this.turn[5], this.turn[8]];
    }
  };

  // src/model/scenes/caps.js
  var HATCH = 9;
  var NOTHING = -1e9;
  var Cuts = class {
    constructor() {
      this.height = NOTHING;
      this.quarter = [[0, 0], [0, 0]];
    }
    /**
     * Take out the quarter that is seen best, or put it back.
     * @param {boolean} on
     * @param {number[]} towards the eye
     */
    takeQuarter(on, towards) {
      const angle = Math.atan2(towards[1], towards[0]);
      this.quarter = [-1, 1].map((side2) => on ? [Math.cos(angle + side2 * Math.PI / 4), Math.sin(angle + side2 * Math.PI / 4)] : [0, 0]);
    }
    get hasQuarter() {
      return this.quarter[0][0] !== 0 || this.quarter[0][1] !== 0;
    }
    get any() {
      return this.hasQuarter || this.height > NOTHING;
    }
    /** @returns {Values} */
    get values() {
      return { cut: this.height, quarterA: this.quarter[0], quarterB: this.quarter[1] };
    }
    /** @param {number[]} p */
    gone(p) {
      const [a, b] = this.quarter;
      return p[2] < this.height || p[0] * a[0] + p[1] * a[1] > 0 && p[0] * b[0] + p[1] * b[1] > 0;
    }
    /** Planes of the cut: normal out of the metal, distance along it, its number. */
    get planes() {
      const found = [];
      if (this.height > NOTHING) found.push({ normal: [0, 0, -1], far: -this.height, which: 0 });
      if (this.hasQuarter)
        this.quarter.forEach(([x, y], n) => found.push({ normal: [x, y, 0], far: 0, which: n + 1 }));
      return found;
    }
  };
  var Caps = class {
    /** @param {WebGL2RenderingContext} gl */
    constructor(gl) {
      this.gl = gl;
      this.program = program(gl, CAP, ["corner"]);
      const corners = new Float32Array([-1, -1, 1, -1, 1, 1, -1, 1]);
      this.square = new Mesh(gl, { corners, triangles: new Uint32Array([0, 1, 2, 0, 2, 3]) }, [2]);
    }
    /**
     * @param {Body} body
     * @param {Cuts} cuts
     * @param {Camera} camera
     * @param {Values} common
     */
    draw(body, cuts, camera, common) {
      const gl = this.gl;
      for (const { normal, far, which } of cuts.planes) {
        const facing = camera.seen(normal);
        if (facing[2] <= 1e-3) continue;
        const plane = [...normal, far];
        body.count_(plane, common);
        gl.stencilFunc(gl.NOTEQUAL, 0, 255);
        gl.useProgram(this.program.made);
        const across = which === 0 ? [1, 0, 0] : [-normal[1], normal[0], 0];
        const up = which === 0 ? [0, 1, 0] : [0, 0, 1];
        const origin = which === 0 ? [0, 0, -far] : [0, 0, camera.middle[2]];
        const values = {
          across,
          up,
          origin,
          plane,
          facing,
          reach: 3 * camera.reach,
          whichNumber: which,
          spacing: HATCH * Math.SQRT2 / camera.scale,
          capColour: body.head.look.cap,
          spin: [1, 0],
          moved: [0, 0, 0]
        };
        for (const some of [common, cuts.values, values]) setAll(gl, this.program, some);
        this.square.draw();
        gl.disable(gl.STENCIL_TEST);
      }
    }
  };

  // src/model/shading/plain.js
  var PLAIN2 = [`${HEAD2}
in vec3 place, normal;
uniform float hand;
${ONTO_CANVAS}
out vec3 facing;
void main() {
  facing = turn * turnedBy(vec3(normal.x, normal.y * hand, normal.z));
  gl_Position = onCanvas(inWorld(vec3(place.x, place.y * hand, place.z)));
}`, `${HEAD2}
in vec3 facing;
uniform vec3 surface; uniform float polish;
${LIGHT}
out vec4 colour;
void main() { colour = vec4(lit(normalize(facing), surface, 1.0, polish), 1.0); }`];
  var CHIPS = [`${HEAD2}
in vec3 place, normal; in vec3 told; // height of the tooth, place along the chip, thickness from 0 to 1
uniform float hand, entered, longest, bottom;
${ONTO_CANVAS}
out vec3 facing; out float beyond; out float tone;
void main() {
  facing = turn * turnedBy(vec3(normal.x, normal.y * hand, normal.z));
  vec3 world = inWorld(vec3(place.x, place.y * hand, place.z));
  // It grows while its tooth is in the work.
  float way = entered - told.x;
  beyond = told.y - clamp(way / longest, 0.0, 1.0);
  beyond = way > bottom ? 1.0 : beyond;
  tone = told.z;
  gl_Position = onCanvas(world);
}`, `${HEAD2}
in vec3 facing; in float beyond, tone;
uniform vec3 thin, thick;
${LIGHT}
out vec4 colour;
void main() {
  if (beyond > 0.0) discard;
  vec3 n = normalize(facing);
  n = n.z < 0.0 ? -n : n;
  colour = vec4(lit(n, mix(thin, thick, tone), 1.0, 0.7), 1.0);
}`];

  // src/model/shading/thread.js
  var BACK = 0.72;
  var BORE = 0;
  var CUT_FACE = 1;
  var FACE = 2;
  var BLANK = 3;
  var BLANK_FRONT = 4;
  var SURFACES = `
uniform float partNumber, frontRim;
#define part int(partNumber + 0.5)
uniform vec4 hole; // radius of the drill, depth of it, of the block, half of the block's width
uniform float entered, blind; uniform vec4 crestBefore, rootBefore;
uniform vec4 corners[3]; // height and radius of two corners each of the blank behind the thread
uniform float advance; // of the helix [mm/rad]
float helix(float theta) { return firstZ + advance * theta; }
// Since when an edge has passed, as an angle, at a point of the work.
float sincePassed(float theta) {
  float spacing = TURN / lands;
  return mod(theta + entered / advance - edge, spacing);
}
float bore(float theta, float z, float since) {
  // Below it the point of a drill, of 118 degrees: tan 59.
  if (blind > 0.5 && z < -hole.y) return max(hole.x - (-hole.y - z) * 1.664, 0.0);
  float w = z - helix(theta), found = hole.x;
  if (crestBefore.y > 0.0) found = max(found, profileOf(crestBefore, rootBefore, w));
  float passed = z + entered - advance * since;
  if (passed >= 0.0) found = max(found, min(profileOf(crest, root, w), point + cone * passed));
  return found;
}
float blank(float theta, float z) {
  if (z < threadEnd) return min(profileOf(crest, root, z - helix(theta)), point + cone * z);
  vec2 from = corners[0].xy;
  for (int n = 1; n < 6; n++) {
    vec2 to = n % 2 == 1 ? corners[n / 2].zw : corners[n / 2].xy;
    if (z <= to.x) return to.x > from.x ? mix(from.y, to.y, (z - from.x) / (to.x - from.x)) : to.y;
    from = to;
  }
  return from.y;
}
`;
  var THREAD = [`${HEAD2}
in vec4 grid; // angle, height, whether it rides on the helix, share of the way outwards
${ONTO_CANVAS}${TAP}${SURFACES}
out vec3 world, own; out vec2 at; out float share;
void main() {
  float theta = grid.x, z = grid.y;
  if (grid.z > 0.5) {
    z += helix(theta);
    z = part == ${BLANK} ? clamp(z, 0.0, threadEnd) : clamp(z, -hole.z, 0.0);
  }
  at = vec2(theta, z);
  share = grid.w;
  float r;
  if (part >= ${BLANK}) r = part == ${BLANK} ? blank(theta, z) : mix(frontRim, blank(theta, 0.0), share);
  else {
    r = bore(theta, z, sincePassed(theta));
    float outer = min(hole.w / max(abs(cos(theta)), 1e-6), ${BACK} * hole.w / max(abs(sin(theta)), 1e-6));
    if (part == ${CUT_FACE} || part == ${FACE}) r = mix(r, outer, share);
  }
  own = vec3(r * cos(theta), r * sin(theta), z);
  world = inWorld(vec3(own.x, own.y * hand, own.z));
  gl_Position = onCanvas(world);
}`, `${HEAD2}
in vec3 world, own; in vec2 at; in float share;
uniform mat3 turn; uniform vec2 spin; uniform vec3 surface; uniform float spacing, inMaking;
${LIGHT}${TAP}${MILLED2}${SURFACES}
out vec4 colour;
vec3 axial(float theta, vec3 n) {
  vec3 v = vec3(n.x * cos(theta) - n.y * sin(theta), n.x * sin(theta) + n.y * cos(theta), n.z);
  v.y *= hand;
  return turn * vec3(spin.x * v.x - spin.y * v.y, spin.y * v.x + spin.x * v.y, v.z);
}
void main() {
  vec3 base = surface;
  float open = 1.0, step_ = 1e-3 * pitch;
  vec3 n = vec3(0.0, 0.0, 1.0);
  if (part == ${BORE}) {
    float since = sincePassed(at.x), r = bore(at.x, at.y, since), turned_ = step_ / max(r, step_);
    float round_ = bore(at.x + turned_, at.y, since + turned_) - bore(at.x - turned_, at.y, since - turned_);
    float up = bore(at.x, at.y + step_, since) - bore(at.x, at.y - step_, since);
    n = axial(at.x, normalize(vec3(-1.0, 0.5 * round_ / step_, 0.5 * up / step_)));
    float cutIn = clamp((r - hole.x) / max(crest.y - hole.x, 1e-6), 0.0, 1.0);
    open = 0.62;
    base = mix(base, vec3(0.88, 0.87, 0.84), step(1e-4, r - hole.x) * 0.75);
    open -= 0.15 * cutIn;
  } else if (part == ${CUT_FACE}) {
    n = turn * vec3(0.0, -1.0, 0.0);
    float line = (own.x + at.y) / spacing, wide = fwidth(line);
    float ink = 1.0 - smoothstep(0.25 * wide, 0.85 * wide, abs(fract(line) - 0.5));
    vec3 seen = mix(base, lit(normalize(n), base, 1.0, 0.0), 0.4);
    colour = vec4(mix(seen, seen * 0.5, 0.7 * ink), 1.0);
    return;
  } else if (part == ${FACE}) {
    n = turn * vec3(0.0, 0.0, at.y > -1e-6 ? 1.0 : -1.0);
  } else {
    if (offMilled(own) < -1e-3 * cutter.z) discard;
    if (part == ${BLANK}) {
      float r = blank(at.x, at.y), turned_ = step_ / r;
      float round_ = blank(at.x + turned_, at.y) - blank(at.x - turned_, at.y);
      float up = blank(at.x, at.y + step_) - blank(at.x, at.y - step_);
      n = axial(at.x, normalize(vec3(1.0, -0.5 * round_ / step_, -0.5 * up / step_)));
      float sunk = clamp((crest.y - r) / (crest.y - root.y), 0.0, 1.0);
      open = at.y < threadEnd ? 1.0 - 0.34 * sunk : 1.0;
    } else n = turn * vec3(0.0, 0.0, -1.0);
  }
  colour = vec4(lit(normalize(n), base, open, part == ${CUT_FACE} ? 0.1 : 0.7), 1.0);
}`];

  // src/model/scenes/shadow.js
  var SIZE = 256;
  var TILT = 0.42;
  var STRENGTH = 0.42;
  var BLURRED = 1.1 / SIZE;
  var WIDER = 1.25;
  var FADE = 0.42;
  var Shadow = class {
    /** @param {WebGL2RenderingContext} gl */
    constructor(gl) {
      this.gl = gl;
      this.blur = program(gl, BLUR, ["corner"]);
      this.table = program(gl, TABLE, ["corner"]);
      const corners = new Float32Array([-1, -1, 1, -1, 1, 1, -1, 1]);
      this.square = new Mesh(gl, { corners, triangles: new Uint32Array([0, 1, 2, 0, 2, 3]) }, [2]);
      this.pictures = [0, 1].map(() => this._picture());
      this.cast = "";
      this.of = null;
      this.values = {};
    }
    _picture() {
      const gl = this.gl, texture = gl.createTexture(), frame2 = gl.createFramebuffer();
      gl.bindTexture(gl.TEXTURE_2D, texture);
      gl.texStorage2D(gl.TEXTURE_2D, 1, gl.RGBA8, SIZE, SIZE);
      for (const side2 of [gl.TEXTURE_WRAP_S, gl.TEXTURE_WRAP_T])
        gl.texParameteri(gl.TEXTURE_2D, side2, gl.CLAMP_TO_EDGE);
      gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MIN_FILTER, gl.LINEAR);
      gl.bindFramebuffer(gl.FRAMEBUFFER, frame2);
      gl.framebufferTexture2D(gl.FRAMEBUFFER, gl.COLOR_ATTACHMENT0, gl.TEXTURE_2D, texture, 0);
      gl.bindFramebuffer(gl.FRAMEBUFFER, null);
      return { texture, frame: frame2 };
    }
    /**
     * @param {Body} body
     * @param {Camera} camera
     * @param {Values} common
     */
    draw(body, camera, common) {
      const gl = this.gl;
      const cast = JSON.stringify([camera.turn, common.cut]);
      gl.disable(gl.DEPTH_TEST);
      if (cast !== this.cast || body !== this.of) this._cast(body, camera, common);
      this.cast = cast;
      this.of = body;
      gl.enable(gl.BLEND);
      gl.blendFunc(gl.ONE, gl.ONE_MINUS_SRC_ALPHA);
      gl.bindTexture(gl.TEXTURE_2D, this.pictures[0].texture);
      gl.useProgram(this.table.made);
      for (const some of [common, this.values]) setAll(gl, this.table, some);
      this.square.draw();
      gl.disable(gl.BLEND);
      gl.enable(gl.DEPTH_TEST);
    }
    /**
     * @param {Body} body
     * @param {Camera} camera
     * @param {Values} common
     */
    _cast(body, camera, common) {
      const gl = this.gl, values = this.values = this._table(body, camera, Number(common.cut));
      const [first, second] = this.pictures;
      gl.viewport(0, 0, SIZE, SIZE);
      gl.bindFramebuffer(gl.FRAMEBUFFER, first.frame);
      gl.clearColor(0, 0, 0, 0);
      gl.clear(gl.COLOR_BUFFER_BIT);
      gl.enable(gl.BLEND);
      gl.blendEquation(gl.MAX);
      body.cast(common, values);
      gl.blendEquation(gl.FUNC_ADD);
      gl.disable(gl.BLEND);
      gl.useProgram(this.blur.made);
      for (const { from, to, way: way2 } of [
        { from: first, to: second, way: [BLURRED, 0] },
        { from: second, to: first, way: [0, BLURRED] }
      ]) {
        gl.bindFramebuffer(gl.FRAMEBUFFER, to.frame);
        gl.bindTexture(gl.TEXTURE_2D, from.texture);
        setAll(gl, this.blur, { way: way2 });
        this.square.draw();
      }
      gl.bindFramebuffer(gl.FRAMEBUFFER, null);
      gl.viewport(0, 0, gl.drawingBufferWidth, gl.drawingBufferHeight);
    }
    /**
     * Where the table lies: as high as the lowest point, as large as what stands on it.
     * @param {Body} body
     * @param {Camera} camera
     * @param {number} cut
     * @returns {Values}
     */
    _table(body, camera, cut) {
      const t = camera.turn;
      const inModel = (v) => [0, 1, 2].map((k) => t[3 * k] * v[0] + t[3 * k + 1] * v[1] + t[3 * k + 2] * v[2]);
      const up = inModel([0, Math.cos(TILT), Math.sin(TILT)]);
      const across = inModel([1, 0, 0]), along = inModel([0, -Math.sin(TILT), Math.cos(TILT)]);
      const reach = extents(body.faces.places, camera.middle, [across, along, up], cut);
      return {
        tableX: across,
        tableY: along,
        tableUp: up,
        mid: [0, 1].map((k) => (reach.low[k] + reach.high[k]) / 2),
        half_: [0, 1].map((k) => (reach.high[k] - reach.low[k]) / 2 * WIDER + 0.12 * camera.reach),
        height: reach.low[2],
        fade: FADE * camera.reach,
        // Of a tap that is looked at end on the shadow would be a long dark road.
        strength: STRENGTH * (1 - camera.towards[2] ** 4)
      };
    }
  };
  function extents(places, middle, directions, cut) {
    const low = [Infinity, Infinity, Infinity], high = [-Infinity, -Infinity, -Infinity];
    for (let n = 0; n < places.length; n += 3) {
      if (places[n + 2] < cut) continue;
      const x = places[n] - middle[0], y = places[n + 1] - middle[1], z = places[n + 2] - middle[2];
      for (let k = 0; k < 3; k++) {
        const d = directions[k], at = x * d[0] + y * d[1] + z * d[2];
        if (at < low[k]) low[k] = at;
        if (at > high[k]) high[k] = at;
      }
    }
    return { low, high };
  }

  // src/model/scenes/scene.js
  function scenePrograms(gl) {
    return {
      thread: program(gl, THREAD, ["grid"]),
      plain: program(gl, PLAIN2, ["place", "normal"]),
      chips: program(gl, CHIPS, ["place", "normal", "told"]),
      caps: new Caps(gl),
      shadow: new Shadow(gl)
    };
  }
  var WHOLE = { cut: NOTHING, quarterA: [0, 0], quarterB: [0, 0] };
  function plain(gl, programs, mesh, values) {
    gl.useProgram(programs.plain.made);
    setAll(gl, programs.plain, values);
    mesh.draw();
  }
  function blended(gl, draw) {
    gl.enable(gl.BLEND);
    gl.blendFunc(gl.ONE, gl.ONE_MINUS_SRC_ALPHA);
    gl.depthMask(false);
    draw();
    gl.depthMask(true);
    gl.disable(gl.BLEND);
  }

  // src/model/scenes/alone.js
  var Alone = class {
    /**
     * @param {WebGL2RenderingContext} gl
     * @param {Programs} programs
     * @param {Body} body
     * @param {Cuts} cuts
     */
    constructor(gl, programs, body, cuts) {
      this.gl = gl;
      this.programs = programs;
      this.body = body;
      this.cuts = cuts;
      this.view = "quarter";
    }
    box() {
      return this.body.box;
    }
    /** @param {Camera} camera @param {Values} common */
    draw(camera, common) {
      const { gl, body, cuts } = this;
      const all = { ...common, ...cuts.values };
      this.programs.shadow.draw(body, camera, all);
      if (cuts.any) this.programs.caps.draw(body, cuts, camera, all);
      body.draw(all);
      blended(gl, () => body.lines(camera.scale, all));
    }
    drop() {
    }
  };

  // src/model/scenes/grids.js
  var ROUND = 64;
  var WHOLE2 = 112;
  var EVEN = 12;
  function sharesOfPitch({ crest, root }, pitch) {
    const found = [
      crest.half,
      pitch / 2 - root.half,
      pitch / 2 + root.half,
      pitch - crest.half
    ].map((w) => w / pitch);
    for (let n = 0; n < EVEN; n++) found.push(n / EVEN);
    for (
      const [flat2, middle] of
      /** @type {[Flat, number][]} */
      [[crest, 0], [root, 0.5]]
    )
      if (flat2.arc !== 0)
        for (let n = -3; n <= 3; n++) found.push((middle + n / 4 * flat2.half / pitch + 1) % 1);
    found.sort((a, b) => a - b);
    return found.filter((share, n) => n === 0 || share - found[n - 1] > 1e-6);
  }
  function helixRows(shape, [low, high], angles) {
    const { pitch, lead, first_z, profile } = shape;
    const shares = sharesOfPitch(profile, pitch);
    const [least, most] = angles.map((angle) => first_z + lead * angle / (2 * Math.PI));
    const first = Math.floor((low - most) / pitch) - 1;
    const last = Math.ceil((high - least) / pitch) + 1;
    const rows = [];
    for (let n = first; n <= last; n++) for (const share of shares) rows.push((n + share) * pitch);
    return rows;
  }
  function grid2(angles, rows) {
    const wide2 = angles.length;
    const corners = new Float32Array(4 * wide2 * rows.length);
    let at = 0;
    for (const [z, onHelix, share] of rows)
      for (const angle of angles) {
        corners.set([angle, z, onHelix, share], at);
        at += 4;
      }
    const triangles = new Uint32Array(6 * (wide2 - 1) * (rows.length - 1));
    at = 0;
    for (let row = 0; row + 1 < rows.length; row++)
      for (let n = 0; n + 1 < wide2; n++) {
        const a = row * wide2 + n, b = a + wide2;
        triangles.set([a, a + 1, b + 1, a, b + 1, b], at);
        at += 6;
      }
    return { corners, triangles };
  }
  function evenly(from, to, count) {
    return Array.from({ length: count + 1 }, (_, n) => from + (to - from) * n / count);
  }
  function workGrids(shape, deep) {
    const from = shape.hand > 0 ? 0 : -Math.PI, to = from + Math.PI;
    const round = evenly(from, to, ROUND);
    const corner = Math.atan(BACK);
    const outer = [
      ...evenly(from, from + corner, 12),
      ...evenly(from + corner, to - corner, 40),
      ...evenly(to - corner, to, 12)
    ];
    const helix = helixRows(shape, [-deep, 0], [from, to]).map((z) => [z, 1, 0]);
    const cutFace = (angle) => {
      const { corners, triangles } = grid2([angle, angle], helix);
      for (let n = 7; n < corners.length; n += 8) corners[n] = 1;
      return { corners, triangles };
    };
    return {
      bore: grid2(round, helix),
      cuts: [cutFace(from), cutFace(to)],
      faces: [grid2(outer, [[0, 0, 0], [0, 0, 1]]), grid2(outer, [[-deep, 0, 0], [-deep, 0, 1]])]
    };
  }
  function blankGrids(shape, to) {
    const round = evenly(0, 2 * Math.PI, WHOLE2);
    const rows = helixRows(shape, [0, shape.thread_end], [0, 2 * Math.PI]).map((z) => [z, 1, 0]);
    const behind = [];
    if (to > shape.thread_end) {
      const least = 1e-4 * shape.major;
      const marks = shape.turned.map(([z]) => z).filter((z) => z > shape.thread_end && z < to);
      for (const z of [shape.thread_end + least, ...marks.flatMap((z2) => [z2, z2 + least]), to])
        behind.push([z, 0, 0]);
    }
    return {
      side: grid2(round, [...rows, ...behind]),
      front: grid2(round, [[0, 0, 1], [0, 0, 0]])
    };
  }

  // src/model/scenes/ribbons.js
  var STEPS = 48;
  var TURNS = 1.3;
  var CURL = 0.3;
  var WIDER2 = 0.04;
  var STRAIGHT = 1.15;
  var ALONG = 0.14;
  function faceAngle({ centre, offset, ball }, r) {
    const across = offset + ball;
    if (r >= Math.hypot(centre, across)) return Math.asin(Math.min(across / r, 1));
    const long = Math.hypot(centre, offset);
    const overlap2 = (ball * ball - (long - r) ** 2) / (4 * r * long);
    const half = Math.asin(Math.sqrt(Math.min(Math.max(overlap2, 0), 1)));
    return Math.atan2(offset, centre) + 2 * half;
  }
  function onFace(shape, r) {
    const angle = faceAngle(shape, r);
    const u = r * Math.cos(angle), t = r * Math.sin(angle);
    const inwards = Math.max(shape.centre - u, 0), across = shape.offset - t;
    const long = Math.hypot(inwards, across);
    const out = [inwards / long, across / long];
    return { at: [u, t], out, down: [out[1], -out[0]] };
  }
  function ribbon(shape, chip, tone) {
    const lean = Math.atan(shape.cone);
    const turn = 2 * Math.PI * chip.land / shape.lands, c = Math.cos(turn), s = Math.sin(turn);
    const placed = (u, t, z2) => [u * c - t * s, u * s + t * c, z2];
    const curl = CURL * shape.ball;
    const middle = onFace(shape, chip.radius);
    const corners = [];
    const triangles = [];
    const heights = [-1, 1].map((side2) => {
      const r = chip.radius + side2 / 2 * chip.width * Math.sin(lean);
      const z2 = shape.cone > 0 ? (r - shape.point) / shape.cone : chip.z;
      return { r, z: Math.abs(z2 - chip.z) < 1.5 * shape.pitch ? z2 : chip.z };
    });
    for (let n = 0; n <= STEPS; n++) {
      const share = n / STEPS, curled = Math.max(share - ALONG, 0) / (1 - ALONG);
      const angle = 2 * Math.PI * TURNS * curled;
      const radius = curl * (1 - WIDER2 * angle), co = Math.cos(angle), si = Math.sin(angle);
      const out = [0, 1].map((k) => -middle.out[k] * co + middle.down[k] * si);
      const way2 = STRAIGHT * curl * Math.min(share / ALONG, 1);
      for (const { r, z: z2 } of heights) {
        const { at } = onFace(shape, r);
        const place = [0, 1].map((k) => at[k] + way2 * middle.down[k] + 1.03 * curl * middle.out[k] + radius * out[k]);
        corners.push(
          ...placed(place[0], place[1], z2),
          ...placed(-out[0], -out[1], 0),
          chip.z,
          share,
          tone
        );
      }
      if (n < STEPS) triangles.push(2 * n, 2 * n + 1, 2 * n + 3, 2 * n, 2 * n + 3, 2 * n + 2);
    }
    const top = [0, 1].map((k) => middle.at[k] + STRAIGHT * curl * middle.down[k] + curl * middle.out[k]);
    const z = (heights[0].z + heights[1].z) / 2;
    return { corners, triangles, anchor: placed(top[0], top[1], z), facing: placed(1, 0, 0) };
  }
  function ribbons(shape, chips) {
    const sizes = chips.map((chip) => chip.thickness);
    const least = Math.min(...sizes), most = Math.max(...sizes);
    const made2 = chips.map((chip) => ribbon(shape, chip, most > least ? (chip.thickness - least) / (most - least) : 1));
    const corners = new Float32Array(made2.flatMap((one) => one.corners));
    let base = 0;
    const triangles = new Uint32Array(made2.flatMap((one) => {
      const numbers = one.triangles.map((n) => n + base);
      base += one.corners.length / 9;
      return numbers;
    }));
    return { mesh: { corners, triangles }, places: made2 };
  }

  // src/model/scenes/solids.js
  var STEPS2 = 48;
  function turnedSolid(outline, place, smooth = 0.9) {
    const corners = [];
    const triangles = [];
    const origin = place(0, 0, 0);
    const pieces2 = outline.slice(1).map(([z, r], n) => {
      const [z0, r0] = outline[n];
      const long = Math.hypot(z - z0, r - r0) || 1;
      return [-(r - r0) / long, (z - z0) / long];
    });
    const joined2 = (n, other) => {
      const a = pieces2[n], b = pieces2[other];
      if (!b || a[0] * b[0] + a[1] * b[1] < smooth) return a;
      const sum = [a[0] + b[0], a[1] + b[1]], long = Math.hypot(...sum);
      return [sum[0] / long, sum[1] / long];
    };
    pieces2.forEach((_, n) => {
      const base = corners.length / 6;
      [[outline[n], joined2(n, n - 1)], [outline[n + 1], joined2(n, n + 1)]].forEach(
        ([[along, radius], [lean, out]]) => {
          for (let k = 0; k <= STEPS2; k++) {
            const angle = 2 * Math.PI * k / STEPS2, c = Math.cos(angle), s = Math.sin(angle);
            const normal = place(lean, out * c, out * s).map((v, i) => v - origin[i]);
            corners.push(...place(along, radius * c, radius * s), ...normal);
          }
        }
      );
      for (let k = 0; k < STEPS2; k++) {
        const a = base + k, b = a + STEPS2 + 1;
        triangles.push(a, a + 1, b + 1, a, b + 1, b);
      }
    });
    return { corners, triangles };
  }
  function box(low, high) {
    const corners = [];
    const triangles = [];
    for (let axis = 0; axis < 3; axis++)
      for (const side2 of [-1, 1]) {
        const base = corners.length / 6;
        const [one, two] = [(axis + 1) % 3, (axis + 2) % 3];
        for (const [p, q] of [[0, 0], [1, 0], [1, 1], [0, 1]]) {
          const at = [0, 0, 0], normal = [0, 0, 0];
          at[axis] = side2 < 0 ? low[axis] : high[axis];
          at[one] = p ? high[one] : low[one];
          at[two] = q ? high[two] : low[two];
          normal[axis] = side2;
          corners.push(...at, ...normal);
        }
        triangles.push(base, base + 1, base + 2, base, base + 2, base + 3);
      }
    return { corners, triangles };
  }
  function joined(solids) {
    let corners = 0, triangles = 0;
    for (const solid of solids) {
      corners += solid.corners.length;
      triangles += solid.triangles.length;
    }
    const out = { corners: new Float32Array(corners), triangles: new Uint32Array(triangles) };
    let from = 0, to = 0;
    for (const solid of solids) {
      out.corners.set(solid.corners, from);
      out.triangles.set(solid.triangles.map((n) => n + from / 6), to);
      from += solid.corners.length;
      to += solid.triangles.length;
    }
    return out;
  }
  var alongZ = (along, x, y) => [x, y, along];
  var alongX = (along, x, y) => [along, x, y];
  var alongY = (along, x, y) => [x, along, y];

  // src/model/scenes/setup.js
  function workSides(wide2, back, deep) {
    const whole = box([-wide2, 0, -deep], [wide2, back, 0]);
    const kept3 = [...whole.triangles.slice(0, 12), ...whole.triangles.slice(18, 24)];
    return joined([{ corners: whole.corners, triangles: kept3 }]);
  }
  function millSolids(shape, end) {
    const { ball, shank, square_start, major, front_centre } = shape;
    const wide2 = shank / 2, far = end + 0.5 * wide2;
    const cutter = turnedSolid([
      ...arc(ball, 12),
      [0, ball],
      [5 * ball, ball],
      [5 * ball, 0.93 * ball],
      [8 * ball, 0.93 * ball],
      [8 * ball, 0]
    ], alongX);
    const grip = square_start - 0.4 * wide2;
    const chuck = turnedSolid([
      [grip, wide2],
      [grip, 1.35 * wide2],
      [grip + 0.8 * wide2, 2 * wide2],
      [far, 2 * wide2],
      [far, 0]
    ], alongZ);
    const top = 2.5 * wide2, depth = far + 3.2 * wide2;
    const head2 = box([-3.2 * wide2, -2.3 * wide2, far], [top, 2.3 * wide2, depth]);
    const spindle = turnedSolid([[depth, 1.1 * wide2], [depth + 0.5 * wide2, 1.1 * wide2], [depth + 0.5 * wide2, 0]], alongZ);
    const place = [-0.4 * wide2, 2.3 * wide2, (far + depth) / 2];
    const atSide = (along, x, y) => {
      const [a, b, c] = alongY(along, x, y);
      return [place[0] + a, place[1] + b, place[2] + c];
    };
    const plate = turnedSolid([
      [0, 0.4 * wide2],
      [0.5 * wide2, 0.4 * wide2],
      [0.5 * wide2, 2 * wide2],
      [0.75 * wide2, 2 * wide2],
      [0.75 * wide2, 0]
    ], atSide);
    const crank = merged([
      box([-0.22 * wide2, place[1] + 0.8 * wide2, -0.22 * wide2], [0.22 * wide2, place[1] + 1 * wide2, 1.9 * wide2]),
      turnedSolid([
        [place[1] + 1 * wide2, 0.2 * wide2],
        [place[1] + 2 * wide2, 0.2 * wide2],
        [place[1] + 2 * wide2, 0]
      ], (along, x, y) => [x, along, y + 1.65 * wide2])
    ]);
    const rim = Math.max(front_centre / 2, 0.12 * major);
    const tip = rim / Math.tan(Math.PI / 6);
    const tailstock = turnedSolid([
      [front_centre ? tip : 0, 0],
      [0, front_centre ? rim : 0.01],
      [-1.2 * tip, 2.2 * rim],
      [-0.9 * major, 2.2 * rim],
      [-0.9 * major, 0]
    ], alongZ);
    return {
      cutter,
      chuck,
      head: merged([head2, spindle]),
      plate,
      crank,
      tailstock,
      crankAt: [place[0], 0, place[2]],
      box: { low: [-2.6 * wide2, -2.6 * wide2, -0.5 * major], high: [major / 2 + 3.5 * ball, 4.2 * wide2, far + 2.2 * wide2] }
    };
  }
  function arc(radius, steps2) {
    return Array.from({ length: steps2 }, (_, n) => {
      const angle = Math.PI / 2 * n / steps2;
      return [-radius * Math.cos(angle), radius * Math.sin(angle)];
    });
  }
  function merged(solids) {
    const { corners, triangles } = joined(solids);
    return { corners: Array.from(corners), triangles: Array.from(triangles) };
  }

  // src/model/scenes/in_hole.js
  var InHoleScene = class {
    /**
     * @param {WebGL2RenderingContext} gl
     * @param {Programs} programs
     * @param {Body} body
     */
    constructor(gl, programs, body) {
      this.gl = gl;
      this.programs = programs;
      this.body = body;
      this.view = "hole";
      const { shape, hole } = body.head;
      if (!hole) throw new Error("no hole is foreseen");
      this.shape = shape;
      this.hole = hole;
      this.deep = hole.blind ? hole.depth + 0.75 * hole.drill : hole.depth;
      this.half = 1.05 * shape.major;
      const grids = workGrids(shape, this.deep);
      this.bore = new Mesh(gl, grids.bore, [4]);
      this.cuts = grids.cuts.map((one) => new Mesh(gl, one, [4]));
      this.faces = grids.faces.map((one) => new Mesh(gl, one, [4]));
      this.sides = new Mesh(gl, workSides(this.half, BACK * this.half, this.deep), [3, 3]);
      const made2 = ribbons(shape, hole.chips);
      this.chips = hole.chips.length ? new Mesh(gl, made2.mesh, [3, 3, 3]) : null;
      this.numbers = made2.places;
      this.entered = 0;
    }
    box() {
      const { half, deep, shape } = this;
      return {
        low: [-half, -BACK * half, -deep],
        high: [half, BACK * half, Math.max(shape.thread_end, 0.6 * deep)]
      };
    }
    /** How the tap stands. */
    get placed() {
      return inHole(this.shape, this.entered);
    }
    /** @param {Camera} camera @param {Values} common */
    draw(camera, common) {
      const { gl, body, shape, hole, programs } = this;
      const { look } = body.head, { spin, moved: moved2 } = this.placed;
      body.draw(common, WHOLE, { spin, moved: moved2 });
      const { before } = hole;
      const still = { ...common, spin: [1, 0], moved: [0, 0, 0], hand: shape.hand };
      const work2 = {
        ...tapValues(shape),
        ...still,
        surface: look.work,
        entered: this.entered,
        blind: hole.blind ? 1 : 0,
        hole: [hole.drill / 2, hole.depth, this.deep, this.half],
        crestBefore: before ? flat(before.crest) : [0, 0, 0, 0],
        rootBefore: before ? flat(before.root) : [0, 0, 0, 0],
        spacing: HATCH * Math.SQRT2 / camera.scale,
        frontRim: 0
      };
      for (
        const [part, meshes] of
        /** @type {[number, Mesh[]][]} */
        [
          [BORE, [this.bore]],
          [CUT_FACE, this.cuts],
          [FACE, this.faces]
        ]
      ) {
        gl.useProgram(programs.thread.made);
        setAll(gl, programs.thread, { ...work2, partNumber: part });
        for (const mesh of meshes) mesh.draw();
      }
      plain(gl, programs, this.sides, { ...still, hand: 1, surface: look.work, polish: 0.6 });
      if (this.chips) {
        gl.useProgram(programs.chips.made);
        setAll(gl, programs.chips, {
          ...common,
          hand: shape.hand,
          spin,
          moved: moved2,
          entered: this.entered,
          longest: shape.lead,
          bottom: hole.blind ? 1e6 : hole.depth + shape.pitch,
          thin: look.thin,
          thick: look.thick
        });
        this.chips.draw();
      }
      blended(gl, () => body.lines(camera.scale, common, WHOLE, { spin, moved: moved2 }));
    }
    drop() {
      for (const mesh of [this.bore, ...this.cuts, ...this.faces, this.sides, this.chips]) mesh?.drop();
    }
  };
  function flat(f) {
    return [f.half, f.radius, f.arc, f.centre];
  }

  // src/model/scenes/milling.js
  var MillScene = class {
    /**
     * @param {WebGL2RenderingContext} gl
     * @param {Programs} programs
     * @param {Body} body
     */
    constructor(gl, programs, body) {
      this.gl = gl;
      this.programs = programs;
      this.body = body;
      this.view = "mill";
      const { shape, mill } = body.head;
      this.shape = shape;
      this.ratio = mill.ratio;
      this.to = Math.min(shape.runout + 0.3 * shape.ball, shape.square_start);
      const grids = blankGrids(shape, this.to);
      this.side = new Mesh(gl, grids.side, [4]);
      this.front = new Mesh(gl, grids.front, [4]);
      const solids = millSolids(shape, body.box.high[2]);
      const mesh = (content) => new Mesh(gl, {
        corners: new Float32Array(content.corners),
        triangles: new Uint32Array(content.triangles)
      }, [3, 3]);
      this.cutter = mesh(solids.cutter);
      this.chuck = mesh(solids.chuck);
      this.head = mesh(solids.head);
      this.plate = mesh(solids.plate);
      this.crank = mesh(solids.crank);
      this.crankAt = solids.crankAt;
      this.tailstock = mesh(solids.tailstock);
      this.bounds = solids.box;
      this.progress = 0;
    }
    box() {
      return this.bounds;
    }
    get placed() {
      return inMaking(this.shape, this.progress, this.ratio);
    }
    /** @param {Camera} camera @param {Values} common */
    draw(camera, common) {
      const { gl, body, shape, programs } = this, { look } = body.head;
      const { spin, cutter, done, cutterAt, crank } = this.placed;
      const making = {
        inMaking: 1,
        generatedTo: this.to,
        flutesDone: done,
        cutterAt,
        spin,
        moved: [0, 0, 0]
      };
      body.draw(common, WHOLE, making);
      const corners = [...shape.turned.slice(0, 6)];
      while (corners.length < 6) corners.push(corners[corners.length - 1]);
      const blank = {
        ...tapValues(shape),
        ...common,
        ...making,
        surface: look.turned,
        corners: corners.flat(),
        hole: [0, 0, 0, 1],
        frontRim: shape.front_centre / 2,
        entered: 0,
        blind: 0,
        spacing: 1,
        crestBefore: [0, 0, 0, 0],
        rootBefore: [0, 0, 0, 0]
      };
      gl.useProgram(programs.thread.made);
      setAll(gl, programs.thread, { ...blank, partNumber: BLANK });
      this.side.draw();
      setAll(gl, programs.thread, { partNumber: BLANK_FRONT, surface: look.plain });
      this.front.draw();
      const still = { ...common, hand: 1, spin: [1, 0], moved: [0, 0, 0], polish: 0.7 };
      plain(gl, programs, this.head, { ...still, surface: look.head, polish: 0.3 });
      plain(gl, programs, this.plate, { ...still, surface: look.plain });
      plain(gl, programs, this.chuck, { ...still, spin, surface: look.head, polish: 0.8 });
      plain(gl, programs, this.cutter, { ...still, moved: cutter, surface: look.cutter, polish: 1 });
      if (camera.towards[2] > -0.9)
        plain(gl, programs, this.tailstock, { ...still, surface: look.head, polish: 0.6 });
      this._crank(common, crank);
    }
    /** The crank turns about its own axis, which lies across the tap's. @param {Values} common @param {number} angle */
    _crank(common, angle) {
      const { gl, programs } = this, { look } = this.body.head;
      const [x, , z] = this.crankAt, c = Math.cos(angle), s = Math.sin(angle);
      const turn = (
        /** @type {number[]} */
        common.turn
      ), middle = (
        /** @type {number[]} */
        common.middle
      );
      const column = (v) => [0, 1, 2].map((row) => turn[row] * v[0] + turn[3 + row] * v[1] + turn[6 + row] * v[2]);
      const rotated = [...column([c, 0, s]), ...column([0, 1, 0]), ...column([-s, 0, c])];
      const [mx, mz] = [middle[0] - x, middle[2] - z];
      plain(gl, programs, this.crank, {
        ...common,
        turn: rotated,
        middle: [c * mx + s * mz, middle[1], -s * mx + c * mz],
        hand: 1,
        spin: [1, 0],
        moved: [0, 0, 0],
        surface: look.cutter,
        polish: 0.8
      });
    }
    drop() {
      for (const mesh of [
        this.side,
        this.front,
        this.cutter,
        this.chuck,
        this.head,
        this.plate,
        this.crank,
        this.tailstock
      ]) mesh.drop();
    }
  };

  // src/model/viewer.js
  var MOST_PIXELS = 2;
  var LINE_NEARER = 1.5;
  var Viewer = class {
    /** @param {HTMLCanvasElement} canvas */
    constructor(canvas) {
      this.canvas = canvas;
      this.camera = new Camera();
      this.cuts = new Cuts();
      this.drawn = [];
      this.model = null;
      this.name = "alone";
      this.waiting = false;
      this.view = "quarter";
      const gl = canvas.getContext("webgl2", { antialias: true, stencil: true, alpha: true });
      if (!gl) throw new Error("no WebGL 2");
      this.gl = gl;
      this.programs = { body: bodyPrograms(gl), scene: scenePrograms(gl) };
      this.scenes = {};
      this.body = null;
      canvas.addEventListener("webglcontextlost", (event) => {
        event.preventDefault();
        this.scenes = {};
        this.body = null;
      });
      canvas.addEventListener("webglcontextrestored", () => {
        this.programs = { body: bodyPrograms(gl), scene: scenePrograms(gl) };
        if (this.model) this.show(this.model);
      });
    }
    /**
     * Another model; the view stays.
     * @param {Loaded} model
     */
    show(model) {
      const { hole, mill } = this;
      const again = this.body !== null;
      for (const scene of Object.values(this.scenes)) scene.drop();
      this.body?.drop();
      this.scenes = {};
      this.model = model;
      this.body = new Body(this.gl, this.programs.body, model);
      if (this.name === "hole" && !model.head.hole) this.name = "alone";
      if (again && hole && this.hole) this.hole.entered = Math.min(hole.entered, model.head.hole?.way ?? 0);
      if (again && mill && this.mill) this.mill.progress = Math.min(mill.progress, model.head.shape.lands);
      if (again && !this.camera.isHome) this.camera.hold(this.scene?.box() ?? this.body.box);
      else this.look(this.view);
      this.draw();
    }
    /** @returns {Alone | InHoleScene | MillScene | null} */
    get scene() {
      const { body, gl, scenes } = this, parts = this.programs.scene;
      if (!body) return null;
      const found = scenes[this.name];
      if (found) return found;
      const made2 = this.name === "alone" ? new Alone(gl, parts, body, this.cuts) : this.name === "hole" ? new InHoleScene(gl, parts, body) : new MillScene(gl, parts, body);
      scenes[this.name] = made2;
      return made2;
    }
    get hole() {
      return this.scene instanceof InHoleScene ? this.scene : null;
    }
    get mill() {
      return this.scene instanceof MillScene ? this.scene : null;
    }
    /** @param {SceneName} name */
    choose(name) {
      this.name = name;
      this.look(this.scene?.view ?? "quarter");
    }
    /** @param {string} name */
    look(name) {
      this.view = name;
      const box2 = this.scene?.box();
      if (box2) this.camera.look(VIEWS[name], box2);
      this.draw();
    }
    /** As it was at first. */
    reset() {
      this.look(this.scene?.view ?? "quarter");
    }
    /**
     * Turn so that what faces that way is seen.
     * @param {number[]} facing
     */
    face(facing) {
      const box2 = this.scene?.box();
      if (box2) this.camera.look(facingView(facing), box2);
      this.draw();
    }
    /** @param {boolean} on */
    quarter(on) {
      this.cuts.takeQuarter(on, this.camera.towards);
      this.draw();
    }
    draw() {
      if (this.waiting) return;
      this.waiting = true;
      requestAnimationFrame(() => {
        this.waiting = false;
        this.drawNow();
      });
    }
    drawNow() {
      const { gl, canvas, camera, body } = this, { scene } = this;
      const wide2 = canvas.clientWidth || 1, high = canvas.clientHeight || 1;
      const ratio = Math.min(window.devicePixelRatio || 1, MOST_PIXELS);
      const [across, down] = [Math.round(wide2 * ratio), Math.round(high * ratio)];
      if (canvas.width !== across || canvas.height !== down) {
        canvas.width = across;
        canvas.height = down;
      }
      camera.size = [wide2, high];
      if (!scene || !body || gl.isContextLost()) return;
      gl.viewport(0, 0, across, down);
      gl.clearColor(0, 0, 0, 0);
      gl.clearStencil(0);
      gl.clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT | gl.STENCIL_BUFFER_BIT);
      gl.enable(gl.DEPTH_TEST);
      gl.disable(gl.STENCIL_TEST);
      gl.disable(gl.BLEND);
      scene.draw(camera, this._common(wide2, high, ratio));
      gl.bindVertexArray(null);
      const [x, y] = camera.project([0, 0, 0]);
      canvas.dataset.seen = JSON.stringify({ turn: camera.turn, scale: camera.scale, origin: [x, y] });
      for (const follow of this.drawn) follow();
    }
    /**
     * @param {number} wide
     * @param {number} high
     * @param {number} ratio
     */
    _common(wide2, high, ratio) {
      const { camera } = this, { look } = (
        /** @type {Loaded} */
        this.model.head
      );
      const unit = (v) => v.map((part) => part / Math.hypot(...v));
      return {
        turn: camera.turn,
        middle: camera.middle,
        shift: camera.shift,
        scale: [2 * camera.scale / wide2, 2 * camera.scale / high],
        deep: 0.3 / camera.reach,
        pixel: [2 / (wide2 * ratio), 2 / (high * ratio)],
        wide: 0.35 * ratio,
        nearer: Math.min(6e-4, 0.3 / camera.reach * LINE_NEARER / camera.scale),
        key: unit(look.key),
        fill: unit(look.fill),
        sky: look.sky,
        ground: look.floor,
        keyStrength: look.key_strength,
        fillStrength: look.fill_strength,
        gleam: look.gleam,
        sharpness: look.sharpness
      };
    }
  };

  // src/units.js
  var MM_PER_INCH = 25.4;
  function inUnits(units, mm, inches) {
    return { mm, inch: inches, both: `${mm} (${inches})` }[units];
  }
  function lengthText(mm, units) {
    return inUnits(units, `${mm.toFixed(2)} mm`, `${(mm / MM_PER_INCH).toFixed(3)} in`);
  }
  function areaText(mm2, units) {
    return inUnits(units, `${mm2.toFixed(1)} mm²`, `${(mm2 / MM_PER_INCH ** 2).toFixed(4)} in²`);
  }
  function roundLength(most, units) {
    const unit = units === "inch" ? MM_PER_INCH : 1;
    const power = 10 ** Math.floor(Math.log10(most / unit));
    const number = ([5, 2, 1].find((n) => n * power <= most / unit) ?? 1) * power;
    const text = `${Number(number.toPrecision(3))} ${units === "inch" ? "in" : "mm"}`;
    return { mm: number * unit, text };
  }

  // src/panels/model.js
  var WAIT = 120;
  var HELP = "Drag to turn, shift-drag or two fingers to move; click, then wheel to zoom; double-click shows all of it again. Keys: arrows turn, + and − zoom, 0 shows all.";
  async function modelPanel(desk, packed, units = "mm") {
    const panel = new ModelPanel(desk, units);
    if (packed && panel.viewer) panel.show(await fromPage(packed));
    return panel;
  }
  var ModelPanel = class {
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
      for (const [name, button2] of Object.entries(parts.views))
        button2.addEventListener("click", () => name === "quarter" ? viewer.reset() : viewer.look(name));
      for (const [name, radio] of Object.entries(parts.scenes))
        radio.addEventListener("change", () => this._choose(
          /** @type {SceneName} */
          name
        ));
      parts.cut.addEventListener("change", () => this._cut());
      parts.quarter.addEventListener("change", () => viewer.quarter(parts.quarter.checked));
      parts.names.addEventListener("change", () => {
        if (this.labels) this.labels.on = parts.names.checked;
        viewer.draw();
      });
    }
    /** @param {string} why */
    _none(why) {
      const { stage, none, bar: bar2 } = this.parts;
      stage.hidden = bar2.hidden = true;
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
      parts.named.replaceChildren(...marks.map((mark2) => {
        const button2 = made("button", { type: "button" }, made("b", {}, mark2.label), ` ${mark2.text}`);
        button2.addEventListener("click", () => this._face(mark2.places[0].facing));
        return made("li", {}, button2);
      }));
      parts.chips.replaceChildren(...(hole?.chips ?? []).map((chip) => made("li", {}, made("b", {}, `chip ${chip.number}`), `, land ${chip.land + 1}: ${chip.text}`)));
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
      const { name } = viewer, { head: head2 } = viewer.model, { hole, shape, mill } = head2;
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
          from: -2 * shape.pitch,
          to: hole.way,
          step,
          perSecond: 0.5 * shape.lead,
          told: (value) => this._holeTold(value)
        }, viewer.hole?.entered ?? 0);
      }
      if (name === "mill")
        player.take({
          from: 0,
          to: shape.lands,
          step: 1,
          perSecond: 0.25,
          told: (value) => this._millTold(value)
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
      const head2 = this.viewer?.model?.head;
      if (!head2?.hole) return "";
      const { turns, chips } = cuttingNow(head2.shape, head2.hole, entered);
      const text = lengthText(Math.abs(entered), this.units);
      if (entered <= 0) return `front ${text} above the work`;
      const cutting = chips.length === 0 ? "no tooth cuts yet" : chips.length === 1 ? `tooth ${chips[0].number} cuts` : `teeth ${chips[0].number} to ${chips[chips.length - 1].number} cut`;
      return `turn ${turns.toFixed(2)}, front ${text} deep; ${cutting}`;
    }
    /** @param {number} progress */
    _millTold(progress) {
      const head2 = this.viewer?.model?.head;
      if (!head2) return "";
      const { flute, done, milling } = inMaking(head2.shape, progress, head2.mill.ratio);
      if (done >= head2.shape.lands) return `all ${done} flutes are milled`;
      const { name, move } = head2.mill.stations[milling ? flute : flute + 1];
      if (!milling) return `${move}, to ${name}`;
      return flute ? `milling ${name}; before it ${move}` : `${name}: ${move}`;
    }
  };
  function furniture() {
    const canvas = (
      /** @type {HTMLCanvasElement} */
      made("canvas", {
        id: "model",
        tabindex: 0,
        role: "application",
        "aria-describedby": "model-help",
        "aria-label": "The tap in three dimensions. Arrow keys turn it, plus and minus zoom, zero shows all of it."
      })
    );
    const state = made("span", { class: "state", role: "status" });
    const stage = made("div", { class: "stage" }, canvas, state);
    const none = made(
      "p",
      { id: "no-model", hidden: true },
      "This browser shows no 3-D graphics (WebGL 2); pictures and drawings stand below."
    );
    const radio = (label, value, checked) => {
      const input = (
        /** @type {HTMLInputElement} */
        made("input", { type: "radio", name: "scene", value, checked })
      );
      return { input, label: made("label", {}, input, ` ${label}`) };
    };
    const scenes = {
      alone: radio("the tap", "alone", true),
      hole: radio("in its hole", "hole", false),
      mill: radio("milling", "mill", false)
    };
    const chosen = made(
      "fieldset",
      { class: "scenes" },
      made("legend", { class: "unseen" }, "what is shown"),
      ...Object.values(scenes).map((one) => one.label)
    );
    const views = {};
    for (const [name, label] of [
      ["quarter", "three-quarter"],
      ["front", "cutting end"],
      ["side", "side"],
      ["rear", "square"]
    ])
      views[name] = made("button", { type: "button", "data-view": name }, label);
    const box2 = (id, label, checked) => {
      const input = (
        /** @type {HTMLInputElement} */
        made("input", { type: "checkbox", id, checked })
      );
      return { input, label: made("label", {}, input, ` ${label}`) };
    };
    const names2 = box2("model-names", "names and numbers", true);
    const cut = box2("cut", "cut at the section", false), quarter = box2("cut-quarter", "cut out a quarter", false);
    const bar2 = made("div", { class: "buttons" }, ...Object.values(views), names2.label, cut.label, quarter.label);
    const about = made("p", { class: "about" });
    const thickness = made("p", { class: "thickness" }, "chips: thin ", made("i", { class: "scale", "aria-hidden": "true" }), " thick");
    const work2 = made("div", { class: "work", hidden: true }, about, thickness);
    const named2 = made("ul"), chips = made("ul"), stations = made("ul");
    const details = (title, list2) => made("details", { class: "told-list" }, made("summary", {}, title), list2);
    const lists = {
      named: details("Names and numbers as a list", named2),
      chips: details("Chips as a list", chips),
      stations: details("Flutes as a list", stations)
    };
    const caption = made("span"), help = made("span", { id: "model-help" }, HELP);
    const under = made("figcaption", {}, made("span", {}, caption, " ", help));
    return {
      canvas,
      stage,
      state,
      none,
      bar: bar2,
      work: work2,
      about,
      thickness,
      named: named2,
      chips,
      stations,
      lists,
      caption,
      views,
      names: names2.input,
      cut: cut.input,
      quarter: quarter.input,
      ofTap: [cut.label, quarter.label],
      scenes: { alone: scenes.alone.input, hole: scenes.hole.input, mill: scenes.mill.input },
      all: [chosen, stage, none, bar2, work2, lists.named, lists.chips, lists.stations, under]
    };
  }

  // src/panels/shell/notice.js
  var LASTS = 1e4;
  function noticePanel(desk) {
    const place = document.getElementById("notice");
    const main = document.querySelector("main");
    if (!place) return;
    const text = made("p", { role: "alert" });
    const more = made("p", { class: "still" }, "What is shown is the last tap that could be worked out.");
    const close = made("button", { type: "button", "aria-label": "Close the message" }, "×");
    place.replaceChildren(made("div", {}, text, more), close);
    let passing = false, timer = 0;
    const stay = () => clearTimeout(timer);
    const pass = () => {
      stay();
      if (passing) timer = window.setTimeout(() => {
        place.classList.add("passed");
        close.hidden = true;
      }, LASTS);
    };
    for (const begin3 of ["pointerenter", "focusin"]) place.addEventListener(begin3, stay);
    for (const end of ["pointerleave", "focusout"]) place.addEventListener(end, pass);
    const hide = () => {
      stay();
      place.hidden = true;
      main?.classList.remove("stale");
    };
    close.addEventListener("click", hide);
    desk.complaints.push((complaint) => {
      if (!complaint) return hide();
      if (complaint.unanswered) return;
      text.textContent = complaint.message;
      place.hidden = close.hidden = false;
      place.classList.remove("passed");
      place.classList.toggle("done", complaint.done ?? false);
      passing = complaint.unchanged ?? false;
      pass();
      if (!complaint.unchanged) main?.classList.add("stale");
      more.hidden = !main?.classList.contains("stale");
    });
    hide();
  }

  // src/panels/papers.js
  var REST3 = 900;
  var IDLE = 4e3;
  function papersPanel(desk, arrived) {
    const place = element("papers", HTMLElement);
    let stale = true, seen2 = false, held = false;
    const bringing = new Resting(async (signal) => {
      if (held) return;
      try {
        show(place, await sought("papers", { job: desk.job, units: desk.units }, signal));
        arrived();
      } catch (error) {
        if (!(error instanceof RefusedError)) throw error;
        return;
      }
      stale = false;
      place.setAttribute("aria-busy", "false");
    });
    const rest = () => bringing.after(seen2 ? REST3 : IDLE);
    const wait = () => {
      if (stale && !bringing.asking) rest();
    };
    const hold = (down) => () => {
      held = down;
      wait();
    };
    document.addEventListener("pointerdown", hold(true));
    for (const end of ["pointerup", "pointercancel"]) document.addEventListener(end, hold(false));
    window.addEventListener("beforeprint", () => {
      if (stale && !bringing.asking) bringing.after(0);
    });
    new IntersectionObserver(([entry]) => {
      seen2 = entry.isIntersecting;
      if (seen2) wait();
    }).observe(place);
    return () => {
      stale = true;
      place.setAttribute("aria-busy", "true");
      rest();
    };
  }
  function show(place, { chapters: chapters2, drawings }) {
    const tables = chapters2.filter(({ key }) => key !== "choices").flatMap(({ html }) => nodes(html));
    const reasons = chapters2.filter(({ key }) => key === "choices").flatMap(({ html }) => nodes(html));
    const columns = document.createElement("div");
    columns.className = "columns";
    columns.id = "numbers";
    columns.append(...tables);
    const shown2 = document.createElement("section");
    shown2.id = "drawings";
    const heading = document.createElement("h2");
    heading.textContent = "Drawings";
    const gallery = document.createElement("div");
    gallery.className = "gallery";
    gallery.append(...drawings.map(({ title, svg }) => card(title, drawing(svg, title))));
    shown2.append(heading, gallery);
    place.replaceChildren(columns, shown2, ...reasons);
  }
  function nodes(html) {
    const read = new DOMParser().parseFromString(html, "text/html");
    return [...read.body.children].map((node) => document.importNode(node, true));
  }
  function drawing(svg, title) {
    const read = new DOMParser().parseFromString(svg, "image/svg+xml");
    const node = document.importNode(read.documentElement, true);
    node.setAttribute("role", "img");
    node.setAttribute("aria-label", title);
    return node;
  }

  // src/panels/rubbing.js
  var HEIGHT3 = 220;
  function rubbingPanel() {
    const body = slot("rubbing", "Rubbing");
    if (!body) return () => {
    };
    let rubbing = null;
    const said = made("div", {});
    const surfaces = made("dl", { class: "legend surfaces" });
    const place = made("div", { class: "graph-place" });
    const caption = made("p", { class: "quiet" });
    const shown2 = made("div", {}, surfaces, place, caption);
    body.append(said, shown2);
    const redraw = picture(place, "Clearance along the land, behind the edge", (svg, width) => {
      if (rubbing) drawClearance(svg, width, rubbing);
    });
    return (view) => {
      rubbing = view.rubbing;
      shown2.hidden = !rubbing;
      said.replaceChildren(rubbing ? judgedLine(rubbing.judged) : unforeseen());
      if (!rubbing) return;
      surfaces.replaceChildren(...rubbing.surfaces.map(surfaceLine));
      caption.textContent = `Hatched: ${rubbing.touches_text}.`;
      redraw();
    };
  }
  function surfaceLine({ key, label, rubs, share, clear, binds }) {
    const sample2 = drawn(
      "svg",
      { class: "sample", viewBox: "0 0 34 10", "aria-hidden": "true" },
      drawn("path", { class: `curve ${key}`, d: "M1 5H33" })
    );
    const bar2 = drawn(
      "svg",
      { class: "share", viewBox: "0 0 100 8", preserveAspectRatio: "none", "aria-hidden": "true" },
      drawn("rect", { class: "trough", width: 100, height: 8 }),
      drawn("rect", { class: binds ? "part binds" : "part", width: 100 * share, height: 8 })
    );
    return made(
      "div",
      {},
      made("dt", {}, sample2, label),
      made("dd", {}, `${rubs}, `, bar2, binds ? `✖ ${clear}` : clear)
    );
  }
  function drawClearance(svg, width, rubbing) {
    cleared(svg, width, HEIGHT3);
    const { along, clearance, touches } = rubbing;
    const { x, y, left, right, top, foot: foot2 } = scales(svg, { across: along, up: clearance, width, height: HEIGHT3, right: 14 });
    const fill3 = hatching(svg, "touching", "touching-line");
    svg.append(drawn("rect", { class: "touching", fill: fill3, x: left, y: y(touches), width: right - left, height: foot2 - y(touches) }));
    svg.append(drawn("path", { class: "zero", d: `M${left} ${y(0)}H${right}` }));
    for (const surface of rubbing.surfaces) {
      const points2 = surface.along.map((at, n) => {
        const clear = surface.clearance[n];
        return clear > clearance.high || clear < clearance.low ? null : (
          /** @type {[number, number]} */
          [x(at), y(clear)]
        );
      });
      svg.append(drawn("path", { class: `curve ${surface.key}`, d: line2(points2) }));
      const gone = points2.findIndex((point2) => !point2);
      if (gone > 0) {
        const last = (
          /** @type {[number, number]} */
          points2[gone - 1]
        );
        const up = surface.clearance[gone] > clearance.high;
        svg.append(lettering(Math.min(last[0] + 4, right - 60), up ? top + 10 : foot2 - 4, `${surface.key} ${up ? "↑" : "↓"}`, "halo"));
      }
    }
  }

  // src/panels/section/names.js
  var [OVER, UNDER] = [11, 18];
  var [CLEAR, STEP3] = [5, 3];
  function placedNames(names2, around) {
    const { middle, each, cutter, crest } = around;
    const at = ([x2, y2]) => [middle[0] + each * x2, middle[1] + each * y2];
    const [x, y] = at(cutter.centre);
    const circles = [{ x: middle[0], y: middle[1], r: each * crest }, { x, y, r: each * cutter.radius }];
    const taken2 = [];
    return names2.map((name) => {
      const sides = sidesOf(name, names2);
      const found = sides.map((side2) => nearest2(name, at(name.at), side2, around, circles, taken2)).find(Boolean) ?? unplaced(name, at(name.at), sides[0], around);
      taken2.push(found.box);
      return found.placed;
    });
  }
  function sidesOf(name, names2) {
    const across = (one) => one.at[0] / (Math.hypot(...one.at) || 1);
    const beside = names2.some((one) => one !== name && one.at[1] * name.at[1] > 0 && Math.abs(across(one)) < Math.abs(across(name)));
    const side2 = across(name) < 0 ? -1 : 1;
    return Math.abs(across(name)) >= 0.25 || beside ? [side2] : [0, side2];
  }
  function nearest2(name, tip, side2, around, circles, taken2) {
    const { width, height } = around;
    const room = roomOf(name);
    const begin3 = Math.min(Math.max(tip[0], side2 < 0 ? room : 0), side2 > 0 ? width - room : width);
    let best = null;
    let least = Infinity;
    for (let y = OVER; y <= height - UNDER - 4; y += STEP3) {
      const found = standing(name, tip, side2, y, side2 ? beyond(begin3, side2, y, circles) : begin3);
      const { box: box2 } = found;
      const far = Math.hypot(...apart(tip[0], tip[1], box2));
      const free = box2.left >= 0 && box2.right <= width && circles.every(({ x, y: down, r }) => Math.hypot(...apart(x, down, box2)) >= r + CLEAR - 1e-6) && taken2.every((other) => box2.right + CLEAR <= other.left || other.right + CLEAR <= box2.left || box2.bottom <= other.top || other.bottom <= box2.top);
      if (free && far < least) [best, least] = [found, far];
    }
    return best;
  }
  function beyond(x, side2, y, circles) {
    const ends = circles.map((circle) => {
      const off = Math.max(y - OVER - circle.y, circle.y - y - UNDER, 0);
      const half = Math.sqrt(Math.max((circle.r + CLEAR) ** 2 - off ** 2, 0));
      return half ? side2 * circle.x + half : -Infinity;
    });
    return side2 * Math.max(side2 * x, ...ends);
  }
  function standing(name, tip, side2, y, x) {
    const wide2 = roomOf(name);
    const left = x - wide2 * (1 - side2) / 2;
    const anchor = (
      /** @type {const} */
      ["end", "middle", "start"][side2 + 1]
    );
    return { placed: { name, tip, x, y, anchor }, box: { left, right: left + wide2, top: y - OVER, bottom: y + UNDER } };
  }
  function unplaced(name, tip, side2, { width, height }) {
    const room = roomOf(name);
    const [before, behind] = [room * (1 - side2) / 2, room * (1 + side2) / 2];
    const y = Math.min(Math.max(tip[1], OVER), height - UNDER - 4);
    return standing(name, tip, side2, y, Math.min(Math.max(tip[0], before), width - behind));
  }
  var roomOf = ({ label, text }) => Math.max(6.4 * label.length, 7.4 * text.length);
  var apart = (x, y, { left, right, top, bottom }) => [Math.max(left - x, x - right, 0), Math.max(top - y, y - bottom, 0)];

  // src/panels/section/marks.js
  var stroke = (kind, d) => drawn("path", { class: kind, d });
  var inMm = (points2) => line2(points2, 1e4);
  function roundMarks({ circles }) {
    return circles.map(({ kind, diameter }) => drawn("circle", { class: `mark ${kind}`, cx: 0, cy: 0, r: Math.max(diameter, 0) / 2 }));
  }
  function edgeMarks({ rake, land, cutter, margin }) {
    return [
      drawn("circle", { class: "mark cutter", cx: cutter.centre[0], cy: cutter.centre[1], r: cutter.radius }),
      stroke("mark cutter axis", inMm(cutter.axis)),
      stroke("mark fine", inMm(cutter.radial)),
      stroke("mark fine", inMm([cutter.radial[1], cutter.axis[1]])),
      stroke("mark land", land.arc),
      ...margin ? [stroke("mark margin", margin)] : [],
      stroke("mark fine", inMm([rake.out, rake.radial])),
      stroke("mark edge", inMm([rake.edge, rake.tangent])),
      stroke("mark edge arc", rake.arc)
    ];
  }
  function turningArrow(turning, at) {
    const way2 = turning.map(at);
    return [stroke("mark turning", line2(way2)), stroke("head", head(way2[way2.length - 3], way2[way2.length - 1], 11))];
  }
  function names(marks, view) {
    return placedNames(marks.names, view).flatMap(named);
  }
  function named({ name, x, y, anchor, tip }) {
    const text = lettering(x, y, name.label, `name quiet`, anchor);
    const number = lettering(x, y + 14, name.text, "name number", anchor);
    number.setAttribute("data-mark", name.key);
    const off = Math.abs(y + 4 - tip[1]);
    const end = tip[1] > y ? y + 18 : y - 11;
    return off > 34 ? [stroke("leader", line2([tip, [x, end]])), text, number] : [text, number];
  }

  // src/panels/section.js
  var BESIDE = 62;
  var ABOVE = 34;
  var BELOW = 58;
  var UNDER2 = 6;
  var WIDEST = 620;
  function sectionPanel(stations, listener, ask) {
    const pane = element("section-pane", HTMLElement);
    const slider = (
      /** @type {HTMLInputElement} */
      made("input", { type: "range", id: "height", min: 0 })
    );
    const heightText = made("output", { id: "height-text", for: "height" });
    const region = made("span", { id: "region", "aria-live": "polite" });
    const marked2 = (
      /** @type {HTMLInputElement} */
      made("input", { type: "checkbox", checked: true, id: "marked" })
    );
    const legend = made("dl", { class: "legend" });
    const place = made("div", { class: "section-place" });
    pane.replaceChildren(place, made(
      "figcaption",
      {},
      made("span", {}, "Seen on the cutting end, first flute on top."),
      made("label", { for: "height" }, "Section at ", heightText),
      slider,
      region,
      made("label", {}, marked2, " marks of the cutting edge")
    ));
    pane.after(made("section", { class: "pane", id: "section-numbers", "aria-label": "The section in numbers" }, legend));
    let view = null;
    let section = null;
    const redraw = picture(place, "Section of the tap, seen on the cutting end", (svg, width) => {
      svg.id = "section";
      if (view && section) drawSection(svg, width, view, section, marked2.checked);
    });
    const show2 = () => {
      if (!view || !section) return;
      const { z, area } = section;
      heightText.textContent = `z = ${lengthText(z, view.units)}`;
      region.textContent = `${section.region}, area ${areaText(area, view.units)}`;
      slider.setAttribute("aria-valuetext", `${lengthText(z, view.units)}, ${section.region}`);
      listener(z);
      redraw();
    };
    slider.addEventListener("input", () => {
      if (!stations) return ask?.(Number(slider.value));
      section = stations[Number(slider.value)];
      show2();
    });
    marked2.addEventListener("change", show2);
    return (shown2) => {
      view = shown2;
      section = shown2.section;
      if (stations) {
        slider.max = String(stations.length - 1);
        slider.value = String(nearest3(stations, shown2.section.z));
      } else {
        slider.max = String(shown2.frame.length);
        slider.step = "0.05";
        if (document.activeElement !== slider) slider.value = String(shown2.section.z);
      }
      legend.replaceChildren(...shown2.marks.lines.map(legendLine));
      show2();
    };
  }
  function nearest3(stations, z) {
    let best = 0;
    stations.forEach((one, n) => {
      if (Math.abs(one.z - z) < Math.abs(stations[best].z - z)) best = n;
    });
    return best;
  }
  function legendLine({ kind, label, text }) {
    const sample2 = drawn(
      "svg",
      { class: "sample", viewBox: "0 0 34 10", "aria-hidden": "true" },
      drawn("path", { class: `mark ${kind || "none"}`, d: "M1 5H33" })
    );
    return made("div", {}, made("dt", {}, ...kind ? [sample2] : [], label), made("dd", {}, text));
  }
  function drawSection(svg, room, view, section, marked2) {
    const width = Math.min(room, WIDEST);
    const reach = Math.max(view.frame.reach, 1e-3) * 1.13;
    const each = (width - 2 * BESIDE) / (2 * reach);
    const middle = [width / 2, ABOVE + reach * each];
    const { centre, radius } = view.marks.cutter;
    const crest = Math.max(...view.marks.circles.map(({ diameter }) => diameter / 2));
    const height = middle[1] + Math.max(reach * each + BELOW, (centre[1] + radius) * each + UNDER2);
    cleared(svg, width, height);
    const { marks } = view;
    const whole = section.z >= marks.heights[0] && section.z <= marks.heights[1];
    const inMm2 = drawn(
      "g",
      { transform: `translate(${middle[0]} ${middle[1]}) scale(${each})` },
      drawn("path", { class: "metal", d: section.path }),
      ...marked2 ? roundMarks(marks) : [],
      ...marked2 && whole ? edgeMarks(marks) : []
    );
    svg.append(inMm2);
    if (marked2) {
      const at = ([x, y]) => [middle[0] + each * x, middle[1] + each * y];
      svg.append(...turningArrow(marks.turning, at));
      if (whole) svg.append(...names(marks, { width, height: height - 26, middle, each, crest, cutter: marks.cutter }));
    }
    svg.append(...bar(view, each, middle[0], height));
  }
  function bar(view, each, middle, height) {
    const length = roundLength(view.frame.reach / 2, view.units);
    const half = length.mm * each / 2;
    const y = height - 10;
    return [
      drawn("path", { class: "bar", d: `M${middle - half} ${y - 4}v4h${2 * half}v-4` }),
      lettering(middle + half + 8, y, length.text)
    ];
  }

  // src/panels/shell/toolbar.js
  function toolbar(desk) {
    const undo = element("undo", HTMLButtonElement);
    const redo = element("redo", HTMLButtonElement);
    const units = element("units", HTMLSelectElement);
    const saved = element("saved", HTMLElement);
    const file = element("file", HTMLInputElement);
    undo.addEventListener("click", () => desk.go(-1));
    redo.addEventListener("click", () => desk.go(1));
    units.addEventListener("change", () => desk.tellIn(
      /** @type {Units} */
      units.value
    ));
    element("open", HTMLButtonElement).addEventListener("click", () => file.click());
    file.addEventListener("change", () => {
      const [picked] = file.files ?? [];
      if (picked) openFile(desk, picked);
      file.value = "";
    });
    element("save", HTMLButtonElement).addEventListener("click", () => saveFile(desk));
    takesFiles(desk);
    byKeys(desk);
    const keep = () => {
      able(undo, desk.history.beside(-1) !== void 0);
      able(redo, desk.history.beside(1) !== void 0);
      if (desk.changed !== saved.hasChildNodes())
        saved.replaceChildren(...desk.changed ? [made("span", {}, "changed, "), "not saved"] : []);
    };
    desk.keepers.push(keep);
    desk.followers.push((view) => units.value = view.units);
    if (desk.view) units.value = desk.view.units;
    keep();
  }
  function able(button2, can) {
    button2.setAttribute("aria-disabled", String(!can));
  }
  function byKeys(desk) {
    document.addEventListener("keydown", (event) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const at = event.target;
      if (at instanceof HTMLInputElement && ["text", "number"].includes(at.type)) return;
      const key = event.key.toLowerCase();
      const step = key === "y" || key === "z" && event.shiftKey ? 1 : key === "z" ? -1 : 0;
      if (!step) return;
      event.preventDefault();
      desk.go(step);
    });
  }

  // src/panels/torque/levels.js
  var BAR = 30;
  var ROW = 18;
  function drawLevels(svg, width, torque) {
    const { axis, levels } = torque;
    const foot2 = 14 + ROW * levels.length + BAR + 8;
    const height = foot2 + 42;
    cleared(svg, width, height);
    const x = scaleOf(axis, 8, width - 14);
    const top = foot2 - BAR;
    const risk = hatching(svg, "torque-risk", "risk-line");
    svg.append(drawn("rect", { class: "trough", x: x(axis.low), y: top, width: x(axis.high) - x(axis.low), height: BAR }));
    for (const { key, low, high, beyond: beyond2 } of levels)
      if (high > low && !beyond2) {
        const end = within(axis, high);
        svg.append(drawn("rect", { class: `span ${key}`, fill: risk, x: x(low), y: top, width: x(end) - x(low), height: BAR }));
      }
    svg.append(
      drawn(
        "rect",
        { class: "band", x: x(torque.low), y: top + 7, width: Math.max(x(torque.high) - x(torque.low), 1), height: BAR - 14 },
        drawn("title", {}, torque.text)
      ),
      drawn("path", { class: "likely", d: `M${x(torque.likely)} ${top + 2}v${BAR - 4}` })
    );
    const row = (n) => 12 + ROW * (levels.length - 1 - n);
    levels.forEach(({ key, low }, n) => {
      svg.append(drawn("path", { class: `level ${key}`, d: `M${x(within(axis, low))} ${row(n) + 4}V${foot2}` }));
    });
    levels.forEach(({ key, label, text, low, beyond: beyond2 }, n) => {
      const at = x(within(axis, low));
      const words = `${label} ${text}${beyond2 ? " →" : ""}`;
      const [from] = spread([at - wide(words) + 4], 0, 0, width - wide(words));
      svg.append(lettering(Math.max(from, 0), row(n), words, `halo ${key}`));
    });
    for (const tick of legible(axis.ticks, x, wide)) {
      svg.append(drawn("path", { class: "axis", d: `M${x(tick.at)} ${foot2}v4` }));
      svg.append(lettering(x(tick.at), foot2 + 17, tick.text, "quiet", "middle"));
    }
    svg.append(lettering(width / 2, foot2 + 34, axis.title, "quiet", "middle"));
  }

  // src/panels/torque/course.js
  var HEIGHT4 = 230;
  function drawCourse(svg, width, course) {
    cleared(svg, width, HEIGHT4);
    const place = scales(svg, { across: course.depth, up: course.torque, width, height: HEIGHT4, right: 14 });
    const { x, y, left, right, top, foot: foot2 } = place;
    for (const way2 of [course.way_in, course.way_back]) svg.append(...band(way2, x, y));
    svg.append(drawn("path", { class: "axis", d: `M${left} ${y(0)}H${right}` }));
    if (course.stop <= course.torque.high) {
      svg.append(drawn("path", { class: "level stop", d: `M${left} ${y(course.stop)}H${right}` }));
      svg.append(lettering(left + 4, y(course.stop) + 13, "stop turning at", "halo stop"));
    }
    if (course.end <= course.depth.high)
      svg.append(drawn("path", { class: "chain", d: `M${x(course.end)} ${top}V${foot2}` }));
  }
  function band(way2, x, y) {
    const [low, high] = [way2.low, way2.high].map((torque) => points(way2.depth, torque, x, y));
    return [
      drawn("path", { class: "band", d: between(low, high) }),
      drawn("path", { class: "likely", d: line2(points(way2.depth, way2.likely, x, y)) })
    ];
  }

  // src/panels/torque.js
  function torquePanel() {
    const body = slot("torque", "Torque");
    if (!body) return () => {
    };
    let torque = null;
    const said = made("div", {});
    const bullet = made("div", { class: "graph-place" });
    const levels = made("dl", { class: "legend" });
    const way2 = made("div", { class: "graph-place" });
    const caption = made("p", { class: "quiet" });
    const shown2 = made("div", {}, bullet, levels, made("h3", {}, "On the way in and back"), way2, caption);
    body.append(said, shown2);
    const redraw = [
      picture(bullet, "Torque that it takes beside the torques that decide", (svg, width) => {
        if (torque) drawLevels(svg, width, torque);
      }),
      picture(way2, "Torque against depth, in and back", (svg, width) => {
        if (torque) drawCourse(svg, width, torque.course);
      })
    ];
    return (view) => {
      torque = view.torque;
      shown2.hidden = !torque;
      said.replaceChildren(torque ? judgedLine(torque.judged) : unforeseen());
      if (!torque) return;
      const rows = [{ label: "takes", text: torque.text }, ...torque.levels];
      levels.replaceChildren(...rows.map(({ label, text }) => made("div", {}, made("dt", {}, label), made("dd", {}, text))));
      caption.textContent = torque.course.text;
      for (const draw of redraw) draw();
    };
  }

  // src/panels/variants/overlay.js
  var BORDER = 26;
  function drawOverlay(svg, room, view, path, variants) {
    const width = Math.min(room, 460);
    const reach = Math.max(view.frame.reach, ...variants.map((one) => one.reach));
    const each = (width - 2 * BORDER) / (2 * reach);
    const middle = width / 2;
    cleared(svg, width, width);
    svg.append(drawn(
      "g",
      { transform: `translate(${middle} ${middle}) scale(${each})` },
      drawn("path", { class: "metal", d: path }),
      ...variants.map(({ letter, path: d }) => drawn("path", { class: `variant ${letter}`, d }))
    ));
    const rising = variants.map((one) => ({ one, x: middle + each * one.edge[0] })).sort((a, b) => a.x - b.x);
    const places = spread(rising.map(({ x }) => x + 10), 16, 10, width - 10);
    rising.forEach(({ one, x }, n) => {
      const tip = (
        /** @type {[number, number]} */
        [x, middle + each * one.edge[1]]
      );
      svg.append(
        drawn("path", { class: "leader", d: line2([tip, [places[n], 15]]) }),
        lettering(places[n], 12, one.letter, `letter ${one.letter}`, "middle")
      );
    });
  }

  // src/panels/variants/pinned.js
  var LETTERS = ["A", "B", "C", "D"];
  function variantOf(letter, name, job, view) {
    const { units, section, frame: frame2, marks, figures } = view;
    return { letter, name, job: { ...job }, units, path: section.path, reach: frame2.reach, edge: marks.rake.edge, figures };
  }
  function freeLetter(variants) {
    return LETTERS.find((letter) => variants.every((one) => one.letter !== letter));
  }
  function way(from, to) {
    const gone = Object.keys(from).filter((name) => !(name in to)).map((name) => [name, null]);
    return { ...Object.fromEntries(gone), ...to };
  }
  function differences(job, other, names2) {
    const called = (field) => names2.get(field) ?? field;
    const own = Object.entries(job).filter(([field, value]) => JSON.stringify(other[field]) !== JSON.stringify(value)).map(([field, value]) => `${called(field)} = ${value}`);
    const ruled = Object.keys(other).filter((field) => !(field in job)).map((field) => `${called(field)} by rule`);
    return [...own, ...ruled];
  }
  function namesOf(groups) {
    return new Map(groups.flatMap(({ title, controls }) => controls.map(({ field, label }) => (
      /** @type {[string, string]} */
      [field, `${title.toLowerCase()}: ${label}`]
    ))));
  }
  var ALIKE = 1e-9;
  function against(figure, now) {
    if (!now || figure.text === now.text) return "";
    if (figure.value === null || now.value === null) return figure.value === now.value ? "" : "≠";
    if (Math.abs(figure.value - now.value) <= ALIKE * Math.abs(now.value)) return "";
    return figure.value > now.value ? "▲" : "▼";
  }

  // src/panels/variants/table.js
  var WORDS = { "▲": "more than now", "▼": "less than now", "≠": "other than now", "": "as now" };
  function figuresTable(now, variants) {
    const head2 = made(
      "tr",
      {},
      made("th", { scope: "col" }, ""),
      made("th", { scope: "col" }, "now"),
      ...variants.map((one) => made("th", { scope: "col" }, sample(one.letter), one.letter))
    );
    const lines = now.map((figure, n) => made(
      "tr",
      {},
      made("th", { scope: "row" }, figure.label),
      made("td", {}, figure.text),
      ...variants.map((one) => cell2(one.figures[n], figure))
    ));
    return made(
      "div",
      { class: "scroll", tabindex: 0, role: "group", "aria-label": "Figures of the variants" },
      made("table", { class: "variants" }, made("thead", {}, head2), made("tbody", {}, ...lines))
    );
  }
  function cell2(figure, now) {
    if (!figure) return made("td", {}, "–");
    const mark2 = against(figure, now);
    const sign = made("span", { class: "differs", title: WORDS[mark2] }, mark2);
    return made("td", { class: mark2 ? "other" : "" }, figure.text, ...mark2 ? [" ", sign] : []);
  }
  function sample(letter) {
    return drawn(
      "svg",
      { class: "sample", viewBox: "0 0 34 10", "aria-hidden": "true" },
      drawn("path", { class: `variant ${letter}`, d: "M1 5H33" })
    );
  }

  // src/panels/variants.js
  function variantsPanel(desk) {
    const body = slot("variants", "Variants");
    if (!body) return () => {
    };
    let variants = remembered("variants", []);
    let view = null;
    let path = "";
    const pin = (
      /** @type {HTMLButtonElement} */
      made("button", { type: "button", id: "pin" }, "Pin this")
    );
    const full = made("span", { class: "quiet", "aria-live": "polite" });
    const list2 = made("ol", { class: "pinned" });
    const entries = /* @__PURE__ */ new WeakMap();
    const place = made("div", { class: "graph-place overlay" });
    const table = made("div", { class: "variant-figures" });
    const beside = made("div", { class: "beside" }, place, table);
    body.append(made("p", {}, pin, " ", full), list2, beside);
    const redraw = picture(place, "Sections of the pinned variants over the tap as it is", (svg, width) => {
      if (view) drawOverlay(svg, width, view, path, variants);
    });
    const show2 = () => {
      if (!view) return;
      beside.hidden = !variants.length;
      pin.disabled = !freeLetter(variants);
      full.textContent = pin.disabled ? `All of ${LETTERS.join(", ")} are pinned: remove one to pin another.` : "keeps this tap to compare others with, up to four.";
      for (const one of variants) if (!entries.has(one)) entries.set(one, entry(one));
      const now = variants.flatMap((one) => entries.get(one) ?? []);
      settle(list2, now.map(({ node }) => node));
      for (const { tell: tell3 } of now) tell3();
      table.replaceChildren(figuresTable(view.figures, variants));
      redraw();
    };
    const change = (changed) => {
      variants = changed;
      remember("variants", variants);
      show2();
    };
    const entry = (variant) => {
      const name = (
        /** @type {HTMLInputElement} */
        made("input", {
          type: "text",
          value: variant.name,
          size: 14,
          maxlength: 40,
          "aria-label": `Name of ${variant.letter}`,
          autocomplete: "off"
        })
      );
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
      const told2 = made("small");
      const node = made(
        "li",
        { "data-letter": variant.letter },
        made("strong", {}, sample(variant.letter), variant.letter),
        name,
        back,
        remove,
        told2
      );
      const tell3 = () => {
        const other = differences(variant.job, desk.job, namesOf(view?.fields ?? []));
        told2.textContent = other.length ? `unlike now: ${other.join(", ")}` : "the job is the same as now";
      };
      return { node, tell: tell3 };
    };
    pin.addEventListener("click", () => answered2(async () => {
      const job = await desk.settled();
      if (!view) return;
      const pinned = await standing2(desk, view);
      const letter = freeLetter(variants);
      if (!letter) return;
      path = pinned.section.path;
      change([...variants, variantOf(letter, pinned.name, job, pinned)].sort((a, b) => a.letter < b.letter ? -1 : 1));
    }));
    const following = new Resting((signal) => answered2(async () => {
      if (!view) return;
      const { units } = view;
      if (variants.length) path = (await standing2(desk, view, signal)).section.path;
      redraw();
      await Promise.all(variants.map(async (one) => Object.assign(one, await retold(one, units, signal))));
      change(variants);
    }));
    return (shown2) => {
      view = shown2;
      if (stands(shown2) || !path) path = shown2.section.path;
      show2();
      const others = variants.some(({ units }) => units !== shown2.units);
      if (others || !stands(shown2) && variants.length) following.after(0);
      else following.stop();
    };
  }
  async function answered2(work2) {
    try {
      await work2();
    } catch (error) {
      if (!(error instanceof RefusedError)) throw error;
    }
  }
  var stands = ({ section, marks }) => Math.abs(section.z - marks.standing) < 1e-3;
  async function standing2(desk, view, signal) {
    if (stands(view)) return view;
    return (await (await asked("tap", { job: desk.job, units: desk.units }, signal)).json()).view;
  }
  async function retold({ job, units: told2 }, units, signal) {
    if (told2 === units) return {};
    const { view } = await (await asked("tap", { job, units }, signal)).json();
    return { units, figures: view.figures };
  }

  // src/page.js
  async function begin2(data) {
    const contents = contentsPanel();
    fullSize();
    contents();
    if (!CAN_UNPACK) {
      const tooOld = document.getElementById("too-old");
      if (tooOld) tooOld.hidden = false;
      return;
    }
    const { view } = data;
    const desk = data.live ? new Desk({ ...data, live: data.live }) : null;
    const pane = document.getElementById("model-pane");
    const model = pane ? await modelPanel(desk, data.model, view?.units) : null;
    const stations = data.stations ? JSON.parse(new TextDecoder().decode(await unpacked(data.stations))) : null;
    const seen2 = [
      sectionPanel(stations, (z) => model?.cutAt(z), (z) => desk?.cutAt(z)),
      chipsPanel(),
      torquePanel(),
      rubbingPanel()
    ];
    if (desk) {
      const modelled = (newer) => model?.update(newer);
      await work(desk, [...seen2, modelled], contents);
    } else if (view) for (const follow of seen2) follow(view);
    document.documentElement.dataset.ready = "yes";
  }
  async function work(desk, seen2, contents) {
    noticePanel(desk);
    linkedPanel(desk);
    toolbar(desk);
    desk.followers.push(
      firstPanel(),
      anewPanel(desk),
      controlsPanel(desk),
      findingsPanel(desk),
      ...seen2,
      variantsPanel(desk),
      chartPanel(desk),
      benchPanel(desk),
      buildPanel(desk),
      papersPanel(desk, contents)
    );
    if (desk.view) for (const follow of desk.followers) follow(desk.view);
    await kept(desk);
  }
  begin2(pageData());
})();
