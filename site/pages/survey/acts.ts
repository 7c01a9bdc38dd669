// The acts that record something: one press is one act, and one entry to undo.

import type { CarFile, RecordStage } from "../shared/carfile.ts";
import type { SheetCondition, SheetFinding, SheetItem } from "../shared/replies.ts";
import { withWholeCar } from "../shared/thiscar/carmembers.ts";
import {
  begun,
  contradiction,
  isOpen,
  recordAt,
  stageOf,
  standing,
  type TextName,
  withCondition,
  withCouldNotSee,
  withFinding,
  withOpened,
  withRest,
  withSure,
  withText,
} from "../shared/thiscar/record.ts";
import { moment } from "../shared/timestamp.ts";
import type { RecordAct, WholeCarEntry } from "./keys.ts";
import type { OpenCar } from "./opencar.ts";
import type { Group } from "./order.ts";
import { itemOf } from "./partwords.ts";

export interface ActsHost {
  say(text: string): void;
  /** Says why an act cannot be, and shows it at the part. */
  refuse(text: string): void;
  /** Goes to a part. */
  stand(on: string): void;
  /** Something about a part was recorded; null where the part is not known. */
  done(on: string | null): void;
  /** Goes to the part after this one. */
  next(on: string): void;
}

export class Acts {
  #openCar: OpenCar;
  #host: ActsHost;

  constructor(openCar: OpenCar, host: ActsHost) {
    this.#openCar = openCar;
    this.#host = host;
  }

  #item(on: string): SheetItem {
    return itemOf(this.#openCar.sheet, on);
  }

  mayRecordInside(on: string): boolean {
    return isOpen(this.#openCar.car, this.#item(on).box);
  }

  /** Does an act at a part of a group. */
  do(act: RecordAct, on: string, group: Group): void {
    switch (act[0]) {
      case "condition":
        return this.#condition(on, act[1]);
      case "unseen":
        return this.#unseen(on);
      case "found":
        return this.#found(on, act[1]);
      case "not_found":
        return this.#host.say(`No finding has the letter ${act[1].toUpperCase()}.`);
      case "box":
        return this.#box(on);
      case "rest":
        return this.#rest(group);
      case "sure":
        return this.#sure(on);
      case "undo":
        return this.#undo();
      case "whole_car":
        return this.#wholeCar(act[1]);
    }
  }

  #record(on: string, said: string, next: (car: CarFile, stage: RecordStage) => CarFile): void {
    const { car } = this.#openCar;
    const item = this.#item(on);
    const stage = stageOf(car, item);
    this.#openCar.act("survey", next(car, stage), { stage, at: on, said });
    this.#host.say(`${item.name}: ${said}.`);
  }

  /** Whether the entry contradicts the record; if it does, the host says why. */
  #refused(on: string, next: string): boolean {
    const { car } = this.#openCar;
    const why = contradiction(recordAt(car, on, stageOf(car, this.#item(on))), next);
    if (why) this.#host.refuse(why);
    return why !== "";
  }

  #condition(on: string, { id, name }: SheetCondition): void {
    if (this.#refused(on, id)) return;
    this.#record(on, name.toLowerCase(), (car, stage) => withCondition(car, on, stage, id, moment()));
    this.#host.done(on);
    this.#host.next(on);
  }

  #sure(on: string): void {
    const { car } = this.#openCar;
    if (!standing(car, on)?.condition) return this.#host.say("Nothing is recorded for this part yet.");
    this.#openCar.act("survey", withSure(car, on), { at: on, said: "looked at again" });
    this.#host.say(`${this.#item(on).name}: looked at again, it is so.`);
    this.#host.done(on);
  }

  #unseen(on: string): void {
    this.#record(on, "could not see", (car, stage) => withCouldNotSee(car, on, stage, moment()));
    this.#host.done(on);
    this.#host.next(on);
  }

  #found(on: string, finding: SheetFinding): void {
    const item = this.#item(on);
    if (!item.findings.includes(finding.id))
      return this.#host.say(`${finding.name}: cannot be found on this part.`);
    if (this.#refused(on, finding.id)) return;
    this.#record(on, finding.name, (car, stage) =>
      withFinding(car, on, stage, finding, item.lead_joints, moment()),
    );
    this.#host.done(on);
  }

  text(on: string, name: TextName, value: string): void {
    this.#record(on, name === "note" ? "note written" : "photograph written", (car, stage) =>
      withText(car, on, stage, name, value, moment()),
    );
    this.#host.done(on);
  }

  #box(on: string): void {
    const { car, sheet } = this.#openCar;
    const box = sheet.boxes.find((b) => b.id === this.#item(on).box);
    if (!box) return this.#host.say("This part is in no closed box.");
    if (isOpen(car, box.id)) {
      if (box.items.some((one) => recordAt(car, one, "opening_up")))
        return this.#host.say(`${box.name}: parts of it are recorded from inside. Take those back first.`);
      this.#openCar.act("survey", withOpened(car, box.id, false), { at: on, said: "opened taken back" });
      this.#host.say(`${box.name}: not opened.`);
    } else if (!begun(car, "survey")) {
      return this.#host.refuse(
        "No survey is recorded yet. A box is opened after the strip and survey, so record the survey first.",
      );
    } else {
      this.#openCar.act("survey", withOpened(car, box.id, true, moment()), {
        stage: "opening_up",
        at: on,
        said: "opened",
      });
      this.#host.say(`${box.name}: opened.`);
    }
    this.#host.done(on);
  }

  #rest(group: Group): void {
    const { car, tally, sheet } = this.#openCar;
    const zone = tally?.zones.find((z) => z.id === group.id);
    const [first] = zone?.rest ?? [];
    // The conditions begin with the best one, sound.
    const [sound] = sheet.conditions;
    if (!zone || !first || !sound) return this.#host.say("No seen part is left here.");
    this.#openCar.act("survey", withRest(car, zone.rest, sound.id, moment()), {
      stage: "survey",
      at: first,
      said: zone.rest_line,
    });
    this.#host.say(`${zone.rest_line}. One undo takes them all back.`);
    this.#host.done(first);
  }

  #undo(): void {
    const last = this.#openCar.undo("survey");
    if (!last) return this.#host.say("Nothing to take back.");
    this.#host.say(`Taken back: ${last.said}.`);
    if (last.at) this.#host.stand(last.at);
    this.#host.done(last.at);
  }

  #wholeCar({ id, name, on, at }: WholeCarEntry): void {
    this.#openCar.act("survey", withWholeCar(this.#openCar.car, id, on), { stage: "survey", at, said: name });
    this.#host.say(`${name}: ${on ? "found" : "taken back"}.`);
    this.#host.done(at);
  }
}
