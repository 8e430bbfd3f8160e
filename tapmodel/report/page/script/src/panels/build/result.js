/** What came of a build, and where it is fetched. */

import { made } from "../../elements.js";
import { addressOf } from "../../live/builds.js";

/** @import {Built} from "../../types" */

/**
 * What came of a build: the verdict with what was looked at, and the files; those of folders folded.
 * @param {string} id
 * @param {Built} built
 */
export function resultOf(id, { verdict, rows, notes, files }) {
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
