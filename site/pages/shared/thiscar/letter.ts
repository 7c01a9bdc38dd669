// The letter for the customer, in the order of weight: the range and what it is
// not, what it rests on, what is not in it, the next stage, what makes it wide,
// the stages, the customer's rights. No line to sign. Every figure is the
// engine's own text.

import { el, list } from "../dom.ts";
import { dotRow, levelsOf } from "../dots.ts";
import { dateText, today } from "../linkcontent.ts";
import { begun } from "./record.ts";
import { basis } from "./letterbasis.ts";
import { isDone, isRough } from "./gather.ts";

/** What the letter needs of the engine, in the order in which it is asked. */
export function letterNeeds(car) {
  const wanted = [
    ["range", { ask: "range", car }, true],
    ["plan", { ask: "plan", car }, false],
  ];
  if (car.stages?.length) wanted.push(["before_after", { ask: "before_after", car }, true]);
  return [...wanted, ["wide", { ask: "wide", car }, true]];
}

const section = (title, ...content) => el("section", {}, el("h2", {}, title), content);
const waiting = (text = "Still being worked out.") => el("p", { class: "waiting" }, text);
const refused = (reply) => el("p", { class: "error" }, reply.text);
const cautionLines = (cautions, ids) =>
  cautions
    .filter((c) => ids.includes(c.id))
    .map((c) => el("p", { class: "caution", "data-caution": c.id }, c.text));

/** The head of every paper with the shop, its rates and the day. */
export function paperHead({ opened, job }, title, reply) {
  const { shop, rates } = opened;
  return el(
    "div",
    { class: "paper-head" },
    isRough(reply) && el("p", { class: "rough" }, "Rough figure, still being worked out"),
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
      reply?.car_line ?? job.sheet.body_name,
      job.from?.kind === "sample" && " · this car is invented",
    ),
    rates.valid_until < today() && el("p", { class: "loud" }, rates.past_text),
  );
}

function rangeRow(row, reply, levels) {
  return el(
    "div",
    { class: "row-block" },
    reply.rows.length > 1 && el("h3", {}, row.label),
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
    dotRow(row, reply.axis, levels),
    row.headline && el("p", { class: "loud" }, row.set_aside_line),
    el("p", {}, row.hours_line, el("br"), row.weeks_line),
  );
}

function figure(reply, { job }) {
  const levels = levelsOf(reply.rows);
  return el(
    "section",
    { class: isRough(reply) ? "figure is-rough" : "figure", "aria-label": "The range" },
    reply.rows.map((row) => rangeRow(row, reply, levels)),
    job.car.stages?.length
      ? el("p", { class: "caution" }, "The real bill can fall outside both ends.")
      : cautionLines(reply.cautions, ["not_seen"]),
    el("p", {}, "You do not choose where in the range it lands; the metal does."),
  );
}

/** Every stage that was done, one row of dots each on one axis. */
function beforeAfter(reply, range) {
  if (!reply) return null;
  if (reply.kind !== "before_after") return section("Before and after", refused(reply));
  const done = reply.rows.filter((row) => row.done && row.dots?.length);
  if (!isDone(reply) || done.length === 0) return section("Before and after", waiting());
  const levels = levelsOf(done);
  const now = range.rows[0];
  const differs = done.at(-1).low_text !== now.low_text || done.at(-1).high_text !== now.high_text;
  return section(
    "Before and after",
    reply.headline.map((t) => el("p", {}, t)),
    done.map((row, k) =>
      el(
        "div",
        { class: k === done.length - 1 ? "stage-row" : "stage-row is-older" },
        el(
          "p",
          {},
          el("strong", {}, [row.name, row.date_text].filter(Boolean).join(", ")),
          ` · ${row.width_text}`,
        ),
        dotRow({ ...row, dots_text: row.sentence }, reply.axis, levels),
        row.wider_line && el("p", {}, row.wider_line),
      ),
    ),
    [
      ["Worse than usual: ", reply.worse],
      ["Better than usual: ", reply.better],
    ]
      .filter(([, l]) => l?.length)
      .map(([name, l]) => el("p", {}, el("strong", {}, name), l.join(" "))),
    reply.unseen_line && el("p", {}, reply.unseen_line),
    el("p", {}, reply.not_a_limit),
    differs && el("p", {}, FEWER),
  );
}
const FEWER =
  "These rows are worked out less exactly than the range at the head, so that an end may differ by one step of rounding. The range at the head stands.";

/** The one stage with a price; or, once that is done, the one that follows it. */
function nextStage(host, range, plan) {
  const { stage } = range.rows[0];
  const done = begun(host.job.car, "survey");
  const dangers = (ids) =>
    el("div", { class: "dangers" }, el("h3", {}, "Dangers of this work"), cautionLines(range.cautions, ids));
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
      dangers(["blasting", "lead", "asbestos", "lifting", "epoxy"]),
    );
  }
  const next = plan?.kind === "plan" ? plan.stages[1] : null;
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
    dangers(["lead", "asbestos", "lifting", "epoxy"]),
  );
}

/** Each price once, under its label where the rows have prices of their own. */
function stagePrices(range) {
  const several = new Set(range.rows.map((r) => r.stage.price_text)).size > 1;
  return (several ? range.rows : [range.rows[0]]).map((row) =>
    el(
      "p",
      { class: "loud stage-price" },
      `${row.stage.name}${several ? `, ${row.label}` : ""}: `,
      el("strong", {}, row.stage.price_text),
    ),
  );
}

function lineTable(lines) {
  return el(
    "table",
    {},
    el("caption", { class: "visually-hidden" }, "What is not fixed in this stage"),
    el(
      "thead",
      {},
      el(
        "tr",
        {},
        ["Not fixed", "How it is charged", "In the sum"].map((h) => el("th", { scope: "col" }, h)),
      ),
    ),
    el(
      "tbody",
      {},
      lines.map((l) =>
        el("tr", {}, el("th", { scope: "row" }, l.text), el("td", {}, l.basis), el("td", {}, l.amount_text)),
      ),
    ),
  );
}

function whyWide(reply) {
  if (!reply || isRough(reply)) return section("What makes it wide", waiting(reply?.progress_text));
  if (reply.kind !== "wide") return section("What makes it wide", refused(reply));
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

function stages(reply, range) {
  const cautions = cautionLines(range.cautions, ["structure", "belts", "fuel", "paint"]);
  if (!reply) return section("The stages", waiting(), cautions);
  if (reply.kind !== "plan") return section("The stages", refused(reply), cautions);
  const cell = (text) => el("td", {}, text);
  const last = reply.stages.at(-1).by_then_text;
  const [now] = range.rows;
  return section(
    "The stages",
    el(
      "table",
      { class: "stages" },
      el(
        "caption",
        { class: "visually-hidden" },
        "Stages with their hours, money, weeks and the price to stop",
      ),
      el(
        "thead",
        {},
        el(
          "tr",
          {},
          ["Stage", "Work", "Money", "Time", "Stopping"].map((h) => el("th", { scope: "col" }, h)),
        ),
      ),
      el(
        "tbody",
        {},
        reply.stages.map((s) =>
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
    ),
    el("p", { class: "small" }, reply.note),
    !(last.includes(now.low_text) && last.includes(now.high_text)) &&
      range.rows.length === 1 &&
      el("p", { class: "small" }, FEWER.replace("These rows", "The stages")),
    cautions,
  );
}

// Nothing at all: California, Business and Professions Code 9884.9. A tenth: Ohio
// Administrative Code 109:4-3-13(A). More: Germany, BGB 649, "substantial". An
// exception for old cars: Washington, RCW 46.71.025.
function rights(opened, range) {
  return section(
    "Your rights",
    cautionLines(range.cautions, ["rights"]),
    el(
      "p",
      {},
      "After the survey the shop gives you a written estimate before it goes on, and asks for your yes before any cost beyond it. How far a bill may pass an estimate without asking differs from place to place, from not at all to a tenth or more, and some places make exceptions for old cars: ask locally. This letter is no offer, nobody has agreed to anything by it, and there is nothing on it to sign.",
    ),
    list(opened.terms ?? [], { class: "terms" }),
  );
}

/** Longest link that is printed, in characters: six lines on paper. */
const MOST_PRINTED = 700;

function foot({ opened }, range, address, code) {
  const link = !address
    ? null
    : address.length <= MOST_PRINTED
      ? `To open these answers again: ${address}`
      : "So much is recorded that a link does not fit here: the shop has the car as a file.";
  return el(
    "div",
    { class: "paper-foot" },
    code?.cloneNode(true),
    cautionLines(range.cautions, ["local"]),
    el("p", {}, range.how_sure, " ", (range.own_record ?? []).join(" ")),
    (range.warnings ?? []).map((t) => el("p", {}, t)),
    el(
      "p",
      {},
      `Imagined cars are cars like yours that the sums make up from the odds of rust. ${(range.known_limits ?? []).join(" ")}`,
    ),
    el(
      "p",
      { class: "code" },
      `Rates check code ${range.check_code} · ${range.imagined_cars_text} imagined cars · seed ${range.seed} · sums version ${opened.version}`,
    ),
    link && el("p", { class: "address" }, link),
  );
}

/** host: opened, q, job; replies: as gathered; address: the link, or null; code: the
 *  same to scan, or null. */
export function letter(host, replies, address, code = null) {
  const range = replies.get("range");
  if (!range?.rows)
    return range?.kind && range.kind !== "range"
      ? [refused(range), el("p", {}, "No letter is made until this is put right.")]
      : [waiting("Working it out.")];
  const plan = replies.get("plan");
  return [
    paperHead(host, "Cost range for your car", range),
    figure(range, host),
    section("What it rests on", basis(host)),
    beforeAfter(replies.get("before_after"), range),
    section(
      "Not in the range",
      list(range.not_in_it, { class: "columns" }),
      range.rows
        .filter((r) => r.allowance_line)
        .map((r) =>
          el("p", {}, range.rows.length > 1 ? `${r.label}: ${r.allowance_line}` : r.allowance_line),
        ),
    ),
    nextStage(host, range, plan),
    whyWide(replies.get("wide")),
    stages(plan, range),
    rights(host.opened, range),
    foot(host, range, address, code),
  ].filter(Boolean);
}
