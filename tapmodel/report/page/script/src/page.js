/** Where the page begins. */

import { Desk } from "./live/desk.js";
import { kept } from "./live/keeping.js";
import { pageData } from "./elements.js";
import { contentsPanel } from "./panels/contents.js";
import { controlsPanel } from "./panels/controls/panel.js";
import { findingsPanel } from "./panels/findings.js";
import { firstPanel } from "./panels/first.js";
import { fullSize } from "./panels/full_size.js";
import { modelPanel } from "./panels/model.js";
import { noticePanel } from "./panels/notice.js";
import { papersPanel } from "./panels/papers.js";
import { sectionPanel } from "./panels/section.js";
import { toolbar } from "./panels/toolbar.js";
import { CAN_UNPACK, unpacked } from "./unpack.js";

/** @import {PageData, Section} from "./types" */

/** @param {PageData} data */
async function begin(data) {
  const contents = contentsPanel();
  fullSize();
  contents();
  if (!CAN_UNPACK) {
    const tooOld = document.getElementById("too-old");
    if (tooOld) tooOld.hidden = false;
    return;
  }
  const { view } = data;
  const model = data.model ? await modelPanel(data.model) : null;
  if (view && data.stations) {
    /** @type {Section[]} */
    const stations = JSON.parse(new TextDecoder().decode(await unpacked(data.stations)));
    sectionPanel(stations, { ...view.frame, units: view.units }, (z) => model?.cutAt(z));
  }
  if (data.live) await work({ ...data, live: data.live }, contents);
  document.documentElement.dataset.ready = "yes";
}

/**
 * The parts that change the tap.
 * @param {PageData & {live: NonNullable<PageData["live"]>}} data
 * @param {() => void} contents told when parts come or go
 */
async function work(data, contents) {
  const desk = new Desk(data);
  noticePanel(desk);
  toolbar(desk);
  desk.followers.push(
    firstPanel(),
    controlsPanel(desk),
    findingsPanel((values) => desk.set(values)),
    papersPanel(desk, contents),
  );
  if (data.view) for (const follow of desk.followers) follow(data.view);
  await kept(desk);
}

begin(pageData());
