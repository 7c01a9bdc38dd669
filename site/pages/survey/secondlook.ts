// Entries that are very unlike the rest of the car, as the engine names them. The engine's
// newest answer counts. An entry leaves the list as soon as it is changed, or when the
// estimator says that it is right.

import type { CarFile, Condition } from "../shared/carfile.ts";
import type { LookAgain, LookAgainReply } from "../shared/replies.ts";
import { standing } from "../shared/thiscar/record.ts";

/** An entry with the condition for which it was named. */
interface Named extends LookAgain {
  condition: Condition | undefined;
}

export class SecondLooks {
  #named: readonly Named[] = [];

  /** reply: the engine's answer about this car. */
  took(reply: LookAgainReply, car: CarFile): void {
    this.#named = reply.look_again.map((one) => ({ ...one, condition: standing(car, one.on)?.condition }));
  }

  forget(): void {
    this.#named = [];
  }

  /** The entries that are still as they were when they were named. */
  list(car: CarFile): readonly LookAgain[] {
    return this.#named.filter(({ on, condition }) => {
      const record = standing(car, on);
      return record?.condition && record.condition === condition && !record.sure;
    });
  }

  at(car: CarFile, on: string): LookAgain | null {
    return this.list(car).find((one) => one.on === on) ?? null;
  }
}
