// What makes the range wide, the largest share first, and what could make it worse.

import { el, list } from "../shared/dom.ts";
import type { EngineReply, WideReply } from "../shared/replies.ts";
import { isRough, type Replies } from "../shared/thiscar/gather.ts";
import { type BarRow, barList } from "./bars.ts";
import { doneAnswer, missing, type Need, progress } from "./sums.ts";
import type { TalkPage } from "./talk.ts";

export interface WidestHost {
  again(name: Need): void;
}

export class Widest implements TalkPage {
  readonly id = "wide";
  readonly title = "What makes it wide";
  readonly line = "The width taken apart, the largest piece first.";
  readonly needs = "wide";
  readonly node = el("div", { class: "widest" });
  #host: WidestHost;

  constructor(host: WidestHost) {
    this.#host = host;
  }

  draw(replies: Replies): void {
    const open = this.node.querySelector("details")?.open ?? false;
    this.node.replaceChildren(...shares(replies.get("wide"), () => this.#host.again("wide")));
    const done = doneAnswer(replies, "wide");
    if (!done) return;
    this.node.append(
      el(
        "details",
        { class: "worse-fold", open },
        el("summary", {}, "What could make it worse"),
        worse(done),
      ),
      el(
        "details",
        {},
        el("summary", {}, "How the shares are worked out"),
        el("p", { class: "hint" }, done.shares_note),
      ),
    );
  }
}

const named = (text: string, name: string) => [el("strong", { class: "share" }, text), ` ${name}`];

/** The shares of the width as words and bars, with "Everything else". */
export function shares(reply: EngineReply | undefined, again: (() => void) | null): HTMLElement[] {
  const gap = reply ? missing(reply, again) : null;
  if (gap) return [gap];
  if (reply?.kind !== "wide" || isRough(reply)) return [progress(reply)].filter((node) => node !== null);
  const rows = reply.shares.map((s): BarRow => [named(s.share_text, s.name), s.share, 1, s.why]);
  const [name = "", text = ""] = reply.rest_text.split(": ");
  if (reply.rest > 0) rows.push([named(text, name), reply.rest, 1]);
  return [
    barList(rows, { ordered: true }),
    el("p", { class: "hint" }, "Together they are the whole width, 100 %; each is rounded."),
  ];
}

/** The parts that could make it worse: how likely, how much, how to find out. */
export function worse(reply: WideReply): HTMLElement {
  if (reply.worse.length === 0) return el("p", {}, "No single place stands out.");
  return el(
    "div",
    {},
    el(
      "ol",
      { class: "worse" },
      reply.worse.map((p) =>
        el("li", {}, el("strong", {}, p.name), list([p.likely_line, p.cost_line, p.find_line])),
      ),
    ),
    el("p", { class: "hint" }, reply.worse_note),
  );
}
