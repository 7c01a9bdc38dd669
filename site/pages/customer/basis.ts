// What the range rests on: every answer in words with a way to change it. On paper the same
// list has no buttons.

import {
  type CompleteCar,
  hasDate,
  holeHalves,
  type Mark,
  markOf,
  photosOf,
  placesFor,
} from "../shared/car.ts";
import type { CarFile, Life, Made } from "../shared/carfile.ts";
import { button, el } from "../shared/dom.ts";
import type { QuestionStep } from "../shared/flow.ts";
import type { Answer, Questions } from "../shared/question.ts";
import type { OpenedReply } from "../shared/replies.ts";
import { sec } from "./sec.ts";
import type { Said } from "./visithistory.ts";

const MARK_TEXT: Record<Mark, string> = {
  left: "seen on the left",
  right: "seen on the right",
  both: "seen",
  clean: "looked, nothing found",
};

export function placeName(opened: OpenedReply, id: string | undefined): string | null {
  for (const country of opened.places) {
    const place = country.places.find((p) => p.id === id);
    if (place) return place.name;
  }
  return null;
}

type WithAnswers = { answers: readonly Answer[] };
type Id = string | undefined;

const answerText = (q: WithAnswers, id: Id): string | null =>
  q.answers.find((a) => a.id === id)?.text ?? null;
const meansText = (q: WithAnswers, id: Id): string | null =>
  q.answers.find((a) => a.id === id)?.means ?? answerText(q, id);

function madeText(made: Made): string {
  if (made.not_sure) return "Year not sure";
  return made.decade ? `${made.decade}s` : String(made.year);
}

function elsewhereText(period: Life, opened: OpenedReply, q: Questions): string {
  const where = placeName(opened, period.place) ?? answerText(q.place, period.place) ?? "Not sure";
  return `${where}, ${period.years} years: ${answerText(q.kept, period.kept) ?? "not sure how kept"}`;
}

function bodyText(car: CompleteCar, opened: OpenedReply): string {
  if (car.bodies.length > 2) return "Not sure";
  return car.bodies.map((id) => opened.bodies.find((b) => b.id === id)?.name ?? id).join(", or ");
}

function earlierText(car: CarFile, q: Questions): string | null {
  const text = answerText(q.earlier, car.earlier_work);
  return hasDate(car.earlier_work) ? `${text}, ${car.earlier_work_year ?? "year not known"}` : text;
}

function photosText(car: CarFile): string | null {
  const n = hasDate(car.earlier_work) ? photosOf(car).length : 0;
  if (n === 0) return null;
  return n === 1 ? "1 part shown renewed or patched" : `${n} parts shown renewed or patched`;
}

/** An answer that was given: its question, what that is called, and the answer in words. */
export type AnswerLine = [step: QuestionStep, name: string, text: string];

/** Every answer that was given, in words. */
export function answersInWords(
  car: CompleteCar,
  said: Said,
  opened: OpenedReply,
  q: Questions,
): AnswerLine[] {
  const lines: AnswerLine[] = [];
  const add = (step: QuestionStep, name: string, text: string | null | undefined | false): void => {
    if (text) lines.push([step, name, text]);
  };
  const [first = {}, ...earlier] = car.life;
  add("body", q.body.short, bodyText(car, opened));
  add("year", q.year.short, madeText(car.made));
  add("place", q.place.short, placeName(opened, first.place) ?? answerText(q.place, first.place));
  add("place", q.shore.short, answerText(q.shore, first.shore));
  add("kept", q.kept.short, answerText(q.kept, first.kept));
  add("standard", q.standard.short, answerText(q.standard, car.standard));
  add("covered", q.covered.short, meansText(q.covered, car.covered));
  add("road", q.road.short, roadText(q, first.road_years));
  if (earlier.length === 0) add("elsewhere", q.elsewhere.short, answerText(q.elsewhere, said.elsewhere));
  for (const period of earlier) add("elsewhere", q.elsewhere.short, elsewhereText(period, opened, q));
  add("earlier", q.earlier.short, earlierText(car, q));
  add("earlier_parts", q.earlier_parts.short, photosText(car));
  add("hit", q.hit.short, hitText(car, q));
  if (car.options?.includes("outside_fenders")) add("body", q.fenders.short, answerText(q.fenders, "yes"));
  const places = placesFor(opened, car);
  for (const place of places) {
    const mark = markOf(car, place);
    if (mark) add("seen", place.name, MARK_TEXT[mark]);
  }
  for (const half of holeHalves(car, places)) {
    if (half.hole === "yes")
      add("holes", half.name, `a hole you can see${half.side === "whole" ? "" : `, ${half.side}`}`);
  }
  add("all_there", q.all_there.short, answerText(q.all_there, car.all_there));
  add("another_body", q.another_body.short, answerText(q.another_body, car.another_body));
  if (car.scope) add("scope", q.scope.short, answerText(q.scope, said.scope ?? car.scope));
  return lines;
}

function hitText({ hit }: CompleteCar, q: Questions): string | null {
  const [place] = hit?.where ?? [];
  const said = meansText(q.hit, hit?.answer);
  return said && place ? `${said}: ${answerText(q.hit_where, place)?.toLowerCase()}` : said;
}

function roadText(q: Questions, years: string | undefined): string | null {
  const text = answerText(q.road, years)?.toLowerCase();
  return text ? `Driven regularly: ${text}${years === "not_sure" ? "" : " years"}` : null;
}

/** change opens a question again. by: who gave the answers. */
export function basisSection(
  car: CompleteCar,
  said: Said,
  opened: OpenedReply,
  q: Questions,
  change: (step: QuestionStep) => void,
  by: string,
): HTMLElement {
  const rows = answersInWords(car, said, opened, q).map(([step, name, text]) =>
    el(
      "div",
      { class: "basis-row" },
      el("dt", {}, name),
      el(
        "dd",
        {},
        el("span", {}, text),
        button("Change", () => change(step), { class: "change", "aria-label": `Change: ${name}, ${text}` }),
      ),
    ),
  );
  return sec("basis", "basis-title", "What it rests on", el("p", { class: "hint" }, by), el("dl", {}, rows));
}
