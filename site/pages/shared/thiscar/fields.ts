// The answers about a car as plain fields: what each asks, what it accepts, and what it
// writes into the car. The questions are the ones that the customer is asked.

import { hasDate, placed, wasHit, withLife, withOption, withWorkYear } from "../car.ts";
import type { CarFile, Made } from "../carfile.ts";
import { messageOf } from "../files.ts";
import type { Choice, Questions } from "../question.ts";
import type { OpenedReply, Years } from "../replies.ts";
import { workYear, yearsOfWork } from "../workyear.ts";
import { withBody } from "./carmembers.ts";

/** A choice: what is written into the car, and its text. */
export type Option = readonly [id: string, text: string];
/** Options under a heading; without one where the name is blank. */
export type OptionGroup = readonly [name: string, options: readonly Option[]];

interface AnyField {
  id: string;
  label: string;
  /** Whether this answer belongs to a car; of every car where it is left out. */
  when?(car: CarFile): boolean;
  /** The value as it is in the control; undefined or blank where there is no answer. */
  get(car: CarFile): string | undefined;
}

/** An answer that is chosen from a list. */
export interface ChoiceField extends AnyField {
  kind: "choice";
  groups: readonly OptionGroup[];
  set(car: CarFile, id: string): CarFile;
}

/** An answer that is typed. */
export interface TypedField extends AnyField {
  kind: "typed";
  hint: string;
  /** The car with this answer, or null where the text cannot be read. */
  read(car: CarFile, text: string): CarFile | null;
  /** What to say about a text that cannot be read. */
  wrong(text: string): string;
}

export type Field = ChoiceField | TypedField;

const optionsOf = (q: Choice, without: readonly string[] = []): Option[] =>
  q.answers
    .filter((a) => !without.includes(a.id))
    .map((a) => [a.id, a.more ? `${a.text}: ${a.more.toLowerCase()}` : a.text]);

/** A question of the customer's as a field. without: answers that the shop cannot give. */
function choiceField(
  id: string,
  q: Choice,
  get: ChoiceField["get"],
  without: readonly string[] = [],
): ChoiceField {
  const set = (car: CarFile, answer: string) => q.apply(car, answer);
  return { kind: "choice", id, label: q.short, groups: [["", optionsOf(q, without)]], get, set };
}

/** A choice between having an option and not having it: "yes" and "no", in the order in
 *  which they are offered. */
function optionField(id: string, label: string, option: string, ...options: Option[]): ChoiceField {
  return {
    kind: "choice",
    id,
    label,
    groups: [["", options]],
    get: (car) => (car.options?.includes(option) ? "yes" : "no"),
    set: (car, answer) => withOption(car, option, answer === "yes"),
  };
}

function placeGroups(opened: OpenedReply, q: Questions): OptionGroup[] {
  return [
    ["", optionsOf(q.place, ["pick"])],
    ...opened.places.map((c): OptionGroup => [c.country, c.places.map((p) => [p.id, p.name])]),
  ];
}

const yearText = (made: Made | undefined): string =>
  made?.year ? String(made.year) : made?.decade ? `${made.decade}s` : made?.not_sure ? "not sure" : "";

/** "1967", "1960s" and "not sure" as the car file has them; null for anything else. */
function madeOf(text: string, bounds: Years): Made | null {
  const plain = text.trim().toLowerCase();
  if (plain === "not sure") return { not_sure: true };
  if (/^\d{3}0s$/.test(plain)) return { decade: Number(plain.slice(0, 4)) };
  const year = /^\d{4}$/.test(plain) ? Number(plain) : Number.NaN;
  return year >= bounds.from && year <= bounds.to ? { year } : null;
}

const isCoastal = (opened: OpenedReply, place: string | undefined): boolean =>
  opened.places.some((c) => c.places.some((p) => p.id === place && p.coast));

/** The answers about the nth place where the car lived, counted from 0. */
function lifeFields(opened: OpenedReply, q: Questions, n: number): ChoiceField[] {
  const of = (car: CarFile) => car.life?.[n] ?? {};
  const which = n === 0 ? "" : ` (${n + 1})`;
  return [
    {
      kind: "choice",
      id: `place${n}`,
      label: (n === 0 ? q.place.short : q.elsewhere.short) + which,
      groups: placeGroups(opened, q),
      get: (car) => of(car).place,
      set: (car, id) => placed(car, n, id),
    },
    {
      kind: "choice",
      id: `shore${n}`,
      label: q.shore.short + which,
      groups: [["", optionsOf(q.shore)]],
      when: (car) => isCoastal(opened, of(car).place),
      get: (car) => of(car).shore,
      set: (car, id) => withLife(car, n, { shore: id }),
    },
    {
      kind: "choice",
      id: `kept${n}`,
      label: q.kept.short + which,
      groups: [["", optionsOf(q.kept)]],
      get: (car) => of(car).kept,
      set: (car, id) => withLife(car, n, { kept: id }),
    },
  ];
}

/** The five answers that a range needs. */
export function neededFields(opened: OpenedReply, q: Questions): Field[] {
  return [
    {
      kind: "choice",
      id: "body",
      label: q.body.short,
      groups: [["", opened.bodies.map((b) => [b.id, b.name])]],
      get: (car) => (car.bodies?.length === 1 ? car.bodies[0] : undefined),
      set: (car, id) => {
        const body = opened.bodies.find((b) => b.id === id);
        return body ? withBody(car, body.id) : car;
      },
    },
    {
      kind: "typed",
      id: "year",
      label: q.year.short,
      hint: "A year such as 1967, a decade such as 1960s, or: not sure",
      get: (car) => yearText(car.made),
      read: (car, text) => {
        const made = madeOf(text, opened.made);
        return made && { ...car, made };
      },
      wrong: () => `Write ${opened.made.expected}, a decade such as 1960s, or: not sure.`,
    },
    ...lifeFields(opened, q, 0),
    choiceField("standard", q.standard, (car) => car.standard, ["not_sure"]),
  ];
}

/** The year of earlier work. */
function yearField(q: Questions, car: CarFile): TypedField {
  const span = yearsOfWork(car);
  return {
    kind: "typed",
    id: "earlier_year",
    label: q.earlier_year.short,
    hint: `A year such as ${span.example}, or: not sure`,
    when: (c) => hasDate(c.earlier_work),
    get: (c) => String(c.earlier_work_year ?? ""),
    read: (c, text) => {
      try {
        return withWorkYear(c, workYear(text, span));
      } catch {
        return null;
      }
    },
    wrong: (text) => {
      try {
        workYear(text, span);
        return "";
      } catch (problem) {
        return messageOf(problem);
      }
    },
  };
}

/** The answers about the nth place that are asked only of further places. */
const yearsField = (n: number): TypedField => ({
  kind: "typed",
  id: `years${n}`,
  label: `Years there (${n + 1})`,
  hint: "A whole number",
  get: (car) => String(car.life?.[n]?.years ?? ""),
  read: (car, text) => (/^[1-9]\d?$/.test(text.trim()) ? withLife(car, n, { years: Number(text) }) : null),
  wrong: () => "Write the years as a whole number, for example 12.",
});

/** Whether the shop has a price for another body of the car's kind. */
const offersAnother = (opened: OpenedReply, car: CarFile): boolean =>
  opened.bodies.some((b) => b.another_body === "offered" && car.bodies?.includes(b.id));

/** Every answer about a car that has the needed ones. */
export function allFields(opened: OpenedReply, q: Questions, car: CarFile): Field[] {
  const [body, ...needed] = neededFields(opened, q);
  const fenders = opened.words === "uk" ? "Wings" : "Fenders";
  const elsewhere = (car.life ?? [])
    .slice(1)
    .flatMap((_, k) => [...lifeFields(opened, q, k + 1), yearsField(k + 1)]);
  return [
    ...(body ? [body] : []),
    {
      ...optionField(
        "fenders",
        q.fenders.short,
        "outside_fenders",
        ["yes", `${fenders} outside the bed`],
        ["no", "Smooth bed sides"],
      ),
      when: (c) => c.bodies?.[0] === "pickup",
    },
    ...needed,
    choiceField("road", q.road, (c) => c.life?.[0]?.road_years),
    ...elsewhere,
    choiceField("covered", q.covered, (c) => c.covered),
    choiceField("earlier", q.earlier, (c) => c.earlier_work),
    yearField(q, car),
    choiceField("all_there", q.all_there, (c) => c.all_there),
    choiceField("hit", q.hit, (c) => c.hit?.answer),
    {
      ...choiceField("hit_where", q.hit_where, (c) => c.hit?.where?.[0]),
      when: (c) => wasHit(c.hit?.answer),
    },
    choiceField("scope", q.scope, (c) => c.scope, ["not_sure"]),
    {
      ...choiceField("another_body", q.another_body, (c) => c.another_body),
      when: (c) => offersAnother(opened, c),
    },
    optionField(
      "old_metal",
      "Old metal",
      "keep_old_metal",
      ["no", "Fit a whole panel where its pieces would cost clearly more"],
      ["yes", "Keep as much of the old metal as possible"],
    ),
  ];
}

/** Adds a further place where the car lived, ready to be changed. */
export const withPlace = (car: CarFile): CarFile =>
  withLife(car, car.life?.length ?? 0, { place: "not_sure", kept: "not_sure", years: 10 });
export const withoutPlace = (car: CarFile, n: number): CarFile => ({
  ...car,
  life: (car.life ?? []).filter((_, k) => k !== n),
});

/** The answer in words. */
export function textOf(field: Field, car: CarFile): string {
  const value = field.get(car);
  if (value === undefined || value === "") return "not answered";
  if (field.kind === "typed") return value;
  const all = field.groups.flatMap(([, options]) => options);
  return all.find(([id]) => id === value)?.[1] ?? value;
}
