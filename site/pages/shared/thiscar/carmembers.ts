// The other members that "This car" writes into the car file: findings of the whole car,
// hours, ways and checks. Like those of record.ts, every function returns a new car.

import type {
  Body,
  CarFile,
  CheckResult,
  Choice,
  HitZone,
  Look,
  Manner,
  SurveyCar,
  Teller,
  Trade,
  Way,
} from "../carfile.ts";

/** The members that may be absent, so that they can be removed again. */
export type Member = Exclude<keyof CarFile, "format" | "asked_in">;

/** What one press of each list may change, and so what its Undo restores. What is typed
 *  into fields has no Undo. */
export const MEMBERS = {
  walk: ["looks"],
  survey: ["survey", "opened", "whole_car", "survey_car"],
  todo: ["ways"],
  hours: [],
  spent: [],
} as const satisfies Record<string, readonly Member[]>;
export type ActList = keyof typeof MEMBERS;

/** The car with another value of a member. An empty list, an empty object or undefined
 *  removes the member. */
export function withMember<M extends Member>(car: CarFile, name: M, value: CarFile[M]): CarFile {
  const next = { ...car };
  delete next[name];
  const empty = value === undefined || (typeof value === "object" && Object.keys(value).length === 0);
  if (!empty) next[name] = value;
  return next;
}

/** Adds a finding of the whole car, or removes it. */
export function withWholeCar(car: CarFile, id: string, on: boolean): CarFile {
  const others = (car.whole_car ?? []).filter((f) => f !== id);
  return withMember(car, "whole_car", on ? [...others, id] : others);
}

/** What a zone's record or squareness is: null where nothing is recorded. An older file
 *  has a body out of square among the findings of the whole car. */
export function hitRecord(car: CarFile, where: HitZone | "square"): string | null {
  if (where !== "square") return car.survey_car?.zones?.[where] ?? null;
  return car.survey_car?.square ?? (car.whole_car?.includes("twist") ? "out" : null);
}

/** Records how a zone was repaired; null takes it back. */
export function withZone(car: CarFile, zone: HitZone, manner: Manner | null): CarFile {
  const { zones, ...rest } = car.survey_car ?? {};
  const { [zone]: _, ...others } = zones ?? {};
  const next = manner ? { ...others, [zone]: manner } : others;
  return withMember(car, "survey_car", Object.keys(next).length > 0 ? { zones: next, ...rest } : rest);
}

/** Records whether the body is square; null takes it back. */
export function withSquare(car: CarFile, square: SurveyCar["square"] | null): CarFile {
  const { square: _, ...rest } = car.survey_car ?? {};
  const plain = withWholeCar(car, "twist", false);
  return withMember(plain, "survey_car", square ? { ...rest, square } : rest);
}

/** hours: null removes the entry. */
export function withHours(car: CarFile, trade: Trade, hours: number | null): CarFile {
  const { [trade]: _, ...rest } = car.strip_hours ?? {};
  return withMember(car, "strip_hours", hours === null ? rest : { ...rest, [trade]: hours });
}

export const wayOf = (car: CarFile, on: string): Choice | null => car.ways?.find((w) => w.on === on) ?? null;

/** way: null makes the part undecided again. */
export function withWay(car: CarFile, on: string, way: Way | null, by: Teller): CarFile {
  const others = (car.ways ?? []).filter((w) => w.on !== on);
  return withMember(car, "ways", way ? [...others, { on, way, by }] : others);
}

export const lookAt = (car: CarFile, look: string, on: string, by: Teller): Look | null =>
  car.looks?.find((l) => l.look === look && l.on === on && l.by === by) ?? null;

/** result: null when nobody checked. */
export function withLook(
  car: CarFile,
  look: string,
  on: string,
  by: Teller,
  result: CheckResult | null,
): CarFile {
  const others = (car.looks ?? []).filter((l) => !(l.look === look && l.on === on && l.by === by));
  return withMember(car, "looks", result ? [...others, { look, on, result, by }] : others);
}

/** The members that belong to one body and are dropped with it. */
const OF_BODY = [
  "looks",
  "options",
  "stages",
  "survey",
  "opened",
  "whole_car",
  "survey_car",
  "strip_hours",
  "ways",
  "answers_checked",
  "came_to",
] as const satisfies readonly Member[];

export function withBody(car: CarFile, body: Body): CarFile {
  if (car.bodies?.length === 1 && car.bodies[0] === body) return car;
  const next = { ...car, bodies: [body] };
  for (const name of OF_BODY) delete next[name];
  return next;
}
