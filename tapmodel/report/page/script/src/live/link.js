/** Requests to the program that serves the page; none is lost to a moment of trouble. */

/** @import {Refusal} from "../types" */

/** What the server cannot do, with its reason. */
export class RefusedError extends Error {
  /**
   * @param {Refusal} refusal
   * @param {number} [status] of the answer; 0 where there was none
   */
  constructor({ message, field, forceable = false }, status = 0) {
    super(message);
    this.status = status;
    this.field = field;
    /** Whether it would be built if it were forced. */
    this.forceable = forceable;
  }
}

/**
 * Tells how the link is, by an event "state" whose detail is "there"; "busy", when the server will
 * be asked again in a moment; or "lost", when it does not answer.
 */
export const link = new EventTarget();

/** Waited before a request is sent again [ms]; a server that was asked too often wants a second. */
const PAUSES = [200, 400, 800, 1600, 3200];

/**
 * Ask by a path beside the page.
 * @param {string} path
 * @param {unknown} body
 * @param {AbortSignal} [signal]
 * @returns {Promise<Response>}
 * @throws {RefusedError} the server's reason, or that it is not there any more
 */
export async function asked(path, body, signal) {
  const headers = { "content-type": "application/json" };
  return answered(path, { method: "POST", headers, body: JSON.stringify(body), signal });
}

/** The last that waits for its turn among what takes long. */
let line = Promise.resolve();

/**
 * The same for what takes the server long, which it does one after the other. A browser keeps six
 * connections to a server: were all of them to wait for such answers, no move of a slider had one.
 * @param {string} path
 * @param {unknown} body
 * @param {AbortSignal} signal when it is not wanted any more
 * @returns {Promise<any>} the answer, read
 */
export async function sought(path, body, signal) {
  const turn = line.then(async () => {
    signal.throwIfAborted();
    return (await asked(path, body, signal)).json();
  });
  line = turn.then(() => {}, () => {});
  return turn;
}

/**
 * Look at what stands at a path beside the page; see `asked`.
 * @param {string} path
 * @param {AbortSignal} [signal]
 */
export async function looked(path, signal) {
  return answered(path, { signal });
}

/**
 * Have done with what stands at a path beside the page; see `asked`.
 * @param {string} path
 */
export async function removed(path) {
  return answered(path, { method: "DELETE" });
}

/**
 * @param {string} path
 * @param {RequestInit} wanted
 */
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

/**
 * The answer; null where there is none.
 * @param {string} path
 * @param {RequestInit} wanted
 */
async function come(path, wanted) {
  try {
    return await fetch(path, wanted);
  } catch (error) {
    if (wanted.signal?.aborted) throw error;
    return null;
  }
}

/** @param {Response} answer */
async function refusal(answer) {
  try {
    return new RefusedError((await answer.json()).error, answer.status);
  } catch {
    return new RefusedError({ message: `tapmodel answers ${answer.status}`, field: "" }, answer.status);
  }
}

/** @param {"there" | "busy" | "lost"} state */
function tell(state) {
  link.dispatchEvent(new CustomEvent("state", { detail: state }));
}

/**
 * @param {number} time [ms]
 * @param {AbortSignal | null} [signal]
 * @returns {Promise<void>} rejected when it is aborted
 */
export function waited(time, signal) {
  return new Promise((resolve, reject) => {
    const end = () => {
      clearTimeout(timer);
      reject(signal?.reason);
    };
    const timer = setTimeout(() => {
      // Or a build that is looked at for minutes would leave a listener at each look.
      signal?.removeEventListener("abort", end);
      resolve();
    }, time);
    signal?.addEventListener("abort", end);
  });
}
