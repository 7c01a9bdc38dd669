// The survey on paper: what is recorded, in the order of the list, and the six
// letters to ring where nothing is recorded yet, so that a sheet half filled can
// be finished on a clipboard.

import { button, el } from "../shared/dom.ts";
import { dateText, today } from "../shared/linkcontent.ts";
import { Drawing, hatchingKey } from "../shared/thiscar/drawn.ts";
import { isOpen, standing } from "../shared/thiscar/record.ts";
import { zoneRows } from "./order.ts";
import { conditionName, findingsOf } from "./panel.ts";
import { lookAgainOnPaper } from "./secondlook.ts";

function written(job, on) {
  const item = job.sheet.items[on];
  const record = standing(job.car, on);
  const box =
    item.closed &&
    el("span", { class: "sheet-small" }, isOpen(job.car, item.box) ? "box opened" : "closed box, opened ☐");
  const word = record?.condition
    ? conditionName(job.sheet, record.condition)
    : record?.could_not_see
      ? "Could not see"
      : null;
  const found = findingsOf(job.sheet, record);
  const more = [
    job.again.at(job.car, on) && "Look again",
    record?.sure && "Looked at again: it is so",
    found.length > 0 && `Found: ${found.join("; ")}`,
    record?.note,
    record?.photo && `Photograph ${record.photo}`,
  ].filter(Boolean);
  return [
    word ? el("strong", {}, word) : ring(job.sheet.conditions),
    item.closed && record?.stage === "survey" && word && el("span", { class: "sheet-small" }, "from outside"),
    box,
    more.map((t) => el("span", { class: "sheet-small" }, t)),
  ];
}

/** The letters of the six words to ring, and a box to tick. */
const ring = (conditions) =>
  el(
    "span",
    { class: "ring" },
    el("span", { class: "ring-letters" }, conditions.map((c) => c.key.toUpperCase()).join(" ")),
    " ",
    el("span", { class: "sheet-small" }, "could not see ☐"),
  );

function zoneTable(job, zone, uk) {
  const rows = zoneRows(zone);
  return el(
    "table",
    { class: "sheet-table" },
    el("caption", {}, zone.name),
    el(
      "thead",
      {},
      el(
        "tr",
        {},
        ["Part", uk ? "LEFT (nearside)" : "LEFT", uk ? "RIGHT (offside)" : "RIGHT"].map((h) =>
          el("th", { scope: "col" }, h),
        ),
      ),
    ),
    el(
      "tbody",
      {},
      rows.map((row) => {
        if (row.title) return el("tr", {}, el("th", { scope: "row", colspan: 3 }, row.head));
        const cells =
          row.cells.length === 1
            ? [el("td", { colspan: 2 }, written(job, row.cells[0]))]
            : row.cells.map((on) => el("td", {}, on ? written(job, on) : ""));
        return el("tr", {}, el("th", { scope: "row", class: row.sub ? "sub" : null }, row.head), cells);
      }),
    ),
  );
}

function head(job, opened) {
  const { tally, sheet, car } = job;
  const looks = (car.stages ?? []).map(
    (s) => `${sheet.stages.find((t) => t.id === s.stage)?.name ?? s.stage} begun on ${dateText(s.on)}`,
  );
  return el(
    "div",
    {},
    el(
      "p",
      {},
      `${opened.shop.name}${opened.shop.invented ? " (an invented shop)" : ""}. ${sheet.body_name}. Printed on ${dateText(today())}. ${looks.join(". ")}`,
    ),
    job.from?.kind === "sample" && el("p", {}, "This car is invented."),
    el(
      "p",
      {},
      [tally?.survey?.line, tally?.opening_up?.line, tally?.not_opened_line, tally?.not_recorded_line]
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

/** host: sure(on), change(on) */
export function paperView(job, opened, host) {
  const drawing = new Drawing({ condition: (on) => standing(job.car, on)?.condition ?? null, tap: () => {} });
  drawing
    .show(job.sheet.drawing, job.sheet.conditions)
    .catch(() => drawing.node.replaceChildren(hatchingKey(job.sheet.conditions)));
  const whole = (job.sheet.whole_car_findings ?? [])
    .filter((f) => job.car.whole_car?.includes(f.id))
    .map((f) => f.name);
  return el(
    "div",
    { class: "survey-sheet" },
    el(
      "p",
      { class: "no-paper" },
      button("Print this sheet", () => print(), { class: "go" }),
    ),
    head(job, opened),
    whole.length > 0 && el("p", {}, `Found on the whole car: ${whole.join("; ")}.`),
    lookAgainOnPaper(job, host, (on) => conditionName(job.sheet, standing(job.car, on).condition)),
    drawing.node,
    job.sheet.zones.map((zone) => zoneTable(job, zone, opened.words === "uk")),
    el(
      "p",
      {},
      "This sheet says what was seen. It is no estimate, no quotation and no statement that a car is safe; local rules and licensed practice come first.",
    ),
    el("p", {}, `Rates check code ${opened.rates.check_code} · sums version ${opened.version}`),
  );
}
