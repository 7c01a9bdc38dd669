// The car that is open: what is recorded, what Undo restores, and what the engine says
// about it. Every change is saved before anything else happens, so that the last press is
// safe when the tab is closed.

import type { CarFile, Stage } from "../shared/carfile.ts";
import type { SurveyExtra } from "../shared/durablestorage.ts";
import type { EngineClient } from "../shared/engineclient.ts";
import { type Origin, today } from "../shared/linkcontent.ts";
import type { SheetReply, TallyFault, TallyReply } from "../shared/replies.ts";
import { type ActList, MEMBERS, type Member } from "../shared/thiscar/carmembers.ts";
import type { ThisCar } from "../shared/thiscar/context.ts";
import type { Failure } from "../shared/thiscar/gather.ts";
import { begin } from "../shared/thiscar/record.ts";
import { SecondLooks } from "./secondlook.ts";

const MOST_UNDO = 300;
/** Milliseconds without a press before the engine looks over the whole car (assumption). */
const PAUSE = 700;

/** How the page is set for this car. It is saved beside the car, not in the car file. */
export type Settings = SurveyExtra["ways"];

type StageID = Stage["stage"];

/** What belongs to an entry beside the change itself. */
export interface ActNote {
  /** The stage that the entry belongs to and so begins. */
  stage?: StageID | null;
  /** The entry to go to when it is undone. */
  at?: string | null;
  /** What Undo says. */
  said?: string;
}

/** An entry that can be undone. */
interface Done {
  before: CarFile;
  stagesAdded: readonly StageID[];
  at: string | null;
  said: string;
}

export interface OpenCarHost {
  engine: EngineClient;
  /** The codes of the shop's rates and of the program's own figures. */
  codes(): { rates: string; figures: string };
  /** Saves the car, at once. */
  save(): void;
  /** What has changed. */
  told(what: "car" | "tally" | "sheet"): void;
  /** The engine refused the car, or failed; null when it did not answer. */
  failed(reply: Failure | null): void;
}

export class OpenCar implements ThisCar {
  tally: TallyReply | null = null;
  from: Origin | null = null;
  /** Entries that the engine wants a second look at. */
  secondLooks = new SecondLooks();
  settings: Settings = { down: false, keys: true, range: false, by: "customer" };
  #car: CarFile | null = null;
  #sheet: SheetReply | null = null;
  #undo = new Map<ActList, Done[]>();
  #asking = false;
  #askAgain = false;
  #counted: CarFile | null = null;
  #pause = 0;
  #host: OpenCarHost;

  constructor(host: OpenCarHost) {
    this.#host = host;
  }

  get hasCar(): boolean {
    return this.#car !== null;
  }

  /** Throws while no car is open; so does sheet. */
  get car(): CarFile {
    if (!this.#car) throw new Error("no car is open");
    return this.#car;
  }

  /** Everything about its body that recording does not change. */
  get sheet(): SheetReply {
    if (!this.#sheet) throw new Error("no car is open");
    return this.#sheet;
  }

  /** Whether this is still the car as it is recorded now. */
  is(car: CarFile | null): boolean {
    return this.#car === car;
  }

  /** Opens another car. sheet: the one of its body. */
  take(car: CarFile, sheet: SheetReply, from: Origin | null, settings: Partial<Settings> = {}): void {
    this.#car = car;
    this.#sheet = sheet;
    this.tally = null;
    this.secondLooks.forget();
    this.from = from;
    this.settings = { ...this.settings, ...settings };
    this.#undo.clear();
  }

  close(): void {
    this.#car = null;
  }

  /** Makes an entry. list: the list that it was made in, with an Undo of its own. False when
   *  it changes nothing. */
  act(list: ActList, next: CarFile, { stage = null, at = null, said = "" }: ActNote = {}): boolean {
    const before = this.car;
    if (next === before) return false;
    const whole = stage ? begin(next, stage, today(), this.#host.codes()) : next;
    const stagesAdded = (whole.stages ?? [])
      .filter((s) => !(before.stages ?? []).includes(s))
      .map((s) => s.stage);
    if (MEMBERS[list].length) {
      const stack = this.#undo.get(list) ?? [];
      stack.push({ before, stagesAdded, at, said });
      if (stack.length > MOST_UNDO) stack.shift();
      this.#undo.set(list, stack);
    }
    this.#set(whole);
    return true;
  }

  /** Undoes the last entry of a list. Returns what it was, or null where there is none. */
  undo(list: ActList): Pick<Done, "at" | "said"> | null {
    const last = this.#undo.get(list)?.pop();
    if (!last) return null;
    const car = { ...this.car };
    for (const name of MEMBERS[list]) restore(car, last.before, name);
    if (last.stagesAdded.length) {
      const left = (car.stages ?? []).filter((s) => !last.stagesAdded.includes(s.stage));
      if (left.length) car.stages = left;
      else delete car.stages;
    }
    this.#set(car);
    return last;
  }

  /** Changes the answers. They have no Undo, and may need another sheet. False when the
   *  engine refused them. */
  async answered(car: CarFile): Promise<boolean> {
    const old = this.car;
    if (JSON.stringify([car.bodies, car.options]) !== JSON.stringify([old.bodies, old.options])) {
      const sheet = await this.#host.engine.ask({ ask: "sheet", car });
      if (sheet.kind !== "sheet") {
        this.#host.failed(sheet);
        return false;
      }
      this.#sheet = sheet;
      this.#undo.clear();
      this.#host.told("sheet");
    }
    this.#set(car);
    return true;
  }

  change(settings: Partial<Settings>): void {
    this.settings = { ...this.settings, ...settings };
    this.#host.save();
  }

  #set(car: CarFile): void {
    this.#car = car;
    this.#host.save();
    this.#host.told("car");
    this.count();
  }

  /** Asks for the counts. Several changes while a request is under way lead to one more. */
  async count(): Promise<void> {
    this.#askAgain = true;
    if (this.#asking) return;
    this.#asking = true;
    try {
      while (this.#askAgain && this.#car) {
        this.#askAgain = false;
        const car = this.#car;
        const reply = await this.#host.engine.ask({ ask: "tally", car });
        if (!this.is(car)) {
          this.#askAgain = true;
          continue;
        }
        if (reply.kind === "tally") {
          this.tally = reply;
          this.#counted = car;
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
   *  anything for a moment, because this works out the odds of the whole car. */
  #askLater(car: CarFile): void {
    clearTimeout(this.#pause);
    if (!car.survey?.length) {
      this.secondLooks.forget();
      return;
    }
    this.#pause = setTimeout(async () => {
      try {
        const reply = await this.#host.engine.ask({ ask: "look_again", car });
        if (!this.is(car) || reply.kind !== "look_again") return;
        this.secondLooks.took(reply, car);
        this.#host.told("tally");
      } catch {
        // The engine is starting again; the next press asks again.
      }
    }, PAUSE);
  }

  /** The car file: as the engine writes it, or as it is here where the engine has not read
   *  the last press yet or refuses an entry. */
  text(): string {
    return (this.is(this.#counted) && this.tally?.canonical) || JSON.stringify(this.car);
  }

  /** The fault of an item or a look, or null. */
  faultOn(on: string): TallyFault | null {
    return this.tally?.faults.find((f) => f.on === on) ?? null;
  }
}

/** Puts a member back as it was; it keeps its place in the file. */
function restore<M extends Member>(car: CarFile, before: CarFile, name: M): void {
  if (before[name] === undefined) delete car[name];
  else car[name] = before[name];
}
