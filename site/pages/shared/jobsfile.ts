// The file of past jobs, as the pages hold it: see past-jobs.schema.json. A file from
// elsewhere counts as one only after the engine has read it.

import type { CarFile, Trade } from "./carfile.ts";
import type { RatesFile } from "./ratesfile.ts";

/** An amount of money in major units. Text keeps the digits that were typed. */
export type Amount = string | number;

export interface JobsFile {
  format: "underpaint past jobs 1";
  note?: string;
  /** True for jobs that never were. */
  invented?: boolean;
  currency: string;
  rates: RatesFile[];
  jobs: PastJob[];
}

export interface PastJob {
  name: string;
  /** The day, as 2026-06-20. */
  finished: string;
  /** Check code of the rates of that day. */
  rates?: string;
  car?: CarFile | null;
  /** The range that the customer was given first. */
  said?: { low: Amount; high: Amount };
  came_to: Amount;
  /** Hours worked, with those of the strip and survey. */
  hours?: Partial<Record<Trade, number>>;
  more_because?: Partial<Record<MoreBecause, Amount>>;
}

/** Why a job came to more than was thought at first. */
export type MoreBecause = "rust_found" | "hours" | "parts" | "changes_agreed";
