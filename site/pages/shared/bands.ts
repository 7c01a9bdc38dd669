// Bands above the content: where answers came from, what is wrong, what can be opened. Each
// says what happened and what can be done about it.

import { buildLine } from "./address.ts";
import type { CarFile } from "./carfile.ts";
import { button, type Children, el } from "./dom.ts";
import type { QuestionStep } from "./flow.ts";
import { stepOfPath } from "./flow.ts";
import type { LinkOrigin, Origin } from "./linkcontent.ts";
import type { Questions } from "./question.ts";
import type { CarNote, OpenedReply, RatesName } from "./replies.ts";
import { dateText } from "./timestamp.ts";

/** A button of a band: its text, and what it does. */
export type BandButton = readonly [text: string, act: () => unknown];

/** kind: names the band for styles and tests. paragraphs: texts become paragraphs, nodes stay
 *  as they are. */
export function band(
  kind: string,
  paragraphs: readonly Children[],
  buttons: readonly BandButton[] = [],
): HTMLElement {
  return el(
    "div",
    { class: "band", "data-band": kind },
    paragraphs.filter(Boolean).map((p) => (typeof p === "string" ? el("p", {}, p) : p)),
    buttons.length > 0 &&
      el(
        "div",
        { class: "band-buttons" },
        buttons.map(([text, act]) => button(text, act)),
      ),
  );
}

/** Where the answers came from; null when this visitor gave them. again: starts anew. */
export function originBand(
  from: Origin,
  opened: OpenedReply,
  { again }: { again(): unknown },
): HTMLElement | null {
  switch (from.kind) {
    case "sample":
      return band("sample", ["A worked sample. This car is invented."], [["Start with your own car", again]]);
    case "file":
      return band(
        "file",
        ["Opened from a file. The shop has not checked these answers."],
        [["Start again", again]],
      );
    case "kept":
      return band("kept", [`This is the car kept on this device on ${dateText(from.entered)}.`]);
    case "blank":
      return null;
    case "link":
      return linkBand(from, opened, again);
  }
}

function linkBand(from: LinkOrigin, opened: OpenedReply, again: () => unknown): HTMLElement {
  const rates = from.ratesOf ? `, at rates of ${dateText(from.ratesOf)}` : "";
  const when = from.entered ? ` on ${dateText(from.entered)}` : "";
  return band(
    "link",
    [
      `Opened from a link. Someone else entered these answers${when}${rates}. They are not checked by the shop.`,
      otherRates(from, opened),
    ],
    [["Start again", again]],
  );
}

/** Both figures side by side when the rates have changed since the link. */
function otherRates(from: LinkOrigin, opened: OpenedReply): string | null {
  if (!from.told || !from.code || from.code === opened.rates.check_code) return null;
  const dated = from.ratesOf ? ` of ${dateText(from.ratesOf)}` : "";
  return `The link says that at its rates${dated} 8 cars in 10 came between ${from.told.low} and ${from.told.high}. Below is the range at the shop's present rates, so the two may differ.`;
}

/** Whether a note of a file is still true: some answers may have been given since. */
function holds({ path }: CarNote, car: CarFile): boolean {
  if (path === "covered") return car.covered === undefined;
  if (path === "earlier_work_year")
    return car.earlier_work === "stripped_and_restored" && car.earlier_work_year === undefined;
  return true;
}

/** What a file does not say of the car, or says in the words of an earlier version: each note
 *  with the way to its question. Null when there is nothing to say. */
export function notesBand(
  notes: readonly CarNote[],
  car: CarFile,
  q: Questions,
  change: (step: QuestionStep, path: string) => unknown,
): HTMLElement | null {
  const lines = notes.flatMap((note) => {
    const step = stepOfPath(note.path);
    return step && holds(note, car) ? [noteLine(note, q[step].short, () => change(step, note.path))] : [];
  });
  return lines.length > 0 ? el("div", { class: "band is-quiet", "data-band": "notes" }, lines) : null;
}

function noteLine({ path, text }: CarNote, question: string, change: () => unknown): HTMLElement {
  return el(
    "p",
    {},
    text,
    " ",
    button(`${path.endsWith("kept") ? "Change" : "Answer"}: ${question}`, change, {
      class: "change",
      "data-note": path,
    }),
  );
}

/** reply: why the engine refused the rates, or null where they could not be loaded. */
export function ratesBand(reply: { text: string } | null): HTMLElement {
  return band("rates", [
    "The shop's rates could not be read, so no figure is shown. Your answers are kept; please ask the shop.",
    reply?.text && el("details", {}, el("summary", {}, "For the shop"), el("p", {}, reply.text)),
  ]);
}

export function pastBand(rates: Pick<RatesName, "past_text">): HTMLElement {
  return el("p", { class: "past", "data-band": "past" }, rates.past_text);
}

export function deadBand(reload: () => unknown): HTMLElement {
  return band(
    "dead",
    ["The sums could not be done in this browser, so no figure is shown. Your answers are kept."],
    [["Try once more", reload]],
  );
}

export function restartedBand(): HTMLElement {
  return band("restarted", ["The sums stopped and were started again. Nothing you entered is lost."]);
}

/** text: the engine's own sentence. then: what can be done. */
export function brokenBand(text: string, then = ""): HTMLElement {
  return band("broken", [text, `No figure is shown. ${then}`.trim()]);
}

/** For the shop's pages: why the engine ended, as far as the page knows, to be passed on. */
export function mistakeBand(text: string): HTMLElement {
  const [build] = buildLine().split(" ");
  const shown = `build ${build}\n${text}`;
  const block = el("pre", { tabindex: "0" }, shown);
  const said = el("p", { role: "status" });
  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(shown);
      said.textContent = "Copied.";
    } catch {
      getSelection()?.selectAllChildren(block);
      said.textContent = "Marked: copy it with your keyboard.";
    }
  };
  return band("mistake", [
    "The sums stopped, or could not begin. If it happens again, please pass this text on to whoever looks after the program.",
    el(
      "details",
      {},
      el("summary", {}, "What the program said"),
      block,
      button("Copy this text", copy),
      said,
    ),
  ]);
}
