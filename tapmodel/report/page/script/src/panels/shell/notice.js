/** What could not be done, at the top, and whether the view is the last good one. */

import { made } from "../../elements.js";

/** @import {Desk} from "../../live/desk.js" */

/** So long it stands over the page where nothing on it is another by what it tells [ms]. */
const LASTS = 10_000;

/** @param {Desk} desk */
export function noticePanel(desk) {
  const place = document.getElementById("notice");
  const main = document.querySelector("main");
  if (!place) return;
  const text = made("p", { role: "alert" });
  const more = made("p", { class: "still" }, "What is shown is the last tap that could be worked out.");
  const close = made("button", { type: "button", "aria-label": "Close the message" }, "×");
  place.replaceChildren(made("div", {}, text, more), close);
  let passing = false, timer = 0;
  const stay = () => clearTimeout(timer);
  /** It covers nothing then, and can still be read out. */
  const pass = () => {
    stay();
    if (passing) timer = window.setTimeout(() => {
      place.classList.add("passed");
      close.hidden = true;
    }, LASTS);
  };
  for (const begin of ["pointerenter", "focusin"]) place.addEventListener(begin, stay);
  for (const end of ["pointerleave", "focusout"]) place.addEventListener(end, pass);
  const hide = () => {
    stay();
    place.hidden = true;
    main?.classList.remove("stale");
  };
  close.addEventListener("click", hide);
  desk.complaints.push((complaint) => {
    if (!complaint) return hide();
    // That the program is away stands at the foot until it is there again.
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
