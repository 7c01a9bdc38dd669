// The range: the sentence in counts first, then in the same size what it is not, then the dots.
// Every figure is a text that comes ready from the engine. The sections around it are in
// sections.ts.

import { type Children, el, what } from "../shared/dom.ts";
import { dotRow, figuresTable, levelsOf } from "../shared/dots.ts";
import type { RangeReply, RangeRow } from "../shared/replies.ts";

const isRough = (reply: RangeReply): boolean => reply.state === "rough" || reply.state === "refining";

/** The sentence, its caveats and the dots of every row, on one axis. extra: what comes below. */
export function rangeFigure(reply: RangeReply, extra: Children = null): HTMLElement {
  const levels = levelsOf(reply.rows);
  return el(
    "section",
    {
      class: isRough(reply) ? "range is-rough" : "range",
      "data-state": reply.state,
      "aria-label": "The range",
    },
    el("p", { class: "rough-note" }, isRough(reply) ? "About: still being worked out." : "\u00a0"),
    reply.rows.map((row) => rowBlock(row, reply, levels)),
    extra,
    el("p", { class: "fate" }, "You do not choose where in the range it lands; the metal does."),
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

function rowBlock(row: RangeRow, reply: RangeReply, levels: number): HTMLElement {
  const several = reply.rows.length > 1;
  return el(
    "div",
    { class: "row-block" },
    several && el("h2", { class: "row-label" }, row.label),
    row.moved_line && el("p", { class: "moved" }, row.moved_line),
    row.headline &&
      el(
        "div",
        { class: "sentence" },
        el("p", { class: "sentence-head" }, row.sentence_head),
        el(
          "ul",
          {},
          row.sentence.map((part) => el("li", {}, part)),
        ),
      ),
    (row.headline || row === reply.rows[0]) &&
      el(
        "p",
        { class: "caveat" },
        row.headline ? `${row.not_an_estimate} ${row.tax_line}` : row.not_an_estimate,
      ),
    dotRow(row, reply.axis, levels),
    row.headline
      ? [
          el("p", { class: "set-aside" }, row.set_aside_line, " ", row.reserve_line),
          what(
            "What is “set aside”?",
            "An amount to plan with, not a price. It is enough for 8 in 10 cars like yours.",
          ),
        ]
      : el("p", {}, row.tax_line),
    (row.headline || row === reply.rows[0]) &&
      row.old_damage_line &&
      el("p", { class: "untested" }, row.old_damage_line),
    (row.headline || row === reply.rows[0]) &&
      row.untested_line &&
      el("p", { class: "untested" }, row.untested_line),
  );
}

/** What a screen reader says once the range has settled. */
export const spokenRange = (reply: RangeReply): string => reply.rows.map((row) => row.spoken).join(" ");
