// One visit: the state of each screen lies in the browser's own history entry,
// so Back, Forward and reload work and nothing else is stored.
//
// state: {v, epoch, step, car, said, draft, before, axis, from, changing, kept}
//   said    answers that the car file does not carry ("no", "not sure")
//   draft   a further place that is not finished yet
//   before  the range before the last answer, for "moved the range from … to"
//   from    where the answers came from when not from this visitor

const VERSION = 1;

export class Visit {
  #show;
  state;

  /** show(state, {moved}) draws a state; moved is false for the first one. */
  constructor(blank, show) {
    this.#show = show;
    const found = history.state;
    this.state = found?.v === VERSION ? found : { v: VERSION, epoch: 0, step: "body", car: blank, said: {} };
    history.replaceState(this.state, "");
    addEventListener("popstate", ({ state }) => this.#pop(state, blank));
  }

  #pop(state, blank) {
    // Entries from before an erasure are wiped when they come up again.
    const usable = state?.v === VERSION && state.epoch >= this.state.epoch;
    this.state = usable ? state : { v: VERSION, epoch: this.state.epoch, step: "body", car: blank, said: {} };
    if (!usable) history.replaceState(this.state, "");
    this.#show(this.state, { moved: true });
  }

  /** Goes on to another screen. */
  go(changes) {
    this.state = { ...this.state, ...changes };
    history.pushState(this.state, "");
    this.#show(this.state, { moved: true });
  }

  /** Changes the present screen without a step for Back. */
  amend(changes) {
    this.state = { ...this.state, ...changes };
    history.replaceState(this.state, "");
  }

  back() { history.back(); }

  /** Forgets everything; older entries of the history are wiped as they come up. */
  erase(blank) {
    this.state = { v: VERSION, epoch: Date.now(), step: "body", car: blank, said: {} };
    history.pushState(this.state, "");
    this.#show(this.state, { moved: true });
  }
}
