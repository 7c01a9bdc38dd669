// The small parts of which the papers are made.

import { type Children, el } from "../dom.ts";
import type { CautionMessage } from "../replies.ts";

export const section = (title: string, ...content: Children[]): HTMLElement =>
  el("section", {}, el("h2", {}, title), content);

export const waiting = (text = "Still being worked out."): HTMLParagraphElement =>
  el("p", { class: "waiting" }, text);

export const failed = (reply: { text: string }): HTMLParagraphElement =>
  el("p", { class: "error" }, reply.text);

/** The cautions with these ids, each as a paragraph. */
export const cautionLines = (
  cautions: readonly CautionMessage[],
  ids: readonly string[],
): HTMLParagraphElement[] =>
  cautions
    .filter((c) => ids.includes(c.id))
    .map((c) => el("p", { class: "caution", "data-caution": c.id }, c.text));

/** A row of headings for the columns of a table. */
export const columnHeads = (names: readonly string[]): HTMLTableSectionElement =>
  el(
    "thead",
    {},
    el(
      "tr",
      {},
      names.map((name) => el("th", { scope: "col" }, name)),
    ),
  );

/** The shop's papers say this in small print: which rates, how many simulated cars. */
export const codeLine = (
  range: { check_code: string; imagined_cars_text: string; seed: number },
  opened: { figures_code: string; version: string },
): HTMLParagraphElement =>
  el(
    "p",
    { class: "code" },
    `Rates check code ${range.check_code} · ${range.imagined_cars_text} simulated cars · seed ${range.seed} · figures code ${opened.figures_code} · sums version ${opened.version}`,
  );

/** Why rows beside the range may differ from it a little. */
export const fewerCars = (rows = "These rows"): string =>
  `${rows} are worked out less exactly than the range at the head, so that an end may differ by one step of rounding. The range at the head stands.`;
