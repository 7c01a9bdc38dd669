// What we talked about, on one or two sheets: the two rows, what each stage takes off,
// what stays, and what makes it wide. The other pages are only for the talk.

import { type Children, el } from "../shared/dom.ts";
import type { OpenedReply } from "../shared/replies.ts";
import { type Replies, rangeOf } from "../shared/thiscar/gather.ts";
import { paperHead } from "../shared/thiscar/letter.ts";
import { enteredBy } from "../shared/thiscar/letterbasis.ts";
import { begun } from "../shared/thiscar/record.ts";
import { nextStage } from "./ending.ts";
import { enteredFrom, type Hand } from "./hand.ts";
import { doneAnswer } from "./sums.ts";
import { twoWays } from "./twoways.ts";
import { shares, worse } from "./widest.ts";
import { takesOff, whatStays } from "./widths.ts";

const NOT = "This is a cost range. It is not an estimate, not a quotation and not a ceiling.";
const LATE = "Not worked out yet when this was printed.";

const section = (title: string, ...content: Children[]) => el("section", {}, el("h2", {}, title), content);

/** What a page shows, made fit for paper: nothing to press, and what is missing says so. */
function still(nodes: readonly HTMLElement[]): HTMLElement {
  const box = el("div", {}, nodes);
  for (const node of box.querySelectorAll("button")) node.remove();
  for (const node of box.querySelectorAll(".working")) node.textContent = LATE;
  return box;
}

/** The paper about a car, made of the replies that are there. uk: in UK words. */
export function whyPaper(opened: OpenedReply, uk: boolean, hand: Hand, replies: Replies): HTMLElement {
  const from = enteredFrom(hand.from);
  const openCar = { ...hand, from };
  const range = rangeOf(replies);
  const wide = doneAnswer(replies, "wide");
  const tax = [...new Set((range?.rows ?? []).map((r) => r.tax_line).filter(Boolean))];
  return el(
    "article",
    { class: "paper-sheet why-paper" },
    paperHead(
      { opened, openCar },
      "Why the range is so wide",
      range?.car_line ? { car_line: range.car_line } : null,
    ),
    el("p", { class: "loud" }, NOT),
    hand.car.standard === "not_sure" &&
      el("p", {}, "The standard is not settled yet: these figures are for show standard."),
    from?.kind !== "sample" && el("p", {}, enteredBy(openCar)),
    tax.length === 1 && el("p", {}, tax[0]),
    section("Same odds, two ways", still(twoWays(replies.get("two_ways"), null, "h3"))),
    section("What each stage takes off", still(takesOff(replies, null, uk, "h3"))),
    section(
      "What stays",
      el("p", {}, "This part nobody can take away before the work is done."),
      still(whatStays(replies, null, uk)),
    ),
    section(
      "What makes it wide",
      still(shares(replies.get("wide"), null)),
      wide && el("p", { class: "small" }, wide.shares_note),
    ),
    wide && section("What could make it worse", worse(wide)),
    !begun(hand.car, "survey") &&
      nextStage(range) &&
      section("So that is why you strip first", nextStage(range)),
    el(
      "div",
      { class: "paper-foot" },
      el(
        "p",
        {},
        "Simulated cars are cars like yours that we make up from the odds of rust. The figures here come from them. The letter for this car has the whole range.",
      ),
      (range?.cautions ?? [])
        .filter((c) => (c.id === "not_seen" && !hand.car.stages?.length) || c.id === "local")
        .map((c) => el("p", {}, c.text)),
      el(
        "p",
        { class: "code" },
        `Rates check code ${opened.rates.check_code} · figures code ${opened.figures_code} · sums version ${opened.version}`,
      ),
    ),
  );
}
