// What is recorded on one car, in the form of the car file. Every function
// gives a new car and leaves the old one as it was, so that an entry can be
// taken back by putting the old members in their place again.

export const STAGES = ["walk_round", "survey", "opening_up"];
/** What one act of a list may change, and what taking it back restores. */
export const MEMBERS = {
  walk: ["looks"],
  survey: ["survey", "opened", "whole_car"],
  todo: ["ways"],
};

export const withMember = (car, name, value) => {
  const { [name]: _, ...rest } = car;
  const empty = value === undefined || (typeof value === "object" && Object.keys(value).length === 0);
  return empty ? rest : { ...rest, [name]: value };
};

export const isOpen = (car, box) => Boolean(car.opened?.some((o) => o.box === box));
export const begun = (car, stage) => Boolean(car.stages?.some((s) => s.stage === stage));

/** Begins a stage on a day. A stage that is begun late keeps its place in the order
 *  and so cannot be younger than the next. */
export function begin(car, stage, day, rates) {
  const stages = car.stages ?? [];
  if (begun(car, stage)) return { ...car, stages };
  const at = stages.findIndex((s) => STAGES.indexOf(s.stage) > STAGES.indexOf(stage));
  const next = at < 0 ? null : stages[at];
  const entry = { stage, on: next && next.on < day ? next.on : day, ...(rates ? { rates } : {}) };
  return { ...car, stages: at < 0 ? [...stages, entry] : stages.toSpliced(at, 0, entry) };
}

/** Where a record of this item belongs now: a closed part whose box is open is
 *  seen from inside. item: as in the sheet. */
export const stageOf = (car, item) => (item.closed && isOpen(car, item.box) ? "opening_up" : "survey");

export const recordAt = (car, on, stage) => car.survey?.find((r) => r.on === on && r.stage === stage) ?? null;

/** The record that stands for an item: the one from inside once there is one. */
export const standing = (car, on) => recordAt(car, on, "opening_up") ?? recordAt(car, on, "survey");

const SAYS = ["condition", "finding", "dent", "also", "lead_failed", "could_not_see", "note", "photo"];
const saysSomething = (record) => SAYS.some((name) => record[name] !== undefined);

/** Changes the record of an item at a stage; one that says nothing any more is
 *  taken out. change(record) gives the new record. */
export function withRecord(car, on, stage, change) {
  const all = car.survey ?? [];
  const at = all.findIndex((r) => r.on === on && r.stage === stage);
  const next = change(at < 0 ? { on, stage } : all[at]);
  if (next === all[at]) return car;
  const kept = saysSomething(next);
  if (at < 0) return kept ? withMember(car, "survey", [...all, next]) : car;
  return withMember(car, "survey", kept ? all.with(at, next) : all.toSpliced(at, 1));
}

/** Records a condition at a moment; what stood there before is kept as was, and what
 *  was looked at again was the old one. */
export function withCondition(car, on, stage, condition, moment) {
  return withRecord(car, on, stage, (r) => {
    const { could_not_see: unseen, condition: old, sure, at, was, ...rest } = r;
    if (old === condition) return r;
    const earlier = old ? [...(was ?? []), { condition: old, ...(at ? { at } : {}) }] : was;
    return { ...rest, condition, at: moment, ...(earlier ? { was: earlier.slice(-20) } : {}) };
  });
}

export function withCouldNotSee(car, on, stage, moment) {
  return withRecord(car, on, stage, (r) => {
    const { condition: old, sure, at, was, ...rest } = r;
    const earlier = old ? [...(was ?? []), { condition: old, ...(at ? { at } : {}) }] : was;
    return { ...rest, could_not_see: true, at: moment, ...(earlier ? { was: earlier.slice(-20) } : {}) };
  });
}

/** The estimator looked again: the condition that stands for an item is so. */
export function withSure(car, on) {
  const record = standing(car, on);
  if (!record?.condition) return car;
  return withRecord(car, on, record.stage, (r) => (r.sure ? r : { ...r, sure: true }));
}

/** Why an act on a record cannot be: a part that is missing is not sound. Blank where it
 *  can. next: the condition or the finding to be added. */
export function contradiction(record, next) {
  if (next === "sound" && record?.also?.includes("missing"))
    return "This part is recorded as missing, so it cannot be sound as well. Take “Part missing” out first.";
  if (next === "missing" && record?.condition === "sound")
    return "This part is recorded as sound, so it cannot be missing as well. Change its condition first.";
  return "";
}

/** All of these in one condition; those recorded already are left alone. */
export function withRest(car, items, condition, moment) {
  return items.reduce(
    (now, on) => (standing(now, on) ? now : withCondition(now, on, "survey", condition, moment)),
    car,
  );
}

/** How a finding is held in the file. joints: lead joints of the item. */
export function hasFinding(record, finding) {
  if (!record) return false;
  if (finding.id === "filler_over_dent") return record.dent === true;
  if (finding.count) return (record.lead_failed ?? 0) > 0;
  return finding.priced_only ? Boolean(record.also?.includes(finding.id)) : record.finding === finding.id;
}

/** Adds a finding, or takes it out again. Cracked joints are counted up to all
 *  of them, then back to none. */
export function withFinding(car, on, stage, finding, joints, moment) {
  return withRecord(car, on, stage, (r) => {
    const had = hasFinding(r, finding);
    const at = r.at ?? moment;
    if (finding.id === "filler_over_dent") {
      const { dent, ...rest } = r;
      return had ? rest : { ...rest, dent: true, at };
    }
    if (finding.count) {
      const { lead_failed: n, ...rest } = r;
      const next = (n ?? 0) + 1;
      return next > joints ? rest : { ...rest, lead_failed: next, at };
    }
    if (finding.priced_only) {
      const { also, ...rest } = r;
      const list = had ? also.filter((id) => id !== finding.id) : [...(also ?? []), finding.id];
      return list.length ? { ...rest, also: list, at } : rest;
    }
    const { finding: _, ...rest } = r;
    return had ? rest : { ...rest, finding: finding.id, at };
  });
}

/** A short text of the record, such as its note; blank takes it out. */
export function withText(car, on, stage, name, text, moment) {
  return withRecord(car, on, stage, (r) => {
    const { [name]: _, ...rest } = r;
    return text ? { ...rest, [name]: text, at: r.at ?? moment } : rest;
  });
}

export function withOpened(car, box, on, moment) {
  const others = (car.opened ?? []).filter((o) => o.box !== box);
  return withMember(car, "opened", on ? [...others, { box, at: moment }] : others);
}

export function withWholeCar(car, id, on) {
  const others = (car.whole_car ?? []).filter((f) => f !== id);
  return withMember(car, "whole_car", on ? [...others, id] : others);
}

/** hours: a number, or null for not entered. */
export function withHours(car, trade, hours) {
  const { [trade]: _, ...rest } = car.strip_hours ?? {};
  return withMember(car, "strip_hours", hours === null ? rest : { ...rest, [trade]: hours });
}

export const wayOf = (car, on) => car.ways?.find((w) => w.on === on) ?? null;

/** way: an id, or null for not decided. */
export function withWay(car, on, way, by) {
  const others = (car.ways ?? []).filter((w) => w.on !== on);
  return withMember(car, "ways", way ? [...others, { on, way, by }] : others);
}

export const lookAt = (car, look, on, by) =>
  car.looks?.find((l) => l.look === look && l.on === on && l.by === by) ?? null;

/** result: yes, no, could_not, or null for not looked. */
export function withLook(car, look, on, by, result) {
  const others = (car.looks ?? []).filter((l) => !(l.look === look && l.on === on && l.by === by));
  return withMember(car, "looks", result ? [...others, { look, on, result, by }] : others);
}

/** Everything recorded belongs to one body and goes with it. */
export function withBody(car, body) {
  if (car.bodies?.length === 1 && car.bodies[0] === body) return car;
  const {
    looks,
    options,
    stages,
    survey,
    opened,
    whole_car: whole,
    strip_hours: hours,
    ways,
    answers_checked: checked,
    came_to: spent,
    ...rest
  } = car;
  return { ...rest, bodies: [body] };
}
