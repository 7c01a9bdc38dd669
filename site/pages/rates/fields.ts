// What the form asks, as data: path in the rates file, words, unit, kind. Bounds
// are the engine's business; it says what was expected.
//
// Kinds: text, link, name (one for each set of words), money (a decimal, kept as
// typed), number, three (low, likely, high), percent (a decimal), date, choice,
// ticks, factors (by standard), long (one paragraph), lines (paragraphs), yes (a box). A heading alone
// starts a group. redraws: other labels hang on it.

export const TRADES = ["metal", "prep", "body", "paint", "fit"];

export const tradeNames = {
  us: {
    metal: "Metalwork",
    prep: "Strip and prep",
    body: "Body and block",
    paint: "Paint",
    fit: "Fitting and assembly",
  },
  uk: {
    metal: "Metalwork",
    prep: "Strip and prep",
    body: "Filling and flatting",
    paint: "Paint",
    fit: "Fitting and assembly",
  },
};

const yesNo = [
  ["yes", "Yes"],
  ["no", "No"],
  ["not_sure", "Not sure: ask your adviser"],
];

const rate = (trade) => ({ path: `labour.${trade}.rate`, trade, label: "", kind: "money", unit: "an hour" });
const pace = (trade) => ({
  path: `labour.${trade}.pace`,
  trade,
  label: "",
  kind: "number",
  unit: "× the starting hours",
  after: ", pace",
});
const hourHead = { heading: "What an hour costs" };
const paceHead = {
  heading: "Your pace",
  intro:
    "Your hours for one of the starting hours: 1 = as they are, 1.2 = a fifth more. Leave 1 until your own jobs say otherwise.",
};

const shop = [
  {
    path: "shop.name",
    label: "Shop's name",
    kind: "text",
    why: "Stands at the head of the customer's page and on paper.",
  },
  { path: "shop.town", label: "Town", kind: "text" },
  { path: "shop.contact.text", label: "How to reach you, in one line", kind: "text" },
  {
    path: "shop.contact.href",
    label: "Link for it",
    kind: "link",
    optional: true,
    hint: "Begins with mailto:, tel: or https://",
  },
  {
    path: "shop.invented",
    label: "This shop is invented (a sample)",
    kind: "yes",
    why: "Leave this off for a real shop. While it is on, every page says that the shop does not exist.",
  },
];

const stage = [
  {
    path: "strip_and_survey.price",
    label: "One price for the fixed steps",
    kind: "money",
    optional: true,
    empty: null,
    hint: "Empty: worked out from likely hours at your rates, and materials",
    why: "The first job a customer is asked to agree to. It has a price before the car is touched.",
  },
  {
    path: "strip_and_survey.to_stop",
    label: "Price to stop after the survey",
    kind: "money",
    why: "For putting the car back as a primed shell, or boxing it up, when the customer goes no further.",
  },
];

const currency = { path: "currency", label: "Currency", kind: "currency", redraws: true };
const weeks = {
  path: "time.hours_a_week",
  label: "Hours a week that one car gets",
  kind: "three",
  why: "Turns the hours of a job into weeks for the customer. Not the hours of one man: those that one car gets while others stand beside it.",
};

export const sections = [
  {
    id: "first",
    title: "The first figures",
    intro:
      "With these a shop can open. Everything else stands at a starting figure, is marked as such, and can be deepened later.",
    fields: [
      shop[0],
      shop[2],
      shop[4],
      currency,
      hourHead,
      ...TRADES.map(rate),
      paceHead,
      ...TRADES.map(pace),
      { heading: "The first stage, and time" },
      stage[0],
      weeks,
    ],
  },
  {
    id: "shop",
    title: "Shop and dates",
    fields: [
      ...shop,
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
      hourHead,
      ...TRADES.map(rate),
      paceHead,
      ...TRADES.map(pace),
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
    ],
  },
  { id: "done", title: "What to do, by condition", list: "done" },
  {
    id: "stage",
    title: "Strip and survey",
    fields: [...stage, { path: "strip_and_survey.includes", label: "What the customer gets", kind: "long" }],
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
      ...[
        ["labour", "labor", "labour"],
        ["materials", "materials", "materials"],
        ["parts", "parts", "parts"],
        ["supplies", "supplies", "consumables"],
        ["sent_out", "work sent out", "work sent out"],
      ].map(([id, us, uk]) => ({
        path: `tax.on.${id}`,
        label: `Is there tax on ${us}?`,
        uk: `Is there tax on ${uk}?`,
        kind: "choice",
        options: yesNo,
      })),
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
    title: "Time, queue and allowance",
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
      {
        path: "allowance.before_percent",
        label: "Allowance for the unknown before the survey",
        kind: "percent",
        why: "Set apart and named; never in the range. The range already holds what is usually found.",
      },
      {
        path: "allowance.after_percent",
        label: "Allowance for the unknown after the survey",
        kind: "percent",
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

/** The words of a field as the shop has chosen them. */
export function labelOf(field, words) {
  const name = field.trade ? tradeNames[words === "uk" ? "uk" : "us"][field.trade] + (field.after ?? "") : "";
  return name || (words === "uk" && field.uk) || field.label;
}

/** The text of a choice: [key, text, text in UK words if it differs]. */
export const optionText = ([, us, uk], words) => (words === "uk" && uk ? uk : us);
