// The first screen: what the page is for in one sentence, then the first question at once.

import { answerButtons } from "../shared/ask.ts";
import { el } from "../shared/dom.ts";
import { countOf } from "../shared/frame.ts";
import type { Choice } from "../shared/question.ts";

/** chosen: the answer given before, or null. ways: what else one can begin with. */
export function firstScreen(
  q: Choice,
  chosen: string | null,
  answer: (id: string, text: string) => unknown,
  ways: HTMLElement,
): HTMLElement {
  return el(
    "div",
    { class: "question" },
    el(
      "div",
      { class: "pitch" },
      el("h1", {}, "What will the bodywork on your car cost?"),
      el(
        "p",
        { class: "pitch-lead" },
        "Answer five short questions and you get an honest range now, before the paint comes off. Once the metal is bare, you get a narrower one.",
      ),
    ),
    el("p", { class: "first-count" }, countOf(q.number)),
    el("h2", { id: "question-title", tabindex: "-1", class: "first-title" }, q.title),
    el("div", { class: "first-grid" }, answerButtons(q, chosen, answer), ways),
    el(
      "section",
      { class: "sec", "aria-labelledby": "get-title" },
      el("h2", { id: "get-title" }, "What you get"),
      el(
        "ul",
        { class: "sec-in trust" },
        TRUST.map(([head, text]) => el("li", {}, el("strong", {}, head), " ", text)),
      ),
    ),
  );
}

const TRUST: readonly (readonly [head: string, text: string])[] = [
  [
    "We never give one figure.",
    "Until the metal is bare it would be a guess, so you get two ends and the odds between them.",
  ],
  ["Nothing you enter is sent to us.", "It is worked out on this device."],
  ["Nothing is agreed here.", "A cost range is not an estimate, not a quotation and not a ceiling."],
];
