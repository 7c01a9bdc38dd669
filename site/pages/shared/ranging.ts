// Asks for the range of a car and keeps what was answered, so that Back shows a
// range at once. Only the newest car matters: older requests are overtaken.

import { Overtaken } from "./engineclient.ts";

const MOST_KEPT = 16;

export class Ranging {
  #link;
  #answered = new Map();
  #asked = null;
  #axis = 0;

  constructor(link, axis) {
    this.#link = link;
    this.#axis = axis ?? 0;
  }

  /** The money the axis reaches to; within a visit it only grows. */
  get axis() {
    return this.#axis;
  }

  #key(car, before) {
    return JSON.stringify([car, before ?? null, this.#axis]);
  }

  /** update(reply, last) for every answer. Nothing is called once overtaken. */
  async want(car, before, update) {
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
    try {
      const last = await this.#link.range(request, (reply) => {
        this.#grow(reply);
        update(reply, false);
      });
      this.#grow(last);
      if (last.kind === "range") this.#remember(this.#key(car, before), last);
      update(last, true);
    } catch (error) {
      if (!(error instanceof Overtaken)) throw error;
    }
  }

  /** The share of cars below a sum; the engine answers for the last car asked. */
  async cover(car, sum) {
    if (this.#asked !== JSON.stringify(car)) {
      this.#asked = JSON.stringify(car);
      await this.#link.range({ car }, () => {});
    }
    return this.#link.ask({ ask: "cover", sum });
  }

  #grow(reply) {
    if (reply.kind === "range") this.#axis = Math.max(this.#axis, reply.axis.max_minor);
  }

  #remember(key, reply) {
    this.#answered.set(key, reply);
    if (this.#answered.size > MOST_KEPT) this.#answered.delete(this.#answered.keys().next().value);
  }
}
