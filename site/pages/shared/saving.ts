// Saving the same thing on this device again and again, and noticing when another tab has saved
// or erased it in between. What a person sees of it is in savepanel.ts.

import { type Found, type Saved, type Store, stampOf } from "./storage.ts";
import { moment } from "./timestamp.ts";

/** What a tab knows of its own saving. */
export interface SavingState {
  /** Whether this tab saves. */
  on: boolean;
  /** The stamp of the entry that this tab saved last or went on from. */
  stamp: string | undefined;
}

export interface SavingHost<T extends object, More extends object> {
  store: Store<T, More>;
  /** Where the state is, if it has to outlive this page. */
  state?: { get(): SavingState; set(state: SavingState): void };
  /** What an entry has as its time; the moment if this is left out. */
  when?(): string;
  /** Another tab has saved or erased the entry, so this tab has stopped saving. */
  other(found: Found<T, More>): void;
}

/** What came of saving. off: this tab does not save. other: another tab has saved meanwhile, so
 *  nothing was written. refused: the device has no room, or its storage is switched off. */
export type Outcome = "off" | "saved" | "refused" | "other";

function inMemory(): { get(): SavingState; set(state: SavingState): void } {
  let state: SavingState = { on: false, stamp: undefined };
  return {
    get: () => state,
    set: (next) => {
      state = next;
    },
  };
}

export class Saving<T extends object, More extends object = object> {
  #host: SavingHost<T, More>;
  #state: { get(): SavingState; set(state: SavingState): void };

  constructor(host: SavingHost<T, More>) {
    this.#host = host;
    this.#state = host.state ?? inMemory();
    host.store.whenOtherTabSaves((found) => {
      if (this.on && !this.#isOwn(found)) this.#stopFor(found);
    });
  }

  /** Whether this tab saves. */
  get on(): boolean {
    return this.#state.get().on;
  }
  set on(on: boolean) {
    this.#state.set({ ...this.#state.get(), on });
  }

  /** Saves once more, if this tab saves and no other tab has saved since. */
  save(thing: T, more?: More): Outcome {
    if (!this.on) return "off";
    // A page that slept in the history was not told what other tabs have saved since.
    const found = this.#host.store.load();
    if (found && !this.#isOwn(found)) {
      this.#stopFor(found);
      return "other";
    }
    return this.write(thing, more) ? "saved" : "refused";
  }

  /** Saves in place of whatever is saved, and goes on saving; false when the device refuses. */
  write(thing: T, more?: More): boolean {
    const { store, when } = this.#host;
    const stamp = `${Date.now()} ${Math.random().toString(36).slice(2)}`;
    const done = store.save(thing, when ? when() : moment(), stamp, more);
    if (done) this.#state.set({ on: true, stamp });
    return done;
  }

  /** What was found on this device is now open here, and this tab saves it. */
  goOn(found: Saved<T, More>): void {
    this.#state.set({ on: true, stamp: found.stamp });
  }

  /** Something else is open now: what is saved stays as it is. */
  stop(): void {
    this.#state.set({ on: false, stamp: undefined });
  }

  /** An entry that cannot be read is somebody else's, perhaps a newer page's. */
  #isOwn(found: Found<T, More>): boolean {
    return found !== null && found !== "unreadable" && stampOf(found) === this.#state.get().stamp;
  }

  #stopFor(found: Found<T, More>): void {
    this.on = false;
    this.#host.other(found);
  }
}
