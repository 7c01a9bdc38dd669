// The end of the talk: what follows from it, what the next stage costs, and the two ways
// on. Figures and cautions are the engine's own sentences.

import type { CarFile } from "../shared/carfile.ts";
import { button, el } from "../shared/dom.ts";
import type { RangeReply } from "../shared/replies.ts";
import { type Replies, rangeOf } from "../shared/thiscar/gather.ts";
import { begun } from "../shared/thiscar/record.ts";
import { answer, type Completeness, doneAnswer, progress } from "./sums.ts";
import type { TalkPage } from "./talk.ts";
import { stageLine } from "./widths.ts";

/** What a customer must know before agreeing to that stage. The dangers of the work are in
 *  the letter, with the price of each of its steps. */
const BEFORE_AGREEING = ["strip_first", "rights", "numbers"];

/** The next stage with its price, and what the customer has after it. */
export function nextStage(range: RangeReply | null): HTMLElement | null {
  const stage = range?.rows[0]?.stage;
  if (!stage) return null;
  return el(
    "div",
    { class: "next-stage" },
    el(
      "p",
      { class: "tells" },
      el("strong", {}, `${stage.name}: ${stage.price_text}. `),
      `${stage.get_line} ${stage.stop_line}`,
    ),
    el("p", { class: "hint" }, stage.fixed_line),
    range.cautions
      .filter((c) => BEFORE_AGREEING.includes(c.id))
      .map((c) => el("p", { class: "caution", "data-caution": c.id }, c.text)),
  );
}

const SHEETS: Record<Completeness, string> = {
  whole: "One or two sheets. Nothing on them is to be signed.",
  working: "Some sums are still being worked out: what is missing says so on the paper.",
  gaps: "Something could not be worked out: the paper says what.",
};

export interface EndingHost {
  car(): CarFile;
  completeness(): Completeness;
  /** The address of "This car" for this car. */
  surveyAddress(): string;
}

export class Ending implements TalkPage {
  readonly id = "end";
  readonly needs = "worth";
  readonly node = el("div", { class: "ending" });
  #said = el("div", {});
  #note = el("p", { class: "hint print-note" });
  #back = el("a", { class: "big-link", href: "../survey/", "data-key": "this-car" }, "Back to this car");
  #host: EndingHost;

  constructor(host: EndingHost) {
    this.#host = host;
    this.node.append(
      this.#said,
      el(
        "div",
        { class: "big-buttons" },
        button("Print what we talked about", () => print(), { class: "big go", "data-key": "print" }),
        this.#back,
      ),
      this.#note,
    );
  }

  get #stripped(): boolean {
    return begun(this.#host.car(), "survey");
  }

  get title(): string {
    return this.#stripped ? "That is what stripping first was for" : "So that is why you strip first";
  }

  get line(): string {
    return this.#stripped
      ? "What has been seen is out of the guess. What stays: closed boxes, the work, prices."
      : "Rust keeps company, and paint hides it.";
  }

  draw(replies: Replies): void {
    const worth = replies.get("worth");
    const done = doneAnswer(replies, "worth");
    const reached = this.#stripped ? answer(replies, "before_after")?.headline.join(" ") : "";
    const text = reached || (done && stageLine(done));
    const working = text || done ? null : progress(worth);
    this.#said.replaceChildren(
      ...[
        working,
        text ? el("p", { class: "tells" }, text) : null,
        this.#stripped ? null : nextStage(rangeOf(replies)),
      ].filter((node) => node !== null),
    );
    this.#note.textContent = SHEETS[this.#host.completeness()];
    this.#back.href = this.#host.surveyAddress();
  }
}
