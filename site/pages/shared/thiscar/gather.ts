// What the papers are made from: the engine's replies about one car, each asked
// for once and one after the other, since a newer request that refines takes the
// place of an older one. Another car begins anew.

import { Overtaken } from "../engineclient.ts";

export class Gathered {
  #link;
  #car = null;
  #replies = new Map();
  #turn = 0;

  constructor(link) {
    this.#link = link;
  }

  /** The replies about this car so far; those of another car are forgotten. */
  about(car) {
    if (this.#car !== car) {
      this.#car = car;
      this.#replies = new Map();
    }
    return this.#replies;
  }

  /** Nobody waits any more for what was asked. */
  leave() {
    this.#turn++;
  }

  /** Asks for every one of wanted that is not there yet. wanted: [name, request,
   *  refines]; changed(replies) after each answer, rough ones included. Gives
   *  false when something newer took the place of this. */
  async fetch(car, wanted, changed) {
    const turn = ++this.#turn;
    const replies = this.about(car);
    const current = () => turn === this.#turn && this.#car === car;
    for (const [name, request, refines] of wanted) {
      if (replies.has(name) && !isRough(replies.get(name))) continue;
      const took = (reply) => {
        if (current()) {
          replies.set(name, reply);
          changed(replies);
        }
      };
      try {
        took(refines ? await this.#link.refine(request, took) : await this.#link.ask(request));
      } catch (error) {
        if (!current() || error instanceof Overtaken) return false;
        took({
          kind: "refused",
          text: "The sums did not answer. What is recorded is safe; open this paper once more.",
        });
      }
      if (!current()) return false;
    }
    return true;
  }
}

export const isRough = (reply) => reply?.state === "rough" || reply?.state === "refining";

/** Whether a reply is there, is of its kind and is as good as it will be. */
export const isDone = (reply) => Boolean(reply) && reply.kind !== "refused" && !isRough(reply);
