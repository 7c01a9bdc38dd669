// What the customer can see: eight places, each left, right, both or clean, and the holes.
// Pressing a given mark again goes back to "not looked at".

import { heading } from "../shared/ask.ts";
import { type HoleHalf, holeHalves, type Mark, markOf, type Side } from "../shared/car.ts";
import type { CarFile } from "../shared/carfile.ts";
import { button, el } from "../shared/dom.ts";
import type { Question } from "../shared/question.ts";
import type { CustomerPlace } from "../shared/replies.ts";

/** A mark and the text of its button. */
type MarkButton = readonly [mark: Mark, text: string];
const MARKS: readonly MarkButton[] = [
  ["left", "Left"],
  ["right", "Right"],
  ["both", "Both"],
  ["clean", "Clean"],
];
const WHOLE_MARKS: readonly MarkButton[] = [
  ["both", "Rusty"],
  ["clean", "Clean"],
];
const HOLE_MARKS: readonly MarkButton[] = [
  ["both", "A hole"],
  ["clean", "No hole"],
];
const LOOK_FOR: Readonly<Record<string, string>> = {
  bubbles: "bubbles or rust in the paint",
  carpet: "rust or a soft place",
  open_hole: "a hole you can see: light or a finger goes through",
};
const SIDES: Record<Side, string> = { left: ", left", right: ", right", whole: "" };

/** Takes a press; null takes the mark away. */
type MarkTaker = (place: CustomerPlace, mark: Mark | null) => void;

/** Calls mark at each press, and done at the end. hole: the customer goes on to say where a
 *  hole is. */
export function askSeen(
  q: Question,
  car: CarFile,
  places: readonly CustomerPlace[],
  mark: MarkTaker,
  done: (hole: boolean) => void,
): HTMLElement {
  return el(
    "div",
    { class: "question" },
    heading(q.title),
    el("p", { class: "hint" }, q.hint),
    el(
      "p",
      { class: "hint" },
      "Left and right are as you sit in the car. One side alone says nothing about the other.",
    ),
    el(
      "div",
      { class: "places" },
      places.map((place) => placeRow(car, place, mark)),
    ),
    el(
      "p",
      {},
      button("I can see a hole: light or a finger goes through", () => done(true), { "data-hole": true }),
    ),
    button("Continue", () => done(false), { class: "go" }),
  );
}

function placeRow(car: CarFile, place: CustomerPlace, mark: MarkTaker): HTMLElement {
  const given = markOf(car, place);
  const marks =
    place.left?.length || place.right?.length ? MARKS : place.look === "open_hole" ? HOLE_MARKS : WHOLE_MARKS;
  const buttons = el("div", { class: "marks" });
  const state = el("span", { class: "place-state" });
  const draw = (now: Mark | null): void => {
    state.textContent = now ? "" : "not looked at";
    buttons.replaceChildren(
      ...marks.map(([id, text]) =>
        button(
          text,
          () => {
            const next = now === id ? null : id;
            mark(place, next);
            draw(next);
            buttons.querySelector<HTMLElement>(`[data-mark="${id}"]`)?.focus();
          },
          { "aria-pressed": String(now === id), "data-mark": id, class: "mark" },
        ),
      ),
    );
  };
  draw(given);
  return el(
    "fieldset",
    { class: "place", "data-place": place.id },
    el(
      "legend",
      {},
      place.name,
      " ",
      el("span", { class: "look-for" }, `(${LOOK_FOR[place.look] ?? place.look})`),
    ),
    buttons,
    state,
  );
}

/** Where a hole is: the rusty places first, the others behind a fold. Calls answer with the
 *  parts with a hole, those without, and those of which nothing is said any more. */
export function askHoles(
  q: Question,
  car: CarFile,
  places: readonly CustomerPlace[],
  answer: (yes: string[], no: string[], unsaid: string[]) => void,
): HTMLElement {
  const halves = holeHalves(car, places);
  const holed = new Set(halves.filter((h) => h.hole === "yes"));
  const rusty = halves.filter((h) => h.marked);
  const others = halves.filter((h) => !h.marked);
  const items = (list: readonly HoleHalf[]): string[] => list.flatMap((h) => h.items);
  const go = button(
    "Continue",
    () =>
      answer(
        items([...holed]),
        items(rusty.filter((h) => !holed.has(h))),
        items(others.filter((h) => !holed.has(h))),
      ),
    { class: "go" },
  );
  const ready = (): void => {
    go.hidden = holed.size === 0;
  };
  const toggle = (half: HoleHalf): HTMLButtonElement => {
    const node: HTMLButtonElement = button(
      half.name + SIDES[half.side],
      () => {
        if (holed.has(half)) holed.delete(half);
        else holed.add(half);
        node.setAttribute("aria-pressed", String(holed.has(half)));
        ready();
      },
      { class: "answer mark", "aria-pressed": String(holed.has(half)) },
    );
    return node;
  };
  ready();
  const none = (): void => answer([], items(rusty), items(others));
  const elsewhere =
    others.length > 0 &&
    el(
      "details",
      { open: rusty.length === 0 || others.some((h) => holed.has(h)) },
      el("summary", {}, rusty.length ? "A hole in another part" : "Choose where"),
      el("div", { class: "answers short", role: "group", "aria-label": "Other parts" }, others.map(toggle)),
    );
  return el(
    "div",
    { class: "question" },
    heading(q.title),
    el("p", { class: "hint" }, q.hint),
    el(
      "div",
      { class: "answers", role: "group", "aria-labelledby": "question-title" },
      rusty.map(toggle),
      rusty.length === 0 && elsewhere,
      button("No hole that I can see", none, { class: "answer", "data-answer": "none" }),
      button("Not sure", () => answer([], [], items(halves)), { class: "answer", "data-answer": "not_sure" }),
    ),
    rusty.length > 0 && elsewhere,
    go,
  );
}
