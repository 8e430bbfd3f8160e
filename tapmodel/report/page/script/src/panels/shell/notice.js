/** What could not be done, at the top, and whether the view is the last good one. */

import { made } from "../../elements.js";

/** @import {Desk} from "../../live/desk.js" */

/** @param {Desk} desk */
export function noticePanel(desk) {
  const place = document.getElementById("notice");
  const main = document.querySelector("main");
  if (!place) return;
  const text = made("p", { role: "alert" });
  const more = made("p", { class: "still" }, "What is shown is the last tap that could be worked out.");
  const close = made("button", { type: "button", "aria-label": "Close the message" }, "×");
  place.replaceChildren(made("div", {}, text, more), close);
  const hide = () => {
    place.hidden = true;
    main?.classList.remove("stale");
  };
  close.addEventListener("click", hide);
  desk.complaints.push((complaint) => {
    if (!complaint) return hide();
    // That the program is away stands at the foot until it is there again.
    if (complaint.unanswered) return;
    text.textContent = complaint.message;
    place.hidden = false;
    if (!complaint.unchanged) main?.classList.add("stale");
    more.hidden = !main?.classList.contains("stale");
  });
  hide();
}
