// What the range rests on: every answer in words with a way to change it. On
// paper the same list stands without the buttons.

import { button, el } from "../shared/dom.ts";
import { hasDate, holeHalves, markOf, photosOf, placesFor } from "../shared/car.ts";

const MARK_TEXT = {
  left: "seen on the left",
  right: "seen on the right",
  both: "seen",
  clean: "looked, nothing found",
};

export function placeName(opened, id) {
  for (const country of opened.places) {
    const place = country.places.find((p) => p.id === id);
    if (place) return place.name;
  }
  return null;
}

const meansText = (q, id) => q.answers.find((a) => a.id === id)?.means ?? answerText(q, id);
const answerText = (q, id) => q.answers.find((a) => a.id === id)?.text ?? null;

function madeText(made) {
  if (made.not_sure) return "Year not sure";
  return made.decade ? `${made.decade}s` : String(made.year);
}

function elsewhereText(period, opened, q) {
  const where = placeName(opened, period.place) ?? answerText(q.place, period.place) ?? "Not sure";
  return `${where}, ${period.years} years: ${answerText(q.kept, period.kept) ?? "not sure how kept"}`;
}

function bodyText(car, opened) {
  if (car.bodies.length > 2) return "Not sure";
  return car.bodies.map((id) => opened.bodies.find((b) => b.id === id)?.name ?? id).join(", or ");
}

function earlierText(car, q) {
  const text = answerText(q.earlier, car.earlier_work);
  return hasDate(car.earlier_work) ? `${text}, ${car.earlier_work_year ?? "year not known"}` : text;
}

function photosText(car) {
  const n = hasDate(car.earlier_work) ? photosOf(car).length : 0;
  return n > 0 && (n === 1 ? "1 part shown renewed or patched" : `${n} parts shown renewed or patched`);
}

/** [step, short name, text] for every answer that was given. */
export function answersInWords(car, said, opened, q) {
  const first = car.life[0];
  const lines = [
    ["body", q.body.short, bodyText(car, opened)],
    ["year", q.year.short, madeText(car.made)],
    ["place", q.place.short, placeName(opened, first.place) ?? answerText(q.place, first.place)],
    first.shore && ["place", q.shore.short, answerText(q.shore, first.shore)],
    ["kept", q.kept.short, answerText(q.kept, first.kept)],
    ["standard", q.standard.short, answerText(q.standard, car.standard)],
    car.covered && ["covered", q.covered.short, meansText(q.covered, car.covered)],
    first.road_years && [
      "road",
      q.road.short,
      `Driven regularly: ${answerText(q.road, first.road_years).toLowerCase()}${first.road_years === "not_sure" ? "" : " years"}`,
    ],
    car.life.length === 1 &&
      said.elsewhere && ["elsewhere", q.elsewhere.short, answerText(q.elsewhere, said.elsewhere)],
    ...car.life.slice(1).map((p) => ["elsewhere", q.elsewhere.short, elsewhereText(p, opened, q)]),
    car.earlier_work && ["earlier", q.earlier.short, earlierText(car, q)],
    ["earlier_parts", q.earlier_parts.short, photosText(car)],
    car.options?.includes("outside_fenders") && ["body", q.fenders.short, answerText(q.fenders, "yes")],
  ];
  const places = placesFor(opened, car);
  for (const place of places) {
    const mark = markOf(car, place);
    if (mark) lines.push(["seen", place.name, MARK_TEXT[mark]]);
  }
  for (const half of holeHalves(car, places)) {
    if (half.hole === "yes")
      lines.push(["holes", half.name, `a hole you can see${half.side === "whole" ? "" : `, ${half.side}`}`]);
  }
  if (car.scope) lines.push(["scope", q.scope.short, answerText(q.scope, said.scope ?? car.scope)]);
  return lines.filter((line) => line && line[2]);
}

/** change(step) opens the question again. */
export function basisSection(car, said, opened, q, change, by) {
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
  return el(
    "section",
    { class: "basis", "aria-labelledby": "basis-title" },
    el("h2", { id: "basis-title" }, "What it rests on"),
    el("p", { class: "hint" }, by),
    el("dl", {}, rows),
  );
}
