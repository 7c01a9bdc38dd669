// A car that is saved nowhere is lost only when somebody says so twice.

import type { Frame } from "../shared/frame.ts";
import { leaveBand } from "./carbands.ts";
import type { OpenCar } from "./opencar.ts";

export class Leaving {
  #frame: Frame;
  #leave: () => void;
  /** Whether the page has asked already. */
  #asked = false;

  /** leave closes the car; called when somebody confirms. */
  constructor(frame: Frame, leave: () => void) {
    this.#frame = frame;
    this.#leave = leave;
  }

  /** Whether an unsaved car may be closed now; if not, the page asks. */
  mayLeave({ from }: OpenCar): boolean {
    if (this.#asked || from?.kind === "sample") {
      this.#asked = false;
      return true;
    }
    this.#asked = true;
    const lose = () => {
      this.#frame.put("leave", null);
      this.#leave();
    };
    const stay = () => {
      this.#asked = false;
      this.#frame.put("leave", null);
    };
    this.#frame.put("leave", leaveBand(lose, stay));
    scrollTo(0, 0);
    return false;
  }
}
