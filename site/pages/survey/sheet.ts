// The survey on paper: what is recorded, in the order of the list, and the six letters to
// ring where nothing is recorded yet, so that a half-filled sheet can be finished on a
// clipboard.

import { button, type Child, el } from "../shared/dom.ts";
import { today } from "../shared/linkcontent.ts";
import type { OpenedReply, SheetCondition, SheetZone } from "../shared/replies.ts";
import { Drawing, hatchingKey } from "../shared/thiscar/drawn.ts";
import { columnHeads } from "../shared/thiscar/letterparts.ts";
import { isOpen, standing } from "../shared/thiscar/record.ts";
import { dateText } from "../shared/timestamp.ts";
import { lookAgainOnPaper, type PaperHost } from "./lookagain.ts";
import type { OpenCar } from "./opencar.ts";
import { zoneRows } from "./order.ts";
import { findingsOf, itemOf, wordOf } from "./partwords.ts";

/** What is written in the cell of an item. */
function written(openCar: OpenCar, on: string): Child[] {
  const { car, sheet } = openCar;
  const item = itemOf(sheet, on);
  const record = standing(car, on);
  const word = wordOf(sheet, record);
  const found = findingsOf(sheet, record);
  const small = (text: string) => el("span", { class: "sheet-small" }, text);
  const more = [
    openCar.secondLooks.at(car, on) ? "Look again" : "",
    record?.sure ? "Looked at again: it is so" : "",
    found.length > 0 ? `Found: ${found.join("; ")}` : "",
    record?.note ?? "",
    record?.photo ? `Photograph ${record.photo}` : "",
  ].filter(Boolean);
  return [
    word ? el("strong", {}, word) : ring(sheet.conditions),
    item.closed && record?.stage === "survey" && word !== "" && small("from outside"),
    item.closed && small(isOpen(car, item.box) ? "box opened" : "closed box, opened ☐"),
    ...more.map(small),
  ];
}

/** The letters of the six words to ring, and a box to tick. */
const ring = (conditions: readonly SheetCondition[]) =>
  el(
    "span",
    { class: "ring" },
    el("span", { class: "ring-letters" }, conditions.map((c) => c.key.toUpperCase()).join(" ")),
    " ",
    el("span", { class: "sheet-small" }, "could not see ☐"),
  );

function zoneTable(openCar: OpenCar, zone: SheetZone, uk: boolean): HTMLElement {
  return el(
    "table",
    { class: "sheet-table" },
    el("caption", {}, zone.name),
    columnHeads(["Part", uk ? "LEFT (nearside)" : "LEFT", uk ? "RIGHT (offside)" : "RIGHT"]),
    el(
      "tbody",
      {},
      zoneRows(zone).map((row) => {
        if (row.title) return el("tr", {}, el("th", { scope: "row", colspan: 3 }, row.head));
        const span = row.cells.length === 1 ? 2 : null;
        const cells = row.cells.map((on) => el("td", { colspan: span }, on ? written(openCar, on) : ""));
        return el("tr", {}, el("th", { scope: "row", class: row.sub ? "sub" : null }, row.head), cells);
      }),
    ),
  );
}

function head(openCar: OpenCar, opened: OpenedReply): HTMLElement {
  const { tally, sheet, car } = openCar;
  const stages = (car.stages ?? []).map(
    (s) => `${sheet.stages.find((t) => t.id === s.stage)?.name ?? s.stage} begun on ${dateText(s.on)}`,
  );
  return el(
    "div",
    {},
    el(
      "p",
      {},
      `${opened.shop.name}${opened.shop.invented ? " (an invented shop)" : ""}. ${sheet.body_name}. Printed on ${dateText(today())}. ${stages.join(". ")}`,
    ),
    openCar.from?.kind === "sample" && el("p", {}, "This car is invented."),
    el(
      "p",
      {},
      [tally?.survey.line, tally?.opening_up.line, tally?.not_opened_line, tally?.not_recorded_line]
        .filter(Boolean)
        .join(" · "),
    ),
    el("p", {}, "By whom: ____________________ Light and access: ____________________"),
    el(
      "p",
      {},
      el("strong", {}, "Not ringed and not written means not known, never good. "),
      "Left and right are as you sit in the car. ",
      sheet.conditions.map((c) => `${c.key.toUpperCase()} ${c.name.toLowerCase()}`).join(", "),
      ".",
    ),
  );
}

/** The survey sheet. host: what its buttons do. */
export function paperView(openCar: OpenCar, opened: OpenedReply, host: PaperHost): HTMLElement {
  const drawing = new Drawing({
    condition: (on) => standing(openCar.car, on)?.condition ?? null,
    tap: () => {},
  });
  drawing
    .show(openCar.sheet.drawing, openCar.sheet.conditions)
    .catch(() => drawing.node.replaceChildren(hatchingKey(openCar.sheet.conditions)));
  const whole = openCar.sheet.whole_car_findings
    .filter((f) => openCar.car.whole_car?.includes(f.id))
    .map((f) => f.name);
  return el(
    "div",
    { class: "survey-sheet" },
    el(
      "p",
      { class: "no-paper" },
      button("Print this sheet", () => print(), { class: "go" }),
    ),
    head(openCar, opened),
    whole.length > 0 && el("p", {}, `Found on the whole car: ${whole.join("; ")}.`),
    lookAgainOnPaper(openCar, host, (on) => wordOf(openCar.sheet, standing(openCar.car, on))),
    drawing.node,
    openCar.sheet.zones.map((zone) => zoneTable(openCar, zone, opened.words === "uk")),
    el(
      "p",
      {},
      "This sheet says what was seen. It is no estimate, no quotation and no statement that a car is safe; local rules and licensed practice come first.",
    ),
    el(
      "p",
      {},
      `Rates check code ${opened.rates.check_code} · figures code ${opened.figures_code} · sums version ${opened.version}`,
    ),
  );
}
