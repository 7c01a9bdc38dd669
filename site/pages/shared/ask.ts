// One question with its answers as buttons that move on. The answer given
// before is marked in words, since colour alone says nothing.

import { button, el, freshId } from "./dom.ts";
import { sideView, underTheDoor } from "./drawing.ts";

/** q: a question of questions.js. Returns the node; answer(id, text) is called
 *  when a button is pressed. */
export function askButtons(q, chosen, answer) {
  const hintId = q.hint ? freshId("hint") : null;
  return el(
    "div",
    { class: "question" },
    heading(q.title),
    q.hint && el("p", { id: hintId, class: "hint" }, q.hint),
    q.drawing === "under_the_door" && underTheDoor(),
    el(
      "div",
      {
        class: q.answers.some((a) => a.drawing) ? "answers drawn" : "answers",
        role: "group",
        "aria-labelledby": "question-title",
        "aria-describedby": hintId,
      },
      q.answers.map((a) => answerButton(a, a.id === chosen, answer)),
    ),
  );
}

export function heading(text) {
  return el("h1", { id: "question-title", tabindex: "-1" }, text);
}

export function answerButton(a, given, answer) {
  return button(
    [
      a.drawing && sideView(a.drawing),
      el("span", { class: "answer-text" }, a.text, a.more && el("span", { class: "more" }, a.more)),
      given && el("span", { class: "given" }, "your answer"),
    ],
    () => answer(a.id, a.text),
    { class: given ? "answer is-given" : "answer", "data-answer": a.id },
  );
}

/** A number to type, with its error at the entry. check(text) gives the value
 *  or throws with the sentence to show. words: words may be typed too. */
export function askNumber({ label, hint, value, digits, check, done, words = false }) {
  const id = freshId("entry");
  const error = el("p", { id: `${id}-error`, class: "error", hidden: true });
  const input = el("input", {
    id,
    type: "text",
    inputmode: words ? "text" : "numeric",
    autocomplete: "off",
    maxlength: digits,
    value: value ?? "",
    "aria-describedby": `${id}-hint ${id}-error`,
  });
  const submit = (event) => {
    event.preventDefault();
    try {
      done(check(input.value.trim()), input.value.trim());
    } catch (problem) {
      showError(input, error, problem.message);
    }
  };
  return el(
    "form",
    { class: "typed", novalidate: true, on: { submit } },
    el("label", { for: id }, label),
    hint && el("p", { id: `${id}-hint`, class: "hint" }, hint),
    error,
    input,
    el("button", { type: "submit", class: "go" }, "Continue"),
  );
}

export function showError(input, error, text) {
  error.replaceChildren(el("span", { class: "visually-hidden" }, "Error: "), text);
  error.hidden = false;
  input.setAttribute("aria-invalid", "true");
  input.focus();
}

/** The decades for somebody who knows no year. */
export function askDecade(made, answer) {
  const decades = [1930, 1940, 1950, 1960, 1970, 1980].map((d) => ({ id: String(d), text: `${d}s` }));
  const chosen = made?.not_sure ? "not_sure" : made?.decade ? String(made.decade) : null;
  return el(
    "div",
    {},
    el("p", { class: "or" }, "or the decade"),
    el(
      "div",
      { class: "answers short", role: "group", "aria-label": "The decade it was made in" },
      [...decades, { id: "not_sure", text: "Not sure" }].map((a) => answerButton(a, a.id === chosen, answer)),
    ),
  );
}
