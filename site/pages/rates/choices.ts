// What can be chosen from a list: ids of the rates file and their words.

import type { Scope, Standard, Words } from "../shared/ratesfile.ts";

/** The id, its text, and the text in UK words where that differs. */
export type Option<Id extends string = string> = readonly [id: Id, us: string, uk?: string];

export const STANDARDS: readonly Option<Standard>[] = [
  ["driver", "driver standard"],
  ["show", "show standard"],
  ["concours", "concours standard"],
];
export const SCOPES: readonly Option<Scope>[] = [
  ["whole_body", "the whole body"],
  ["outside_only", "outside only"],
  ["metalwork_only", "metalwork only"],
];
export const HAD: readonly Option[] = [
  ["", "as in the starting figures"],
  ["made_today", "whole panel made today"],
  ["section_only", "repair section only"],
  ["found", "must be found"],
  ["by_hand", "none made: by hand"],
  ["specialist", "from a specialist"],
];
export const FITS: readonly Option[] = [
  ["", "not said: drawn for each car"],
  ["fits", "fits"],
  ["needs_work", "always needs work"],
  ["mixed", "now and then needs work or is wrong"],
  ["not_known", "not known: drawn for each car"],
];
export const AREAS: readonly Option[] = [
  ["reached", "every face that the gun reaches"],
  ["outer", "outer skins"],
  ["inside_and_under", "inside and underneath"],
  ["frame", "a separate frame", "a separate chassis"],
  ["replaced", "parts that are replaced"],
  ["none", "reckoned by the car"],
];
export const UNITS: readonly Option[] = [
  ["litre", "liter", "litre"],
  ["kilogram", "kilogram"],
  ["each", "each"],
];
export const STAGES: readonly Option[] = [
  ["strip", "in the strip and survey"],
  ["after", "after the survey"],
];
export const CHARGED: readonly Option[] = [
  ["fixed", "fixed"],
  ["each", "at a price each"],
  ["by_the_hour", "by the hour"],
  ["at_cost", "at cost"],
];
export const STAGES_OF_DOUBT: readonly Option[] = [
  ["told", "From the customer's answers"],
  ["walk_round", "After the walk-around", "After the walk-round"],
  ["survey", "After the survey"],
  ["opening_up", "After opening up"],
  ["ways", "Once every repair is chosen"],
];
export const KINDS: Record<string, string> = {
  outer: "outer panels",
  hidden: "hidden parts",
  structural: "parts that carry the load",
  structural_near_mounting: "parts that carry the load, near a mounting",
};

/** The text of a choice in the words of the shop. */
export const optionText = ([, us, uk]: Option, words: Words): string => (words === "uk" && uk ? uk : us);
