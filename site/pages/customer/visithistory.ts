// One visit: the state of each screen is in the browser's own history entry, so Back, Forward
// and reloading work and nothing else is stored.

import type { CarFile } from "../shared/carfile.ts";
import type { Step } from "../shared/flow.ts";
import type { Origin } from "../shared/linkcontent.ts";
import type { CarNote } from "../shared/replies.ts";
import type { RangeBefore } from "../shared/requests.ts";

const VERSION = 1;

/** Answers that the car file does not have ("no", "not sure"), by the step that asks. */
export type Said = Partial<Record<Step, string>>;

/** A further place that is not complete yet. */
export interface Draft {
  place?: string;
  kept?: string;
}

export interface VisitState {
  v: typeof VERSION;
  /** Entries with an earlier epoch than the newest erasure are wiped when they come up. */
  epoch: number;
  /** Which car of this visit the entry is about: going back within one car keeps the newest
   *  answers, so nobody has to give an answer twice. */
  of: string;
  step: Step;
  car: CarFile;
  said: Said;
  draft?: Draft | null;
  /** The range before the last answer, for "moved the range from … to". */
  before?: RangeBefore | null;
  /** What the axis reaches to, in minor units of money. */
  axis?: number;
  /** What the file did not say, as the engine told when it was opened. */
  notes?: CarNote[];
  /** Where the answers came from, when not from this visitor. */
  from?: Origin;
  /** The visitor came here from the range to change one answer. */
  changing?: boolean | undefined;
  /** Later answers are saved on this device too. */
  keeping?: boolean;
  /** The stamp under which this car was saved. */
  stamp?: string | undefined;
}

/** Draws a state. moved: the visitor came to it by a step, so it is not the first one. */
type Show = (state: VisitState, how: { moved: boolean }) => void;

const newCarId = (): string => `${Date.now()}`;
const start = (car: CarFile, epoch: number): VisitState => ({
  v: VERSION,
  epoch,
  of: newCarId(),
  step: "body",
  car,
  said: {},
});

/** A state that this version wrote into an entry of the history. */
const isOurs = (state: VisitState | null): state is VisitState => state?.v === VERSION;

export class VisitHistory {
  state: VisitState;
  #show: Show;

  constructor(blank: CarFile, show: Show) {
    this.#show = show;
    const found: VisitState | null = history.state;
    this.state = isOurs(found) ? found : start(blank, 0);
    history.replaceState(this.state, "");
    addEventListener("popstate", ({ state }) => this.#pop(state, blank));
  }

  #pop(state: VisitState | null, blank: CarFile): void {
    const usable = isOurs(state) && state.epoch >= this.state.epoch;
    if (!usable) this.state = start(blank, this.state.epoch);
    else if (state.of === this.state.of)
      this.state = { ...this.state, step: state.step, changing: state.changing };
    else this.state = state;
    history.replaceState(this.state, "");
    this.#show(this.state, { moved: true });
  }

  /** Goes on to another screen. other: with another car than before. */
  go(changes: Partial<VisitState>, { other = false } = {}): void {
    this.state = { ...this.state, ...(other ? { of: newCarId() } : {}), ...changes };
    history.pushState(this.state, "");
    this.#show(this.state, { moved: true });
  }

  /** Changes the present screen without a step for Back. */
  amend(changes: Partial<VisitState>): void {
    this.state = { ...this.state, ...changes };
    history.replaceState(this.state, "");
  }

  back(): void {
    history.back();
  }

  /** Forgets everything; older entries of the history are wiped as they come up. */
  erase(blank: CarFile): void {
    this.state = start(blank, Date.now());
    history.pushState(this.state, "");
    this.#show(this.state, { moved: true });
  }
}
