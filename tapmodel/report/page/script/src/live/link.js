/** Requests to the program that serves the page. */

/** @import {Refusal} from "../types" */

/** What the server cannot do, with its reason. */
export class RefusedError extends Error {
  /** @param {Refusal} refusal */
  constructor(refusal) {
    super(refusal.message);
    this.field = refusal.field;
  }
}

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
  const wanted = { method: "POST", headers, body: JSON.stringify(body), signal };
  let answer;
  try {
    answer = await fetch(path, wanted);
  } catch (error) {
    if (signal?.aborted) throw error;
    throw new RefusedError({ message: "tapmodel does not answer: is it still running?", field: "" });
  }
  if (!answer.ok) throw new RefusedError((await answer.json()).error);
  return answer;
}
