// How the ranges have come out: words first, then the strip, what stands out, why jobs came to
// more, and figures for the statistician, which stay closed.

import { type Children, el, list } from "../shared/dom.ts";
import type { ScoresReply } from "../shared/replies.ts";
import { boxStrip, tenths } from "./boxes.ts";

const older = (fresh: boolean): Children =>
  !fresh &&
  el(
    "p",
    { class: "from-before" },
    "The jobs have changed since. What stands here is from before, until it is worked out anew.",
  );

/** fresh: the reply is about the file as it is now. */
export function outcomeSection(reply: ScoresReply | null, fresh: boolean): HTMLElement {
  return el(
    "section",
    { id: "outcome", "aria-labelledby": "outcome-title" },
    el("h2", { id: "outcome-title", tabindex: "-1" }, "How our ranges have come out"),
    reply
      ? [
          older(fresh),
          reply.headline.map((text) => el("p", { class: "headline" }, text)),
          reply.after_survey && el("p", {}, reply.after_survey),
          reply.scored > 0 && boxStrip(reply.boxes, reply.boxes_text),
          reply.bias.length > 0 && [el("h3", {}, "What stands out"), list(reply.bias)],
        ]
      : el("p", {}, "Nothing is worked out yet."),
  );
}

export function statisticsSection(reply: ScoresReply | null): HTMLElement | null {
  if (!reply || reply.scored === 0) return null;
  return el(
    "details",
    { "data-paper": true, "data-stays": true, class: "statistics" },
    el("summary", {}, "For the statistician"),
    reply.statistics.length > 0
      ? el(
          "dl",
          { class: "stat-list" },
          reply.statistics.map((s) => el("div", {}, el("dt", {}, s.name), el("dd", {}, s.text))),
        )
      : el("p", {}, "Too few jobs for figures of this kind."),
    tenths(reply.pit, "Probability integral transform"),
    el("p", { class: "hint" }, reply.pit_text),
  );
}

export function causesSection(reply: ScoresReply | null, fresh: boolean): HTMLElement | null {
  if (!reply) return null;
  const entered = reply.causes.some((c) => !c.jobs_text.startsWith("0 "));
  return el(
    "section",
    { id: "causes", "aria-labelledby": "causes-title" },
    el("h2", { id: "causes-title", tabindex: "-1" }, "Why jobs came to more"),
    older(fresh),
    entered
      ? el(
          "table",
          { class: "causes" },
          el(
            "caption",
            { class: "visually-hidden" },
            "Causes, in how many jobs, and what they came to together",
          ),
          el(
            "thead",
            {},
            el(
              "tr",
              {},
              ["Cause", "In", "Together"].map((h) => el("th", { scope: "col" }, h)),
            ),
          ),
          el(
            "tbody",
            {},
            reply.causes.map((c) =>
              el(
                "tr",
                {},
                el("th", { scope: "row" }, c.name),
                el("td", {}, c.jobs_text),
                el("td", {}, c.amount_text),
              ),
            ),
          ),
        )
      : el("p", {}, "No cause has been entered with any job yet. Each job has a place for it."),
    el("p", { class: "hint" }, reply.causes_note),
  );
}
