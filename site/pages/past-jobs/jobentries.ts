// The entries of a job's form, and the job that they hold.

import type { CarFile, Trade } from "../shared/carfile.ts";
import type { MoreBecause, PastJob } from "../shared/jobsfile.ts";
import { isObject, openedRatesIn } from "../shared/ratesfile.ts";
import type { OpenedReply } from "../shared/replies.ts";
import { Entry, type EntryProps } from "./fields.ts";

/** In the order in which the engine names the trades. */
const TRADES: readonly Trade[] = ["metal", "prep", "body", "paint", "fit"];
const CAUSES: readonly (readonly [id: MoreBecause, label: string])[] = [
  ["rust_found", "Rust found"],
  ["hours", "More hours than thought"],
  ["parts", "Dearer parts"],
  ["changes_agreed", "Changes agreed on top"],
];
const MONEY = "Digits and a point only, such as 52400 or 52400.50";

/** Says whether amounts are with tax, as the shop's rates publish them. */
function taxWords(ratesText: string): string {
  return openedRatesIn(ratesText).tax.published === "with_tax"
    ? "with the tax in it, as the ranges on this site are"
    : "without tax, as the ranges on this site are";
}

export interface EntriesHost {
  currency: string;
  opened: OpenedReply;
  ratesText: string;
}

/** job: what the entries begin with. */
export function jobEntries(
  job: Partial<PastJob>,
  { currency: unit, opened, ratesText }: EntriesHost,
): Entry[] {
  const entry = (path: string, label: string, more: Partial<EntryProps> = {}) => {
    const value = path.split(".").reduce<unknown>((at, step) => (isObject(at) ? at[step] : undefined), job);
    return new Entry({ path, label, value: value === undefined ? "" : String(value), ...more });
  };
  return [
    entry("name", "The shop's own word for the job", {
      hint: "Such as 2026-17. Not a person's name.",
      required: "Write a word for the job, such as 2026-17.",
    }),
    entry("finished", "Finished on", { kind: "date", required: "Write the day on which it was finished." }),
    entry("came_to", "Came to", {
      kind: "money",
      unit,
      hint: `All in all, ${taxWords(ratesText)}. ${MONEY}.`,
      required: "Write what the job came to.",
    }),
    entry("said.low", "From", { kind: "money", unit }),
    entry("said.high", "to", { kind: "money", unit }),
    ...TRADES.map((id, n) =>
      entry(`hours.${id}`, opened.labour[n]?.name ?? id, { kind: "number", unit: "hours" }),
    ),
    ...CAUSES.map(([id, label]) =>
      entry(`more_because.${id}`, label, {
        kind: "money",
        unit,
        hint:
          id === "changes_agreed"
            ? "Taken off before the job is scored: it is no fault of the range."
            : undefined,
      }),
    ),
  ];
}

/** A job as somebody entered it; the engine says whether it can be one. */
export interface EnteredJob {
  name: string;
  [member: string]: unknown;
}

/** Amounts stay as they were typed; hours become numbers where they are numbers. code: the
 *  check code of the rates that the car was priced with. */
export function enteredJob(entries: readonly Entry[], car: CarFile | null, code: string): EnteredJob {
  const job: EnteredJob = { name: "" };
  const rangeSaid = hasRange(entries);
  for (const { path, text } of entries) {
    if (path === "came_to" && car) {
      if (code) job.rates = code;
      job.car = car;
    }
    if (text === "" && !(path.startsWith("said.") && rangeSaid)) continue;
    const value = path.startsWith("hours.") && /^\d+(\.\d+)?$/.test(text) ? Number(text) : text;
    put(job, path, value);
  }
  return job;
}

/** Whether an end of the range that was said is entered. */
export const hasRange = (entries: readonly Entry[]): boolean =>
  entries.some(({ path, text }) => path.startsWith("said.") && text !== "");

/** Paths have one member or two. */
function put(job: EnteredJob, path: string, value: string | number): void {
  const [first = path, second] = path.split(".");
  const group = job[first];
  if (second === undefined) job[first] = value;
  else if (isObject(group)) group[second] = value;
  else job[first] = { [second]: value };
}
