// What is known of one car, in the form of the car file. Every function gives a
// new object and leaves the old one as it was, since the browser's history
// keeps old ones for Back.

export const FORMAT = "underpaint car 1";

/** Earlier work that has a year, and may have photographs or bills. */
const DATED_WORK = ["patched_here_and_there", "stripped_and_restored"];
export const hasDate = (work) => DATED_WORK.includes(work);

export function blankCar(year) {
  return { format: FORMAT, asked_in: year };
}

/** The engine can be asked for a range once these are known. */
export function isComplete(car) {
  return Boolean(car.bodies && car.made && car.life?.[0]?.place && car.life[0].kept && car.standard);
}

/** Another body has other parts: looks and options fall away with the old one. */
export function withBodies(car, bodies) {
  if (JSON.stringify(car.bodies) === JSON.stringify(bodies)) return car;
  const { looks, options, ...rest } = car;
  return { ...rest, bodies };
}

export function withLife(car, index, members) {
  const life = [...(car.life ?? [])];
  life[index] = { ...life[index], ...members };
  return { ...car, life };
}

export function withoutEarlierPlaces(car) {
  return car.life ? { ...car, life: car.life.slice(0, 1) } : car;
}

export function withOption(car, id, on) {
  const options = (car.options ?? []).filter((o) => o !== id);
  return { ...car, options: on ? [...options, id] : options };
}

const resultOf = (car, look, item) =>
  (car.looks ?? []).find((l) => l.look === look && l.on === item && l.by === "customer")?.result ?? null;

/** Replaces the customer's result of one look at these items; null takes it back. */
export function withLook(car, look, items, result) {
  const kept = (car.looks ?? []).filter(
    (l) => !(l.look === look && items.includes(l.on) && l.by === "customer"),
  );
  const added = result === null ? [] : items.map((on) => ({ look, on, result, by: "customer" }));
  const { looks: _, ...rest } = car;
  const looks = [...kept, ...added];
  return looks.length ? { ...rest, looks } : rest;
}

/** Work that was never done has no year. */
export function withEarlierWork(car, id) {
  const { earlier_work_year: year, ...rest } = car;
  const dated = year !== undefined && hasDate(id);
  return { ...rest, earlier_work: id, ...(dated ? { earlier_work_year: year } : {}) };
}

/** year: null when nobody knows. */
export function withWorkYear(car, year) {
  const { earlier_work_year: _, ...rest } = car;
  return year === null ? rest : { ...rest, earlier_work_year: year };
}

/** The items that the customer's photographs or bills show. */
export const photosOf = (car) =>
  (car.looks ?? [])
    .filter((l) => l.look === "photos" && l.by === "customer" && l.result === "yes")
    .map((l) => l.on);

const allOf = (place) => [...(place.left ?? []), ...(place.right ?? []), ...(place.whole ?? [])];

/** What the customer said of one place: left, right, both, clean or null. */
export function markOf(car, place) {
  const yes = (items) => (items ?? []).some((i) => resultOf(car, place.look, i) === "yes");
  if (yes(place.whole)) return "both";
  if (yes(place.left) && yes(place.right)) return "both";
  if (yes(place.left)) return "left";
  if (yes(place.right)) return "right";
  return allOf(place).every((i) => resultOf(car, place.look, i) === "no") ? "clean" : null;
}

/** "Left" says nothing about the right: that side stays not looked at. */
export function withMark(car, place, mark) {
  const all = allOf(place);
  let next = withLook(withLook(car, place.look, all, null), "open_hole", all, null);
  if (mark === "clean") return withLook(next, place.look, all, "no");
  if (mark === "both") return withLook(next, place.look, all, "yes");
  if (mark === "left" || mark === "right") next = withLook(next, place.look, place[mark], "yes");
  return next;
}

/** The sides of the places with the parts at which a hole can be seen: those that are
 *  marked rusty, and the others whole. hole: what was said of a hole there. */
export function holeHalves(car, places) {
  const halves = [];
  for (const place of places.filter((p) => p.look !== "open_hole")) {
    for (const side of ["left", "right", "whole"]) {
      const all = place[side] ?? [];
      const rusty = all.filter((i) => resultOf(car, place.look, i) === "yes");
      const items = rusty.length ? rusty : all;
      const results = items.map((i) => resultOf(car, "open_hole", i));
      // Of a rusty place one part with a hole is enough; of others all were pressed together.
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

/** The places that every one of the bodies asked about has. */
export function placesFor(opened, car) {
  const bodies = opened.bodies.filter((b) => (car.bodies ?? []).includes(b.id));
  if (bodies.length === 0) return [];
  const known = bodies.map((b) => new Set(b.customer_places.flatMap(allOf)));
  const inAll = (items) => (items ?? []).filter((i) => known.every((set) => set.has(i)));
  return bodies[0].customer_places
    .map((p) => ({ ...p, left: inAll(p.left), right: inAll(p.right), whole: inAll(p.whole) }))
    .filter((p) => allOf(p).length > 0);
}

/** Whether the answers to the questions show what a look of the customer's said: a mark,
 *  a place that is clean, a hole where a mark is, or a part on photographs of earlier
 *  work. Any other look is for a list of its own, or nobody could take it back. */
export function shownByQuestions(opened, car) {
  const places = placesFor(opened, car);
  const halves = holeHalves(car, places);
  const ofMark = (l) =>
    places.some(
      (p) =>
        l.look === p.look && allOf(p).includes(l.on) && (l.result === "yes" || markOf(car, p) === "clean"),
    );
  const ofHole = (l) =>
    l.look === "open_hole" &&
    l.result !== "could_not" &&
    halves.some((h) => h.marked && h.items.includes(l.on));
  const ofPhotos = (l) => l.look === "photos" && l.result === "yes" && hasDate(car.earlier_work);
  return (l) => ofMark(l) || ofHole(l) || ofPhotos(l);
}
