// The same odds, two ways: each panel on its own luck, and as cars really rust.

import type { CarFile } from "../shared/carfile.ts";
import { el } from "../shared/dom.ts";
import { dotRow, levelsOf } from "../shared/dots.ts";
import type { Axis, EngineReply, WhyRow } from "../shared/replies.ts";
import type { Replies } from "../shared/thiscar/gather.ts";
import { begun } from "../shared/thiscar/record.ts";
import { missing, type Need } from "./sums.ts";
import type { TalkPage } from "./talk.ts";

/** Headings of the talk, and one lower on paper. */
export type Heading = "h2" | "h3";

/** Rows of dots on one axis, each with its name and its range in words. */
export function rowsOf(
  { rows, axis }: { rows: readonly WhyRow[]; axis: Axis },
  heading: Heading = "h2",
): HTMLElement {
  const levels = levelsOf(rows);
  return el(
    "div",
    { class: "why-rows" },
    rows.map((row) =>
      el(
        "div",
        { class: "stage-row" },
        el(heading, {}, row.label),
        dotRow({ ...row, dots_text: row.sentence }, axis, levels),
      ),
    ),
  );
}

const DOTS = "Each dot stands for one car in twenty: 2 below the range, 16 inside it, 2 above.";

export interface TwoWaysHost {
  again(name: Need): void;
  car(): CarFile;
}

export class TwoWays implements TalkPage {
  readonly id = "odds";
  readonly title = "Same odds, two ways";
  readonly needs = "two_ways";
  readonly node = el("div", { class: "two-ways" });
  #host: TwoWaysHost;

  constructor(host: TwoWaysHost) {
    this.#host = host;
  }

  /** Once its metal has been seen, less of a car's width comes from parts rusting
   *  together. */
  get line(): string {
    return begun(this.#host.car(), "survey")
      ? "Rust keeps company. The rows say how much of the width that still makes."
      : "Rust keeps company. That is where the width comes from.";
  }

  draw(replies: Replies): void {
    const reply = replies.get("two_ways");
    this.node.replaceChildren(...twoWays(reply, () => this.#host.again("two_ways")));
  }
}

/** The content of the page, which the paper has too. */
export function twoWays(
  reply: EngineReply | undefined,
  again: (() => void) | null,
  heading: Heading = "h2",
): HTMLElement[] {
  const gap = missing(reply, again);
  if (gap) return [gap];
  if (reply?.kind !== "two_ways") return [];
  return [
    rowsOf(reply, heading),
    el("p", { class: "tells" }, reply.compared),
    el("p", { class: "hint" }, `${DOTS} ${reply.note}`),
  ];
}
