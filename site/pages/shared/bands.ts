// Bands above the content: where answers came from, what is wrong, what can be
// opened. Each says what happened and what can be done.

import { button, el } from "./dom.ts";
import { dateText } from "./linkcontent.ts";
import { stepOfPath } from "./flow.ts";

export function band(kind, paragraphs, buttons = []) {
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

/** Where the answers came from, unless this visitor gave them. */
export function originBand(from, opened, actions) {
  if (from.kind === "sample")
    return band(
      "sample",
      ["A worked sample. This car is invented."],
      [["Start with your own car", actions.again]],
    );
  if (from.kind === "file")
    return band(
      "file",
      ["Opened from a file. The shop has not checked these answers."],
      [["Start again", actions.again]],
    );
  if (from.kind === "kept")
    return band("kept", [`This is the car kept on this device on ${dateText(from.entered)}.`]);
  const rates = from.ratesOf ? `, at rates of ${dateText(from.ratesOf)}` : "";
  const when = from.entered ? ` on ${dateText(from.entered)}` : "";
  return band(
    "link",
    [
      `Opened from a link. Someone else entered these answers${when}${rates}. They are not checked by the shop.`,
      otherRates(from, opened),
    ],
    [["Start again", actions.again]],
  );
}

/** Whether a note of a file still holds, now that some answers may have been given. */
function holds({ path }, car) {
  if (path === "covered") return car.covered === undefined;
  if (path === "earlier_work_year")
    return car.earlier_work === "stripped_and_restored" && car.earlier_work_year === undefined;
  return true;
}

/** What a file does not say of the car, or says in the words of an earlier version: each
 *  with the way to its question. Null when there is nothing to say. change(step, path) */
export function notesBand(notes, car, q, change) {
  const left = notes.filter((note) => holds(note, car) && q[stepOfPath(note.path)]);
  if (left.length === 0) return null;
  return el(
    "div",
    { class: "band is-quiet", "data-band": "notes" },
    left.map(({ path, text }) => {
      const step = stepOfPath(path);
      return el(
        "p",
        {},
        text,
        " ",
        button(`${path.endsWith("kept") ? "Change" : "Answer"}: ${q[step].short}`, () => change(step, path), {
          class: "change",
          "data-note": path,
        }),
      );
    }),
  );
}

/** Both figures side by side when the rates have changed since the link. */
function otherRates(from, opened) {
  if (!from.told || !from.code || from.code === opened.rates.check_code) return null;
  const dated = from.ratesOf ? ` of ${dateText(from.ratesOf)}` : "";
  return `The link says that at its rates${dated} 8 cars in 10 came between ${from.told.low} and ${from.told.high}. Below is the range at the shop's present rates, so the two may differ.`;
}

export function ratesBand(reply) {
  return band("rates", [
    "The shop's rates could not be read, so no figure is shown. Your answers are kept; please ask the shop.",
    reply?.text && el("details", {}, el("summary", {}, "For the shop"), el("p", {}, reply.text)),
  ]);
}

export function pastBand(rates) {
  return el("p", { class: "past", "data-band": "past" }, rates.past_text);
}

export function deadBand(reload) {
  return band(
    "dead",
    ["The sums could not be done in this browser, so no figure is shown. Your answers are kept."],
    [["Try once more", reload]],
  );
}

export function restartedBand() {
  return band("restarted", ["The sums stopped and were started again. Nothing you entered is lost."]);
}

/** text: the engine's own sentence. then: what can be done. */
export function brokenBand(text, then = "") {
  return band("broken", [text, `No figure is shown. ${then}`.trim()]);
}

/** For the shop's pages: why the engine ended, as far as it is known, to be passed on. */
export function mistakeBand(text) {
  const [build] = document.querySelector("meta[name=build]").content.split(" ");
  const block = el("pre", { tabindex: "0" }, `build ${build}\n${text}`);
  const said = el("p", { role: "status" });
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(block.textContent);
      said.textContent = "Copied.";
    } catch {
      getSelection().selectAllChildren(block);
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
