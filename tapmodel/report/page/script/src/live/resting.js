/** What is asked for when the hands rest: the newest question counts, and ends the one before it. */

export class Resting {
  /** @param {(signal: AbortSignal) => Promise<void>} ask */
  constructor(ask) {
    this.ask = ask;
    /** @type {ReturnType<typeof setTimeout> | undefined} */
    this.timer = undefined;
    /** @type {AbortController | null} */
    this.asking = null;
  }

  /**
   * Ask once nothing more has been changed for so long; what is asked for meanwhile is not wanted.
   * @param {number} pause [ms]
   */
  after(pause) {
    this.stop();
    this.timer = setTimeout(() => this.#now(), pause);
  }

  /** What was asked for is not wanted any more. */
  stop() {
    clearTimeout(this.timer);
    this.asking?.abort();
  }

  async #now() {
    const own = (this.asking = new AbortController());
    try {
      await this.ask(own.signal);
    } catch (error) {
      if (!own.signal.aborted) throw error;
    } finally {
      if (this.asking === own) this.asking = null;
    }
  }
}
