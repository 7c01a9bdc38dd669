// Earlier work on the body: when it was, and which parts photographs or bills of it
// show. Each part that they show is a check of its own in the car file.

import { button, el, freshId } from "../shared/dom.ts";
import { askNumber, heading } from "../shared/ask.ts";
import { photosOf, placesFor, withLook, withWorkYear } from "../shared/car.ts";
import { workYear, yearsOfWork } from "../shared/workyear.ts";

export function earlierYear(q, state, app) {
  const { car, said } = state;
  const years = yearsOfWork(car);
  const go = (year, text) =>
    app.answer(
      { car: withWorkYear(car, year), said: { ...said, earlier_year: year ?? "not_sure" } },
      "year",
      text,
    );
  const notSure = () => go(null, "Not knowing the year of that work");
  const given = said.earlier_year === "not_sure" && car.earlier_work_year === undefined;
  return el(
    "div",
    { class: "question" },
    heading(q.title),
    askNumber({
      label: "Year",
      hint: `A year such as ${years.example}. “About ${years.example}” will do.`,
      digits: 30,
      words: true,
      value: car.earlier_work_year,
      check: (text) => workYear(text, years),
      done: (year) => (year === null ? notSure() : go(year, `Work in ${year}`)),
    }),
    el(
      "div",
      { class: "answers short" },
      button(["Not sure", given && el("span", { class: "given" }, "your answer")], notSure, {
        class: given ? "answer is-given" : "answer",
        "data-answer": "not_sure",
      }),
    ),
  );
}

/** The eight places of "What can you see?" first; on a known body every other part
 *  behind one fold. */
export function earlierParts(q, car, app) {
  const places = placesFor(app.opened, car).map((p) => ({
    ...p,
    rows: [
      ["Left", p.left],
      ["Right", p.right],
      ["Shown", p.whole],
    ],
  }));
  let now = car;
  const set = (items, on) => {
    now = withLook(now, "photos", items, on ? "yes" : null);
    app.amend({ car: now });
  };
  const listed = new Set(places.flatMap((p) => p.rows.flatMap(([, items]) => items ?? [])));
  return el(
    "div",
    { class: "question" },
    heading(q.title),
    el("p", { class: "hint" }, q.hint),
    el(
      "div",
      { class: "places" },
      places.map((p) => partRow(p.name, p.rows, now, set)),
    ),
    car.bodies.length === 1 && otherParts(listed, () => now, set, app),
    button("Continue", () => app.answer({ car: now }, "parts", "Your photographs and bills"), {
      class: "go",
    }),
  );
}

function partRow(name, rows, car, set) {
  const shown = new Set(photosOf(car));
  const id = freshId("part");
  return el(
    "div",
    { class: "place", role: "group", "aria-labelledby": id },
    el("p", { class: "part-name", id }, name),
    el(
      "div",
      { class: "marks" },
      rows
        .filter(([, items]) => items?.length)
        .map(([text, items]) => {
          const node = button(
            text,
            () => {
              const on = node.getAttribute("aria-pressed") !== "true";
              node.setAttribute("aria-pressed", String(on));
              set(items, on);
            },
            {
              class: "mark",
              "aria-pressed": String(items.every((i) => shown.has(i))),
              "data-items": items.join(" "),
            },
          );
          return node;
        }),
    ),
  );
}

function otherParts(listed, car, set, app) {
  const body = el("div", {}, el("p", { role: "status" }, "Getting the list."));
  let asked = false;
  const fill = async () => {
    asked = true;
    try {
      const sheet = await app.sheet(car());
      if (sheet.kind === "sheet") body.replaceChildren(...zones(sheet, listed, car, set));
      else body.replaceChildren(el("p", {}, sheet.text));
    } catch {
      asked = false;
      body.replaceChildren(el("p", {}, "The list did not load. Close this and open it again."));
    }
  };
  return el(
    "details",
    {
      class: "other-parts",
      on: {
        toggle: (event) => {
          if (event.target.open && !asked) fill();
        },
      },
    },
    el("summary", {}, "Other parts"),
    body,
  );
}

function zones(sheet, listed, car, set) {
  const rowsOf = (zone) =>
    zone.rows
      .flatMap((row) =>
        row.lines.map((line) => [
          line.label ? `${row.name}, ${line.label}` : row.name,
          [
            ["Left", line.left],
            ["Right", line.right],
            ["Shown", line.whole],
          ].map(([text, on]) => [text, on && !listed.has(on) ? [on] : []]),
        ]),
      )
      .filter(([, rows]) => rows.some(([, items]) => items.length > 0));
  const shown = new Set(photosOf(car()));
  return sheet.zones
    .map((zone) => [zone.name, rowsOf(zone)])
    .filter(([, rows]) => rows.length > 0)
    .map(([name, rows]) =>
      el(
        "details",
        { open: rows.some(([, sides]) => sides.some(([, [on]]) => shown.has(on))) },
        el("summary", {}, name),
        rows.map(([part, sides]) => partRow(part, sides, car(), set)),
      ),
    );
}
