/** A chart of figures against a value of the job; pressed, it takes the value. */

import { made } from "../elements.js";
import { RefusedError, sought } from "../live/link.js";
import { remember, remembered } from "../live/remembered.js";
import { Resting } from "../live/resting.js";
import { valueOf } from "../live/typed.js";
import { drawChart } from "./chart/drawing.js";
import { nearestRow, readout, taken, zoneEnds } from "./chart/reading.js";
import { picture } from "./graph/picture.js";
import { slot } from "./graph/slot.js";

/** @import {AtDesk, ChartView, Named, TapView} from "../types" */

/** What a chart was asked for with. @typedef {{field: string, start: string | number | null, end: string | number | null, figures: string[]}} Wanted */

/** Until so long nothing else has changed [ms]. */
const PAUSE = 180;

/**
 * @param {AtDesk} desk
 * @returns {(view: TapView) => void}
 */
export function chartPanel(desk) {
  const body = slot("chart", "Chart");
  if (!body) return () => {};
  // What is given is varied; of a setting that follows from a rake, the rake.
  const usual = "flutes.offset" in desk.job ? "flutes.offset" : "flutes.rake";
  /** @type {Wanted} */
  const wanted = { field: usual, start: null, end: null, figures: ["rake_at_wall", "torque_likely"], ...remembered("chart", {}) };
  /** @type {ChartView | null} */
  let chart = null;
  let cursor = 0;
  const [field, first, second] = ["field", "first", "second"].map((name) =>
    /** @type {HTMLSelectElement} */ (made("select", { id: `chart-${name}` })));
  const [start, end] = ["start", "end"].map((name) =>
    /** @type {HTMLInputElement} */ (made("input", { type: "text", id: `chart-${name}`, size: 7, inputmode: "text", autocomplete: "off" })));
  const units = [start, end].map(() => made("span", { class: "unit" }));
  const place = made("div", { class: "graph-place chart-place" });
  const slider = /** @type {HTMLInputElement} */ (made("input", { type: "range", id: "chart-cursor", min: 0, step: 1 }));
  const said = made("output", { id: "chart-readout", for: "chart-cursor" });
  const take = made("button", { type: "button", id: "chart-take" }, "Take this value");
  const broken = made("ul", { class: "broken-list" });
  const jumps = made("ul");
  const anew = made("details", { class: "jumps" }, made("summary", {}, "What the rules choose anew along the way"), jumps);
  const wrong = made("p", { role: "alert", class: "wrong" });
  const coming = made("p", { class: "quiet coming" }, "It is drawn when you look here.");
  const choices = made("div", { class: "chart-choices" }, labelled("Against", field), labelled("from", start, units[0]), labelled("to", end, units[1]),
      labelled("Line", first), labelled("Second line", second));
  const reader = made("div", { class: "chart-reader" }, made("label", { for: "chart-cursor" }, "Read at"), slider, said, take);
  const note = made("p", { class: "quiet" });
  // They take their room before there is anything in them, or the panel below would be pushed away.
  body.classList.add("awaiting");
  body.append(coming, choices, wrong, place, anew, note, reader, broken);

  /** @type {(px: number) => number} */
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
  /** @param {ChartView} found */
  const show = (found) => {
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
    jumps.replaceChildren(...found.jumps.map(({ text }) => made("li", {}, text)));
    anew.classList.toggle("none", !found.jumps.length);
    broken.replaceChildren(...zoneEnds(found).map(({ text }, n) => {
      const { first: from, last: to } = found.zones[n];
      const ends = from === to ? found.rows[from].text : `${found.rows[from].text} to ${found.rows[to].text}`;
      return made("li", {}, `✖ ${ends}: ${text}`);
    }));
    note.textContent = found.note;
    read();
  };
  const asking = asks(desk, wanted, show, wrong);
  const choose = () => {
    const changed = wanted.field !== field.value;
    wanted.field = field.value;
    wanted.figures = [first.value, ...(second.value ? [second.value] : [])];
    [wanted.start, wanted.end] = [start, end].map((box) =>
      changed || !chart ? null : valueOf(box.value, { unit: chart.unit, kind: "number" }));
    remember("chart", wanted);
    asking.after(0);
  };
  for (const box of [field, first, second, start, end]) box.addEventListener("change", choose);
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
  /** @param {PointerEvent | MouseEvent} event */
  const point = (event) => {
    if (!chart) return;
    cursor = nearestRow(chart.rows, toValue(event.clientX - place.getBoundingClientRect().left));
    read();
  };
  place.addEventListener("pointermove", point);
  place.addEventListener("click", (event) => {
    point(event);
    use();
  });
  return whenSeen(body, asking);
}

/**
 * @param {string} label
 * @param {...HTMLElement} parts
 */
function labelled(label, ...parts) {
  return made("label", {}, `${label} `, ...parts);
}

/**
 * @param {HTMLSelectElement} select
 * @param {Named[]} options
 * @param {string} chosen
 */
function fill(select, options, chosen) {
  if (select.options.length !== options.length)
    select.replaceChildren(...options.map(({ key, label }) => made("option", { value: key }, label)));
  select.value = chosen;
}

/**
 * Asks for the chart as it is wanted.
 * @param {AtDesk} desk
 * @param {Wanted} wanted
 * @param {(chart: ChartView) => void} show
 * @param {HTMLElement} wrong
 */
function asks(desk, wanted, show, wrong) {
  return new Resting(async (signal) => {
    try {
      const { chart } = await sought("chart", { job: desk.job, units: desk.units, ...wanted }, signal);
      wrong.textContent = "";
      show(chart);
    } catch (error) {
      if (!(error instanceof RefusedError)) throw error;
      wrong.textContent = error.message;
    }
  });
}

/**
 * Nothing is asked for what nobody sees; it is once it comes into sight.
 * @param {Element} place
 * @param {Resting} asking
 */
function whenSeen(place, asking) {
  let [seen, stale] = [false, true];
  new IntersectionObserver((entries) => {
    seen = entries.some((entry) => entry.isIntersecting);
    if (seen && stale) {
      stale = false;
      asking.after(0);
    }
  }, { rootMargin: "200px" }).observe(place);
  return () => {
    stale = !seen;
    if (seen) asking.after(PAUSE);
  };
}
