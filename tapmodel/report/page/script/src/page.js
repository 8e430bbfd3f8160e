/** Where the page begins. */

import { Desk } from "./live/desk.js";
import { pageData } from "./elements.js";
import { firstPanel } from "./panels/first.js";
import { modelPanel } from "./panels/model.js";
import { sectionPanel } from "./panels/section.js";
import { CAN_UNPACK, unpacked } from "./unpack.js";

/** @import {PageData, Section} from "./types" */

/** @param {PageData} data */
async function begin(data) {
  if (!CAN_UNPACK) {
    const tooOld = document.getElementById("too-old");
    if (tooOld) tooOld.hidden = false;
    return;
  }
  const { live, view } = data;
  const follow = firstPanel();
  if (view) follow(view);
  const model = data.model ? await modelPanel(data.model) : null;
  if (view && data.stations) {
    /** @type {Section[]} */
    const stations = JSON.parse(new TextDecoder().decode(await unpacked(data.stations)));
    sectionPanel(stations, { ...view.frame, units: view.units }, (z) => model?.cutAt(z));
  }
  if (live) {
    const desk = new Desk({ ...data, live });
    desk.followers.push(follow);
  }
  document.documentElement.dataset.ready = "yes";
}

begin(pageData());
