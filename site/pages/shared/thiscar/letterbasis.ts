// What a letter rests on: the answers and the looks in words with who entered
// them, and the stages done with their days. The words are those of the other
// views; nothing is counted here.

import { el } from "../dom.ts";
import { dateText } from "../linkcontent.ts";
import { begun } from "./record.ts";
import { allFields, textOf } from "./fields.ts";

const WHO = { customer: "Looked by the customer", shop: "Looked by the shop" };
const SAID = [
  ["yes", "Yes"],
  ["no", "No"],
  ["could_not", "Could not look"],
];

/** Who entered the answers, and whether the shop went through them. */
export function enteredBy({ car, from }) {
  const day = from?.kind === "link" && from.entered ? ` on ${dateText(from.entered)}` : "";
  const who =
    from?.kind === "sample"
      ? "This car is invented."
      : from?.kind === "link"
        ? `The answers came by a link; someone else entered them${day}.`
        : from?.kind === "file"
          ? "The answers came in a file."
          : "The shop entered the answers.";
  return `${who} ${car.answers_checked ? `The shop went through them on ${dateText(car.answers_checked)}.` : "The shop has not gone through them yet."}`;
}

export function answerRows({ opened, q, job }) {
  return allFields(opened, q, job.car)
    .filter((f) => !f.when || f.when(job.car))
    .map((f) => [f.label, textOf(f, job.car)]);
}

/** The looks of one person: what was looked for, and the places by result. */
function looksOf(job, by) {
  const lines = new Map(job.sheet.walk_round.flatMap((s) => s.lines.map((l) => [`${l.look} ${l.on}`, l])));
  const kinds = new Map();
  for (const look of (job.car.looks ?? []).filter((l) => l.by === by)) {
    const line = lines.get(`${look.look} ${look.on}`);
    const name = line?.name ?? look.look;
    const places = kinds.get(name) ?? { yes: [], no: [], could_not: [] };
    places[look.result]?.push(line?.place ?? look.on);
    kinds.set(name, places);
  }
  return [...kinds];
}

function looksSection(job, by) {
  const kinds = looksOf(job, by);
  if (kinds.length === 0) return null;
  return el(
    "div",
    {},
    el("h3", {}, WHO[by]),
    el(
      "ul",
      { class: "plain" },
      kinds.map(([name, places]) =>
        el(
          "li",
          {},
          el("strong", {}, `${name}? `),
          SAID.filter(([id]) => places[id].length)
            .map(([id, word]) => `${word}: ${places[id].join("; ")}.`)
            .join(" "),
        ),
      ),
    ),
  );
}

/** On bare metal the shop's many looks are said by their number. */
function shopLooks(job) {
  if (!begun(job.car, "survey")) return looksSection(job, "shop");
  return el(
    "p",
    {},
    job.tally?.walk_round?.done > 0 && `${job.tally.walk_round.line}, all of which still count. `,
    "The survey sheet says what was found on every part.",
  );
}

function stagesDone({ car, sheet, tally }) {
  const name = (id) => sheet.stages.find((s) => s.id === id)?.name ?? id;
  const done = (car.stages ?? []).map((s) => `${name(s.stage)}: begun on ${dateText(s.on)}`);
  const counts = [
    tally?.survey?.line,
    tally?.opening_up?.line,
    tally?.not_opened_line,
    tally?.not_recorded_line,
  ].filter(Boolean);
  return done.length === 0
    ? el("p", {}, "Nobody has seen the bare metal: it rests on what was told and looked at.")
    : el("p", {}, `${done.join(". ")}. ${counts.join(" · ")}.`);
}

/** host: opened, q, job */
export function basis(host) {
  const { job } = host;
  return [
    el("p", {}, enteredBy(job)),
    el(
      "dl",
      { class: "told" },
      answerRows(host).map(([name, text]) => el("div", {}, el("dt", {}, `${name}: `), el("dd", {}, text))),
    ),
    stagesDone(job),
    looksSection(job, "customer"),
    shopLooks(job),
  ];
}
