// The answers about a car as plain fields: what is asked, what it may be, and
// what a choice writes into the car. The questions are those of the customer.

import { hasDate, placed, withEarlierWork, withLife, withOption, withWorkYear } from "../car.ts";
import { workYear, yearsOfWork } from "../workyear.ts";
import { withBody } from "./record.ts";

const options = (q, without = []) =>
  q.answers
    .filter((a) => !without.includes(a.id))
    .map((a) => [a.id, a.more ? `${a.text}: ${a.more.toLowerCase()}` : a.text]);

function placeGroups(opened, q) {
  return [
    ["", options(q.place, ["pick"])],
    ...opened.places.map((c) => [c.country, c.places.map((p) => [p.id, p.name])]),
  ];
}

const yearText = (made) =>
  made?.year ? String(made.year) : made?.decade ? `${made.decade}s` : made?.not_sure ? "not sure" : "";

/** "1967", "1960s" and "not sure" as the car file has them; null when none. */
function madeOf(text, bounds) {
  const plain = text.trim().toLowerCase();
  if (plain === "not sure") return { not_sure: true };
  if (/^\d{3}0s$/.test(plain)) return { decade: Number(plain.slice(0, 4)) };
  const year = /^\d{4}$/.test(plain) ? Number(plain) : NaN;
  return year >= bounds.from && year <= bounds.to ? { year } : null;
}

function lifeFields(opened, q, n) {
  const of = (car) => car.life?.[n] ?? {};
  const which = n === 0 ? "" : ` (${n + 1})`;
  return [
    {
      id: `place${n}`,
      label: (n === 0 ? q.place.short : q.elsewhere.short) + which,
      groups: placeGroups(opened, q),
      get: (car) => of(car).place,
      set: (car, v) => placed(car, n, v),
    },
    {
      id: `shore${n}`,
      label: q.shore.short + which,
      options: options(q.shore),
      when: (car) => coastal(opened, of(car).place),
      get: (car) => of(car).shore,
      set: (car, v) => withLife(car, n, { shore: v }),
    },
    {
      id: `kept${n}`,
      label: q.kept.short + which,
      options: options(q.kept),
      get: (car) => of(car).kept,
      set: (car, v) => withLife(car, n, { kept: v }),
    },
  ];
}

const coastal = (opened, place) => opened.places.some((c) => c.places.some((p) => p.id === place && p.coast));

/** The five that a range needs, in one list. */
export function neededFields(opened, q) {
  return [
    {
      id: "body",
      label: q.body.short,
      options: opened.bodies.map((b) => [b.id, b.name]),
      get: (car) => (car.bodies?.length === 1 ? car.bodies[0] : undefined),
      set: withBody,
    },
    {
      id: "year",
      label: q.year.short,
      hint: "A year such as 1967, a decade such as 1960s, or: not sure",
      get: (car) => yearText(car.made),
      parse: (text) => madeOf(text, opened.made),
      wrong: `Write ${opened.made.expected}, a decade such as 1960s, or: not sure.`,
      set: (car, made) => ({ ...car, made }),
    },
    ...lifeFields(opened, q, 0),
    {
      id: "standard",
      label: q.standard.short,
      options: options(q.standard, ["not_sure"]),
      get: (car) => car.standard,
      set: (car, v) => ({ ...car, standard: v }),
    },
  ];
}

/** The year of earlier work; 0 stands for one that nobody knows. */
function yearField(q, span) {
  const read = (text) => {
    try {
      return { year: workYear(text, span) ?? 0 };
    } catch (problem) {
      return { wrong: problem.message };
    }
  };
  return {
    id: "earlier_year",
    label: q.earlier_year.short,
    hint: `A year such as ${span.example}, or: not sure`,
    when: (c) => hasDate(c.earlier_work),
    get: (c) => String(c.earlier_work_year ?? ""),
    parse: (text) => read(text).year ?? null,
    wrong: (text) => read(text).wrong,
    set: (c, year) => withWorkYear(c, year || null),
  };
}

/** Every answer of a car that has the needed ones. */
export function allFields(opened, q, car) {
  const needed = neededFields(opened, q);
  const pickup = {
    id: "fenders",
    label: q.fenders.short,
    options: [
      ["yes", "Fenders outside the bed".replace("Fenders", opened.words === "uk" ? "Wings" : "Fenders")],
      ["no", "Smooth bed sides"],
    ],
    when: (c) => c.bodies?.[0] === "pickup",
    get: (c) => (c.options?.includes("outside_fenders") ? "yes" : "no"),
    set: (c, v) => withOption(c, "outside_fenders", v === "yes"),
  };
  const elsewhere = (car.life ?? []).slice(1).flatMap((_, k) => {
    const n = k + 1;
    return [
      ...lifeFields(opened, q, n),
      {
        id: `years${n}`,
        label: `Years there (${n + 1})`,
        hint: "A whole number",
        get: (c) => String(c.life[n]?.years ?? ""),
        parse: (text) => (/^[1-9]\d?$/.test(text.trim()) ? Number(text) : null),
        wrong: "Write the years as a whole number, for example 12.",
        set: (c, years) => withLife(c, n, { years }),
      },
    ];
  });
  return [
    needed[0],
    pickup,
    ...needed.slice(1),
    {
      id: "road",
      label: q.road.short,
      options: options(q.road),
      get: (c) => c.life?.[0]?.road_years,
      set: (c, v) => withLife(c, 0, { road_years: v }),
    },
    ...elsewhere,
    {
      id: "covered",
      label: q.covered.short,
      options: options(q.covered),
      get: (c) => c.covered,
      set: (c, v) => ({ ...c, covered: v }),
    },
    {
      id: "earlier",
      label: q.earlier.short,
      options: options(q.earlier),
      get: (c) => c.earlier_work,
      set: withEarlierWork,
    },
    yearField(q, yearsOfWork(car)),
    {
      id: "scope",
      label: q.scope.short,
      options: options(q.scope, ["not_sure"]),
      get: (c) => c.scope,
      set: (c, v) => ({ ...c, scope: v }),
    },
    {
      id: "old_metal",
      label: "Old metal",
      options: [
        ["no", "Fit a whole panel where its pieces would cost clearly more"],
        ["yes", "Keep as much of the old metal as possible"],
      ],
      get: (c) => (c.options?.includes("keep_old_metal") ? "yes" : "no"),
      set: (c, v) => withOption(c, "keep_old_metal", v === "yes"),
    },
  ];
}

/** A further place it lived in, ready to be changed. */
export const withPlace = (car) =>
  withLife(car, car.life.length, { place: "not_sure", kept: "not_sure", years: 10 });
export const withoutPlace = (car, n) => ({ ...car, life: car.life.filter((_, k) => k !== n) });

/** The text of a value as it stands in the list. */
export function textOf(field, car) {
  const value = field.get(car);
  if (value === undefined || value === "") return "not answered";
  const all = field.options ?? field.groups?.flatMap(([, list]) => list);
  return all ? (all.find(([id]) => id === value)?.[1] ?? String(value)) : value;
}
