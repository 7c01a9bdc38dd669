// The table of jobs, newest first; on a small screen each row is a card. It also lists the jobs
// that could not be scored, with the reason.

import { button, type Children, el } from "../shared/dom.ts";
import type { JobsFile, PastJob } from "../shared/jobsfile.ts";
import { today } from "../shared/linkcontent.ts";
import type { JobAmounts, JobRow } from "../shared/replies.ts";
import { dateText } from "../shared/timestamp.ts";
import type { Ledger } from "./ledger.ts";

const HEADS = ["Job", "Finished", "First range", "After the survey", "Came to", "Where"];
const MARKS = { below: "▽ ", inside: "● ", above: "△ " };

/** The row of a job that was scored. why: the reason where it has no score. */
export interface ScoredJob extends JobRow {
  why: string | null;
}

export interface JobsTableHost {
  file: JobsFile;
  /** The amounts of each job of the file. */
  amounts: readonly JobAmounts[];
  /** Whether the jobs are being scored. */
  working: boolean;
  /** What is known of a job; null before it was scored. */
  rowOf(job: PastJob): ScoredJob | null;
  /** Opens a job to change it. */
  edit(job: PastJob): void;
}

/** A job and its place in the file. */
interface Placed {
  job: PastJob;
  n: number;
}

export function jobsSection(host: JobsTableHost): HTMLElement {
  const { file } = host;
  const order = file.jobs
    .map((job, n) => ({ job, n }))
    .sort((a, b) => (a.job.finished < b.job.finished ? 1 : a.job.finished > b.job.finished ? -1 : b.n - a.n));
  return el(
    "section",
    { id: "jobs", "aria-labelledby": "jobs-title" },
    el("h2", { id: "jobs-title", tabindex: "-1" }, file.jobs.length === 1 ? "The job" : "The jobs"),
    el(
      "table",
      { class: "jobs-table", role: "table", "aria-labelledby": "jobs-title" },
      el(
        "thead",
        { role: "rowgroup" },
        el(
          "tr",
          { role: "row" },
          HEADS.map((h) => el("th", { scope: "col", role: "columnheader" }, h)),
          el("td", { role: "cell", class: "no-paper" }),
        ),
      ),
      el(
        "tbody",
        { role: "rowgroup" },
        order.map((placed) => jobRow(host, placed)),
      ),
    ),
    notScored(host, order),
  );
}

function jobRow(host: JobsTableHost, { job, n }: Placed): HTMLElement {
  const row = host.rowOf(job);
  const cell = (k: number, ...content: Children[]) =>
    el("td", { role: "cell", "data-label": HEADS[k] }, el("span", { class: "cell-value" }, ...content));
  const amounts = host.amounts[n];
  const waits = host.working ? "being worked out" : "not worked out";
  const first = row?.first_text || amounts?.said_text || (row?.why ? "not scored" : waits);
  const finished =
    row?.finished_text || (/^\d{4}-\d\d-\d\d$/.test(job.finished) ? dateText(job.finished) : job.finished);
  return el(
    "tr",
    { role: "row", "data-job": job.name },
    el("th", { role: "rowheader", scope: "row" }, job.name),
    cell(1, finished),
    cell(2, first, row?.said && el("span", { class: "small" }, "as it was said")),
    cell(3, row ? row.survey_text || "–" : "–"),
    cell(4, amounts?.came_to_text, row?.agreed_line && el("span", { class: "small" }, row.agreed_line)),
    cell(5, row?.where ? [el("span", { "aria-hidden": "true" }, MARKS[row.where]), row.where] : "–"),
    el(
      "td",
      { role: "cell", class: "no-paper" },
      button(["Change", el("span", { class: "visually-hidden" }, ` job ${job.name}`)], () => host.edit(job), {
        "data-key": `edit-${n}`,
      }),
    ),
  );
}

function notScored(host: JobsTableHost, order: readonly Placed[]): HTMLElement | null {
  const not = order.map(({ job }) => [job.name, host.rowOf(job)?.why] as const).filter(([, why]) => why);
  if (not.length === 0) return null;
  return el(
    "div",
    { class: "not-scored" },
    el("h3", {}, "Not scored, and why"),
    el(
      "ul",
      {},
      not.map(([name, why]) => el("li", {}, el("strong", {}, name), `: ${why}`)),
    ),
  );
}

/** The head of the page. complete: no figure is missing. */
export function jobsHead({ current: file, code }: Ledger, complete: boolean): HTMLElement[] {
  const line = [
    file.jobs.length === 1 ? "1 job" : `${file.jobs.length} jobs`,
    file.invented ? "invented, a sample" : null,
    `amounts in ${file.currency}`,
    `check code of these jobs ${code}`,
  ];
  return [
    el("h1", { tabindex: "-1" }, "Past jobs"),
    el("p", { class: "jobs-line" }, line.filter(Boolean).join(" · ")),
    el(
      "p",
      { class: "paper" },
      `Printed on ${dateText(today())}. ${complete ? "" : "Not worked out to the end: figures may be missing."}`,
    ),
  ];
}
