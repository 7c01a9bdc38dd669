// The sections of the page with the range, below the range itself: the one stage that has a
// price, what is not in the range, how long it takes, where the money goes, and how sure it is.

import { type Children, el, freshId, list, what } from "../shared/dom.ts";
import type { CautionMessage, RangeReply, RangeRow, StripStage } from "../shared/replies.ts";
import { sec } from "./sec.ts";

/** The next step with its price and its lines. cautions: those at its lines. of: whose it is,
 *  where there are several. more: what belongs below its sentences. */
export function stageSection(
  stage: StripStage,
  cautions: readonly CautionMessage[] = [],
  of = "",
  ...more: Children[]
): HTMLElement {
  return sec(
    "next",
    freshId("next"),
    of ? `The next step: ${of}` : "The next step",
    el("p", { class: "stage-price" }, el("span", {}, stage.name), " ", el("strong", {}, stage.price_text)),
    el("p", {}, stage.fixed_line),
    el("p", {}, stage.get_line),
    el("p", {}, stage.stop_line),
    stage.includes && el("p", {}, stage.includes),
    more,
    what(
      "What is strip and survey?",
      "The car comes apart and the paint comes off. Then every part of the bare metal is looked at, and what it is like is written down. A closed box, such as the one below the doors, is shut on all sides: its inside is seen only once it is opened.",
    ),
    el(
      "details",
      { "data-paper": true },
      el("summary", {}, "What it is made up of"),
      el(
        "table",
        { class: "lines" },
        el("caption", { class: "visually-hidden" }, `${stage.name}: lines`),
        el(
          "thead",
          {},
          el(
            "tr",
            {},
            ["Work", "How it is charged", "Sum"].map((h) => el("th", { scope: "col" }, h)),
          ),
        ),
        el(
          "tbody",
          {},
          stage.lines.map((l) =>
            el(
              "tr",
              {},
              el("th", { scope: "row" }, l.text),
              el("td", {}, l.basis),
              el("td", {}, l.amount_text),
            ),
          ),
        ),
      ),
    ),
    stageCautions(cautions),
  );
}

/** The price of the stage for many bodies at once, while the body is not known. stage: of the
 *  first of them. */
export function stagePrices(stage: StripStage, rows: readonly RangeRow[], ...more: Children[]): HTMLElement {
  return sec(
    "next",
    freshId("next"),
    "The next step",
    el("p", {}, `${stage.name}, by body:`),
    el(
      "table",
      {},
      el("caption", { class: "visually-hidden" }, stage.name),
      el("thead", {}, el("tr", {}, el("th", { scope: "col" }, "Body"), el("th", { scope: "col" }, "Price"))),
      el(
        "tbody",
        {},
        rows.map((r) => el("tr", {}, el("th", { scope: "row" }, r.label), el("td", {}, r.stage.price_text))),
      ),
    ),
    el("p", {}, stage.get_line),
    el("p", {}, stage.stop_line),
    more,
  );
}

export const cautionLine = (c: CautionMessage): HTMLElement =>
  el("p", { class: "caution", "data-caution": c.id }, c.text);

/** A customer sees at once what to know before agreeing. What matters to a customer who works
 *  on the car is one press away; paper has it where the customer is known to do that work. */
function stageCautions(cautions: readonly CautionMessage[]): Children {
  const own = cautions.filter((c) => c.where === "own_work");
  const known = own.some((c) => c.customer_does);
  return [
    cautions.filter((c) => c.where === "stage").map(cautionLine),
    own.length > 0 &&
      el(
        "details",
        { class: known ? "own-work" : "own-work off-paper", ...(known && { "data-paper": true }) },
        el("summary", {}, "If you do some of the work yourself"),
        own.map((c) => el("div", { class: c.customer_does ? "" : "off-paper" }, cautionLine(c))),
        cautions.filter((c) => c.where === "foot").map((c) => el("p", { class: "hint" }, c.text)),
      ),
  ];
}

/** What the range has in it besides rust. What is promised about prices is said once. */
export function inItToo(reply: RangeReply): HTMLElement | null {
  const of = (row: RangeRow): string[] =>
    [row.old_damage_line ?? "", row.fitting_line, row.rise_line].filter((line) => line !== "");
  const lines = reply.rows.map((row) => [row.label, of(row)] as const).filter(([, all]) => all.length > 0);
  if (lines.length === 0 && !reply.held_line) return null;
  return sec(
    "in-it-too",
    "in-it-title",
    "In the range besides rust",
    lines.map(([label, all]) => [
      reply.rows.length > 1 && el("h3", {}, label),
      all.map((line) => el("p", {}, line)),
    ]),
    reply.held_line && el("p", {}, reply.held_line),
  );
}

export function notInIt(reply: RangeReply): HTMLElement {
  return sec(
    "not-in-it",
    "not-title",
    "Not in the range",
    list(reply.not_in_it),
    reply.rows
      .filter((r) => r.allowance_line)
      .map((r) => el("p", {}, reply.rows.length > 1 ? `${r.label}: ${r.allowance_line}` : r.allowance_line)),
  );
}

export function howLong(reply: RangeReply, ...more: Children[]): HTMLElement {
  return sec(
    "how-long",
    "long-title",
    "How long",
    reply.rows.map((row) =>
      el(
        "div",
        {},
        reply.rows.length > 1 && el("h3", {}, row.label),
        el("p", {}, row.hours_line),
        el("p", {}, row.weeks_line),
      ),
    ),
    more,
  );
}

export function whereMoneyGoes(row: RangeRow): HTMLElement {
  return el(
    "details",
    { class: "kinds", "data-paper": true },
    el("summary", {}, "Where the money goes"),
    el(
      "table",
      {},
      el("caption", { class: "visually-hidden" }, "Kinds of cost"),
      el(
        "thead",
        {},
        el(
          "tr",
          {},
          el("th", { scope: "col" }, "Kind"),
          ["1 in 10 below", "half below", "1 in 10 above"].map((h) => el("th", { scope: "col" }, h)),
        ),
      ),
      el(
        "tbody",
        {},
        row.kinds.map((k) =>
          el(
            "tr",
            {},
            el("th", { scope: "row" }, k.name),
            el("td", {}, k.low_text),
            el("td", {}, k.half_text),
            el("td", {}, k.high_text),
          ),
        ),
      ),
    ),
    el("p", {}, row.kinds_note),
  );
}

export function howSure(reply: RangeReply, ...more: Children[]): HTMLElement {
  return sec(
    "how-sure",
    "sure-title",
    "How sure is this",
    el("p", {}, reply.how_sure),
    reply.own_record.map((line) => el("p", {}, line)),
    el(
      "p",
      {},
      "Simulated cars are cars like yours that we make up from the odds of rust. We price each one several times, because the work can go well or badly.",
    ),
    reply.warnings.map((text) => el("p", { class: "warning" }, text)),
    reply.known_limits.length > 0 &&
      el(
        "details",
        { "data-paper": true },
        el("summary", {}, "What the sums cannot know"),
        list(reply.known_limits),
      ),
    more,
  );
}
