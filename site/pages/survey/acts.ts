// The acts that record something: one press, one act, one entry to take back.

import {
  begun,
  contradiction,
  isOpen,
  recordAt,
  stageOf,
  standing,
  withCondition,
  withCouldNotSee,
  withFinding,
  withOpened,
  withRest,
  withSure,
  withText,
  withWholeCar,
} from "../shared/thiscar/record.ts";

export class Acts {
  #job;
  #host;

  /** host: say(text), refuse(text) (said and shown at the part), stand(on), done(on), next(on) */
  constructor(job, host) {
    this.#job = job;
    this.#host = host;
  }

  #item(on) {
    return this.#job.sheet.items[on];
  }

  mayRecordInside(on) {
    return isOpen(this.#job.car, this.#item(on).box);
  }

  do(name, on, value, group) {
    switch (name) {
      case "condition":
        return this.#condition(on, value);
      case "unseen":
        return this.#unseen(on);
      case "found":
        return this.#found(on, value);
      case "not_found":
        return this.#host.say(`No finding has the letter ${value.toUpperCase()}.`);
      case "box":
        return this.#box(on);
      case "rest":
        return this.#rest(group);
      case "sure":
        return this.#sure(on);
      case "undo":
        return this.#undo();
      case "whole_car":
        return this.#wholeCar(value);
    }
    throw new Error(`no such act: ${name}`);
  }

  #record(on, next, said) {
    const { car } = this.#job;
    const stage = stageOf(car, this.#item(on));
    this.#job.act("survey", next(car, stage), { stage, at: on, said });
    this.#host.say(`${this.#item(on).name}: ${said}.`);
  }

  #recordOf(on) {
    const { car } = this.#job;
    return recordAt(car, on, stageOf(car, this.#item(on)));
  }

  #condition(on, condition) {
    const why = contradiction(this.#recordOf(on), condition.id);
    if (why) return this.#host.refuse(why);
    this.#record(
      on,
      (car, stage) => withCondition(car, on, stage, condition.id, this.#job.now()),
      condition.name.toLowerCase(),
    );
    this.#host.done(on);
    return this.#host.next(on);
  }

  #sure(on) {
    const { car } = this.#job;
    if (!standing(car, on)?.condition) return this.#host.say("Nothing is recorded for this part yet.");
    this.#job.act("survey", withSure(car, on), { at: on, said: "looked at again" });
    this.#host.say(`${this.#item(on).name}: looked at again, it is so.`);
    return this.#host.done(on);
  }

  #unseen(on) {
    this.#record(on, (car, stage) => withCouldNotSee(car, on, stage, this.#job.now()), "could not see");
    this.#host.done(on);
    this.#host.next(on);
  }

  #found(on, finding) {
    const item = this.#item(on);
    if (!item.findings?.includes(finding.id))
      return this.#host.say(`${finding.name}: cannot be found on this part.`);
    const why = contradiction(this.#recordOf(on), finding.id);
    if (why) return this.#host.refuse(why);
    this.#record(
      on,
      (car, stage) => withFinding(car, on, stage, finding, item.lead_joints ?? 0, this.#job.now()),
      finding.name,
    );
    return this.#host.done(on);
  }

  text(on, name, value) {
    this.#record(
      on,
      (car, stage) => withText(car, on, stage, name, value, this.#job.now()),
      name === "note" ? "note written" : "photograph written",
    );
    this.#host.done(on);
  }

  #box(on) {
    const { car, sheet } = this.#job;
    const { box } = this.#item(on);
    if (!box) return this.#host.say("This part is in no closed box.");
    const named = sheet.boxes.find((b) => b.id === box);
    if (isOpen(car, box)) {
      if (named.items.some((one) => recordAt(car, one, "opening_up")))
        return this.#host.say(`${named.name}: parts of it are recorded from inside. Take those back first.`);
      this.#job.act("survey", withOpened(car, box, false), { at: on, said: "opened taken back" });
      this.#host.say(`${named.name}: not opened.`);
    } else if (!begun(car, "survey")) {
      return this.#host.refuse(
        "No survey is recorded yet. A box is opened after the strip and survey, so record the survey first.",
      );
    } else {
      this.#job.act("survey", withOpened(car, box, true, this.#job.now()), {
        stage: "opening_up",
        at: on,
        said: "opened",
      });
      this.#host.say(`${named.name}: opened.`);
    }
    return this.#host.done(on);
  }

  #rest(group) {
    const { car, tally, sheet } = this.#job;
    const zone = tally?.zones?.find((z) => z.id === group.id);
    if (!zone?.rest?.length) return this.#host.say("No seen part is left here.");
    const next = withRest(car, zone.rest, sheet.conditions[0].id, this.#job.now());
    this.#job.act("survey", next, { stage: "survey", at: zone.rest[0], said: zone.rest_line });
    this.#host.say(`${zone.rest_line}. One undo takes them all back.`);
    return this.#host.done(zone.rest[0]);
  }

  #undo() {
    const last = this.#job.takeBack("survey");
    if (!last) return this.#host.say("Nothing to take back.");
    this.#host.say(`Taken back: ${last.said}.`);
    this.#host.stand(last.at);
    return this.#host.done(last.at);
  }

  #wholeCar({ id, name, on, at }) {
    this.#job.act("survey", withWholeCar(this.#job.car, id, on), { stage: "survey", at, said: name });
    this.#host.say(`${name}: ${on ? "found" : "taken back"}.`);
    return this.#host.done(at);
  }
}
