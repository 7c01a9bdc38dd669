// One visit: the state of each screen lies in the browser's own history entry,
// so Back, Forward and reload work and nothing else is stored.
//
// state: {v, epoch, of, step, car, said, draft, before, axis, notes, from, changing, keeping}
//   of      which car of this visit the entry is about: going back within one
//           car keeps the newest answers, so nothing has to be given twice
//   said    answers that the car file does not carry ("no", "not sure")
//   draft   a further place that is not finished yet
//   before  the range before the last answer, for "moved the range from … to"
//   notes   what the file did not say, as the engine told when it was opened
//   from    where the answers came from when not from this visitor

const VERSION = 1;
const start = (car, epoch) => ({ v: VERSION, epoch, of: `${Date.now()}`, step: "body", car, said: {} });

export class Visit {
  #show;
  state;

  /** show(state, {moved}) draws a state; moved is false for the first one. */
  constructor(blank, show) {
    this.#show = show;
    const found = history.state;
    this.state = found?.v === VERSION ? found : start(blank, 0);
    history.replaceState(this.state, "");
    addEventListener("popstate", ({ state }) => this.#pop(state, blank));
  }

  #pop(state, blank) {
    // Entries from before an erasure are wiped when they come up again.
    const usable = state?.v === VERSION && state.epoch >= this.state.epoch;
    if (!usable) this.state = start(blank, this.state.epoch);
    else if (state.of === this.state.of)
      this.state = { ...this.state, step: state.step, changing: state.changing };
    else this.state = state;
    history.replaceState(this.state, "");
    this.#show(this.state, { moved: true });
  }

  /** Goes on to another screen; other: with another car than before. */
  go(changes, { other = false } = {}) {
    this.state = { ...this.state, ...(other ? { of: `${Date.now()}` } : {}), ...changes };
    history.pushState(this.state, "");
    this.#show(this.state, { moved: true });
  }

  /** Changes the present screen without a step for Back. */
  amend(changes) {
    this.state = { ...this.state, ...changes };
    history.replaceState(this.state, "");
  }

  back() {
    history.back();
  }

  /** Forgets everything; older entries of the history are wiped as they come up. */
  erase(blank) {
    this.state = start(blank, Date.now());
    history.pushState(this.state, "");
    this.#show(this.state, { moved: true });
  }
}
