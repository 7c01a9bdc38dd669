// One figure that the jobs teach, and the tick that publishes how the ranges came out.

import { el } from "../shared/dom.ts";
import type { LearntLine } from "../shared/replies.ts";
import { tick } from "./fields.ts";

export interface Ticking {
  ticked: boolean;
  /** It can only be ticked where the jobs were scored as they are now. */
  fresh: boolean;
  changed(on: boolean): void;
}

/** inUse: the rates on the site have a figure that was learnt before. */
export function learntLine(l: LearntLine, inUse: boolean, { ticked, fresh, changed }: Ticking): HTMLElement {
  const now = `in use ${l.in_use_text}, ${inUse ? "learnt before" : "the starting figure"}`;
  return el(
    "li",
    { class: "taught-line" },
    el("h3", {}, l.name),
    el("p", {}, l.text),
    el(
      "p",
      { class: "taught-figures" },
      `${l.jobs_text} · ${l.share_text} · ${now}`,
      l.offered && [" · offered ", el("strong", {}, l.factor_text)],
    ),
    l.offered
      ? el(
          "div",
          { class: "no-paper" },
          tick(
            ["Use it", el("span", { class: "visually-hidden" }, `: ${l.name}, ${l.factor_text}`)],
            ticked,
            changed,
            { "data-tick": l.id, disabled: !fresh },
          ),
        )
      : el("p", { class: "hint" }, "Too few jobs to offer a figure."),
  );
}

/** possible: enough jobs are scored. */
export function recordTick(possible: boolean, { ticked, fresh, changed }: Ticking): HTMLElement {
  return possible
    ? tick("Show how our ranges came out on the customer's page", ticked, changed, {
        "data-tick": "record",
        disabled: !fresh,
      })
    : el("p", {}, "How the ranges came out can be published on the customer's page from 10 scored jobs on.");
}
