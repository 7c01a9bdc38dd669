// What each stage takes off the width, and what stays when all is done. The stages that
// this car has been through are rows of dots; the stages to come say what they are worth
// on average to cars like it.

import { el } from "../shared/dom.ts";
import { dotRow, levelsOf } from "../shared/dots.ts";
import type { BeforeAfterReply, WorthReply } from "../shared/replies.ts";
import type { Replies } from "../shared/thiscar/gather.ts";
import { drawnRows } from "../shared/thiscar/stagerows.ts";
import { amount, type BarRow, barList } from "./bars.ts";
import { answer, doneAnswer, missing, type Need, progress } from "./sums.ts";
import type { TalkPage } from "./talk.ts";
import type { Heading } from "./twoways.ts";

export interface WidthHost {
  again(name: Need): void;
  uk(): boolean;
}

/** Asks for a reply once more; null on paper, where nothing can be pressed. */
type Again = ((name: Need) => void) | null;

const retry = (again: Again, name: Need) => again && (() => again(name));
const there = (nodes: readonly (HTMLElement | null)[]) => nodes.filter((node) => node !== null);

/** A row for each stage that is done; null while there is only one. */
function reached(reply: BeforeAfterReply | null, heading: Heading): HTMLElement | null {
  const done = reply ? drawnRows(reply) : [];
  if (!reply || done.length < 2) return null;
  const levels = levelsOf(done);
  return el(
    "div",
    { class: "why-rows" },
    done.map((row, k) =>
      el(
        "div",
        { class: k === done.length - 1 ? "stage-row is-newest" : "stage-row is-older" },
        el(heading, {}, [row.name, row.date_text].filter(Boolean).join(", ")),
        dotRow({ ...row, dots_text: `${row.sentence} ${row.width_text}.` }, reply.axis, levels),
        row.wider_line && el("p", {}, row.wider_line),
      ),
    ),
  );
}

const nowText = (worth: WorthReply) => worth.now_line.replace(/^Now | wide\.$/g, "");

function ahead(worth: WorthReply): HTMLElement {
  const whole = amount(nowText(worth));
  return barList([
    [`Now: ${nowText(worth)} wide`, 1, 1],
    ...worth.stages.map(
      (s): BarRow => [`${s.name}: ${s.width_text} wide, on average`, amount(s.width_text) / whole, 1],
    ),
  ]);
}

/** The sentence about strip and survey; once that is done, about the last stage to come. */
export const stageLine = (worth: WorthReply): string | null =>
  (worth.stages.find((s) => s.id === "survey") ?? worth.stages.at(-1))?.line ?? null;

export function takesOff(
  replies: Replies,
  again: Again,
  _uk: boolean,
  heading: Heading = "h2",
): HTMLElement[] {
  const worth = answer(replies, "worth");
  const stages = answer(replies, "before_after");
  const drawn = reached(stages, heading);
  const toCome = (doneAnswer(replies, "worth")?.stages.length ?? 0) > 0;
  const gapOf = (name: Need) => (replies.has(name) ? missing(replies.get(name), retry(again, name)) : null);
  const gap = gapOf("worth");
  const line = worth && stageLine(worth);
  return there([
    gapOf("before_after"),
    drawn,
    drawn && stages && stages.headline.length > 0
      ? el("p", { class: "tells" }, stages.headline.join(" "))
      : null,
    gap,
    drawn && toCome ? el(heading, {}, "Still to come") : null,
    worth && (toCome || (!drawn && worth.now_line)) ? ahead(worth) : null,
    gap ? null : progress(replies.get("worth")),
    toCome ? el("p", { class: "tells" }, line) : null,
  ]);
}

const STAYING: readonly (readonly [name: string, why: string])[] = [
  ["Closed boxes.", "Inside a rocker or a post nobody sees anything until it is cut open."],
  ["How hard the work goes.", "Seized bolts, thin edges, poor access: known when it is done."],
  ["Prices.", "Parts and work sent out cost what they cost on the day they are ordered."],
];

/** What is left of the width after the last stage. */
function leftBar(worth: WorthReply): HTMLElement {
  const now = nowText(worth);
  const last = worth.stages.at(-1);
  if (!last) return barList([[`Everything has been opened up. What is left is ${now} wide.`, 1, 1]]);
  const text = `${last.width_text} of the ${now} is still there, on average, when everything has been opened up.`;
  return barList([[text, amount(last.width_text) / amount(now), 1]]);
}

export function whatStays(replies: Replies, again: Again, uk: boolean): HTMLElement[] {
  const reply = replies.get("worth");
  const done = doneAnswer(replies, "worth");
  const gap = reply ? missing(reply, retry(again, "worth")) : null;
  return there([
    gap,
    gap ? null : progress(reply),
    done && leftBar(done),
    el(
      "ul",
      { class: "stays" },
      STAYING.map(([name, why]) =>
        el("li", {}, el("strong", {}, `${name} `), uk ? why.replace("rocker", "sill") : why),
      ),
    ),
  ]);
}

class WidthPage implements TalkPage {
  readonly id: string;
  readonly title: string;
  readonly line: string;
  readonly needs = "worth";
  readonly node: HTMLElement;
  #host: WidthHost;
  #made: typeof whatStays;

  constructor(host: WidthHost, id: string, title: string, line: string, made: typeof whatStays) {
    this.id = id;
    this.title = title;
    this.line = line;
    this.node = el("div", { class: id });
    this.#host = host;
    this.#made = made;
  }

  draw(replies: Replies): void {
    this.node.replaceChildren(...this.#made(replies, (name) => this.#host.again(name), this.#host.uk()));
  }
}

export const widthPages = (host: WidthHost): TalkPage[] => [
  new WidthPage(
    host,
    "stages",
    "What each stage takes off",
    "The more of the metal is seen, the less is left to guess.",
    takesOff,
  ),
  new WidthPage(
    host,
    "stays",
    "What stays",
    "This part nobody can take away before the work is done.",
    whatStays,
  ),
];
