// The six words, always in the same place, and the four acts under them. A tap
// leaves the keyboard where it is; a press by keyboard stays on the button.

import { button, el } from "../shared/dom.ts";

const stayPut = { pointerdown: (event) => event.preventDefault() };

/** host: act(name, value) does what the key of that name does. */
export function wordButtons(conditions, host) {
  const word = (c) =>
    el(
      "button",
      {
        type: "button",
        class: "word",
        "data-word": c.id,
        on: { ...stayPut, click: () => host.act("condition", c) },
      },
      el("span", { class: "word-key", "aria-hidden": "true" }, c.key.toUpperCase()),
      el("span", { class: "word-name" }, c.name),
    );
  const acts = [
    ["Could not see", "unseen", "C"],
    ["Found…", "finding", "F"],
    ["Undo", "undo", ""],
    ["Note", "panel", ""],
  ];
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
      acts.map(([text, name]) => {
        const node = button(text, () => host.act(name), { "data-act": name });
        if (name !== "panel") node.addEventListener("pointerdown", stayPut.pointerdown);
        return node;
      }),
    ),
  );
}

/** Marks the word that stands for the part in hand, in shape as well. */
export function markWord(block, condition, unseen) {
  for (const node of block.querySelectorAll("[data-word]"))
    node.setAttribute("aria-pressed", String(node.dataset.word === condition));
  block.querySelector('[data-act="unseen"]').setAttribute("aria-pressed", String(Boolean(unseen)));
}
