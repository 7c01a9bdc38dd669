// The sections of the form in their order, and what each asks.

import type { Option } from "./choices.ts";
import {
  contact,
  currency,
  invented,
  labourFields,
  shopFields,
  shopName,
  stageFields,
  stagePrice,
  weeks,
} from "./commonfields.ts";
import type { Field, Section } from "./fields.ts";
import { oldDamage } from "./olddamage.ts";

const YES_NO: readonly Option[] = [
  ["yes", "Yes"],
  ["no", "No"],
  ["not_sure", "Not sure: ask your adviser"],
];

/** Kinds of lines that may be taxed. */
const TAXED: readonly Option[] = [
  ["labour", "labor", "labour"],
  ["materials", "materials"],
  ["parts", "parts"],
  ["supplies", "supplies", "consumables"],
  ["sent_out", "work sent out"],
];
const taxField = (id: string, us: string, uk: string): Field => ({
  path: `tax.on.${id}`,
  label: `Is there tax on ${us}?`,
  uk: `Is there tax on ${uk}?`,
  kind: "choice",
  options: YES_NO,
});

const first: Section = {
  id: "first",
  title: "The first figures",
  intro:
    "With these a shop can open. Everything else stands at a starting figure, is marked as such, and can be deepened later.",
  fields: [
    shopName,
    contact,
    invented,
    currency,
    ...labourFields,
    { heading: "The first stage, and time" },
    stagePrice,
    weeks,
  ],
};

export const sections: readonly [Section, ...Section[]] = [
  first,
  {
    id: "shop",
    title: "Shop and dates",
    fields: [
      ...shopFields,
      {
        path: "country",
        label: "Country, in two letters",
        kind: "text",
        hint: "Such as US or GB",
        why: "Decides which tax notes you are reminded of, and which places stand first.",
      },
      { path: "rates_of", label: "Rates of", kind: "date" },
      {
        path: "valid_until",
        label: "Valid until",
        kind: "date",
        why: "After this day the customer's page says beside every range that the rates have run out.",
      },
    ],
  },
  {
    id: "labour",
    title: "Labor",
    uk: "Labour",
    fields: [
      ...labourFields,
      { heading: "What goes with it" },
      {
        path: "labour.includes",
        label: "The rate an hour includes",
        kind: "ticks",
        options: [
          ["supplies", "Shop supplies", "Consumables"],
          ["booth", "The paint booth"],
          ["parts_chasing", "Finding parts"],
        ],
        why: "A customer compares your hour with another shop's. What is in it decides whether supplies may be charged apart.",
      },
      {
        path: "labour.least_charge_hours",
        label: "Least charge for a job",
        kind: "number",
        unit: "hours",
        why: "A small job takes setting up too. Work that comes to fewer hours is charged as this many.",
      },
    ],
  },
  { id: "materials", title: "Materials", list: "materials" },
  {
    id: "parts",
    title: "Parts and prices",
    list: "parts",
    fields: [
      {
        path: "parts.price_factor",
        label: "All starting prices of parts times",
        kind: "money",
        bare: true,
        why: "For parts without a price of your own. Use it when parts cost you more, or in another currency.",
      },
      {
        path: "parts.handling_percent",
        label: "Handling on parts",
        kind: "percent",
        why: "For finding, ordering, trial fitting and sending back. It is added to what a part costs you.",
      },
      {
        path: "parts.as_they_come",
        label: "Parts that are missing, do not fit or are used ones are in the range",
        kind: "yes",
        ticked: true,
        why: "They are drawn for each simulated car. Untick it if the growth of your jobs already allows for them, or they count twice.",
      },
    ],
  },
  { id: "done", title: "What to do, by condition", list: "done" },
  {
    id: "stage",
    title: "Strip and survey",
    fields: [
      ...stageFields,
      { path: "strip_and_survey.includes", label: "What the customer gets", kind: "long" },
    ],
    list: "steps",
  },
  {
    id: "sent",
    title: "Work sent out",
    fields: [
      {
        path: "sent_out.handling_percent",
        label: "Handling on work sent out",
        kind: "percent",
        why: "For arranging, moving and answering for what others do.",
      },
    ],
    list: "sent",
  },
  {
    id: "another",
    title: "Another body",
    intro:
      "If you can find sound bodies, put in what one costs and how often you find one. The customer then learns when another would be the better buy, and decides. A body that is not listed here is never spoken of.",
    list: "another",
  },
  {
    id: "tax",
    title: "Supplies and tax",
    fields: [
      {
        path: "supplies",
        label: "Shop supplies",
        uk: "Consumables",
        kind: "supplies",
        why: "Small things that are not listed one by one. Either in the hour or a share of it, never both.",
      },
      { path: "tax.name", label: "Name of the tax", kind: "name" },
      { path: "tax.percent", label: "Tax", kind: "percent" },
      ...TAXED.map(([id, us, uk = us]) => taxField(id, us, uk)),
      {
        path: "tax.published",
        label: "The figures on this page are",
        kind: "choice",
        options: [
          ["without_tax", "without tax"],
          ["with_tax", "with tax in them, for kinds that are taxed"],
        ],
        why: "In many countries prices for consumers must have the tax in them.",
      },
      {
        path: "tax.note",
        label: "Note on tax for the customer",
        kind: "long",
        rows: 3,
        optional: true,
        empty: "",
      },
    ],
  },
  {
    id: "time",
    title: "Time and queue",
    fields: [
      weeks,
      { path: "time.weeks_until_start", label: "Weeks until you can start", kind: "number", unit: "weeks" },
      {
        path: "time.waits_weeks",
        label: "Weeks waiting for others",
        kind: "three",
        optional: true,
        hint: "Blasting, panels, plating. All three empty: not reckoned",
      },
    ],
  },
  {
    id: "trust",
    title: "How far you trust your figures",
    intro:
      "Every range also allows for what no figure stands for: jobs grow, and the hours and odds may be off for all your cars or for one.",
    fields: [
      {
        path: "allowance.before_percent",
        label: "How much a job grows: ranges before the survey",
        kind: "percent",
        why: "Breakage and delays. Not the rust, and not parts that are missing or do not fit: the range already has those.",
      },
      {
        path: "allowance.after_percent",
        label: "How much a job grows: ranges from the survey on",
        kind: "percent",
      },
      {
        path: "allowance.in_range",
        label: "The growth is in the range",
        kind: "yes",
        ticked: true,
        why: "Untick it to name the growth beside the range instead.",
      },
    ],
    list: "doubt",
  },
  oldDamage,
  {
    id: "hold",
    title: "How long your prices hold",
    intro:
      "A car takes a year or more, and prices rise meanwhile. Say what you promise. Whatever you don't hold is in the customer's range at the price of its day.",
    fields: [
      {
        path: "prices_over_time.promise",
        label: "Prices are held",
        kind: "promise",
        why: "The customer's page and the letter say what you promise here, and what rising prices add to the range. You still pay the price of the day for parts, so a promise covers your hours and materials only.",
      },
      {
        heading: "How fast prices rise",
        intro: "Per cent a year. One year in ten is below the low figure and one in ten above the high one.",
      },
      {
        path: "prices_over_time.labour_percent_a_year",
        label: "Hourly rates",
        kind: "three",
        unit: "% a year",
        optional: true,
      },
      {
        path: "prices_over_time.parts_percent_a_year",
        label: "Parts and work sent out",
        kind: "three",
        unit: "% a year",
        optional: true,
      },
      {
        path: "prices_over_time.materials_percent_a_year",
        label: "Materials",
        kind: "three",
        unit: "% a year",
        optional: true,
      },
    ],
  },
  {
    id: "words",
    title: "Words, units and terms",
    fields: [
      {
        path: "words",
        label: "Names of parts and of work",
        kind: "choice",
        redraws: true,
        options: [
          ["us", "as in the United States (fender, rocker, trunk)"],
          ["uk", "as in the United Kingdom (wing, sill, boot)"],
        ],
      },
      {
        path: "units",
        label: "Units shown",
        kind: "choice",
        options: [
          ["us", "feet and gallons"],
          ["metric", "meters and liters", "metres and litres"],
        ],
      },
      currency,
      {
        path: "terms",
        label: "Terms, one paragraph to a line",
        kind: "lines",
        why: "Shown on the customer's page and printed. Local law may ask for more.",
      },
    ],
  },
];
