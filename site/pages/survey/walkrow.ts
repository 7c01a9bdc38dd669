// One check of the walk-round: its text, its three answers, and how to make it.

import type { CheckResult, Look } from "../shared/carfile.ts";
import { button, el, freshId } from "../shared/dom.ts";
import type { WalkLine } from "../shared/replies.ts";
import { checkKey } from "../shared/thiscar/context.ts";

/** The answers with the texts of their buttons and their keys. */
export const RESULTS: readonly (readonly [result: CheckResult, text: string, key: string])[] = [
  ["yes", "Yes", "y"],
  ["no", "No", "n"],
  ["could_not", "Could not", "c"],
];
export const SAID: Record<CheckResult, string> = { yes: "yes", no: "no", could_not: "could not look" };

export class WalkRow {
  readonly key: string;
  readonly node: HTMLLIElement;
  #marks: HTMLElement;
  #buttons: HTMLButtonElement[];
  #more = el("div", { class: "look-more", hidden: true });

  /** theirs: the customer's result of this check, or null. answer is called with the result
   *  that somebody pressed. */
  constructor(
    readonly line: WalkLine,
    theirs: Look | null,
    answer: (row: WalkRow, result: CheckResult) => void,
  ) {
    this.key = checkKey(line);
    const id = freshId("look");
    this.#buttons = RESULTS.map(([result, text]) =>
      button(text, () => answer(this, result), { class: "mark", "data-result": result, tabindex: "-1" }),
    );
    this.#marks = el("div", { class: "marks", role: "group", "aria-labelledby": id }, this.#buttons);
    this.node = el(
      "li",
      { class: line.not_here ? "look is-grey" : "look", "data-look": this.key },
      el("p", { class: "look-text", id }, line.text),
      theirs && el("p", { class: "look-theirs" }, `Looked by the customer: ${SAID[theirs.result]}`),
      (line.not_here || line.beside_lead) &&
        el("p", { class: "look-why" }, line.not_here || line.beside_lead),
      !line.not_here && this.#marks,
      this.#more,
    );
  }

  /** Whether the check can be made on this body. */
  get isHere(): boolean {
    return !this.line.not_here;
  }

  mark(result: CheckResult | null): void {
    for (const node of this.#buttons)
      node.setAttribute("aria-pressed", String(node.dataset.result === result));
  }

  /** The row becomes the current one, or no longer is. */
  setCurrent(on: boolean): void {
    this.node.classList.toggle("in-hand", on);
    this.#more.hidden = !on;
    for (const node of this.#buttons) node.tabIndex = on ? 0 : -1;
    if (!on) return;
    const { how, needs, caution } = this.line;
    const texts = [how, needs && `Needs: ${needs}`].filter(Boolean);
    this.#more.replaceChildren(
      ...texts.map((t) => el("p", {}, t)),
      ...(caution ? [el("p", { class: "caution" }, caution)] : []),
    );
  }

  focus(options?: FocusOptions): void {
    this.#buttons[0]?.focus(options);
  }

  /** Moves the focus to the answer on the right (1) or on the left (-1). */
  focusBeside(by: number): void {
    const at = this.#buttons.findIndex((node) => node.matches(":focus"));
    this.#buttons[Math.min(this.#buttons.length - 1, Math.max(0, at + by))]?.focus();
  }

  setFault(text: string | null): void {
    this.node.classList.toggle("has-fault", text !== null);
    if (text === null) for (const old of this.node.querySelectorAll(".look-fault")) old.remove();
    else this.node.append(el("p", { class: "error look-fault" }, `Does not count: ${text}`));
  }
}
