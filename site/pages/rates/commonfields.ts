// Fields that more than one section asks.

import type { Trade } from "../shared/carfile.ts";
import type { Field, Heading } from "./fields.ts";

const TRADES: readonly Trade[] = ["metal", "prep", "body", "paint", "fit"];

const rate = (trade: Trade): Field => ({
  path: `labour.${trade}.rate`,
  trade,
  label: "",
  kind: "money",
  unit: "an hour",
});
const pace = (trade: Trade): Field => ({
  path: `labour.${trade}.pace`,
  trade,
  label: "",
  kind: "number",
  unit: "× the starting hours",
  after: ", pace",
});
const hourHead: Heading = { heading: "What an hour costs" };
const paceHead: Heading = {
  heading: "Your pace",
  intro:
    "Your hours for one of the starting hours: 1 = as they are, 1.2 = a fifth more. Leave 1 until your own jobs say otherwise.",
};

/** Rates and paces of all trades. */
export const labourFields: (Field | Heading)[] = [
  hourHead,
  ...TRADES.map(rate),
  paceHead,
  ...TRADES.map(pace),
];

export const shopName: Field = {
  path: "shop.name",
  label: "Shop's name",
  kind: "text",
  why: "Stands at the head of the customer's page and on paper.",
};
const town: Field = { path: "shop.town", label: "Town", kind: "text" };
export const contact: Field = {
  path: "shop.contact.text",
  label: "How to reach you, in one line",
  kind: "text",
};
const contactLink: Field = {
  path: "shop.contact.href",
  label: "Link for it",
  kind: "link",
  optional: true,
  hint: "Begins with mailto:, tel: or https://",
};
export const invented: Field = {
  path: "shop.invented",
  label: "This shop is invented (a sample)",
  kind: "yes",
  why: "Leave this off for a real shop. While it is on, every page says that the shop does not exist.",
};
export const shopFields: Field[] = [shopName, town, contact, contactLink, invented];

export const stagePrice: Field = {
  path: "strip_and_survey.price",
  label: "One price for the fixed steps",
  kind: "money",
  optional: true,
  empty: null,
  hint: "Empty: worked out from likely hours at your rates, and materials",
  why: "The first job a customer is asked to agree to. It has a price before the car is touched.",
};
const priceToStop: Field = {
  path: "strip_and_survey.to_stop",
  label: "Price to stop after the survey",
  kind: "money",
  why: "For putting the car back as a primed shell, or boxing it up, when the customer goes no further.",
};
export const stageFields: Field[] = [stagePrice, priceToStop];

export const currency: Field = { path: "currency", label: "Currency", kind: "currency", redraws: true };
export const weeks: Field = {
  path: "time.hours_a_week",
  label: "Hours a week that one car gets",
  kind: "three",
  why: "Turns the hours of a job into weeks for the customer. Not the hours of one man: those that one car gets while others stand beside it.",
};
