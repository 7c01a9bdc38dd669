// What lies in this tab's own history entry, so that reload works without
// anything being kept on the device. Browsers stop listening to a page that
// writes there too often, so quick presses share one writing.

const VERSION = 1;
/** Chromium allows 200 writings in ten seconds; this makes at most a hundred. */
const APART_MS = 100;

export class HistoryState {
  #timer = 0;
  #last = 0;
  #state;

  /** state() gives what is to be remembered, or null. */
  constructor(state) {
    this.#state = state;
    for (const name of ["beforeunload", "pagehide"]) addEventListener(name, () => this.#write());
  }

  later() {
    clearTimeout(this.#timer);
    const wait = this.#last + APART_MS - performance.now();
    if (wait <= 0) this.#write();
    else this.#timer = setTimeout(() => this.#write(), wait);
  }

  #write() {
    clearTimeout(this.#timer);
    const state = this.#state();
    if (!state) return;
    this.#last = performance.now();
    try {
      history.replaceState({ v: VERSION, ...state }, "");
    } catch {
      /* Too large or too often: reload then begins anew. */
    }
  }

  found() {
    return history.state?.v === VERSION ? history.state : null;
  }

  forget() {
    clearTimeout(this.#timer);
    history.replaceState(null, "", location.pathname + location.search);
  }
}
