// What a letter is based on: the answers and the checks in words, who gave them, and the
// stages that were done, with their days. The words are those of the other views, and
// nothing is counted here.

import type { CheckResult, Stage, Teller } from "../carfile.ts";
import { type Child, el } from "../dom.ts";
import { dateText } from "../timestamp.ts";
import { type CarContext, checkKey, checksOf, type ThisCar } from "./context.ts";
import { allFields, textOf } from "./fields.ts";
import { begun } from "./record.ts";

const WHO: Record<Teller, string> = { customer: "Looked by the customer", shop: "Looked by the shop" };
const SAID: readonly (readonly [CheckResult, string])[] = [
  ["yes", "Yes"],
  ["no", "No"],
  ["could_not", "Could not look"],
];

/** Who entered the answers, and whether the shop went through them. */
export function enteredBy({ car, from }: Pick<ThisCar, "car" | "from">): string {
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

function answerRows({ opened, q, openCar: { car } }: CarContext): HTMLElement[] {
  return allFields(opened, q, car)
    .filter((f) => f.when?.(car) !== false)
    .map((f) => el("div", {}, el("dt", {}, `${f.label}: `), el("dd", {}, textOf(f, car))));
}

/** The places that were checked, by what was found. */
type Places = Record<CheckResult, string[]>;

/** The checks of one person: what was checked, and where with which result. */
function checksBy({ car, sheet }: ThisCar, by: Teller): Map<string, Places> {
  const known = checksOf(sheet);
  const kinds = new Map<string, Places>();
  for (const check of (car.looks ?? []).filter((l) => l.by === by)) {
    const line = known.get(checkKey(check));
    const name = line?.name ?? check.look;
    const places = kinds.get(name) ?? { yes: [], no: [], could_not: [] };
    places[check.result].push(line?.place ?? check.on);
    kinds.set(name, places);
  }
  return kinds;
}

function checksSection(openCar: ThisCar, by: Teller): HTMLElement | null {
  const kinds = checksBy(openCar, by);
  if (kinds.size === 0) return null;
  return el(
    "div",
    {},
    el("h3", {}, WHO[by]),
    el(
      "ul",
      { class: "plain" },
      [...kinds].map(([name, places]) =>
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

/** Once the survey has begun, the letter gives only the number of the shop's many checks. */
function shopChecks(openCar: ThisCar): HTMLElement | null {
  if (!begun(openCar.car, "survey")) return checksSection(openCar, "shop");
  const made = openCar.tally?.walk_round;
  return el(
    "p",
    {},
    made && made.done > 0 && `${made.line}, all of which still count. `,
    "The survey sheet says what was found on every part.",
  );
}

function stagesDone({ car, sheet, tally }: ThisCar): HTMLElement {
  const name = (id: Stage["stage"]) => sheet.stages.find((s) => s.id === id)?.name ?? id;
  const done = (car.stages ?? []).map((s) => `${name(s.stage)}: begun on ${dateText(s.on)}`);
  const counts = tally
    ? [
        tally.survey.line,
        tally.opening_up.line,
        tally.not_opened_line,
        tally.not_recorded_line,
        tally.measured_line,
      ]
    : [];
  return done.length === 0
    ? el("p", {}, "Nobody has seen the bare metal: it rests on what was told and looked at.")
    : el("p", {}, `${done.join(". ")}. ${counts.filter(Boolean).join(" · ")}.`);
}

export function basis(host: CarContext): Child[] {
  const { openCar } = host;
  return [
    el("p", {}, enteredBy(openCar)),
    el("dl", { class: "told" }, answerRows(host)),
    stagesDone(openCar),
    checksSection(openCar, "customer"),
    shopChecks(openCar),
  ];
}
