// The boxes of the page with a file open, and their order.

import { byId, el } from "../shared/dom.ts";
import type { Frame } from "../shared/frame.ts";
import { ActBox } from "./actbox.ts";
import type { Learning } from "./learning.ts";

const STEPS = [
  ["outcome", "How our ranges have come out"],
  ["jobs", "The jobs"],
  ["causes", "Why jobs came to more"],
  ["learning", "What the jobs teach"],
  ["keep-title", "Keep it"],
] as const;

/** The boxes. Each is drawn by itself. */
export interface Parts {
  head: HTMLElement;
  buttons: HTMLElement;
  said: HTMLElement;
  act: ActBox;
  waiting: HTMLElement;
  outcome: HTMLElement;
  jobs: HTMLElement;
  causes: HTMLElement;
  learning: Learning;
  figures: HTMLElement;
}

export interface PartsHost {
  frame: Frame;
  learning: Learning;
  /** Draws the cars that wait, which depend on the open act. */
  drawWaiting(): void;
}

export function newParts({ frame, learning, drawWaiting }: PartsHost): Parts {
  const box = (name: string) => el("div", { class: name });
  const said = el("p", { class: "last-said", role: "status" });
  const buttons = box("with-buttons no-paper");
  const act = new ActBox({
    frame,
    opened: () => {
      said.textContent = "";
      drawWaiting();
    },
    closed: () => {
      drawWaiting();
      buttons.querySelector("button")?.focus();
    },
  });
  return {
    head: box("jobs-head"),
    buttons,
    said,
    act,
    waiting: box("no-paper"),
    outcome: box("part"),
    jobs: box("part"),
    causes: box("part"),
    learning,
    figures: box("part"),
  };
}

/** Puts the boxes into the page. */
export function layOut(parts: Parts, scoring: HTMLElement, panel: HTMLElement): void {
  byId("steps").replaceChildren(
    el(
      "ul",
      { class: "jumps" },
      STEPS.map(([id, text]) => el("li", {}, el("a", { href: `#${id}` }, text))),
    ),
  );
  byId("screen").replaceChildren(
    parts.head,
    parts.buttons,
    parts.said,
    parts.act.node,
    parts.waiting,
    scoring,
    parts.outcome,
    parts.jobs,
    parts.causes,
    parts.learning.node,
    parts.figures,
  );
  byId("kept").replaceChildren(panel);
}
