// What is recorded on one car, in the form of the car file. Every function returns a
// new car and leaves the old one alone, so that an entry can be undone by putting the
// old members back. The members that are not about one part are in carmembers.ts.

import type { CarFile, Condition, Opened, PanelFit, PartRecord, RecordStage, Stage } from "../carfile.ts";
import type { SheetFinding, SheetItem } from "../replies.ts";
import { withMember } from "./carmembers.ts";

/** How many earlier conditions a record keeps. */
const MOST_EARLIER = 20;

type StageID = Stage["stage"];
/** The codes of the rates and of the program's own figures on the day. */
type Codes = Pick<Stage, "rates" | "figures">;
/** The stages in their order. */
const STAGES: readonly StageID[] = ["walk_round", "survey", "opening_up"];

export const begun = (car: Pick<CarFile, "stages">, stage: StageID): boolean =>
  Boolean(car.stages?.some((s) => s.stage === stage));

/** Begins a stage on a day, such as 2026-06-20. A stage that is begun late keeps its place
 *  in the order, so its day is not after the day of the next one. */
export function begin(car: CarFile, stage: StageID, day: string, codes: Codes = {}): CarFile {
  const stages = car.stages ?? [];
  if (begun(car, stage)) return { ...car, stages };
  const at = stages.findIndex((s) => STAGES.indexOf(s.stage) > STAGES.indexOf(stage));
  const next = stages[at];
  const entry: Stage = { stage, on: next && next.on < day ? next.on : day, ...codes };
  return { ...car, stages: next ? stages.toSpliced(at, 0, entry) : [...stages, entry] };
}

export const isOpen = (car: CarFile, box: string): boolean => Boolean(car.opened?.some((o) => o.box === box));

/** The stage at which this item is recorded now: a closed part whose box is open is seen
 *  from inside. */
export const stageOf = (car: CarFile, item: Pick<SheetItem, "closed" | "box">): RecordStage =>
  item.closed && isOpen(car, item.box) ? "opening_up" : "survey";

export const recordAt = (car: CarFile, on: string, stage: RecordStage): PartRecord | null =>
  car.survey?.find((r) => r.on === on && r.stage === stage) ?? null;

/** The record that counts for an item: the one from inside once there is one. */
export const standing = (car: CarFile, on: string): PartRecord | null =>
  recordAt(car, on, "opening_up") ?? recordAt(car, on, "survey");

const SAYS = [
  "condition",
  "finding",
  "dent",
  "also",
  "lead_failed",
  "panel_fit",
  "could_not_see",
  "note",
  "photo",
] as const satisfies readonly (keyof PartRecord)[];
const saysSomething = (record: PartRecord) => SAYS.some((name) => record[name] !== undefined);

/** Changes the record of an item at a stage, and removes the record if it says nothing
 *  any more. */
export function withRecord(
  car: CarFile,
  on: string,
  stage: RecordStage,
  change: (record: PartRecord) => PartRecord,
): CarFile {
  const all = car.survey ?? [];
  const at = all.findIndex((r) => r.on === on && r.stage === stage);
  const old = all[at];
  const next = change(old ?? { on, stage });
  if (next === old) return car;
  const says = saysSomething(next);
  if (!old) return says ? withMember(car, "survey", [...all, next]) : car;
  return withMember(car, "survey", says ? all.with(at, next) : all.toSpliced(at, 1));
}

/** The finding that the part is not on the car. */
export const MISSING = "missing";

export const isMissing = (record: PartRecord | null): boolean => Boolean(record?.also?.includes(MISSING));

/** The record with another entry in the place of its condition, which it remembers as an
 *  earlier one. A second look was about the old condition, so its answer goes too, and so
 *  does that the part is missing. */
function replaced(
  { also, ...record }: PartRecord,
  entry: Pick<PartRecord, "condition" | "could_not_see">,
  moment: string,
): PartRecord {
  const { could_not_see: _unseen, condition: old, sure: _sure, at, was, ...others } = record;
  const found = also?.filter((id) => id !== MISSING) ?? [];
  const rest = found.length ? { ...others, also: found } : others;
  const earlier = old ? [...(was ?? []), { condition: old, ...(at ? { at } : {}) }] : was;
  return { ...rest, ...entry, at: moment, ...(earlier ? { was: earlier.slice(-MOST_EARLIER) } : {}) };
}

/** Records a condition. moment: as the car file writes it, see timestamp.ts. */
export function withCondition(
  car: CarFile,
  on: string,
  stage: RecordStage,
  condition: Condition,
  moment: string,
): CarFile {
  return withRecord(car, on, stage, (r) =>
    r.condition === condition ? r : replaced(r, { condition }, moment),
  );
}

export function withCouldNotSee(car: CarFile, on: string, stage: RecordStage, moment: string): CarFile {
  return withRecord(car, on, stage, (r) => replaced(r, { could_not_see: true }, moment));
}

/** The estimator looked again, and the condition of the item is right. */
export function withSure(car: CarFile, on: string): CarFile {
  const record = standing(car, on);
  if (!record?.condition) return car;
  return withRecord(car, on, record.stage, (r) => (r.sure ? r : { ...r, sure: true }));
}

/** Records that a part is missing, in the place of its condition and of all that was found
 *  on it, or takes that back. */
function withMissing(record: PartRecord, moment: string): PartRecord {
  if (isMissing(record)) {
    const { also: _, ...rest } = record;
    return rest;
  }
  const { finding: _finding, dent: _dent, lead_failed: _lead, also: _also, ...rest } = record;
  return { ...replaced(rest, {}, moment), also: [MISSING] };
}

/** Why a finding contradicts what is recorded: nothing is found on a part that is missing.
 *  Blank if it does not. */
export function contradiction(record: PartRecord | null, finding: string): string {
  return isMissing(record) && finding !== MISSING
    ? "This part is recorded as missing, so nothing can be found on it. Take “Part missing” out first."
    : "";
}

/** Records how the panel that was bought for a part fits; blank removes it. */
export function withPanelFit(
  car: CarFile,
  on: string,
  stage: RecordStage,
  fit: PanelFit | "",
  moment: string,
): CarFile {
  return withRecord(car, on, stage, ({ panel_fit: _, ...rest }) =>
    fit ? { ...rest, panel_fit: fit, at: rest.at ?? moment } : rest,
  );
}

/** Records one condition on all of these items that have no record yet. */
export function withRest(
  car: CarFile,
  items: readonly string[],
  condition: Condition,
  moment: string,
): CarFile {
  return items.reduce(
    (now, on) => (standing(now, on) ? now : withCondition(now, on, "survey", condition, moment)),
    car,
  );
}

type Finding = Pick<SheetFinding, "id" | "count" | "priced_only">;

/** Whether the record holds a finding. Each kind of finding has its own member there. */
export function hasFinding(record: PartRecord | null, finding: Finding): boolean {
  if (!record) return false;
  if (finding.id === "filler_over_dent") return record.dent === true;
  if (finding.count) return (record.lead_failed ?? 0) > 0;
  return finding.priced_only ? Boolean(record.also?.includes(finding.id)) : record.finding === finding.id;
}

/** Adds a finding, or removes it if it is there. Cracked joints are counted up to joints,
 *  the lead joints of the item, and then start again at none. */
export function withFinding(
  car: CarFile,
  on: string,
  stage: RecordStage,
  finding: Finding,
  joints: number,
  moment: string,
): CarFile {
  return withRecord(car, on, stage, (r) => {
    if (finding.id === MISSING) return withMissing(r, moment);
    const had = hasFinding(r, finding);
    const at = r.at ?? moment;
    if (finding.id === "filler_over_dent") {
      const { dent: _, ...rest } = r;
      return had ? rest : { ...rest, dent: true, at };
    }
    if (finding.count) {
      const { lead_failed: n, ...rest } = r;
      const next = (n ?? 0) + 1;
      return next > joints ? rest : { ...rest, lead_failed: next, at };
    }
    if (finding.priced_only) {
      const { also = [], ...rest } = r;
      const list = had ? also.filter((id) => id !== finding.id) : [...also, finding.id];
      return list.length ? { ...rest, also: list, at } : rest;
    }
    const { finding: _, ...rest } = r;
    return had ? rest : { ...rest, finding: finding.id, at };
  });
}

/** The short texts of a record. */
export type TextName = "note" | "photo";

/** Writes a text of the record; blank removes it. */
export function withText(
  car: CarFile,
  on: string,
  stage: RecordStage,
  name: TextName,
  text: string,
  moment: string,
): CarFile {
  return withRecord(car, on, stage, (r) => {
    const next = { ...r };
    delete next[name];
    return text ? { ...next, [name]: text, at: r.at ?? moment } : next;
  });
}

/** Opens a closed box, or says that it is not opened after all. */
export function withOpened(car: CarFile, box: string, on: boolean, moment?: string): CarFile {
  const others = (car.opened ?? []).filter((o) => o.box !== box);
  const opened: Opened = moment === undefined ? { box } : { box, at: moment };
  return withMember(car, "opened", on ? [...others, opened] : others);
}
