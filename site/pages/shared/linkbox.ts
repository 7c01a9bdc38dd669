// A link to a car, to be copied.

import { button, el, freshId } from "./dom.ts";

export interface LinkBoxHost {
  /** What the link holds, and who can read it. */
  hint: string;
  say(text: string): void;
  /** Takes the box away. */
  erase(): void;
}

/** The link is marked as soon as its area has the focus. */
export function linkBox(address: string, { hint, say, erase }: LinkBoxHost): HTMLElement {
  const id = freshId("link");
  const area: HTMLTextAreaElement = el("textarea", {
    id,
    rows: 4,
    readonly: true,
    spellcheck: "false",
    on: { focus: () => area.select() },
  });
  area.value = address;
  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(address);
      say("The link is copied.");
    } catch {
      area.focus();
      say("The link is marked: copy it with your browser.");
    }
  };
  return el(
    "div",
    { class: "link-box" },
    el("label", { for: id }, "The link"),
    area,
    el("p", { class: "hint" }, hint),
    button("Copy the link", copy),
    button("Erase the link here", erase, { class: "quiet" }),
  );
}
