// One screen for each step: what is asked, and what an answer does. The range
// itself is put together in result.js.

import { button, el, list } from "../shared/dom.ts";
import { askButtons, askDecade, askNumber, heading } from "../shared/ask.ts";
import { askPlace } from "./places.ts";
import { askHoles, askSeen } from "./looks.ts";
import { holeHalves, placed, placesFor, withLife, withLook, withMark } from "../shared/car.ts";
import { earlierParts, earlierYear } from "./earlier.ts";
import { stageSection } from "./range.ts";

const waiting = () =>
  el("div", { class: "question" }, heading("One moment"), el("p", {}, "The list is being made ready."));

/** A whole number as it was typed, or an error with the sentence to show. */
function wholeNumber(text, from, to, sentence) {
  const value = /^\d{1,4}$/.test(text) ? Number(text) : NaN;
  if (!(value >= from && value <= to)) throw new Error(sentence);
  return value;
}

/** app: opened (or null), q (questions), and answer(changes, answerId, text, facts). */
export function screenFor(state, app) {
  const { step, car, said } = state;
  const q = app.q[step];
  if (step === "year") return yearScreen(q, car, app);
  if (step === "place_list" || step === "else_list") return placeScreen(state, app);
  if (step === "else_place" || step === "else_kept") return draftScreen(q, state, app);
  if (step === "else_years") return yearsScreen(q, state, app);
  if (step === "seen") return app.opened ? seenScreen(q, car, app) : waiting();
  if (step === "holes") return app.opened ? holesScreen(q, car, app) : waiting();
  if (step === "earlier_year") return earlierYear(q, state, app);
  if (step === "earlier_parts") return app.opened ? earlierParts(q, car, app) : waiting();
  if (step === "not_covered") return notCovered(app);
  return askButtons(q, q.chosen(car, said[step]), (id, text) =>
    app.answer({ car: q.apply(car, id), said: { ...said, [step]: id } }, id, meaning(q, id, text)),
  );
}

/** An answer as it is called away from its question, for "… moved the range". */
function meaning(q, id, text) {
  const own = q.answers.find((a) => a.id === id)?.means;
  return own ?? (id === "not_sure" ? `“Not sure” (${q.short.toLowerCase()})` : text);
}

function yearScreen(q, car, app) {
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

function placeScreen(state, app) {
  if (!app.opened) return waiting();
  const elsewhere = state.step === "else_list";
  const chosen = elsewhere ? state.draft?.place : state.car.life?.[0]?.place;
  return askPlace("Pick a place", app.opened.places, chosen, (id, text) => {
    const coast = app.opened.places.some((c) => c.places.some((p) => p.id === id && p.coast));
    if (elsewhere) app.answer({ draft: { ...state.draft, place: id } }, id, text);
    else app.answer({ car: placed(state.car, 0, id) }, id, text, { coast });
  });
}

function draftScreen(q, state, app) {
  return askButtons(q, state.draft?.[q.draft] ?? null, (id, text) =>
    app.answer({ draft: id === "pick" ? state.draft : { ...state.draft, [q.draft]: id } }, id, text),
  );
}

function yearsScreen(q, state, app) {
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
          { car: withLife(car, car.life.length, { ...draft, years }), draft: null },
          "years",
          "Its life elsewhere",
        ),
    }),
  );
}

function seenScreen(q, car, app) {
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

function holesScreen(q, car, app) {
  return askHoles(q, car, placesFor(app.opened, car), (yes, no, unsaid) => {
    const said = [
      [yes, "yes"],
      [no, "no"],
      [unsaid, null],
    ].filter(([items]) => items.length > 0);
    const next = said.reduce((now, [items, result]) => withLook(now, "open_hole", items, result), car);
    app.answer({ car: next }, "holes", "What you said about holes");
  });
}

function notCovered(app) {
  const uk = app.words === "uk";
  const { opened } = app;
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
    opened && el("p", { class: "hint" }, "The one stage that has a price, shown here for a two-door body:"),
    opened && stageSection(opened.bodies[0].stage),
    button("Back to the drawings", () => app.back(), { class: "answer" }),
  );
}
