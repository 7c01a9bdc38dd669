// The range: the sentence in counts first, what it is not in the same size,
// then the dots, the one stage that has a price, and the rest in that order of
// weight. Every figure comes as ready text from the engine.

import { el, freshId, list, what } from "../shared/dom.ts";
import { dotRow, figuresTable, levelsOf } from "../shared/dots.ts";

const isRough = (reply) => reply.state === "rough" || reply.state === "refining";

/** The sentence, its caveats and the dots of every row, on one axis. */
export function rangeFigure(reply, { title = "h2", extra = null } = {}) {
  const levels = levelsOf(reply.rows);
  return el(
    "section",
    {
      class: isRough(reply) ? "range is-rough" : "range",
      "data-state": reply.state,
      "aria-label": "The range",
    },
    el("p", { class: "rough-note" }, isRough(reply) ? "About: still being worked out." : "\u00a0"),
    reply.rows.map((row) => rowBlock(row, reply, levels, title)),
    ...[extra].flat(2),
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

function rowBlock(row, reply, levels, title) {
  const several = reply.rows.length > 1;
  return el(
    "div",
    { class: "row-block" },
    several && el(title, { class: "row-label" }, row.label),
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
            "A sum to plan with, not a price: it is enough for all but 2 of 10 cars like yours.",
          ),
        ]
      : el("p", {}, row.tax_line),
  );
}

/** What is spoken once the range has settled. */
export function spokenRange(reply) {
  return reply.rows
    .map(
      (row) =>
        row.spoken ??
        [
          reply.rows.length > 1 ? `${row.label}:` : "",
          row.headline ? `${row.sentence_head} ${row.sentence.join(". ")}.` : row.dots_text,
        ]
          .join(" ")
          .trim(),
    )
    .join(" ");
}

/** The next step with its price and its lines. cautions: those at its lines; of:
 *  whose it is, where there are several. */
export function stageSection(stage, cautions = [], of = "") {
  const id = freshId("next");
  return el(
    "section",
    { class: "next", "aria-labelledby": id },
    el("h2", { id }, of ? `The next step: ${of}` : "The next step"),
    el("p", { class: "stage-price" }, el("span", {}, stage.name), " ", el("strong", {}, stage.price_text)),
    el("p", {}, stage.fixed_line),
    el("p", {}, stage.get_line),
    el("p", {}, stage.stop_line),
    stage.includes && el("p", {}, stage.includes),
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

/** The price of the stage for many bodies at once, while the body is not known. */
export function stagePrices(rows) {
  const id = freshId("next");
  return el(
    "section",
    { class: "next", "aria-labelledby": id },
    el("h2", { id }, "The next step"),
    el("p", {}, `${rows[0].stage.name}, by body:`),
    el(
      "table",
      {},
      el("caption", { class: "visually-hidden" }, rows[0].stage.name),
      el("thead", {}, el("tr", {}, el("th", { scope: "col" }, "Body"), el("th", { scope: "col" }, "Price"))),
      el(
        "tbody",
        {},
        rows.map((r) => el("tr", {}, el("th", { scope: "row" }, r.label), el("td", {}, r.stage.price_text))),
      ),
    ),
    el("p", {}, rows[0].stage.get_line),
    el("p", {}, rows[0].stage.stop_line),
  );
}

/** What a customer must know before agreeing stands open; what matters to
 *  whoever does the work is one press away, and open on paper. */
const BEFORE_AGREEING = ["rights", "strip_first", "numbers"];
function stageCautions(cautions) {
  const line = (c) => el("p", { class: "caution", "data-caution": c.id }, c.text);
  const [open, folded] = [true, false].map((wanted) =>
    cautions.filter((c) => BEFORE_AGREEING.includes(c.id) === wanted),
  );
  return [
    ...open.map(line),
    folded.length > 0 &&
      el("details", { "data-paper": true }, el("summary", {}, "Dangers of this work"), folded.map(line)),
  ];
}

export function notInIt(reply) {
  return el(
    "section",
    { class: "not-in-it", "aria-labelledby": "not-title" },
    el("h2", { id: "not-title" }, "Not in the range"),
    list(reply.not_in_it),
    reply.rows
      .filter((r) => r.allowance_line)
      .map((r) => el("p", {}, reply.rows.length > 1 ? `${r.label}: ${r.allowance_line}` : r.allowance_line)),
  );
}

export function howLong(reply) {
  return el(
    "section",
    { class: "how-long", "aria-labelledby": "long-title" },
    el("h2", { id: "long-title" }, "How long"),
    reply.rows.map((row) =>
      el(
        "div",
        {},
        reply.rows.length > 1 && el("h3", {}, row.label),
        el("p", {}, row.hours_line),
        el("p", {}, row.weeks_line),
      ),
    ),
  );
}

export function whereMoneyGoes(row) {
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

export function howSure(reply) {
  return el(
    "section",
    { class: "how-sure", "aria-labelledby": "sure-title" },
    el("h2", { id: "sure-title" }, "How sure is this"),
    el("p", {}, reply.how_sure),
    reply.own_record.map((line) => el("p", {}, line)),
    el(
      "p",
      {},
      "Imagined cars are cars like yours that the sums make up from the odds of rust, one after the other. Each is priced several times over, as the work on it may go well or badly.",
    ),
    reply.warnings.map((text) => el("p", { class: "warning" }, text)),
    reply.known_limits.length > 0 &&
      el(
        "details",
        { "data-paper": true },
        el("summary", {}, "What the sums cannot know"),
        list(reply.known_limits),
      ),
  );
}
