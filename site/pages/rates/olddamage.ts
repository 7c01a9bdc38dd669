// What the form asks about old accidents and earlier hands. Every box may stay empty: the
// starting figure then holds, which the hint names. A test compares the hints with the
// figures of the engine.

import type { Field, Section } from "./fields.ts";

const AT = "hidden_history";

const hours = (line: string, trade: string, label: string, asDelivered: string): Field => ({
  path: `${AT}.hours.${line}.${trade}`,
  label,
  kind: "three",
  unit: "hours",
  optional: true,
  hint: `As delivered: ${asDelivered}`,
});

export const oldDamage: Section = {
  id: "old_damage",
  title: "Old damage",
  intro:
    "Every range also counts old accidents, what earlier hands left, and bodies out of square. Leave a box empty to keep the figure as delivered.",
  fields: [
    {
      path: `${AT}.in_range`,
      label: "Old damage is in the range",
      kind: "yes",
      ticked: true,
      why: "Untick it to price old damage only once somebody has found it.",
    },
    {
      path: `${AT}.hit.hard_hits_a_road_year`,
      label: "Hard hits in a year on the road",
      kind: "number",
      optional: true,
      hint: "As delivered: 0.008",
      why: "Worked out from published figures of modern cars; the page of figures names them. Your own jobs know better.",
    },
    { heading: "One end or side that was repaired roughly" },
    hours("mended_roughly", "metal", "Metalwork", "6, 14, 32"),
    hours("mended_roughly", "body", "Body work", "2, 5, 12"),
    { heading: "Where it is crooked as well" },
    hours("crooked", "metal", "Metalwork, on top", "8, 20, 50"),
    hours("crooked", "fit", "Fitting, on top", "3, 6, 14"),
    { heading: "A body out of square" },
    hours("sagged", "metal", "A body that has sagged", "6, 16, 40"),
    hours("set_up", "metal", "Setting up and measuring", "6, 10, 16"),
    {
      path: `${AT}.sent_out`,
      label: "Or sent out: price",
      kind: "three",
      optional: true,
      hint: "All three empty: your own hours",
    },
    hours("measure", "metal", "Tape and trammel, every car, in the strip", "2, 3, 5"),
  ],
};
