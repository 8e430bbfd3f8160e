/** Where the page begins. */

import { Desk } from "./live/desk.js";
import { kept } from "./live/keeping.js";
import { pageData } from "./elements.js";
import { benchPanel } from "./panels/bench.js";
import { chartPanel } from "./panels/chart.js";
import { chipsPanel } from "./panels/chips.js";
import { buildPanel } from "./panels/build.js";
import { anewPanel } from "./panels/shell/anew.js";
import { contentsPanel } from "./panels/shell/contents.js";
import { controlsPanel } from "./panels/controls/panel.js";
import { findingsPanel } from "./panels/findings.js";
import { firstPanel } from "./panels/first.js";
import { fullSize } from "./panels/shell/full_size.js";
import { linkedPanel } from "./panels/shell/linked.js";
import { modelPanel } from "./panels/model.js";
import { noticePanel } from "./panels/shell/notice.js";
import { papersPanel } from "./panels/papers.js";
import { rubbingPanel } from "./panels/rubbing.js";
import { sectionPanel } from "./panels/section.js";
import { toolbar } from "./panels/shell/toolbar.js";
import { torquePanel } from "./panels/torque.js";
import { variantsPanel } from "./panels/variants.js";
import { CAN_UNPACK, unpacked } from "./unpack.js";

/** @import {PageData, Section, TapView} from "./types" */

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
  const desk = data.live ? new Desk({ ...data, live: data.live }) : null;
  const pane = document.getElementById("model-pane");
  const model = pane ? await modelPanel(desk, data.model, view?.units) : null;
  /** @type {Section[] | null} */
  const stations = data.stations
    ? JSON.parse(new TextDecoder().decode(await unpacked(data.stations))) : null;
  const seen = [
    sectionPanel(stations, (z) => model?.cutAt(z), (z) => desk?.cutAt(z)),
    chipsPanel(),
    torquePanel(),
    rubbingPanel(),
  ];
  if (desk) {
    /** @param {TapView} newer */
    const modelled = (newer) => model?.update(newer);
    await work(desk, [...seen, modelled], contents);
  } else if (view) for (const follow of seen) follow(view);
  document.documentElement.dataset.ready = "yes";
}

/**
 * The parts that change the tap.
 * @param {Desk} desk
 * @param {((view: TapView) => void)[]} seen what shows the tap
 * @param {() => void} contents told when parts come or go
 */
async function work(desk, seen, contents) {
  noticePanel(desk);
  linkedPanel(desk);
  toolbar(desk);
  desk.followers.push(
    firstPanel(),
    anewPanel(desk),
    controlsPanel(desk),
    findingsPanel(desk),
    ...seen,
    variantsPanel(desk),
    chartPanel(desk),
    benchPanel(desk),
    buildPanel(desk),
    papersPanel(desk, contents),
  );
  if (desk.view) for (const follow of desk.followers) follow(desk.view);
  await kept(desk);
}

begin(pageData());
