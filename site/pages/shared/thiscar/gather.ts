// The papers are made from the engine's replies about one car. Each is asked for once, one
// after the other, because a newer request that refines takes the place of an older one.
// Another car starts again.

import type { CarFile } from "../carfile.ts";
import { type EngineClient, Overtaken } from "../engineclient.ts";
import type { BrokenReply, EngineReply, RangeReply, RefusedReply, State } from "../replies.ts";
import { type EngineRequest, isRefusal } from "../requests.ts";

/** The replies about one car so far, each under the name that it was asked for under. */
export type Replies = ReadonlyMap<string, EngineReply>;

/** A reply to ask for. refines: the engine answers it better and better. */
export type Wanted = readonly [name: string, request: EngineRequest, refines: boolean];

type ReplyOf<K extends EngineReply["kind"]> = Extract<EngineReply, { kind: K }>;

export class Gathered {
  #engine: EngineClient;
  #car: CarFile | null = null;
  #replies = new Map<string, EngineReply>();
  #turn = 0;

  constructor(engine: EngineClient) {
    this.#engine = engine;
  }

  /** The replies about this car so far. Those about another car are forgotten. */
  about(car: CarFile): Map<string, EngineReply> {
    if (this.#car !== car) {
      this.#car = car;
      this.#replies = new Map();
    }
    return this.#replies;
  }

  /** Nobody waits any more for what was asked. */
  leave(): void {
    this.#turn++;
  }

  /** Asks for everything that is wanted and not there yet, and calls changed after every
   *  reply, rough ones included. Resolves to false when something newer took its place. */
  async fetch(
    car: CarFile,
    wanted: readonly Wanted[],
    changed: (replies: Replies) => void,
  ): Promise<boolean> {
    const turn = ++this.#turn;
    const replies = this.about(car);
    const current = () => turn === this.#turn && this.#car === car;
    for (const [name, request, refines] of wanted) {
      const had = replies.get(name);
      if (had && !isRough(had)) continue;
      const took = (reply: EngineReply) => {
        if (current()) {
          replies.set(name, reply);
          changed(replies);
        }
      };
      try {
        took(refines ? await this.#engine.refine(request, took) : await this.#engine.ask(request));
      } catch (error) {
        if (!current() || error instanceof Overtaken) return false;
        took({
          id: 0,
          kind: "refused",
          what: "request",
          text: "The sums did not answer. What is recorded is safe; open this paper once more.",
        });
      }
      if (!current()) return false;
    }
    return true;
  }
}

/** The reply under a name if it is of this kind, rough or not. */
export function replyOf<K extends EngineReply["kind"]>(
  replies: Replies,
  name: string,
  kind: K,
): ReplyOf<K> | null {
  const reply = replies.get(name);
  return reply && isKind(reply, kind) ? reply : null;
}

const isKind = <K extends EngineReply["kind"]>(reply: EngineReply, kind: K): reply is ReplyOf<K> =>
  reply.kind === kind;

/** The range under a name, rough or not, with its rows. */
export function rangeOf(replies: Replies, name = "range"): RangeReply | null {
  const reply = replyOf(replies, name, "range");
  return reply && "rows" in reply ? reply : null;
}

export type Failure = RefusedReply | BrokenReply;

/** What stands in the way of the answer under a name, or null. */
export function failureOf(replies: Replies, name: string): Failure | null {
  const reply = replies.get(name);
  return reply && isRefusal(reply) ? reply : null;
}

export const isRough = (reply: EngineReply | { state?: State } | null | undefined): boolean =>
  Boolean(reply && "state" in reply && (reply.state === "rough" || reply.state === "refining"));

/** Whether a reply is there, answers what was asked, and is as good as it will be. */
export const isDone = (reply: EngineReply | null | undefined): boolean =>
  Boolean(reply && !isRefusal(reply) && !isRough(reply));
