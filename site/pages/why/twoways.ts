// Same odds, two ways: each panel on its own luck, and as cars really rust.

import { el } from "../shared/dom.ts";
import { dotRow, levelsOf } from "../shared/dots.ts";
import { begun } from "../shared/thiscar/record.ts";
import { missing } from "./sums.ts";

/** Rows of dots on one axis, each with its name and its range in words. */
export function rowsOf(reply, heading = "h2") {
  const levels = levelsOf(reply.rows);
  return el(
    "div",
    { class: "why-rows" },
    reply.rows.map((row) =>
      el(
        "div",
        { class: "stage-row" },
        el(heading, {}, row.label),
        dotRow({ ...row, dots_text: row.sentence }, reply.axis, levels),
      ),
    ),
  );
}

const DOTS = "Each dot is one car in twenty: 2 below, 16 between, 2 above.";

export class TwoWays {
  id = "odds";
  title = "Same odds, two ways";
  needs = "two_ways";
  node = el("div", { class: "two-ways" });
  #host;

  /** host: again(name), hand() giving {car} */
  constructor(host) {
    this.#host = host;
  }

  /** Of a car whose metal has been seen, company makes less and less. */
  get line() {
    return begun(this.#host.hand().car, "survey")
      ? "Rust keeps company. The rows say how much of the width that still makes."
      : "Rust keeps company. That is where the width comes from.";
  }

  draw(replies) {
    const reply = replies.get("two_ways");
    this.node.replaceChildren(...twoWays(reply, () => this.#host.again("two_ways")));
  }
}

/** The same for the page and for the paper. */
export function twoWays(reply, again, heading) {
  const gap = missing(reply, again);
  if (gap) return [gap];
  return [
    rowsOf(reply, heading),
    el("p", { class: "tells" }, reply.compared),
    el("p", { class: "hint" }, `${DOTS} ${reply.note}`),
  ];
}
