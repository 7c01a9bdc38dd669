// The rates file, as far as the pages read or write it: rates.schema.json has the whole
// of it. A file from elsewhere counts as a RatesFile only after the engine has read it.

import type { Body, Trade } from "./carfile.ts";

export type Words = "us" | "uk";
export type Standard = "driver" | "show" | "concours";
export type Scope = "whole_body" | "outside_only" | "metalwork_only";

/** A figure of the file. The form also puts text here that is no figure yet. */
export type Figure = number | string;

/** One name in the words of each country. */
export interface Names {
  us: string;
  uk: string;
}

export interface RatesFile extends DraftRates {
  format: "underpaint rates 1";
  words: Words;
  currency: string;
  rates_of: string;
  tax: { published: "without_tax" | "with_tax" };
  terms: string[];
  own_figures: OwnFigures | null;
  record?: object | null;
}

/** Figures that were learnt from finished jobs, and that the shop uses. */
export interface OwnFigures {
  rust: { group: string; factor: number; jobs: number }[];
  hours: Partial<Record<Trade, { factor: number; jobs: number }>>;
  spread?: { factor: number; jobs: number };
  doubt?: { growth_percent: number; shared: number; own: number; jobs: number; from: "told" | "survey" };
}

/** Rates in the form. The form needs these members, so they are there; everything in
 *  them may be missing or wrong until somebody puts it right. */
export interface DraftRates {
  note?: unknown;
  rates_of?: unknown;
  terms?: unknown;
  shop: object;
  labour: object;
  materials: Partial<Material>[];
  parts: { prices: Partial<PartPrice>[] };
  strip_and_survey: { charged: Partial<Charge>[] };
  sent_out: { work: Partial<SentWork>[] };
  another_body?: { bodies?: Partial<OfferedBody>[] };
  tax: object;
  time: object;
}

/** How the quantity of a material is worked out. */
export type Reckoning = "film" | "per_m2" | "per_car";

export interface Material {
  id: string;
  name: Partial<Names>;
  unit: string;
  price: Figure;
  /** One member only. */
  how: Partial<Record<Reckoning, Record<string, Figure>>>;
  area: string;
  stage: string;
  standards: Standard[];
  scopes?: Scope[];
  factor?: Partial<Record<Standard, Figure>>;
  note?: string;
  source: string;
}

/** The price of a part; null means the starting price. */
export interface PartPrice {
  part: string;
  way: string;
  body?: Body;
  price: Figure[] | null;
  had: string | null;
  fit?: string;
  weeks?: Figure[];
  used_share?: Figure;
  note?: string;
  source?: string;
}

/** How a step of the strip and survey is charged. */
export interface Charge {
  step: string;
  how: string;
  no_more_than?: Figure;
  note?: string;
  source?: string;
}

export interface SentWork {
  id: string;
  name: Partial<Names>;
  price: Figure[];
  stage: string;
  standards: Standard[];
  scopes: Scope[];
  note?: string;
  source?: string;
}

/** The price of a body that may take the place of the customer's. */
export interface OfferedBody {
  body: Body;
  price: Figure[];
  to_be_had: Figure;
  weeks?: Figure[];
  source?: string;
}

const OBJECTS = ["shop", "labour", "materials", "parts", "strip_and_survey", "sent_out", "tax", "time"];

/** Whether the form can work with these rates, whatever else is wrong with them. */
export function isDraftRates(value: unknown): value is DraftRates {
  return (
    isObject(value) &&
    OBJECTS.every((member) => isObject(value[member])) &&
    Array.isArray(value.materials) &&
    isObject(value.parts) &&
    Array.isArray(value.parts.prices) &&
    isObject(value.strip_and_survey) &&
    Array.isArray(value.strip_and_survey.charged) &&
    isObject(value.sent_out) &&
    Array.isArray(value.sent_out.work)
  );
}

/** The rates in a text with which the engine has found nothing wrong. */
export const openedRatesIn = (text: string): RatesFile => JSON.parse(text) as RatesFile;

/** The rates in a text; null where the form cannot work with them, or where it is no JSON.
 *  Ask the engine for the reason. */
export function draftRatesIn(text: string): DraftRates | null {
  try {
    const value: unknown = JSON.parse(text);
    return isDraftRates(value) ? value : null;
  } catch {
    return null;
  }
}

/** An object or a list: something that has members. */
export function isObject(value: unknown): value is Record<string | number, unknown> {
  return typeof value === "object" && value !== null;
}
