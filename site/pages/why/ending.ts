// The end of the talk: what follows from it, what the next stage costs, and the
// two ways on. Figures and cautions are the engine's own sentences.

import { button, el } from "../shared/dom.ts";
import { isDone } from "../shared/thiscar/gather.ts";
import { begun } from "../shared/thiscar/record.ts";
import { progress } from "./sums.ts";
import { stageLine } from "./widths.ts";

/** What must be known before that stage is agreed; the dangers of the work stand
 *  in the letter, with the price of each of its steps. */
const BEFORE_AGREEING = ["strip_first", "rights", "numbers"];

/** The stage with its price, and what it leaves in the customer's hand. */
export function nextStage(range) {
  const stage = range?.rows?.[0]?.stage;
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

const SHEETS = {
  whole: "One or two sheets. Nothing on them is to be signed.",
  working: "Some sums are still being worked out: what is missing says so on the paper.",
  gaps: "Something could not be worked out: the paper says what.",
};

export class Ending {
  id = "end";
  needs = "worth";
  node = el("div", { class: "ending" });
  #said = el("div", {});
  #note = el("p", { class: "hint print-note" });
  #back = el("a", { class: "big-link", href: "../survey/", "data-key": "this-car" }, "Back to this car");
  #host;

  /** host: hand() giving {car}, state(), address() of "This car" */
  constructor(host) {
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

  get stripped() {
    return begun(this.#host.hand()?.car ?? {}, "survey");
  }
  get title() {
    return this.stripped ? "That is what stripping first was for" : "So that is why you strip first";
  }
  get line() {
    return this.stripped
      ? "What has been seen is out of the guess. What stays: closed boxes, the work, prices."
      : "Rust keeps company, and paint hides it.";
  }

  draw(replies) {
    const worth = replies.get("worth");
    const done = isDone(worth);
    const reached = this.stripped ? replies.get("before_after")?.headline?.join(" ") : null;
    const text = reached || (done && stageLine(worth));
    this.#said.replaceChildren(
      ...[
        !text && !done && worth?.kind !== "refused" && progress(worth),
        text && el("p", { class: "tells" }, text),
        this.stripped ? null : nextStage(replies.get("range")),
      ].filter(Boolean),
    );
    this.#note.textContent = SHEETS[this.#host.state()];
    this.#back.href = this.#host.address();
  }
}
