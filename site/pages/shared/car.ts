// What is known of one car, in the form of the car file. Every function gives a new object
// and leaves the old one as it was, because the browser's history keeps old ones for Back.

import type { Body, CarFile, CheckResult, HitZone, Life, Look, Made } from "./carfile.ts";
import type { CustomerPlace, OpenedReply } from "./replies.ts";

export const FORMAT = "underpaint car 1";

/** Earlier work that has a year, and may have photographs or bills. */
const DATED_WORK = ["patched_here_and_there", "stripped_and_restored"];
export const hasDate = (work: string | undefined): boolean => work !== undefined && DATED_WORK.includes(work);

/** A car that was hit, and may have a place where. */
export const wasHit = (answer: string | undefined): boolean => answer === "lightly" || answer === "hard";

export function blankCar(year: number): CarFile {
  return { format: FORMAT, asked_in: year };
}

/** A car with what a range needs. */
export interface CompleteCar extends CarFile {
  bodies: Body[];
  made: Made;
  life: Life[];
  standard: NonNullable<CarFile["standard"]>;
}

/** The engine can be asked for a range once these are known. */
export function isComplete(car: CarFile): car is CompleteCar {
  return Boolean(car.bodies && car.made && car.life?.[0]?.place && car.life[0].kept && car.standard);
}

/** Another body has other parts: the checks and options of the old one go with it. */
export function withBodies(car: CarFile, bodies: Body[]): CarFile {
  if (JSON.stringify(car.bodies) === JSON.stringify(bodies)) return car;
  const { looks, options, ...rest } = car;
  return { ...rest, bodies };
}

export function withLife(car: CarFile, index: number, members: Life): CarFile {
  const life = [...(car.life ?? [])];
  life[index] = { ...life[index], ...members };
  return { ...car, life };
}

/** A new place: what was said about the sea belonged to the old one. */
export function placed(car: CarFile, index: number, place: string): CarFile {
  const before: Life = car.life?.[index] ?? {};
  const { shore, ...life } = before;
  const all = [...(car.life ?? [])];
  all[index] = { ...life, place };
  return { ...car, life: all };
}

export function withoutEarlierPlaces(car: CarFile): CarFile {
  return car.life ? { ...car, life: car.life.slice(0, 1) } : car;
}

export function withOption(car: CarFile, id: string, on: boolean): CarFile {
  const options = (car.options ?? []).filter((o) => o !== id);
  return { ...car, options: on ? [...options, id] : options };
}

const resultOf = (car: CarFile, look: string, item: string): CheckResult | null =>
  (car.looks ?? []).find((l) => l.look === look && l.on === item && l.by === "customer")?.result ?? null;

/** Replaces the customer's result of one check at these items; null removes it. */
export function withLook(car: CarFile, look: string, items: string[], result: CheckResult | null): CarFile {
  const kept = (car.looks ?? []).filter(
    (l) => !(l.look === look && items.includes(l.on) && l.by === "customer"),
  );
  const added: Look[] = result === null ? [] : items.map((on) => ({ look, on, result, by: "customer" }));
  const { looks: _, ...rest } = car;
  const looks = [...kept, ...added];
  return looks.length ? { ...rest, looks } : rest;
}

/** Only work that was done has a year. */
export function withEarlierWork(car: CarFile, id: string): CarFile {
  const { earlier_work_year: year, ...rest } = car;
  const dated = year !== undefined && hasDate(id);
  return { ...rest, earlier_work: id, ...(dated ? { earlier_work_year: year } : {}) };
}

/** id: not_sure when nobody knows. */
export function withHitPlace(car: CarFile, id: HitZone | "not_sure"): CarFile {
  const answer = car.hit?.answer;
  if (!answer || !wasHit(answer)) return car;
  return { ...car, hit: id === "not_sure" ? { answer } : { answer, where: [id] } };
}

/** year: null when nobody knows. */
export function withWorkYear(car: CarFile, year: number | null): CarFile {
  const { earlier_work_year: _, ...rest } = car;
  return year === null ? rest : { ...rest, earlier_work_year: year };
}

/** The items that the customer's photographs or bills show. */
export const photosOf = (car: CarFile): string[] =>
  (car.looks ?? [])
    .filter((l) => l.look === "photos" && l.by === "customer" && l.result === "yes")
    .map((l) => l.on);

export type Side = "left" | "right" | "whole";
/** The items of a place; a side that it does not have may be missing. */
type PlaceItems = Pick<CustomerPlace, "look"> & Partial<Pick<CustomerPlace, Side>>;

const allOf = (place: PlaceItems): string[] => [
  ...(place.left ?? []),
  ...(place.right ?? []),
  ...(place.whole ?? []),
];

/** Where the customer saw rust at a place, or "clean" where there is none. */
export type Mark = "left" | "right" | "both" | "clean";

/** What the customer said of one place; null when nothing. */
export function markOf(car: CarFile, place: PlaceItems): Mark | null {
  const yes = (items: string[] | undefined): boolean =>
    (items ?? []).some((i) => resultOf(car, place.look, i) === "yes");
  if (yes(place.whole)) return "both";
  if (yes(place.left) && yes(place.right)) return "both";
  if (yes(place.left)) return "left";
  if (yes(place.right)) return "right";
  return allOf(place).every((i) => resultOf(car, place.look, i) === "no") ? "clean" : null;
}

/** "Left" says nothing about the right: that side counts as not checked. */
export function withMark(car: CarFile, place: PlaceItems, mark: Mark | null): CarFile {
  const all = allOf(place);
  const next = withLook(withLook(car, place.look, all, null), "open_hole", all, null);
  if (mark === "clean") return withLook(next, place.look, all, "no");
  if (mark === "both") return withLook(next, place.look, all, "yes");
  if (mark === "left" || mark === "right") return withLook(next, place.look, place[mark] ?? [], "yes");
  return next;
}

/** One side of a place, with the parts at which a hole can be seen. */
export interface HoleHalf {
  name: string;
  side: Side;
  items: string[];
  /** The customer marked it rusty. */
  marked: boolean;
  /** What the customer said of a hole there. */
  hole: "yes" | "no" | null;
}

const SIDES: readonly Side[] = ["left", "right", "whole"];

/** The sides of the places with the parts at which a hole can be seen: only the rusty parts
 *  of a side that is marked, and all parts of the others. */
export function holeHalves(car: CarFile, places: readonly CustomerPlace[]): HoleHalf[] {
  const halves: HoleHalf[] = [];
  for (const place of places.filter((p) => p.look !== "open_hole")) {
    for (const side of SIDES) {
      const all = place[side] ?? [];
      const rusty = all.filter((i) => resultOf(car, place.look, i) === "yes");
      const items = rusty.length ? rusty : all;
      const results = items.map((i) => resultOf(car, "open_hole", i));
      // At a rusty place one part with a hole is enough; at others all were pressed together.
      const holed = rusty.length ? results.includes("yes") : results.every((r) => r === "yes");
      if (items.length)
        halves.push({
          name: place.name,
          side,
          items,
          marked: rusty.length > 0,
          hole: holed ? "yes" : results.includes("no") ? "no" : null,
        });
    }
  }
  return halves;
}

/** The places that all of the car's possible bodies have. */
export function placesFor(opened: Pick<OpenedReply, "bodies">, car: CarFile): CustomerPlace[] {
  const asked: readonly string[] = car.bodies ?? [];
  const bodies = opened.bodies.filter((b) => asked.includes(b.id));
  const known = bodies.map((b) => new Set(b.customer_places.flatMap(allOf)));
  const inAll = (items: string[] | undefined): string[] =>
    (items ?? []).filter((i) => known.every((set) => set.has(i)));
  return (bodies[0]?.customer_places ?? [])
    .map((p) => ({ ...p, left: inAll(p.left), right: inAll(p.right), whole: inAll(p.whole) }))
    .filter((p) => allOf(p).length > 0);
}

/** Whether the answers to the questions show what one of the customer's checks said: a mark,
 *  a place that is clean, a hole where a mark is, or a part on photographs of earlier work.
 *  Any other check needs a list of its own, or nobody could remove it. */
export function shownByQuestions(opened: Pick<OpenedReply, "bodies">, car: CarFile): (look: Look) => boolean {
  const places = placesFor(opened, car);
  const halves = holeHalves(car, places);
  const ofMark = (l: Look): boolean =>
    places.some(
      (p) =>
        l.look === p.look && allOf(p).includes(l.on) && (l.result === "yes" || markOf(car, p) === "clean"),
    );
  const ofHole = (l: Look): boolean =>
    l.look === "open_hole" &&
    l.result !== "could_not" &&
    halves.some((h) => h.marked && h.items.includes(l.on));
  const ofPhotos = (l: Look): boolean =>
    l.look === "photos" && l.result === "yes" && hasDate(car.earlier_work);
  return (l) => ofMark(l) || ofHole(l) || ofPhotos(l);
}
