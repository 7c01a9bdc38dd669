// What a pasted table holds: the good rows, those that are refused, and the question which
// mark comes before the cents. Nothing is taken before somebody says so.

import { button, type Children, el } from "../shared/dom.ts";
import { isObject } from "../shared/ratesfile.ts";
import type { JobsReadReply, TableQuestion } from "../shared/replies.ts";
import { faultList } from "./faults.ts";

const MOST_ROWS = 50;

/** A job as the engine has read it from a row. */
export type ReadJob = JobsReadReply["jobs"][number];

export interface PreviewHost {
  currency: string;
  /** The names of the jobs in the file. */
  names: ReadonlySet<unknown>;
  take(good: ReadJob[]): void;
  /** Reads the table again with this mark before the cents. */
  again(decimal: "point" | "comma"): void;
}

export function preview(reply: JobsReadReply, { currency, names, take, again }: PreviewHost): HTMLElement[] {
  const good = reply.jobs.filter((j) => !names.has(j.name));
  const twice = reply.jobs.filter((j) => names.has(j.name));
  const refused = reply.refused + twice.length;
  const rows = (n: number) => (n === 1 ? "1 row" : `${n} rows`);
  const title = `${rows(good.length).replace("row", "good row")}, ${refused === 0 ? "none" : rows(refused)} refused`;
  const parts = [
    el("h3", {}, title),
    whichMark(reply.questions, again),
    refused > 0 && refusals(reply, twice),
    reply.ignored.length > 0 &&
      el("p", { class: "hint" }, `Columns that are not used: ${reply.ignored.join(", ")}.`),
  ];
  if (good.length > 0 && reply.questions.length === 0)
    parts.push(
      goodTable(good, currency),
      el(
        "p",
        { class: "with-buttons" },
        button(`Take the ${good.length === 1 ? "good row" : `${good.length} good rows`}`, () => take(good), {
          class: "go",
          "data-key": "take",
        }),
      ),
    );
  return parts.filter((node) => node !== false);
}

function refusals(reply: JobsReadReply, twice: readonly ReadJob[]): HTMLElement {
  return faultList([
    ...reply.refusals.map((r) => ({
      place: `Row ${r.row}, column ${r.heading}`,
      found: r.found === "" ? "nothing" : r.found,
      expected: r.expected,
      text: r.text,
    })),
    ...twice.map((j) => ({
      place: `Job ${j.name}`,
      found: "a name that one of your jobs has already",
      expected: "a name of its own",
    })),
  ]);
}

function whichMark(questions: readonly TableQuestion[], again: PreviewHost["again"]): HTMLElement | false {
  const [first] = questions;
  if (!first) return false;
  return el(
    "fieldset",
    { class: "group" },
    el("legend", {}, "Which mark stands before the cents?"),
    questions.map((q) =>
      el("p", {}, `Row ${q.row}, column ${q.heading}: does ${q.found} mean ${q.as_point} or ${q.as_comma}?`),
    ),
    el(
      "div",
      { class: "with-buttons" },
      button(`A point: ${first.found} means ${first.as_point}`, () => again("point"), {
        "data-key": "point",
      }),
      button(`A comma: ${first.found} means ${first.as_comma}`, () => again("comma"), {
        "data-key": "comma",
      }),
    ),
  );
}

const text = (value: unknown): string => (value === undefined || value === null ? "" : String(value));

function goodTable(good: readonly ReadJob[], currency: string): HTMLElement {
  const row = (j: ReadJob) => {
    const said = isObject(j.said) ? j.said : {};
    const cells: Children[] = [j.finished, said.low, said.high, j.came_to].map((v) => el("td", {}, text(v)));
    return el("tr", {}, el("th", { scope: "row" }, text(j.name)), cells);
  };
  const heads = ["Job", "Finished", "From", "to", "Came to"];
  return el(
    "div",
    { class: "scroll-box", role: "region", "aria-label": "The good rows", tabindex: "0" },
    el(
      "table",
      {},
      el("caption", {}, `The good rows, in ${currency}`),
      el(
        "thead",
        {},
        el(
          "tr",
          {},
          heads.map((h) => el("th", { scope: "col" }, h)),
        ),
      ),
      el("tbody", {}, good.slice(0, MOST_ROWS).map(row)),
    ),
    good.length > MOST_ROWS && el("p", {}, `and ${good.length - MOST_ROWS} more`),
  );
}
