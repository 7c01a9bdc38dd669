// "Changes to agree": which parts are on a sheet, and what the sheet asks the engine. The
// shop ticks the parts; until then they are the dearest ones that are undecided.

import type { CarFile } from "../shared/carfile.ts";
import type { SheetReply, ToDoCard } from "../shared/replies.ts";
import type { Wanted } from "../shared/thiscar/gather.ts";

/** Parts on a sheet that nobody has ticked yet (assumption: people talk through about two
 *  sheets of paper at once). */
export const DEAREST = 10;

export class Changes {
  /** The number of the sheet, as the shop writes it. */
  number = "";
  /** The zone whose parts are offered; blank for all. */
  zone = "";
  #ticked: readonly string[] | null = null;
  #sheet: SheetReply | null = null;

  /** The parts on the sheet. Ticks belong to what is recorded on the car, so only parts that
   *  have a card count. */
  chosen(cards: readonly ToDoCard[]): readonly string[] {
    const all = cards.map((c) => c.on);
    const ticked = this.#ticked?.filter((on) => all.includes(on));
    return (
      ticked ??
      cards
        .filter((c) => !c.chosen)
        .slice(0, DEAREST)
        .map((c) => c.on)
    );
  }

  /** Forgets everything about the last car when this is another one. */
  about(sheet: SheetReply): void {
    if (this.#sheet !== sheet) {
      this.#sheet = sheet;
      this.#ticked = null;
      this.number = "";
      this.zone = "";
    }
  }

  /** Ticks a part, or removes its tick. */
  tick(cards: readonly ToDoCard[], on: string): void {
    const now = this.chosen(cards);
    this.#ticked = now.includes(on) ? now.filter((one) => one !== on) : [...now, on];
  }

  dearest(): void {
    this.#ticked = null;
  }
  none(): void {
    this.#ticked = [];
  }
}

/** The car before anything was decided. */
function undecided(car: CarFile): CarFile {
  const { ways: _, ...rest } = car;
  return rest;
}

/** What the sheet needs before its parts are known. */
export function changesNeed(car: CarFile): Wanted[] {
  const wanted: Wanted[] = [
    ["to_do", { ask: "to_do", car }, false],
    ["range", { ask: "range", car: undecided(car) }, true],
  ];
  if (car.ways?.length) wanted.push(["after", { ask: "range", car }, true]);
  return wanted;
}

/** What each part on the sheet needs. */
export const partsNeed = (car: CarFile, ons: readonly string[]): Wanted[] =>
  ons.flatMap((on): Wanted[] => [
    [`odds ${on}`, { ask: "odds", car, on }, false],
    [`compare ${on}`, { ask: "compare_ways", car, on }, false],
  ]);
