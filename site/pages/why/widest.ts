// What makes the range wide, the largest first, and what could make it worse.

import { el, list } from "../shared/dom.ts";
import { isDone } from "../shared/thiscar/gather.ts";
import { barList } from "./bars.ts";
import { missing, progress } from "./sums.ts";

export class Widest {
  id = "wide";
  title = "What makes it wide";
  line = "The width taken apart, the largest piece first.";
  needs = "wide";
  node = el("div", { class: "widest" });
  #host;
  constructor(host) {
    this.#host = host;
  }

  draw(replies) {
    const reply = replies.get("wide");
    const open = this.node.querySelector("details")?.open ?? false;
    this.node.replaceChildren(...shares(reply, () => this.#host.again("wide")));
    if (!isDone(reply)) return;
    this.node.append(
      el(
        "details",
        { class: "worse-fold", open },
        el("summary", {}, "What could make it worse"),
        worse(reply),
      ),
      el(
        "details",
        {},
        el("summary", {}, "How the shares are worked out"),
        el("p", { class: "hint" }, reply.shares_note),
      ),
    );
  }
}

/** Shares of the width as words and bars, "Everything else" included. */
export function shares(reply, again) {
  const gap = reply ? missing(reply, again) : null;
  if (gap) return [gap];
  if (!isDone(reply)) return [progress(reply)];
  const rows = reply.shares.map((s) => [
    [el("strong", { class: "share" }, s.share_text), ` ${s.name}`],
    s.share,
    1,
    s.why,
  ]);
  const [name, text] = reply.rest_text.split(": ");
  if (reply.rest > 0) rows.push([[el("strong", { class: "share" }, text), ` ${name}`], reply.rest, 1]);
  return [
    barList(rows, { ordered: true }),
    el("p", { class: "hint" }, "Together they are the whole width, 100 %; each is rounded."),
  ];
}

/** The places that could make it worse: how likely, how much, how to find out. */
export function worse(reply) {
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
