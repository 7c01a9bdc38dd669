// What the talk asks the engine. It is worked out in the order of the pages while people
// talk; what a page needs that is opened early comes first.

import type { CarFile } from "../shared/carfile.ts";
import { button, el } from "../shared/dom.ts";
import type { EngineClient } from "../shared/engineclient.ts";
import type { EngineReply } from "../shared/replies.ts";
import { type EngineRequest, isRefusal } from "../shared/requests.ts";
import { Gathered, isRough, type Replies, replyOf } from "../shared/thiscar/gather.ts";

/** What the pages of the talk need. */
export type Need = "twenty" | "range" | "two_ways" | "before_after" | "worth" | "wide";

/** How complete the paper is: it has everything, something is still being worked out, or
 *  something could not be worked out. */
export type Completeness = "whole" | "working" | "gaps";

type ReplyOfKind<K extends EngineReply["kind"]> = Extract<EngineReply, { kind: K }>;
type Wanted = readonly [name: Need, request: EngineRequest<Need>, refines: boolean];

/** The paper uses only the range's next stage and its lines in words, so a rough range is
 *  good enough. */
function wanted(car: CarFile): Wanted[] {
  const all: Wanted[] = [
    ["twenty", { ask: "twenty", car }, false],
    ["range", { ask: "range", effort: "rough", car }, false],
    ["two_ways", { ask: "two_ways", car }, false],
  ];
  if (car.stages?.length) all.push(["before_after", { ask: "before_after", car }, true]);
  all.push(["worth", { ask: "worth", car, for: "shop" }, true], ["wide", { ask: "wide", car }, true]);
  return all;
}

/** These two take seconds; the others are short. */
const isLong = (name: Need) => name === "worth" || name === "wide";

const settled = (name: Need, reply: EngineReply | undefined) =>
  reply !== undefined && (name === "range" || !isRough(reply));

/** The answer to a request, rough or done; null where there is none yet and where the
 *  engine refused or failed. */
export function answer<K extends Need>(replies: Replies, name: K): ReplyOfKind<K> | null {
  return replyOf<K>(replies, name, name);
}

/** The same, once it is as good as it will be. */
export function doneAnswer<K extends Need>(replies: Replies, name: K): ReplyOfKind<K> | null {
  const reply = answer(replies, name);
  return reply && !isRough(reply) ? reply : null;
}

export class Sums {
  #replies = new Map<string, EngineReply>();
  #gathered: Gathered;
  #car: CarFile | null = null;
  #first: Need | null = null;
  #changed: () => void;

  /** changed is called after every reply, rough ones included. */
  constructor(engine: EngineClient, changed: () => void) {
    this.#gathered = new Gathered(engine);
    this.#changed = changed;
  }

  get replies(): Replies {
    return this.#replies;
  }

  /** Begins with a car, or goes on with it. */
  begin(car: CarFile): void {
    if (this.#car !== car) this.#first = null;
    this.#car = car;
    this.#run(car);
  }

  #ahead(car: CarFile): Wanted[] {
    return wanted(car).filter(([name]) => !settled(name, this.#replies.get(name)));
  }

  #run(car: CarFile): void {
    this.#replies = this.#gathered.about(car);
    const ahead = this.#ahead(car);
    const at = ahead.findIndex(([name]) => name === this.#first);
    if (at > 0) ahead.unshift(...ahead.splice(at, 1));
    this.#gathered.fetch(car, ahead, () => this.#changed());
  }

  /** Somebody opened the page that needs this, so it is worked out next. Short work is
   *  left in its place. */
  first(name: Need): void {
    if (!this.#car || !isLong(name)) return;
    const [next] = this.#ahead(this.#car);
    if (!next || next[0] === name || this.#first === name) return;
    this.#first = name;
    if (isLong(next[0])) this.#run(this.#car);
  }

  again(name: Need): void {
    if (!this.#car) return;
    this.#replies.delete(name);
    this.#run(this.#car);
  }

  get completeness(): Completeness {
    const car = this.#car;
    if (!car || this.#ahead(car).length) return "working";
    const whole = wanted(car).every(([name]) => name === "range" || doneAnswer(this.#replies, name));
    return whole ? "whole" : "gaps";
  }
}

/** What the page shows instead of a reply: that it is being worked out, or what is wrong.
 *  Null when there is an answer. A refusal names the entry that is wrong; if the engine
 *  did not answer, again asks once more. */
export function missing(reply: EngineReply | undefined, again: (() => void) | null): HTMLElement | null {
  if (!reply) return el("p", { class: "working" }, "Working it out.");
  if (!isRefusal(reply)) return null;
  if (reply.kind === "refused" && reply.path)
    return el(
      "div",
      { class: "error" },
      el("p", {}, reply.text),
      el("p", {}, "No figure is shown until this is put right."),
    );
  return el(
    "div",
    { class: "error" },
    el("p", {}, "The sums did not answer, so no figure is shown here."),
    again && button("Try once more", again),
  );
}

/** "Working out: 3 of 12" until the reply is done, then null. */
export function progress(reply: EngineReply | undefined): HTMLElement | null {
  if (reply && !isRough(reply)) return null;
  const count = (n: number) => n.toLocaleString("en");
  const far = reply && "of" in reply && reply.of > 0 ? `: ${count(reply.done)} of ${count(reply.of)}` : "";
  return el("p", { class: "working" }, `Working out${far}.`);
}
