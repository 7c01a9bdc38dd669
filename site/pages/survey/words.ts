// The six words, always in the same place, and the four acts below them. A tap leaves the
// keyboard focus where it is; a press with the keyboard stays on the button.

import type { Condition } from "../shared/carfile.ts";
import { button, el } from "../shared/dom.ts";
import type { SheetCondition } from "../shared/replies.ts";
import type { Act } from "./keys.ts";

const stayPut = (event: Event) => event.preventDefault();

const ACTS: readonly (readonly [text: string, act: "unseen" | "finding" | "undo" | "panel"])[] = [
  ["Could not see", "unseen"],
  ["Found…", "finding"],
  ["Undo", "undo"],
  ["Note", "panel"],
];

/** act does what the key of that act does. */
export function wordButtons(
  conditions: readonly SheetCondition[],
  act: (...act: Act) => unknown,
): HTMLElement {
  const word = (c: SheetCondition) =>
    el(
      "button",
      {
        type: "button",
        class: "word",
        "data-word": c.id,
        on: { pointerdown: stayPut, click: () => act("condition", c) },
      },
      el("span", { class: "word-key", "aria-hidden": "true" }, c.key.toUpperCase()),
      el("span", { class: "word-name" }, c.name),
    );
  return el(
    "div",
    { class: "words-block" },
    el(
      "div",
      { class: "words-six", role: "group", "aria-label": "Condition of the part in hand" },
      conditions.map(word),
    ),
    el(
      "div",
      { class: "words-acts" },
      ACTS.map(([text, name]) => {
        const node = button(text, () => act(name), { "data-act": name });
        if (name !== "panel") node.addEventListener("pointerdown", stayPut);
        return node;
      }),
    ),
  );
}

/** Marks the word that is recorded for the current part, in shape as well as in colour. */
export function markWord(block: HTMLElement, condition: Condition | undefined, unseen: boolean): void {
  for (const node of block.querySelectorAll<HTMLElement>("[data-word]"))
    node.setAttribute("aria-pressed", String(node.dataset.word === condition));
  block.querySelector('[data-act="unseen"]')?.setAttribute("aria-pressed", String(unseen));
}
