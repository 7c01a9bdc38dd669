// The page's state in this tab's own history entry, so that reloading works without anything
// being stored on the device. Browsers stop listening to a page that writes there too often,
// so quick presses share one write.

const VERSION = 1;
/** Chromium allows 200 writes in ten seconds; this makes at most a hundred. */
const APART_MS = 100;

export class HistoryState<T extends object> {
  #timer = 0;
  #last = 0;
  #state: () => T | null;

  /** state gives what is to be written, or null. */
  constructor(state: () => T | null) {
    this.#state = state;
    for (const name of ["beforeunload", "pagehide"]) addEventListener(name, () => this.#write());
  }

  /** Writes the state soon: now, or once enough time has passed since the last write. */
  later(): void {
    clearTimeout(this.#timer);
    const wait = this.#last + APART_MS - performance.now();
    if (wait <= 0) this.#write();
    else this.#timer = setTimeout(() => this.#write(), wait);
  }

  #write(): void {
    clearTimeout(this.#timer);
    const state = this.#state();
    if (!state) return;
    this.#last = performance.now();
    try {
      history.replaceState({ v: VERSION, ...state }, "");
    } catch {
      // Too large or too often: then a reload begins anew.
    }
  }

  /** What a page of this version wrote before it was reloaded, or null. */
  found(): T | null {
    return history.state?.v === VERSION ? history.state : null;
  }

  forget(): void {
    clearTimeout(this.#timer);
    history.replaceState(null, "", location.pathname + location.search);
  }
}
