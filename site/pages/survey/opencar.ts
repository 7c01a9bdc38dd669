// The car in hand: what is recorded, what can be taken back, and what the
// engine says of it. Each change is kept before anything else happens, so that
// the last press is safe when the tab is closed.

import { MEMBERS, begin } from "../shared/thiscar/record.ts";
import { moment } from "../shared/timestamp.ts";
import { today } from "../shared/linkcontent.ts";
import { SecondLooks } from "./secondlook.ts";

const MOST_UNDO = 300;
/** Milliseconds without a press before the whole car is looked over (assumption). */
const PAUSE = 700;

export class Job {
  car = null;
  /** sheet: what recording does not change; tally: counts and faults. */
  sheet = null;
  tally = null;
  /** Entries that the engine wants looked at again. */
  again = new SecondLooks();
  /** How the page is set for this car; kept beside it, not in the car file. */
  ways = { down: false, keys: true, range: false, by: "customer" };
  from = null;
  #undo = new Map();
  #asking = false;
  #counted = null;
  #askAgain = false;
  #pause = 0;
  #host;

  /** host: link, rates() (check code), keep() (synchronous), told(what) where
   *  what is "car", "tally" or "sheet", failed(reply or null). */
  constructor(host) {
    this.#host = host;
  }

  /** Another car. The sheet must be the one of its body. */
  take(car, sheet, from, ways = {}) {
    this.car = car;
    this.sheet = sheet;
    this.tally = null;
    this.again.forget();
    this.again.took(sheet, car);
    this.from = from;
    this.ways = { ...this.ways, ...ways };
    this.#undo.clear();
  }

  /** One act. list: whose members it changes (see MEMBERS); stage: the stage it
   *  belongs to; at: where to stand when it is taken back. */
  act(list, next, { stage = null, at = null, said = "" } = {}) {
    if (next === this.car) return false;
    const before = this.car;
    const whole = stage ? begin(next, stage, today(), this.#host.rates()) : next;
    const added = (whole.stages ?? []).filter((s) => !(before.stages ?? []).includes(s)).map((s) => s.stage);
    if (MEMBERS[list]) {
      const stack = this.#undo.get(list) ?? [];
      stack.push({ members: MEMBERS[list].map((name) => [name, before[name]]), added, at, said });
      if (stack.length > MOST_UNDO) stack.shift();
      this.#undo.set(list, stack);
    }
    this.#set(whole);
    return true;
  }

  /** Takes back the last act of a list; gives what it was, or null. */
  takeBack(list) {
    const last = this.#undo.get(list)?.pop();
    if (!last) return null;
    const car = { ...this.car };
    for (const [name, value] of last.members)
      if (value === undefined) delete car[name];
      else car[name] = value;
    if (last.added.length) {
      car.stages = car.stages.filter((s) => !last.added.includes(s.stage));
      if (car.stages.length === 0) delete car.stages;
    }
    this.#set(car);
    return last;
  }

  canTakeBack(list) {
    return (this.#undo.get(list)?.length ?? 0) > 0;
  }

  /** Changes answers: nothing to take back, and another sheet may belong to it. */
  async answered(car) {
    const other =
      JSON.stringify([car.bodies, car.options]) !== JSON.stringify([this.car.bodies, this.car.options]);
    if (other) {
      const sheet = await this.#host.link.ask({ ask: "sheet", car });
      if (sheet.kind !== "sheet") {
        this.#host.failed(sheet);
        return false;
      }
      this.sheet = sheet;
      this.again.took(sheet, car);
      this.#undo.clear();
      this.#host.told("sheet");
    }
    this.#set(car);
    return true;
  }

  setWays(ways) {
    this.ways = { ...this.ways, ...ways };
    this.#host.keep();
  }

  #set(car) {
    this.car = car;
    this.#host.keep();
    this.#host.told("car");
    this.count();
  }

  /** Asks for the counts; several changes while one is under way ask once more. */
  async count() {
    this.#askAgain = true;
    if (this.#asking) return;
    this.#asking = true;
    try {
      while (this.#askAgain) {
        this.#askAgain = false;
        const car = this.car;
        const reply = await this.#host.link.ask({ ask: "tally", car });
        if (car !== this.car) {
          this.#askAgain = true;
          continue;
        }
        if (reply.kind === "tally") {
          this.tally = reply;
          this.#counted = car;
          this.again.took(reply, car);
          this.#host.told("tally");
          this.#askLater(car);
        } else this.#host.failed(reply);
      }
    } catch {
      this.#host.failed(null);
    } finally {
      this.#asking = false;
    }
  }

  /** Asks which entries are very unlike the rest of the car, once nobody has pressed
   *  anything for a moment: it takes the odds of the whole car. */
  #askLater(car) {
    clearTimeout(this.#pause);
    if (!car.survey?.length) {
      this.again.forget();
      return;
    }
    this.#pause = setTimeout(async () => {
      try {
        const reply = await this.#host.link.ask({ ask: "look_again", car });
        if (car !== this.car || reply.kind !== "look_again") return;
        this.again.took(reply, car);
        this.#host.told("tally");
      } catch {
        /* the engine is being started again; the next press asks anew */
      }
    }, PAUSE);
  }

  /** The car file: as the engine writes it, or as it stands where the engine has
   *  not read the last press yet or refuses an entry. */
  text() {
    return (this.#counted === this.car && this.tally?.canonical) || JSON.stringify(this.car);
  }

  /** The fault at an item, or null. */
  faultOn(on) {
    return this.tally?.faults?.find((f) => f.on === on) ?? null;
  }

  now() {
    return moment();
  }
}
