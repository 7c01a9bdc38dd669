// What is said about saving on this device. The pages of the shop each have their own words for
// what they save; the rest is the same on every page.

import { button, el } from "./dom.ts";

export const FULL =
  "Could not keep this on the device (its storage is full or switched off). Save a file now.";
export const NOT_ERASED = "The device would not erase it. Clear this site's data in the browser.";

/** What the question says that comes before something else on this device is replaced. */
export interface ReplaceWords {
  /** Names the question for a screen reader. */
  label: string;
  question: string;
  yes: string;
  no: string;
}

export const REPLACE_CAR: ReplaceWords = {
  label: "Replace the kept car?",
  question: "Another car is kept on this device already.",
  yes: "Put this one in its place",
  no: "Leave the other one",
};

/** What a page says in its own words. */
export interface SaveWords {
  title: string;
  /** The line that says whether this tab saves. last: the time of the last saving. */
  line(on: boolean, last: string): string;
  /** What is said below the buttons after each saving, and after going on with what was found:
   *  for a page whose line does not say when. */
  saved?(time: string): string;
  found?(time: string): string;
  replace: ReplaceWords;
  /** Another tab has erased what this tab saved. */
  erasedElsewhere: string;
  /** Another tab has saved at `when`; this tab saved last at `last`. */
  newer(when: string, last: string): string;
  takeNewer: string;
  keepThis: string;
  /** It is erased from this device. */
  erased: string;
  /** A file was saved. */
  filed: string;
}

/** Asks before something else on this device is replaced. */
export function replaceQuestion(words: ReplaceWords, yes: () => unknown, no: () => unknown): HTMLElement {
  return el(
    "div",
    { class: "band", role: "group", "aria-label": words.label },
    el("p", {}, words.question),
    el("div", { class: "band-buttons" }, button(words.yes, yes), button(words.no, no)),
  );
}
