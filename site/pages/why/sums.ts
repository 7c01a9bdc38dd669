// What the talk needs of the engine, worked out in the order of its pages while
// it is being told; a page that is opened early goes to the front.

import { button, el } from "../shared/dom.ts";
import { Gathered, isDone, isRough } from "../shared/thiscar/gather.ts";

/** A range only for its stage and its lines in words: rough is good enough. */
function wanted(car) {
  const all = [
    ["twenty", { ask: "twenty", car }, false],
    ["range", { ask: "range", effort: "rough", car }, false],
    ["two_ways", { ask: "two_ways", car }, false],
  ];
  if (car.stages?.length) all.push(["before_after", { ask: "before_after", car }, true]);
  return [...all, ["worth", { ask: "worth", car, for: "shop" }, true], ["wide", { ask: "wide", car }, true]];
}

const IN_ONE_GO = ["range"];
const settled = (name, reply) =>
  IN_ONE_GO.includes(name) ? Boolean(reply) : Boolean(reply) && !isRough(reply);

export class Sums {
  replies = new Map();
  #gathered;
  #car = null;
  #first = null;
  #changed;

  /** changed() after every answer, rough ones included. */
  constructor(link, changed) {
    this.#gathered = new Gathered(link);
    this.#changed = changed;
  }

  /** Begins on a car, or goes on with it. */
  begin(car) {
    if (this.#car !== car) this.#first = null;
    this.#car = car;
    this.replies = this.#gathered.about(car);
    this.#run();
  }

  leave() {
    this.#car = null;
    this.#gathered.leave();
  }

  get #ahead() {
    return wanted(this.#car).filter(([name]) => !settled(name, this.replies.get(name)));
  }

  #run() {
    const ahead = this.#ahead;
    const at = ahead.findIndex(([name]) => name === this.#first);
    if (at > 0) ahead.unshift(...ahead.splice(at, 1));
    this.#gathered.fetch(this.#car, ahead, () => this.#changed());
  }

  /** Somebody looks at the page that needs this: it is worked out next, unless
   *  it is short enough to be waited for in its place. */
  first(name) {
    const [next] = this.#ahead;
    if (!next || next[0] === name || this.#first === name || !["worth", "wide"].includes(name)) return;
    this.#first = name;
    if (["worth", "wide"].includes(next[0])) this.#run();
  }

  again(name) {
    this.replies.delete(name);
    this.#run();
  }

  /** How far all is that the paper stands on: whole, working or gaps. */
  get state() {
    if (!this.#car || this.#ahead.length) return "working";
    return wanted(this.#car).every(([name]) => name === "range" || isDone(this.replies.get(name)))
      ? "whole"
      : "gaps";
  }
}

/** What stands in the place of an answer that is not there, or null. A refusal
 *  names what is wrong; an engine that did not answer can be asked again. */
export function missing(reply, again) {
  if (!reply) return el("p", { class: "working" }, "Working it out.");
  if (reply.kind !== "refused" && reply.kind !== "broken") return null;
  if (reply.path)
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

/** "working out: 3 of 12", while an answer is on its way; else nothing. */
export function progress(reply) {
  if (reply && !isRough(reply)) return null;
  const far = reply?.of > 0 ? `: ${reply.done.toLocaleString("en")} of ${reply.of.toLocaleString("en")}` : "";
  return el("p", { class: "working" }, `Working out${far}.`);
}
