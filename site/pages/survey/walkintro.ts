// What is above the list of the walk-round: cautions, and checks of the customer's that the
// list does not have.

import { el } from "../shared/dom.ts";
import type { SheetReply } from "../shared/replies.ts";
import { checkKey, checksOf, type ThisCar } from "../shared/thiscar/context.ts";
import { SAID } from "./walkrow.ts";

export function safety(sheet: SheetReply): HTMLElement | null {
  const all = sheet.cautions.filter((c) => c.id === "lifting" || c.where === "walk_round");
  if (all.length === 0) return null;
  return el(
    "div",
    {},
    all.map((c) => el("p", { class: "caution" }, c.text)),
  );
}

/** The customer's checks that have no line of their own in the list. */
export function customersOther({ car, sheet }: ThisCar): HTMLElement | null {
  const known = checksOf(sheet);
  const rest = (car.looks ?? []).filter((l) => l.by === "customer" && !known.has(checkKey(l)));
  if (rest.length === 0) return null;
  const names = new Map([...known.values()].map((line) => [line.look, line.name]));
  return el(
    "div",
    {},
    el("h2", {}, "Looked by the customer"),
    el(
      "ul",
      {},
      rest.map((l) =>
        el("li", {}, `${placeOf(sheet, l.on)}: ${names.get(l.look) ?? l.look}: ${SAID[l.result]}`),
      ),
    ),
  );
}

/** The name of an item; front_either and either are one side or the other. */
function placeOf({ items }: SheetReply, on: string): string {
  const left = items[on.replace("either", "left")];
  return items[on]?.name ?? (left ? `${left.name.replace(/,? ?left$/, "")}, left or right` : on);
}
