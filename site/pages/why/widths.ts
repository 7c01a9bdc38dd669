// What each stage takes off the width, and what stays when all is done. Rows of
// dots for the stages that this car has been through; for those to come, what
// they are worth on the average of cars like it.

import { el } from "../shared/dom.ts";
import { dotRow, levelsOf } from "../shared/dots.ts";
import { isDone } from "../shared/thiscar/gather.ts";
import { amount, barList } from "./bars.ts";
import { missing, progress } from "./sums.ts";

function reached(reply, heading) {
  const done = (reply?.rows ?? []).filter((row) => row.done && row.dots?.length);
  if (done.length < 2) return null;
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

const nowText = (worth) => worth.now_line.replace(/^Now | wide\.$/g, "");
const after = (worth) => worth.stages?.at(-1) ?? null;

function ahead(worth) {
  const whole = amount(nowText(worth));
  return barList([
    [`Now: ${nowText(worth)} wide`, 1, 1],
    ...(worth.stages ?? []).map((s) => [
      `${s.name}: ${s.width_text} wide, on average`,
      amount(s.width_text) / whole,
      1,
    ]),
  ]);
}

/** The sentence of the stage that the talk is about, else of the last one. */
export const stageLine = (worth) =>
  (worth?.stages?.find((s) => s.id === "survey") ?? after(worth ?? {}))?.line ?? null;

/** replies: of one car; again(name) */
export function takesOff(replies, again, _uk, heading = "h2") {
  const worth = replies.get("worth");
  const stages = replies.get("before_after");
  const drawn = reached(stages, heading);
  const gap = worth ? missing(worth, again && (() => again("worth"))) : null;
  const toCome = isDone(worth) && worth.stages.length > 0;
  return [
    stages && missing(stages, again && (() => again("before_after"))),
    drawn,
    drawn && stages.headline?.length > 0 && el("p", { class: "tells" }, stages.headline.join(" ")),
    gap,
    drawn && toCome && el(heading, {}, "Still to come"),
    (toCome || (!drawn && worth?.now_line)) && ahead(worth),
    !gap && progress(worth),
    toCome && el("p", { class: "tells" }, stageLine(worth)),
  ].filter(Boolean);
}

const STAYING = [
  ["Closed boxes.", "Inside a rocker or a post nobody sees anything until it is cut open."],
  ["How hard the work goes.", "Seized bolts, thin edges, poor access: known when it is done."],
  ["Prices.", "Parts and work sent out cost what they cost on the day they are ordered."],
];

export function whatStays(replies, again, uk) {
  const worth = replies.get("worth");
  const last = isDone(worth) ? after(worth) : null;
  const gap = worth ? missing(worth, again && (() => again("worth"))) : null;
  const text = last
    ? `${last.width_text} of the ${nowText(worth)} is still there, on average, when everything has been opened up.`
    : isDone(worth)
      ? `Everything has been opened up. What is left is ${nowText(worth)} wide.`
      : null;
  const part = last ? amount(last.width_text) / amount(nowText(worth)) : 1;
  return [
    gap,
    !gap && progress(worth),
    text && barList([[text, part, 1]]),
    el(
      "ul",
      { class: "stays" },
      STAYING.map(([name, why]) =>
        el("li", {}, el("strong", {}, `${name} `), uk ? why.replace("rocker", "sill") : why),
      ),
    ),
  ].filter(Boolean);
}

class Page {
  needs = "worth";
  #host;
  #made;
  constructor(host, id, title, line, made) {
    Object.assign(this, { id, title, line, node: el("div", { class: id }) });
    this.#host = host;
    this.#made = made;
  }
  draw(replies) {
    this.node.replaceChildren(...this.#made(replies, (name) => this.#host.again(name), this.#host.uk()));
  }
}

/** host: again(name), uk() */
export const widthPages = (host) => [
  new Page(
    host,
    "stages",
    "What each stage takes off",
    "The more of the metal is seen, the less is left to guess.",
    takesOff,
  ),
  new Page(host, "stays", "What stays", "This part nobody can take away before the work is done.", whatStays),
];
