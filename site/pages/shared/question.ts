// What a question is, and the answers that several questions share. The questions themselves
// are in questions.ts.

import type { Body, CarFile } from "./carfile.ts";
import type { QuestionStep, Step } from "./flow.ts";

export interface Answer<Id extends string = string> {
  id: Id;
  text: string;
  /** A second line on the button. */
  more?: string;
  /** What it is called away from its question, where the text alone would say too little. */
  means?: string;
  /** The body whose side view is on the button. */
  drawing?: Body;
}

/** A question whose screen has its own answers. */
export interface Question {
  /** Its place in the count of questions. */
  number: number;
  /** What it is called away from its screen. */
  short: string;
  title: string;
  hint?: string;
  drawing?: "under_the_door";
}

/** A question with answers to choose from that go into the car. */
export interface Choice extends Question {
  answers: readonly Answer[];
  /** The answer that the car has, or null. said: what was chosen here before, because not
   *  every answer goes into the car. */
  chosen(car: CarFile, said?: string): string | null;
  apply(car: CarFile, id: string): CarFile;
}

/** A question about a further place, which goes into the car only when it is complete. */
export interface DraftQuestion extends Question {
  answers: readonly Answer[];
  draft: "place" | "kept";
}

type DraftStep = "else_place" | "else_kept";
type PlainStep = "year" | "else_years" | "earlier_year" | "earlier_parts" | "seen" | "holes";
export type ChoiceStep = Exclude<QuestionStep, DraftStep | PlainStep>;
export type Questions = Record<ChoiceStep, Choice> &
  Record<DraftStep, DraftQuestion> &
  Record<PlainStep, Question>;

/** The questions by any step; a step without one gives undefined. */
export type QuestionAt = Partial<Record<Step, Question>>;

/** A choice whose apply gets only the ids of its own answers. */
export function choice<Id extends string>(
  q: Omit<Choice, "answers" | "apply"> & {
    answers: readonly Answer<Id>[];
    apply(car: CarFile, id: Id): CarFile;
  },
): Choice {
  return {
    ...q,
    apply(car, id) {
      const given = q.answers.find((a) => a.id === id);
      return given ? q.apply(car, given.id) : car;
    },
  };
}

/** Always an answer, last and of the same size. */
export const NOT_SURE: Answer<"not_sure"> = { id: "not_sure", text: "Not sure" };

export const KEPT: Answer[] = [
  { id: "driven_all_year", text: "Driven all year" },
  { id: "driven_in_summer", text: "Driven in summer, put away in winter" },
  { id: "garage", text: "Mostly in an ordinary garage" },
  { id: "dry_or_heated_garage", text: "Mostly in a dry or heated garage" },
  { id: "open_shed_or_outside", text: "Mostly in an open shed or outside" },
  NOT_SURE,
];
export const CLIMATES: Answer[] = [
  { id: "pick", text: "Pick a place from a list" },
  { id: "dry", text: "Dry: little rain, hardly any road salt" },
  { id: "mild", text: "Temperate: ordinary rain, roads salted in cold spells" },
  { id: "damp", text: "Humid, or snow and salted roads for part of the winter" },
  { id: "salt", text: "Snow and heavily salted roads all winter" },
  { id: "sea", text: "By the sea, with salt in the air" },
  NOT_SURE,
];
/** A place that is not one of the climate answers was picked from the list. */
export function climateOf(place: string | undefined): string | null {
  if (place === undefined) return null;
  return CLIMATES.some((c) => c.id === place) ? place : "pick";
}

export const SHORE: Answer[] = [
  { id: "shore", text: "By the shore: salt spray reached it" },
  { id: "near", text: "Near the sea, out of the spray" },
  { id: "inland", text: "Further inland" },
  NOT_SURE,
];
