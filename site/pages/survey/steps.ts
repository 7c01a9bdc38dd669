// The views of a car as steps: plain links, each with what is done there.

import { el } from "../shared/dom.ts";
import type { TallyReply } from "../shared/replies.ts";

/** The views by the names that their addresses have. */
export const NAMES = {
  answers: "Answers",
  walk: "Walk-round",
  survey: "Survey",
  opening: "Opening up",
  todo: "What to do",
  stages: "Before and after",
  papers: "Papers",
  paper: "Survey sheet",
};
export type ViewName = keyof typeof NAMES;

export const isView = (name: string): name is ViewName => Object.hasOwn(NAMES, name);

/** The name of a view in the words of the shop. */
export const nameOf = (view: ViewName, words: "us" | "uk"): string =>
  view === "walk" && words === "us" ? "Walk-around" : NAMES[view];

/** The survey sheet is one of the papers, so it has no step of its own. */
const STEPS: readonly ViewName[] = ["answers", "walk", "survey", "opening", "todo", "stages", "papers"];

/** What is done at a step; blank while the engine has not counted. */
function countOf(view: ViewName, tally: TallyReply | null): string {
  switch (view) {
    case "answers":
      return tally?.answers_line ?? "";
    case "walk":
      return tally?.walk_round.line ?? "";
    case "survey":
      return tally?.survey.line ?? "";
    case "opening":
      return tally?.opening_up.line ?? "";
    case "todo":
      return tally?.to_do.line ?? "";
    default:
      return "";
  }
}

/** now: the view that is shown. */
export function stepLinks(now: string, tally: TallyReply | null, words: "us" | "uk"): HTMLElement {
  const current = now === "paper" ? "papers" : now;
  return el(
    "ul",
    { class: "steps" },
    STEPS.map((view) =>
      el(
        "li",
        {},
        el(
          "a",
          { href: `#${view}`, "aria-current": view === current ? "page" : null },
          countOf(view, tally) || nameOf(view, words),
        ),
      ),
    ),
  );
}
