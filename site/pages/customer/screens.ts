// One screen for each step: what is asked, and what an answer does. The range itself is put
// together in result.ts.

import { askButtons, askDecade, askNumber, heading } from "../shared/ask.ts";
import { holeHalves, placed, placesFor, withLife, withLook, withMark } from "../shared/car.ts";
import type { CarFile, CheckResult } from "../shared/carfile.ts";
import { button, el, list } from "../shared/dom.ts";
import type { Choice, ChoiceStep, DraftQuestion, Question } from "../shared/question.ts";
import { type App, isOpen, type OpenApp } from "./app.ts";
import { earlierParts, earlierYear } from "./earlier.ts";
import { firstScreen } from "./first.ts";
import { askHoles, askSeen } from "./looks.ts";
import { askPlace } from "./places.ts";
import { stageSection } from "./sections.ts";
import type { VisitState } from "./visithistory.ts";

const waiting = (): HTMLElement =>
  el("div", { class: "question" }, heading("One moment"), el("p", {}, "The list is being made ready."));

/** A whole number as it was typed, or an error with the sentence to show. */
function wholeNumber(text: string, from: number, to: number, sentence: string): number {
  const value = /^\d{1,4}$/.test(text) ? Number(text) : NaN;
  if (!(value >= from && value <= to)) throw new Error(sentence);
  return value;
}

/** The screen of a step; the range has none of its own here. ways: what else one can begin with. */
export function screenFor(state: VisitState, app: App, ways: HTMLElement): HTMLElement | null {
  const { step, car } = state;
  const { q } = app;
  switch (step) {
    case "range":
      return null;
    case "year":
      return yearScreen(q.year, car, app);
    case "place_list":
    case "else_list":
      return placeScreen(state, app);
    case "else_place":
    case "else_kept":
      return draftScreen(q[step], state, app);
    case "else_years":
      return yearsScreen(q.else_years, state, app);
    case "seen":
      return isOpen(app) ? seenScreen(q.seen, car, app) : waiting();
    case "holes":
      return isOpen(app) ? holesScreen(q.holes, car, app) : waiting();
    case "earlier_year":
      return earlierYear(q.earlier_year, state, app);
    case "earlier_parts":
      return isOpen(app) ? earlierParts(q.earlier_parts, car, app) : waiting();
    case "not_covered":
      return notCovered(app);
    default:
      return choiceScreen(step, q[step], state, app, ways);
  }
}

function choiceScreen(
  step: ChoiceStep,
  q: Choice,
  { car, said, changing }: VisitState,
  app: App,
  ways: HTMLElement,
): HTMLElement {
  const chosen = q.chosen(car, said[step]);
  const take = (id: string, text: string): void =>
    app.answer({ car: q.apply(car, id), said: { ...said, [step]: id } }, id, meaning(q, id, text));
  return step === "body" && !changing ? firstScreen(q, chosen, take, ways) : askButtons(q, chosen, take);
}

/** An answer as it is called away from its question, for "… moved the range". */
function meaning(q: Choice, id: string, text: string): string {
  const own = q.answers.find((a) => a.id === id)?.means;
  return own ?? (id === "not_sure" ? `“Not sure” (${q.short.toLowerCase()})` : text);
}

function yearScreen(q: Question, car: CarFile, app: App): HTMLElement {
  const made = app.opened?.made;
  const sentence = `Write the year as four digits, ${made ? made.expected : "for example 1967"}.`;
  return el(
    "div",
    { class: "question" },
    heading(q.title),
    askNumber({
      label: "Year",
      digits: 4,
      value: car.made?.year,
      check: (text) => wholeNumber(text, made?.from ?? 1900, made?.to ?? 2100, sentence),
      done: (year, text) => app.answer({ car: { ...car, made: { year } } }, "year", `The year ${text}`),
    }),
    askDecade(car.made, (id, text) =>
      app.answer(
        { car: { ...car, made: id === "not_sure" ? { not_sure: true } : { decade: Number(id) } } },
        id,
        id === "not_sure" ? "Not knowing the year" : `The ${text}`,
      ),
    ),
  );
}

function placeScreen(state: VisitState, app: App): HTMLElement {
  if (!isOpen(app)) return waiting();
  const { places } = app.opened;
  const elsewhere = state.step === "else_list";
  const chosen = elsewhere ? state.draft?.place : state.car.life?.[0]?.place;
  return askPlace("Pick a place", places, chosen, (id, text) => {
    const coast = places.some((c) => c.places.some((p) => p.id === id && p.coast));
    if (elsewhere) app.answer({ draft: { ...state.draft, place: id } }, id, text);
    else app.answer({ car: placed(state.car, 0, id) }, id, text, { coast });
  });
}

function draftScreen(q: DraftQuestion, state: VisitState, app: App): HTMLElement {
  return askButtons(q, state.draft?.[q.draft] ?? null, (id, text) =>
    app.answer(
      { draft: id === "pick" ? (state.draft ?? null) : { ...state.draft, [q.draft]: id } },
      id,
      text,
    ),
  );
}

function yearsScreen(q: Question, state: VisitState, app: App): HTMLElement {
  const { car, draft } = state;
  const sentence = "Write the years as a whole number, for example 12.";
  return el(
    "div",
    { class: "question" },
    heading(q.title),
    askNumber({
      label: "Years",
      digits: 2,
      check: (text) => wholeNumber(text, 1, 99, sentence),
      done: (years) =>
        app.answer(
          { car: withLife(car, car.life?.length ?? 0, { ...draft, years }), draft: null },
          "years",
          "Its life elsewhere",
        ),
    }),
  );
}

function seenScreen(q: Question, car: CarFile, app: OpenApp): HTMLElement {
  const places = placesFor(app.opened, car);
  let now = car;
  return askSeen(
    q,
    car,
    places,
    (place, mark) => {
      now = withMark(now, place, mark);
      app.amend({ car: now });
    },
    (hole) =>
      app.answer({ car: now, said: { ...app.said(), seen: "done" } }, "done", "What you saw", {
        marked: hole || holeHalves(now, places).some((h) => h.marked),
      }),
  );
}

function holesScreen(q: Question, car: CarFile, app: OpenApp): HTMLElement {
  return askHoles(q, car, placesFor(app.opened, car), (yes, no, unsaid) => {
    const said: [items: string[], result: CheckResult | null][] = [
      [yes, "yes"],
      [no, "no"],
      [unsaid, null],
    ];
    const next = said
      .filter(([items]) => items.length > 0)
      .reduce((now, [items, result]) => withLook(now, "open_hole", items, result), car);
    app.answer({ car: next }, "holes", "What you said about holes");
  });
}

function notCovered(app: App): HTMLElement {
  const uk = app.words === "uk";
  const { opened } = app;
  const stage = opened?.bodies[0]?.stage;
  return el(
    "div",
    { class: "question" },
    heading("Not covered by these sums"),
    el(
      "p",
      {},
      `The odds behind this page are for steel bodies like the ones drawn. They say nothing about wood-framed bodies, ${uk ? "aluminium, glass-fibre" : "aluminum, fiberglass"} and others, so no range is shown.`,
    ),
    opened?.labour &&
      el(
        "section",
        {},
        el("h2", {}, "The shop's rates"),
        el("p", {}, opened.rates.line),
        list(opened.labour.map((l) => `${l.name}: ${l.text}`)),
        opened.labour_note && el("p", {}, opened.labour_note),
      ),
    stage && el("p", { class: "hint" }, "The one stage that has a price, shown here for a two-door body:"),
    stage && stageSection(stage),
    button("Back to the drawings", () => app.back(), { class: "answer" }),
  );
}
