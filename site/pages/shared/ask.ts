// One question with its answers as buttons that go on to the next. The answer given before
// is marked in words, because colour alone says nothing.

import type { Made } from "./carfile.ts";
import { button, el, freshId } from "./dom.ts";
import { sideView, underTheDoor } from "./drawing.ts";
import { messageOf } from "./files.ts";
import type { Answer, Question } from "./question.ts";

/** Called with the id and the text of the answer that was pressed. */
export type AnswerTaker = (id: string, text: string) => unknown;

/** A question with its answers. chosen: the id of the answer given before, or null. */
export function askButtons(
  q: Question & { answers: readonly Answer[] },
  chosen: string | null,
  answer: AnswerTaker,
): HTMLElement {
  const hintId = q.hint ? freshId("hint") : null;
  return el(
    "div",
    { class: "question" },
    heading(q.title),
    q.hint && el("p", { id: hintId, class: "hint" }, q.hint),
    q.drawing === "under_the_door" && underTheDoor(),
    answerButtons(q, chosen, answer, hintId),
  );
}

/** The answers of a question as one group. hintId: of what describes them, if anything does. */
export function answerButtons(
  q: Question & { answers: readonly Answer[] },
  chosen: string | null,
  answer: AnswerTaker,
  hintId: string | null = null,
): HTMLElement {
  return el(
    "div",
    {
      class: q.answers.some((a) => a.drawing) ? "answers drawn" : "answers",
      role: "group",
      "aria-labelledby": "question-title",
      "aria-describedby": hintId,
    },
    q.answers.map((a) => answerButton(a, a.id === chosen, answer)),
  );
}

export function heading(text: string): HTMLHeadingElement {
  return el("h1", { id: "question-title", tabindex: "-1" }, text);
}

/** given: this is the answer given before. */
export function answerButton(a: Answer, given: boolean, answer: AnswerTaker): HTMLButtonElement {
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

interface NumberQuestion<T> {
  label: string;
  hint?: string;
  value?: number | string | undefined;
  /** The most characters that may be typed. */
  digits: number;
  /** Gives the value of a text, or throws with the sentence to show. */
  check(text: string): T;
  done(value: T, text: string): unknown;
  /** Words may be typed too. */
  words?: boolean;
}

/** A number to type, with its error beside it. */
export function askNumber<T>(question: NumberQuestion<T>): HTMLFormElement {
  const { label, hint, value, digits, check, done, words = false } = question;
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
  const submit = (event: SubmitEvent): void => {
    event.preventDefault();
    try {
      done(check(input.value.trim()), input.value.trim());
    } catch (problem) {
      showError(input, error, messageOf(problem));
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

/** Shows what is wrong with an input in the element beside it, and goes back to the input. */
export function showError(input: HTMLElement, error: HTMLElement, text: string): void {
  error.replaceChildren(el("span", { class: "visually-hidden" }, "Error: "), text);
  error.hidden = false;
  input.setAttribute("aria-invalid", "true");
  input.focus();
}

const DECADES: readonly Answer[] = [1930, 1940, 1950, 1960, 1970, 1980].map((d) => ({
  id: String(d),
  text: `${d}s`,
}));

/** The decades for somebody who does not know the year. */
export function askDecade(made: Made | undefined, answer: AnswerTaker): HTMLElement {
  const chosen = made?.not_sure ? "not_sure" : made?.decade ? String(made.decade) : null;
  return el(
    "div",
    {},
    el("p", { class: "or" }, "or the decade"),
    el(
      "div",
      { class: "answers short", role: "group", "aria-label": "The decade it was made in" },
      [...DECADES, { id: "not_sure", text: "Not sure" }].map((a) => answerButton(a, a.id === chosen, answer)),
    ),
  );
}
