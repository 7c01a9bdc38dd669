// The letter on the stages of the work: the next one with its price, and all of them.

import { el } from "../dom.ts";
import type { PlanReply, RangeReply, StripLine } from "../replies.ts";
import { type Failure, failureOf, type Replies, replyOf } from "./gather.ts";
import { cautionLines, columnHeads, failed, fewerCars, section, waiting } from "./letterparts.ts";

/** The one stage with a price; once that is done, the one that follows it. */
export function nextStage(done: boolean, range: RangeReply, plan: PlanReply | null): HTMLElement | null {
  const stage = range.rows[0]?.stage;
  if (!stage) return null;
  if (!done) {
    const charged = stage.lines.filter((l) => l.basis !== "fixed");
    return section(
      "The next stage",
      stagePrices(range),
      el("p", {}, stage.fixed_line),
      charged.length > 0 && lineTable(charged),
      stage.includes ? el("p", {}, stage.includes) : el("p", {}, stage.get_line),
      el("p", {}, el("strong", {}, stage.stop_line)),
      cautionLines(range.cautions, ["strip_first", "numbers"]),
      ownWork(range),
    );
  }
  const next = plan?.stages[1];
  return section(
    "The next stage",
    el(
      "p",
      {},
      "Strip and survey was the one stage with a price of its own; at these rates that is ",
      el("strong", {}, stage.price_text),
      ". ",
      stage.fixed_line,
    ),
    next &&
      el(
        "p",
        {},
        el("strong", {}, next.name),
        ` follows: ${next.money_text} (8 in 10 such cars). It has no price yet: a written estimate made from the survey comes first, and you agree to it before it begins.`,
      ),
    el("p", {}, stage.stop_line),
    cautionLines(range.cautions, ["numbers"]),
    ownWork(range),
  );
}

/** The dangers of work that the customer is known to do. Those of the shop's own work are
 *  on its pages. */
function ownWork({ cautions }: RangeReply): HTMLElement | null {
  const own = cautions.filter((c) => c.where === "own_work" && c.customer_does).map((c) => c.id);
  if (own.length === 0) return null;
  return el(
    "div",
    { class: "dangers" },
    el("h3", {}, "If you do some of the work yourself"),
    cautionLines(cautions, own),
  );
}

/** Each price once; where the rows have different prices, each under its label. */
function stagePrices(range: RangeReply): HTMLElement[] {
  const several = new Set(range.rows.map((r) => r.stage.price_text)).size > 1;
  return (several ? range.rows : range.rows.slice(0, 1)).map((row) =>
    el(
      "p",
      { class: "loud stage-price" },
      `${row.stage.name}${several ? `, ${row.label}` : ""}: `,
      el("strong", {}, row.stage.price_text),
    ),
  );
}

function lineTable(lines: readonly StripLine[]): HTMLTableElement {
  return el(
    "table",
    {},
    el("caption", { class: "visually-hidden" }, "What is not fixed in this stage"),
    columnHeads(["Not fixed", "How it is charged", "In the sum"]),
    el(
      "tbody",
      {},
      lines.map((l) =>
        el("tr", {}, el("th", { scope: "row" }, l.text), el("td", {}, l.basis), el("td", {}, l.amount_text)),
      ),
    ),
  );
}

/** All stages, with the price to stop after each. */
export function stages(replies: Replies, range: RangeReply): HTMLElement {
  const cautions = cautionLines(range.cautions, ["structure", "belts"]);
  const plan = replyOf(replies, "plan", "plan");
  const failure: Failure | null = failureOf(replies, "plan");
  if (!plan) return section("The stages", failure ? failed(failure) : waiting(), cautions);
  return section(
    "The stages",
    stageTable(plan),
    el("p", { class: "small" }, plan.note),
    differs(plan, range) && el("p", { class: "small" }, fewerCars("The stages")),
    cautions,
  );
}

function stageTable(plan: PlanReply): HTMLTableElement {
  const cell = (text: string) => el("td", {}, text);
  return el(
    "table",
    { class: "stages" },
    el(
      "caption",
      { class: "visually-hidden" },
      "Stages with their hours, money, weeks and the price to stop",
    ),
    columnHeads(["Stage", "Work", "Money", "Time", "Stopping"]),
    el(
      "tbody",
      {},
      plan.stages.map((s) =>
        el(
          "tr",
          {},
          el("th", { scope: "row" }, s.name),
          cell(s.hours_text),
          el("td", {}, s.money_text, el("br"), el("span", { class: "small" }, s.by_then_text)),
          cell(s.weeks_text),
          cell(s.stop_line),
        ),
      ),
    ),
  );
}

/** Whether the last stage ends on other amounts than the range of the one body. */
function differs(plan: PlanReply, range: RangeReply): boolean {
  const [row, second] = range.rows;
  const last = plan.stages.at(-1)?.by_then_text;
  if (!row || second || last === undefined) return false;
  return !(last.includes(row.low_text) && last.includes(row.high_text));
}
