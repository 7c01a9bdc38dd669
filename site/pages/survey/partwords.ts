// One part in words, as the list, the panel and the papers say it.

import type { Condition, PartRecord } from "../shared/carfile.ts";
import type { SheetItem, SheetReply } from "../shared/replies.ts";
import { hasFinding, isMissing, isOpen, MISSING, standing } from "../shared/thiscar/record.ts";
import type { CellText } from "./grid.ts";
import type { OpenCar } from "./opencar.ts";

/** The item of the sheet. The engine names only items that the body has. */
export function itemOf(sheet: SheetReply, on: string): SheetItem {
  const item = sheet.items[on];
  if (!item) throw new Error(`the sheet has no item "${on}"`);
  return item;
}

export const conditionName = (sheet: SheetReply, id: Condition): string =>
  sheet.conditions.find((c) => c.id === id)?.name ?? id;

/** The findings of a record in short words, besides that the part is missing. */
export function findingsOf(sheet: SheetReply, record: PartRecord | null): string[] {
  if (!record) return [];
  return sheet.findings
    .filter((f) => f.id !== MISSING && hasFinding(record, f))
    .map((f) => (f.count ? `${f.name} (${record.lead_failed})` : f.name));
}

/** The condition of a record in words, or that the part is missing; blank where neither is
 *  recorded. */
export function wordOf(sheet: SheetReply, record: PartRecord | null): string {
  if (record?.condition) return conditionName(sheet, record.condition);
  if (isMissing(record)) return "Missing";
  return record?.could_not_see ? "Could not see" : "";
}

/** Whether the box of a part is open; blank for a part that is in none. */
function boxState(openCar: OpenCar, item: SheetItem): string {
  if (!item.closed) return "";
  return isOpen(openCar.car, item.box) ? "box opened" : "closed box";
}

/** The text and the spoken name of a cell in the list. */
export function cellOf(openCar: OpenCar, on: string): CellText {
  const { car, sheet } = openCar;
  const item = itemOf(sheet, on);
  const record = standing(car, on);
  const fault = openCar.faultOn(on);
  const word = wordOf(sheet, record);
  const found = findingsOf(sheet, record);
  const state = boxState(openCar, item);
  const small = [
    !word && state,
    item.closed && record?.stage === "survey" && word && "from outside",
    openCar.secondLooks.at(car, on) && "look again",
    found.length > 0 && "found something",
    record?.note && "note",
  ]
    .filter(Boolean)
    .join(", ");
  // The spoken name contains the text that is shown (WCAG 2.2, 2.5.3).
  const said = word ? `${word}${small && ` ${small}`}` : "not recorded";
  const name = [item.name, state, said, found.join(", "), fault && `does not count: ${fault.text}`]
    .filter(Boolean)
    .join(", ");
  return { text: word || "·", small, name, fault: fault !== null, recorded: word !== "" };
}
