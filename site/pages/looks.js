// Question 9: eight places, each left, right, both or clean. Pressing a given
// mark again takes it back to "not looked at".

import { button, el } from "./dom.js";
import { heading } from "./ask.js";
import { markOf, markedHalves } from "./car.js";

const MARKS = [["left", "Left"], ["right", "Right"], ["both", "Both"], ["clean", "Clean"]];
const WHOLE_MARKS = [["both", "Rusty"], ["clean", "Clean"]];
const HOLE_MARKS = [["both", "A hole"], ["clean", "No hole"]];
const LOOK_FOR = { bubbles: "bubbles or rust in the paint", carpet: "rust or a soft place", open_hole: "a hole" };
const SIDES = { left: ", left", right: ", right", whole: "" };

/** mark(place, mark) is called for each press, done() at the end. */
export function askSeen(q, car, places, mark, done) {
  return el("div", { class: "question" }, heading(q.title), el("p", { class: "hint" }, q.hint),
    el("p", { class: "hint" }, "Left and right are as you sit in the car. One side alone says nothing about the other."),
    el("div", { class: "places" }, places.map((place) => placeRow(car, place, mark))),
    button("Continue", done, { class: "go" }));
}

function placeRow(car, place, mark) {
  const given = markOf(car, place);
  const marks = place.left?.length || place.right?.length ? MARKS : place.look === "open_hole" ? HOLE_MARKS : WHOLE_MARKS;
  const buttons = el("div", { class: "marks" });
  const state = el("span", { class: "place-state" });
  const draw = (now) => {
    state.textContent = now ? "" : "not looked at";
    buttons.replaceChildren(...marks.map(([id, text]) => button(text, () => {
      const next = now === id ? null : id;
      mark(place, next);
      draw(next);
      buttons.querySelector(`[data-mark="${id}"]`).focus();
    }, { "aria-pressed": String(now === id), "data-mark": id, class: "mark" })));
  };
  draw(given);
  return el("fieldset", { class: "place", "data-place": place.id },
    el("legend", {}, place.name, " ", el("span", { class: "look-for" }, `(${LOOK_FOR[place.look] ?? place.look})`)), buttons, state);
}

/** Which of the marked places is a hole. answer(items with a hole, all items) */
export function askHoles(q, car, places, answer) {
  const halves = markedHalves(car, places);
  const all = halves.flatMap((h) => h.items);
  const holed = new Set(halves.filter((h) => h.hole === "yes"));
  const go = button("Continue", () => answer([...holed].flatMap((h) => h.items), all), { class: "go", hidden: holed.size === 0 });
  const toggle = (half, node) => {
    if (holed.has(half)) holed.delete(half); else holed.add(half);
    node.setAttribute("aria-pressed", String(holed.has(half)));
    go.hidden = holed.size === 0;
  };
  return el("div", { class: "question" }, heading(q.title),
    el("div", { class: "answers", role: "group", "aria-labelledby": "question-title" },
      halves.map((half) => {
        const node = button(half.name + SIDES[half.side], () => toggle(half, node), { class: "answer mark", "aria-pressed": String(holed.has(half)) });
        return node;
      }),
      button("None of them", () => answer([], all), { class: "answer", "data-answer": "none" }),
      button("Not sure", () => answer(null, all), { class: "answer", "data-answer": "not_sure" })),
    go);
}
