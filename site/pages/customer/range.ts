// The range: in words as a figure, what it is not beside it, then the twenty dots. Every figure
// is a text that comes ready from the engine. The sections around it are in sections.ts.

import { type Children, el } from "../shared/dom.ts";
import { figuresTable } from "../shared/dots.ts";
import type { RangeReply, RangeRow } from "../shared/replies.ts";
import { bigDots } from "./bigdots.ts";

const isRough = (reply: RangeReply): boolean => reply.state === "rough" || reply.state === "refining";

/** The range of every row, on one axis. extra: what comes below. */
export function rangeFigure(reply: RangeReply, extra: Children = null): HTMLElement {
  return el(
    "section",
    {
      class: isRough(reply) ? "range is-rough" : "range",
      "data-state": reply.state,
      "aria-label": "The range",
    },
    reply.rows.map((row, i) => rowBlock(row, reply, i === reply.rows.length - 1 && extra)),
    el(
      "details",
      { class: "table-fold" },
      el("summary", {}, "The same in a table"),
      el(
        "div",
        { class: "scroll", tabindex: "0", role: "group", "aria-label": "Table of figures" },
        figuresTable(reply.rows),
      ),
    ),
  );
}

/** A line of the sentence, with the amounts in it in the face of amounts. */
function amounts(part: string, row: RangeRow): Children[] {
  const [before, after] = part.split(row.low_text);
  if (after === undefined) return [part];
  return [
    el("span", { class: "sentence-lead" }, before),
    el(
      "span",
      { class: "range-figure" },
      el("span", {}, row.low_text),
      after.replace(row.high_text, ""),
      el("span", {}, row.high_text),
    ),
  ];
}

/** "1 would cost less than $90,000" shows its first words; the amount stands beside it in the
 *  figure, and whoever listens hears all of it. */
function tail(part: string): Children[] {
  const at = part.indexOf(" than ");
  if (at < 0) return [part];
  return [part.slice(0, at), el("span", { class: "visually-hidden" }, part.slice(at)), "."];
}

function inWords(row: RangeRow): HTMLElement {
  const [less = "", between = "", more = ""] = row.sentence;
  return el(
    "div",
    { class: "sentence" },
    el("p", { class: "sentence-head" }, row.sentence_head),
    el(
      "ul",
      {},
      el("li", { class: "tail" }, tail(less)),
      el("li", { class: "between" }, amounts(between, row)),
      el("li", { class: "tail" }, tail(more)),
    ),
  );
}

function rowBlock(row: RangeRow, reply: RangeReply, extra: Children): HTMLElement {
  const several = reply.rows.length > 1;
  const first = row === reply.rows[0];
  return el(
    "div",
    { class: "row-block" },
    several && el("h2", { class: "row-label" }, row.label),
    row.moved_line && el("p", { class: "moved" }, row.moved_line),
    el("p", { class: "rough-note" }, first && isRough(reply) ? "About: still being worked out." : "\u00a0"),
    el(
      "div",
      { class: "range-top" },
      row.headline
        ? inWords(row)
        : el(
            "div",
            {},
            el("p", { class: "row-odds" }, "In 8 cars out of 10:"),
            el("p", { class: "row-range" }, `${row.low_text} to ${row.high_text}`),
          ),
      (row.headline || first) &&
        el(
          "p",
          { class: "caveat" },
          row.headline ? `${row.not_an_estimate} ${row.tax_line}` : row.not_an_estimate,
        ),
    ),
    bigDots(row, reply.axis),
    el("p", { class: "fate" }, first && "You do not choose where in the range it lands; the metal does."),
    el(
      "div",
      { class: "range-foot" },
      el(
        "div",
        {},
        el(
          "p",
          { class: "middle" },
          el("strong", {}, `Middle: ${row.half_text}. `),
          "Half of such cars would cost less, half more.",
        ),
        (row.headline || first) && row.untested_line && el("p", { class: "untested" }, row.untested_line),
        extra,
      ),
      row.headline
        ? el("p", { class: "set-aside" }, row.set_aside_line, " ", row.reserve_line)
        : el("p", {}, row.tax_line),
    ),
  );
}

/** What a screen reader says once the range has settled. */
export const spokenRange = (reply: RangeReply): string => reply.rows.map((row) => row.spoken).join(" ");
