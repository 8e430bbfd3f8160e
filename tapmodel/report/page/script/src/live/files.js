/** Job files: picked, dropped on the page, saved. */

import { notOpened } from "./desk.js";
import { asked, RefusedError } from "./link.js";

/** @import {Desk} from "./desk.js" */

/** Longer files are no jobs [bytes]. */
const LONGEST = 200_000;

/** What is told of any other kind of file, whose lines nobody wants to have read out. */
const NO_JOB = "a job is a .toml file, such as “Save job file” writes";

/** Files of measured sizes, by their names. */
const MEASURED = /\.measured\.toml$/i;

/** Until then a browser has the file that it was handed [ms]. */
const FETCHED = 10_000;

/**
 * Work at the job in a file.
 * @param {Desk} desk
 * @param {File} file
 */
export async function openFile(desk, file) {
  try {
    if (file.size > LONGEST) throw new RefusedError({ message: "too long for a job file", field: "" });
    if (MEASURED.test(file.name)) return await desk.fillMeasured(await file.text());
    const answer = await asked("read", { text: await file.text() });
    const { job } = await answer.json();
    await desk.open(job, job.units ?? null, file.name);
  } catch (error) {
    const refused = error instanceof RefusedError && (error.status > 0 || file.size > LONGEST);
    const other = refused && !/\.toml$/i.test(file.name);
    complain(desk, other ? new RefusedError({ message: NO_JOB, field: "" }) : error, notOpened(file.name));
  }
}

/**
 * Hand the job out as a file.
 * @param {Desk} desk
 */
export async function saveFile(desk) {
  try {
    const job = await desk.settled();
    const answer = await asked("job", { job, units: desk.units });
    handOut(await answer.json());
    desk.markSaved(job);
  } catch (error) {
    complain(desk, error);
  }
}

/**
 * Have the browser keep a text as a file.
 * @param {{text: string, name: string}} file
 */
export function handOut({ text, name }) {
  const address = URL.createObjectURL(new Blob([text], { type: "application/toml" }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // Some browsers fetch it a little later.
  setTimeout(() => URL.revokeObjectURL(address), FETCHED);
}

/**
 * Nothing on the page is another by it.
 * @param {Desk} desk
 * @param {unknown} error
 * @param {string} [before] what could not be done
 */
function complain(desk, error, before = "") {
  if (!(error instanceof RefusedError)) throw error;
  for (const told of desk.complaints) told({ message: before + error.message, fields: [], unchanged: true });
}

/**
 * Take files that are dropped anywhere on the page.
 * @param {Desk} desk
 */
export function takesFiles(desk) {
  const body = document.body;
  /** @param {DragEvent} event */
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
