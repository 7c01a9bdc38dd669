// The letter for the customer, the most important first: the range and what it is not, what
// it is based on, what is not in it, the next stage, what makes it wide, the stages, the
// customer's rights. It has no line to sign. Every figure is the engine's own text.

import type { CarFile } from "../carfile.ts";
import { type Child, el, list } from "../dom.ts";
import { dotRow, levelsOf } from "../dots.ts";
import { today } from "../linkcontent.ts";
import type { OpenedReply, RangeReply, RangeRow, State } from "../replies.ts";
import { dateText } from "../timestamp.ts";
import type { CarContext, ThisCar } from "./context.ts";
import { failureOf, isDone, isRough, type Replies, rangeOf, replyOf, type Wanted } from "./gather.ts";
import { basis } from "./letterbasis.ts";
import { foot, rights } from "./letterend.ts";
import { cautionLines, failed, fewerCars, section, waiting } from "./letterparts.ts";
import { nextStage, stages } from "./letterstages.ts";
import { begun } from "./record.ts";
import { drawnRows, movedLists } from "./stagerows.ts";

/** What the letter asks the engine, in this order. */
export function letterNeeds(car: CarFile): Wanted[] {
  const wanted: Wanted[] = [
    ["range", { ask: "range", car }, true],
    ["plan", { ask: "plan", car }, false],
  ];
  if (car.stages?.length) wanted.push(["before_after", { ask: "before_after", car }, true]);
  return [...wanted, ["wide", { ask: "wide", car }, true]];
}

/** What the head of a paper says about the car. */
interface HeadHost {
  readonly opened: OpenedReply;
  readonly openCar: Pick<ThisCar, "sheet" | "from">;
}

/** The head of every paper with the shop, its rates and the day. range: null while there is
 *  none. */
export function paperHead(
  { opened, openCar }: HeadHost,
  title: string,
  range: { car_line: string; state?: State } | null,
): HTMLElement {
  const { shop, rates } = opened;
  return el(
    "div",
    { class: "paper-head" },
    isRough(range) && el("p", { class: "rough" }, "Rough figure, still being worked out"),
    el(
      "p",
      { class: "from" },
      el("strong", {}, shop.name),
      [shop.town, shop.invented && "an invented shop"]
        .filter(Boolean)
        .map((t) => ` · ${t}`)
        .join(""),
    ),
    el("p", {}, [dateText(today()), rates.line, shop.contact_text].filter(Boolean).join(" · ")),
    el("h2", { class: "title" }, title),
    el(
      "p",
      { class: "car-line" },
      range?.car_line ?? openCar.sheet.body_name,
      openCar.from?.kind === "sample" && " · this car is invented",
    ),
    rates.valid_until < today() && el("p", { class: "loud" }, rates.past_text),
  );
}

function rangeRow(row: RangeRow, range: RangeReply, levels: number): HTMLElement {
  return el(
    "div",
    { class: "row-block" },
    range.rows.length > 1 && el("h3", {}, row.label),
    row.headline &&
      el(
        "div",
        { class: "sentence" },
        el("p", {}, row.sentence_head),
        el(
          "ul",
          { class: "plain" },
          row.sentence.map((t) => el("li", {}, t)),
        ),
      ),
    el("p", { class: "loud" }, `${row.not_an_estimate} ${row.tax_line}`),
    dotRow(row, range.axis, levels),
    row.headline && el("p", { class: "loud" }, row.set_aside_line),
    row.old_damage_line && el("p", {}, row.old_damage_line),
    row.untested_line && el("p", {}, row.untested_line),
    row.fitting_line && el("p", {}, row.fitting_line),
    el("p", {}, row.hours_line, el("br"), row.weeks_line),
  );
}

function figure(range: RangeReply, car: CarFile): HTMLElement {
  const levels = levelsOf(range.rows);
  return el(
    "section",
    { class: isRough(range) ? "figure is-rough" : "figure", "aria-label": "The range" },
    range.rows.map((row) => rangeRow(row, range, levels)),
    range.promise_line && el("p", {}, range.promise_line),
    car.stages?.length
      ? el("p", { class: "caution" }, "The real bill can fall outside both ends.")
      : cautionLines(range.cautions, ["not_seen"]),
    el("p", {}, "You do not choose where in the range it lands; the metal does."),
  );
}

/** What another body would take, and after the survey that it was offered. */
function anotherBody(range: RangeReply): HTMLElement | null {
  const offers = range.rows.flatMap(({ label, another_body: offer }) => (offer ? [{ label, offer }] : []));
  const [first] = offers;
  if (!first) return null;
  return section(
    "Another body",
    offers.map(({ label, offer }) => [
      range.rows.length > 1 && el("h3", {}, label),
      offer.lines.map((line) => el("p", {}, line)),
    ]),
    first.offer.letter_line && el("p", {}, `Offered on ${dateText(today())}: ${first.offer.letter_line}`),
    el("p", { class: "caution" }, first.offer.caution),
  );
}

/** Every stage that was done, each as a row of dots on one axis. */
function beforeAfter(replies: Replies, range: RangeReply): HTMLElement | null {
  if (!replies.has("before_after")) return null;
  const failure = failureOf(replies, "before_after");
  if (failure) return section("Before and after", failed(failure));
  const reply = replyOf(replies, "before_after", "before_after");
  const done = reply ? drawnRows(reply) : [];
  const newest = done.at(-1);
  if (!reply || !isDone(reply) || !newest) return section("Before and after", waiting());
  const levels = levelsOf(done);
  const [now] = range.rows;
  const differs = newest.low_text !== now?.low_text || newest.high_text !== now?.high_text;
  return section(
    "Before and after",
    reply.headline.map((t) => el("p", {}, t)),
    done.map((row) =>
      el(
        "div",
        { class: row === newest ? "stage-row" : "stage-row is-older" },
        el(
          "p",
          {},
          el("strong", {}, [row.name, row.date_text].filter(Boolean).join(", ")),
          ` · ${row.width_text}`,
        ),
        dotRow({ dots: row.dots, dots_text: row.sentence }, reply.axis, levels),
        row.wider_line && el("p", {}, row.wider_line),
      ),
    ),
    movedLists(reply).map(({ name, lines }) => el("p", {}, el("strong", {}, `${name}: `), lines.join(" "))),
    reply.unseen_line && el("p", {}, reply.unseen_line),
    reply.other_figures_line && el("p", {}, reply.other_figures_line),
    el("p", {}, reply.not_a_limit),
    differs && el("p", {}, fewerCars()),
  );
}

function whyWide(replies: Replies): HTMLElement {
  const failure = failureOf(replies, "wide");
  if (failure) return section("What makes it wide", failed(failure));
  const reply = replyOf(replies, "wide", "wide");
  if (!reply || isRough(reply)) return section("What makes it wide", waiting(reply?.progress_text));
  return section(
    "What makes it wide, and what could make it worse",
    reply.known &&
      el(
        "ul",
        { class: "plain" },
        reply.shares.map((s) => el("li", {}, el("strong", {}, `${s.name}, ${s.share_text}. `), s.why)),
        el("li", {}, `${reply.rest_text}.`),
      ),
    reply.known && el("p", { class: "small" }, reply.shares_note),
    reply.worse.length > 0 && el("h3", {}, "What could make it worse, and how one would find out"),
    el(
      "ol",
      {},
      reply.worse.map((w) =>
        el("li", {}, el("strong", {}, `${w.name}. `), `${w.likely_line} ${w.cost_line} ${w.find_line}`),
      ),
    ),
    reply.worse.length > 0 && el("p", { class: "small" }, reply.worse_note),
  );
}

/** The content of the letter. address: the link that opens these answers again, or null;
 *  code: the same to scan, or null. */
export function letter(
  host: CarContext,
  replies: Replies,
  address: string | null,
  code: SVGSVGElement | null = null,
): Child[] {
  const range = rangeOf(replies);
  if (!range) {
    const failure = failureOf(replies, "range");
    return failure
      ? [failed(failure), el("p", {}, "No letter is made until this is put right.")]
      : [waiting("Working it out.")];
  }
  const { opened, openCar } = host;
  return [
    paperHead(host, "Cost range for your car", range),
    figure(range, openCar.car),
    anotherBody(range),
    section("What it rests on", basis(host)),
    beforeAfter(replies, range),
    section(
      "Not in the range",
      list(range.not_in_it, { class: "columns" }),
      range.rows
        .filter((r) => r.allowance_line)
        .map((r) =>
          el("p", {}, range.rows.length > 1 ? `${r.label}: ${r.allowance_line}` : r.allowance_line),
        ),
    ),
    nextStage(begun(openCar.car, "survey"), range, replyOf(replies, "plan", "plan")),
    whyWide(replies),
    stages(replies, range),
    el("div", { class: "paper-end" }, rights(opened, range), foot(opened, range, address, code)),
  ];
}
