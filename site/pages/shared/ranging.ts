// Asks for the range of a car and remembers the answers, so that Back shows a range at once.
// Only the newest car matters: a new request overtakes the older ones.

import type { CarFile } from "./carfile.ts";
import { type EngineClient, Overtaken } from "./engineclient.ts";
import type { BrokenReply, RangeReply, RefusedReply } from "./replies.ts";
import type { RangeBefore, ReplyTo } from "./requests.ts";

/** A range, or why there is none. */
export type RangeAnswer = RangeReply | RefusedReply | BrokenReply;

const MOST_REMEMBERED = 16;

export class Ranging {
  #engine: EngineClient;
  #answered = new Map<string, RangeReply>();
  #asked: string | null = null;
  #axis = 0;

  /** axis: what the axis reaches to at least, in minor units of money. */
  constructor(engine: EngineClient, axis: number | undefined) {
    this.#engine = engine;
    this.#axis = axis ?? 0;
  }

  /** The money that the axis reaches to, in minor units; within a visit it only grows. */
  get axis(): number {
    return this.#axis;
  }

  #key(car: CarFile, before: RangeBefore | null | undefined): string {
    return JSON.stringify([car, before ?? null, this.#axis]);
  }

  /** Calls update(reply, last) with every answer, and no more once another car was asked for.
   *  before: the range before the last answer of the customer. */
  async want(
    car: CarFile,
    before: RangeBefore | null | undefined,
    update: (reply: RangeAnswer, last: boolean) => void,
  ): Promise<void> {
    const known = this.#answered.get(this.#key(car, before));
    if (known) {
      this.#asked = null;
      update(known, true);
      return;
    }
    this.#asked = JSON.stringify(car);
    const request = {
      car,
      ...(before ? { before } : {}),
      ...(this.#axis ? { axis_at_least: this.#axis } : {}),
    };
    const took = (reply: ReplyTo<"range">, last: boolean): void => {
      if (reply.kind !== "range") {
        update(reply, last);
        return;
      }
      // The short reply of a quiet slice has no range; the worker does not pass it on.
      if (!("rows" in reply)) return;
      this.#axis = Math.max(this.#axis, reply.axis.max_minor);
      if (last) this.#remember(this.#key(car, before), reply);
      update(reply, last);
    };
    try {
      took(await this.#engine.range(request, (reply) => took(reply, false)), true);
    } catch (error) {
      if (!(error instanceof Overtaken)) throw error;
    }
  }

  /** The share of cars below an amount. The engine answers for the last car that it was asked
   *  about, so it may be asked about this one first. */
  async cover(car: CarFile, sum: string): Promise<ReplyTo<"cover">> {
    if (this.#asked !== JSON.stringify(car)) {
      this.#asked = JSON.stringify(car);
      await this.#engine.range({ car }, () => {});
    }
    return this.#engine.ask({ ask: "cover", sum });
  }

  #remember(key: string, reply: RangeReply): void {
    this.#answered.set(key, reply);
    const [oldest] = this.#answered.keys();
    if (this.#answered.size > MOST_REMEMBERED && oldest !== undefined) this.#answered.delete(oldest);
  }
}
