// What the form asks is data; these are its kinds. Bounds are the engine's business: it
// says what was expected.

import type { Trade } from "../shared/carfile.ts";
import type { Words } from "../shared/ratesfile.ts";
import type { Option } from "./choices.ts";

/** What all fields have. */
interface Common {
  /** Where the value is in the rates file. */
  path: string;
  /** Empty where the trade names the field. */
  label: string;
  /** The label in UK words where that differs. */
  uk?: string;
  trade?: Trade;
  /** Follows the name of the trade. */
  after?: string;
  unit?: string;
  hint?: string;
  why?: string;
  /** The field may stay empty; the draft then has `empty` there, or no such member. */
  optional?: boolean;
  empty?: null | "";
  /** Other labels depend on this field, so the section is drawn again. */
  redraws?: boolean;
}

/** A box to type in. money and percent are decimals and stay as they were typed. */
export interface TypedField extends Common {
  kind: "text" | "link" | "date" | "money" | "percent" | "number";
  /** An amount without the sign of the currency. */
  bare?: boolean;
}

/** One paragraph. */
export interface LongField extends Common {
  kind: "long";
  rows?: number;
}

/** name: one for each set of words. three: low, likely and high. row: chances, one for
 *  each way. lines: paragraphs. yes: one box to tick. */
export interface PlainField extends Common {
  kind: "name" | "three" | "row" | "lines" | "yes" | "currency" | "supplies" | "promise";
  /** The one box is ticked where the file has no such member. */
  ticked?: boolean;
}

export interface ChoiceField extends Common {
  kind: "choice";
  options: readonly Option[];
  /** What is chosen now, where the draft does not hold it at the path. */
  value?: string;
  /** Does more than put the key at the path. */
  set?: (key: string) => void;
}

/** Boxes to tick. */
export interface TicksField extends Common {
  kind: "ticks";
  options: readonly Option[];
  /** All are ticked where the file has no such member. */
  all?: boolean;
}

/** One factor for each standard. */
export interface FactorsField extends Common {
  kind: "factors";
  options: readonly Option[];
}

export type Field = TypedField | LongField | PlainField | ChoiceField | TicksField | FactorsField;

/** Begins a group of fields. */
export interface Heading {
  heading: string;
  intro?: string;
}

/** One part of the form. */
export interface Section {
  id: string;
  title: string;
  uk?: string;
  intro?: string;
  fields?: readonly (Field | Heading)[];
  /** The list that follows the fields, by its name in lists.ts. */
  list?: ListName;
}

export type ListName = "materials" | "parts" | "done" | "steps" | "sent" | "doubt" | "another";

const TRADE_NAMES: Record<Words, Record<Trade, string>> = {
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

/** The words of a field as the shop has chosen them. */
export function labelOf(field: Field, words: Words): string {
  const name = field.trade ? TRADE_NAMES[words][field.trade] + (field.after ?? "") : "";
  return name || (words === "uk" && field.uk) || field.label;
}
