// What lists let one choose from: ids of the rates file and their words.

export const STANDARDS = [
  ["driver", "driver standard"],
  ["show", "show standard"],
  ["concours", "concours standard"],
];
export const SCOPES = [
  ["whole_body", "the whole body"],
  ["outside_only", "outside only"],
  ["metalwork_only", "metalwork only"],
];
export const HAD = [
  ["", "as in the starting figures"],
  ["made_today", "whole panel made today"],
  ["section_only", "repair section only"],
  ["found", "must be found"],
  ["by_hand", "none made: by hand"],
  ["specialist", "from a specialist"],
];
export const AREAS = [
  ["reached", "every face that the gun reaches"],
  ["outer", "outer skins"],
  ["inside_and_under", "inside and underneath"],
  ["none", "reckoned by the car"],
];
export const UNITS = [
  ["litre", "liter", "litre"],
  ["kilogram", "kilogram"],
  ["each", "each"],
];
export const STAGES = [
  ["strip", "in the strip and survey"],
  ["after", "after the survey"],
];
export const CHARGED = [
  ["fixed", "fixed"],
  ["each", "at a price each"],
  ["by_the_hour", "by the hour"],
  ["at_cost", "at cost"],
];
export const KINDS = {
  outer: "outer panels",
  hidden: "hidden parts",
  structural: "parts that carry the load",
  structural_near_mounting: "parts that carry the load, near a mounting",
};
