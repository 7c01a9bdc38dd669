// The acts that record something: one press is one act, and one entry to undo.

import type { CarFile, Manner, PanelFit, RecordStage } from "../shared/carfile.ts";
import type { SheetCondition, SheetFinding, SheetItem } from "../shared/replies.ts";
import { withSquare, withWholeCar, withZone } from "../shared/thiscar/carmembers.ts";
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
  withPanelFit,
  withRest,
  withSure,
  withText,
} from "../shared/thiscar/record.ts";
import { moment } from "../shared/timestamp.ts";
import type { HitEntry, RecordAct, WholeCarEntry } from "./keys.ts";
import type { OpenCar } from "./opencar.ts";
import type { Group } from "./order.ts";
import { itemOf } from "./partwords.ts";

const MANNERS: readonly Manner[] = ["none", "well", "roughly", "crooked"];
const SQUARES = ["square", "out", "not_measured"] as const;

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
        this.#condition(on, act[1]);
        break;
      case "unseen":
        this.#unseen(on);
        break;
      case "found":
        this.#found(on, act[1]);
        break;
      case "not_found":
        this.#host.say(`No finding has the letter ${act[1].toUpperCase()}.`);
        break;
      case "box":
        this.#box(on);
        break;
      case "rest":
        this.#rest(group);
        break;
      case "sure":
        this.#sure(on);
        break;
      case "undo":
        this.#undo();
        break;
      case "whole_car":
        this.#wholeCar(act[1]);
        break;
      case "hit":
        this.#hit(act[1]);
        break;
    }
  }

  #record(on: string, said: string, next: (car: CarFile, stage: RecordStage) => CarFile): void {
    const { car } = this.#openCar;
    const item = this.#item(on);
    const stage = stageOf(car, item);
    this.#openCar.act("survey", next(car, stage), { stage, at: on, said });
    this.#host.say(`${item.name}: ${said}.`);
  }

  /** Whether a finding contradicts the record; if it does, the host says why. */
  #refused(on: string, next: string): boolean {
    const { car } = this.#openCar;
    const why = contradiction(recordAt(car, on, stageOf(car, this.#item(on))), next);
    if (why) this.#host.refuse(why);
    return why !== "";
  }

  #condition(on: string, { id, name }: SheetCondition): void {
    this.#record(on, name.toLowerCase(), (car, stage) => withCondition(car, on, stage, id, moment()));
    this.#host.done(on);
    this.#host.next(on);
  }

  #sure(on: string): void {
    const { car } = this.#openCar;
    if (!standing(car, on)?.condition) {
      this.#host.say("Nothing is recorded for this part yet.");
      return;
    }
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
    if (!item.findings.includes(finding.id)) {
      this.#host.say(`${finding.name}: cannot be found on this part.`);
      return;
    }
    if (this.#refused(on, finding.id)) return;
    this.#record(on, finding.name, (car, stage) =>
      withFinding(car, on, stage, finding, item.lead_joints, moment()),
    );
    this.#host.done(on);
  }

  panelFit(on: string, fit: PanelFit | "", said: string): void {
    this.#record(on, said, (car, stage) => withPanelFit(car, on, stage, fit, moment()));
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
    if (!box) {
      this.#host.say("This part is in no closed box.");
      return;
    }
    const open = isOpen(car, box.id);
    if (open && box.items.some((one) => recordAt(car, one, "opening_up"))) {
      this.#host.say(`${box.name}: parts of it are recorded from inside. Take those back first.`);
      return;
    }
    if (!open && !begun(car, "survey")) {
      this.#host.refuse(
        "No survey is recorded yet. A box is opened after the strip and survey, so record the survey first.",
      );
      return;
    }
    const next = withOpened(car, box.id, !open, moment());
    if (open) this.#openCar.act("survey", next, { at: on, said: "opened taken back" });
    else this.#openCar.act("survey", next, { stage: "opening_up", at: on, said: "opened" });
    this.#host.say(`${box.name}: ${open ? "not opened" : "opened"}.`);
    this.#host.done(on);
  }

  #rest(group: Group): void {
    const { car, tally, sheet } = this.#openCar;
    const zone = tally?.zones.find((z) => z.id === group.id);
    const [first] = zone?.rest ?? [];
    // The conditions begin with the best one, sound.
    const [sound] = sheet.conditions;
    if (!zone || !first || !sound) {
      this.#host.say("No seen part is left here.");
      return;
    }
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
    if (!last) {
      this.#host.say("Nothing to take back.");
      return;
    }
    this.#host.say(`Taken back: ${last.said}.`);
    if (last.at) this.#host.stand(last.at);
    this.#host.done(last.at);
  }

  #hit({ where, id, said, at }: HitEntry): void {
    const { car, sheet } = this.#openCar;
    const manner = MANNERS.find((m) => m === id) ?? null;
    const square = SQUARES.find((s) => s === id) ?? null;
    const next = where === "square" ? withSquare(car, square) : withZone(car, where, manner);
    const place = sheet.hits?.zones.find((z) => z.id === where)?.name ?? "Square";
    this.#openCar.act("survey", next, { stage: "survey", at, said: `${place}: ${said}` });
    this.#host.say(`${place}: ${id ? said : "taken back"}.`);
    this.#host.done(at);
  }

  #wholeCar({ id, name, on, at }: WholeCarEntry): void {
    this.#openCar.act("survey", withWholeCar(this.#openCar.car, id, on), { stage: "survey", at, said: name });
    this.#host.say(`${name}: ${on ? "found" : "taken back"}.`);
    this.#host.done(at);
  }
}
