// The sheet of changes to agree: what was found, the ways to go on with their time and money,
// and boxes for the customer's decision.

import { type Child, el } from "../shared/dom.ts";
import type { ToDoCard, ToDoWay } from "../shared/replies.ts";
import type { CarContext, ThisCar } from "../shared/thiscar/context.ts";
import { failureOf, type Replies, rangeOf, replyOf } from "../shared/thiscar/gather.ts";
import { paperHead } from "../shared/thiscar/letter.ts";
import { cautionLines, codeLine, columnHeads, failed, waiting } from "../shared/thiscar/letterparts.ts";
import { standing } from "../shared/thiscar/record.ts";
import type { Changes } from "./changes.ts";
import { findingsOf } from "./partwords.ts";

const box = (text: string) => el("span", { class: "tick-box" }, "☐ ", text);
const blank = (text: string) => el("span", { class: "blank" }, text);

/** One way to go on: a box, its name, its time and its part, its money, and what
 *  it does to the total. */
function choice(way: ToDoWay, line: string | undefined, waiting: boolean): HTMLElement {
  return el(
    "tr",
    { "data-way": way.id },
    el("th", { scope: "row" }, box(way.id === "leave" ? "If left" : way.name)),
    el("td", {}, way.sentence),
    el("td", {}, way.price_text),
    el("td", {}, line ?? (waiting ? "being worked out" : "not worked out")),
  );
}

/** What ways cover and open, each once with the ways that do so. */
function along(ways: readonly ToDoWay[]): HTMLElement[] {
  const said = new Map<string, string[]>();
  for (const way of ways) {
    for (const text of [way.covers_text, ...way.opens.map((o) => `Opens ${o}`)].filter(Boolean))
      said.set(text, [...(said.get(text) ?? []), way.name]);
  }
  return [...said].map(([text, names]) =>
    el("p", { class: "small" }, el("strong", {}, `${names.join(", ")}: `), text),
  );
}

/** One part: what was found, the ways to go on, and the customer's decision. */
function block({ car, sheet }: ThisCar, card: ToDoCard, replies: Replies): HTMLElement {
  const record = standing(car, card.on);
  const item = sheet.items[card.on];
  const odds = replyOf(replies, `odds ${card.on}`, "odds");
  const name = `compare ${card.on}`;
  const compared = replyOf(replies, name, "compare_ways");
  const failure = failureOf(replies, name);
  const found = [...findingsOf(sheet, record), record?.note].filter(Boolean);
  const zone = sheet.zones.find((z) => z.id === item?.zone)?.name;
  return el(
    "section",
    { class: "change", "data-change": card.on },
    el("h3", {}, card.title),
    el(
      "p",
      {},
      [
        zone,
        item?.closed && (record?.stage === "opening_up" ? "box opened" : "closed box, seen from outside"),
        record?.photo && `photograph ${record.photo}`,
      ]
        .filter(Boolean)
        .join(" · "),
      found.length > 0 && ` · Found: ${found.join("; ")}`,
      odds?.line && ` · ${odds.line}`,
    ),
    [card.covered_by, ...card.opened, card.chosen && card.chosen_text]
      .filter(Boolean)
      .map((t) => el("p", {}, t)),
    el(
      "table",
      { class: "choices" },
      el("caption", { class: "visually-hidden" }, `Ways to go on: ${card.title}`),
      columnHeads(["Way", "Time, and the part", "Money", "Effect on the total"]),
      el(
        "tbody",
        {},
        card.ways.map((way) =>
          choice(way, compared?.ways.find((w) => w.id === way.id)?.line, !replies.has(name)),
        ),
      ),
    ),
    along(card.ways),
    failure && failed(failure),
    card.cannot_leave && el("p", { class: "small" }, card.cannot_leave),
    card.caution && el("p", { class: "caution" }, card.caution),
    el(
      "p",
      { class: "decide" },
      box("yes"),
      box("no"),
      box("talk first"),
      blank("How told"),
      blank("When"),
      blank("By whom"),
      el("span", { class: "blank long" }, "Signature"),
    ),
  );
}

/** A range under its name, a line for each row. of: the name that it was asked for under. */
function total(name: string, replies: Replies, of: string): HTMLElement[] {
  const range = rangeOf(replies, of);
  if (!range) {
    const text = failureOf(replies, of)?.text ?? "still being worked out.";
    return [el("p", {}, el("strong", {}, `${name}: `), text)];
  }
  return range.rows.map((row) =>
    el(
      "p",
      { class: "total", "data-total": name },
      el("strong", {}, `${name}: ${row.low_text} to ${row.high_text}`),
      ` (8 cars in 10${range.rows.length > 1 ? `; ${row.label}` : ""}).`,
    ),
  );
}

/** The content of the sheet, as it is printed. */
export function changesSheet(host: CarContext, changes: Changes, replies: Replies): Child[] {
  const { openCar, opened } = host;
  const toDo = replyOf(replies, "to_do", "to_do");
  const failure = failureOf(replies, "to_do");
  if (failure) return [failed(failure), el("p", {}, "No sheet is made until this is put right.")];
  if (!toDo) return [waiting("Working it out.")];
  const { cards } = toDo;
  if (cards.length === 0) return [el("p", {}, "No damaged part is recorded, so there is nothing to agree.")];
  const chosen = changes.chosen(cards);
  const before = rangeOf(replies);
  const [row] = before?.rows ?? [];
  const more = cards.filter((c) => !c.chosen && !chosen.includes(c.on)).length;
  return [
    paperHead(
      host,
      changes.number ? `Changes to agree, sheet ${changes.number}` : "Changes to agree, sheet no. ________",
      before,
    ),
    el("p", { class: "loud" }, "Nothing below is worked on until this sheet is back."),
    ...total("Range before", replies, "range"),
    row && el("p", {}, `${row.not_an_estimate} ${row.tax_line}`),
    ...cautionLines(opened.cautions, ["local", "structure", "belts", "numbers"]),
    ...(chosen.length === 0
      ? [el("p", {}, "No part is ticked for this sheet.")]
      : cards.filter((c) => chosen.includes(c.on)).map((card) => block(openCar, card, replies))),
    el(
      "section",
      { class: "paper-end" },
      el("h2", {}, "After this sheet"),
      openCar.car.ways?.length ? total("Range with what is decided so far", replies, "after") : null,
      more > 0 &&
        el("p", {}, `${toDo.undecided_line}. Parts that do not stand on this sheet follow on another.`),
      el(
        "p",
        {},
        blank("Total after, from"),
        blank("to"),
        " (the shop writes it in once the boxes are filled)",
      ),
      el(
        "p",
        {},
        "Small changes agreed beforehand, so that the work does not stop for pinholes: ",
        blank("up to"),
        blank("hours or"),
        blank("each time,"),
        blank("in all; used so far"),
      ),
      el(
        "p",
        {},
        "Time is for the part alone, likely first; getting in, materials of the whole car, supplies and tax are in the total. Money is at the likely hours and the likely price of the part. Effects on the total are ranges too: not an estimate, not a quotation, not a ceiling. You may say no, and the shop may decline a way. Local rules on written approval come before this sheet.",
      ),
      toDo.shared.map((t) => el("p", {}, t)),
      before && codeLine(before, opened),
    ),
  ];
}
