// Earlier work on the body: when it was, and which parts photographs or bills of it show. Each
// part that they show is a check of its own in the car file.

import { askNumber, heading } from "../shared/ask.ts";
import { photosOf, placesFor, withLook, withWorkYear } from "../shared/car.ts";
import type { CarFile } from "../shared/carfile.ts";
import { button, el, freshId } from "../shared/dom.ts";
import type { Question } from "../shared/question.ts";
import type { SheetReply, SheetZone } from "../shared/replies.ts";
import { workYear, yearsOfWork } from "../shared/workyear.ts";
import type { App, OpenApp } from "./app.ts";
import type { VisitState } from "./visithistory.ts";

export function earlierYear(q: Question, state: VisitState, app: App): HTMLElement {
  const { car, said } = state;
  const years = yearsOfWork(car);
  const go = (year: number | null, text: string): void =>
    app.answer(
      {
        car: withWorkYear(car, year),
        said: { ...said, earlier_year: year === null ? "not_sure" : String(year) },
      },
      "year",
      text,
    );
  const notSure = (): void => go(null, "Not knowing the year of that work");
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

/** A button of a part: its text, and the items that it stands for. */
type SideButton = [text: string, items: string[]];
const sideButtons = (left: string[], right: string[], whole: string[]): SideButton[] => [
  ["Left", left],
  ["Right", right],
  ["Shown", whole],
];

/** Records that the photographs show these items, or that they do not. */
type Mark = (items: string[], on: boolean) => void;

/** The eight places of "What can you see?" first; on a known body every other part behind one
 *  fold. */
export function earlierParts(q: Question, car: CarFile, app: OpenApp): HTMLElement {
  const places = placesFor(app.opened, car).map((p) => ({
    name: p.name,
    sides: sideButtons(p.left, p.right, p.whole),
  }));
  let now = car;
  const set: Mark = (items, on) => {
    now = withLook(now, "photos", items, on ? "yes" : null);
    app.amend({ car: now });
  };
  const listed = new Set(places.flatMap((p) => p.sides.flatMap(([, items]) => items)));
  return el(
    "div",
    { class: "question" },
    heading(q.title),
    el("p", { class: "hint" }, q.hint),
    el(
      "div",
      { class: "places" },
      places.map((p) => partRow(p.name, p.sides, now, set)),
    ),
    car.bodies?.length === 1 && otherParts(listed, () => now, set, app),
    button("Continue", () => app.answer({ car: now }, "parts", "Your photographs and bills"), {
      class: "go",
    }),
  );
}

function partRow(name: string, sides: readonly SideButton[], car: CarFile, set: Mark): HTMLElement {
  const shown = new Set(photosOf(car));
  const id = freshId("part");
  return el(
    "div",
    { class: "place", role: "group", "aria-labelledby": id },
    el("p", { class: "part-name", id }, name),
    el(
      "div",
      { class: "marks" },
      sides
        .filter(([, items]) => items.length)
        .map(([text, items]) => {
          const node: HTMLButtonElement = button(
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

/** listed: the items that have a button already. car gives the car as it is now. */
function otherParts(
  listed: ReadonlySet<string>,
  car: () => CarFile,
  set: Mark,
  app: App,
): HTMLDetailsElement {
  const body = el("div", {}, el("p", { role: "status" }, "Getting the list."));
  let asked = false;
  const fill = async (): Promise<void> => {
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
  const fold: HTMLDetailsElement = el(
    "details",
    {
      class: "other-parts",
      on: {
        toggle: () => {
          if (fold.open && !asked) fill();
        },
      },
    },
    el("summary", {}, "Other parts"),
    body,
  );
  return fold;
}

/** The parts of a zone that have no button yet, each with its sides. */
function partsOf(zone: SheetZone, listed: ReadonlySet<string>): { name: string; sides: SideButton[] }[] {
  const left = (item: string): string[] => (item && !listed.has(item) ? [item] : []);
  return zone.rows
    .flatMap((row) =>
      row.lines.map((line) => ({
        name: line.label ? `${row.name}, ${line.label}` : row.name,
        sides: sideButtons(left(line.left), left(line.right), left(line.whole)),
      })),
    )
    .filter(({ sides }) => sides.some(([, items]) => items.length > 0));
}

function zones(sheet: SheetReply, listed: ReadonlySet<string>, car: () => CarFile, set: Mark): HTMLElement[] {
  const shown = new Set(photosOf(car()));
  return sheet.zones
    .map((zone) => ({ name: zone.name, parts: partsOf(zone, listed) }))
    .filter(({ parts }) => parts.length > 0)
    .map(({ name, parts }) =>
      el(
        "details",
        { open: parts.some(({ sides }) => sides.some(([, items]) => items.some((i) => shown.has(i)))) },
        el("summary", {}, name),
        parts.map((part) => partRow(part.name, part.sides, car(), set)),
      ),
    );
}
