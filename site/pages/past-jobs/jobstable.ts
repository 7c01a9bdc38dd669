// The table of jobs, newest first; on a small screen each row is a card. What is
// not worked out yet, or cannot be, stands there with its reason.

import { button, el } from "../shared/dom.ts";
import { dateText } from "../shared/linkcontent.ts";

const HEADS = ["Job", "Finished", "First range", "After the survey", "Came to", "Where"];
const MARKS = { below: "▽ ", inside: "● ", above: "△ " };

/** host: file, sums (of each job in words), rowOf(job) (a scored row or null), whyNot(job), edit(n),
 *  working (it is being worked out) */
export function jobsSection(host) {
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
        order.map(({ job, n }) => jobRow(host, job, n)),
      ),
    ),
    notScored(host, order),
  );
}

function jobRow(host, job, n) {
  const row = host.rowOf(job);
  const cell = (k, ...content) =>
    el("td", { role: "cell", "data-label": HEADS[k] }, el("span", { class: "cell-value" }, ...content));
  const sums = host.sums[n];
  const waits = host.working ? "being worked out" : "not worked out";
  const first = row?.first_text || sums.said_text || (host.whyNot(job) ? "not scored" : waits);
  const finished =
    row?.finished_text || (/^\d{4}-\d\d-\d\d$/.test(job.finished) ? dateText(job.finished) : job.finished);
  return el(
    "tr",
    { role: "row", "data-job": job.name },
    el("th", { role: "rowheader", scope: "row" }, job.name),
    cell(1, finished),
    cell(2, first, row?.said && el("span", { class: "small" }, "as it was said")),
    cell(3, row ? row.survey_text || "–" : "–"),
    cell(4, sums.came_to_text, row?.agreed_line && el("span", { class: "small" }, row.agreed_line)),
    cell(5, row?.where ? [el("span", { "aria-hidden": "true" }, MARKS[row.where]), row.where] : "–"),
    el(
      "td",
      { role: "cell", class: "no-paper" },
      button(["Change", el("span", { class: "visually-hidden" }, ` job ${job.name}`)], () => host.edit(n), {
        "data-key": `edit-${n}`,
      }),
    ),
  );
}

function notScored(host, order) {
  const not = order.map(({ job }) => [job.name, host.whyNot(job)]).filter(([, why]) => why);
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
