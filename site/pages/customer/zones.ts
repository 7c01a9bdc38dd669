// Where to expect rust: a list in words, with the drawing of the car opened out beside it. The
// drawing outlines the zone that is open or pointed at; it says nothing that the list does not.

import { type Children, el, freshId, what } from "../shared/dom.ts";
import { openedOut } from "../shared/drawing.ts";
import type { OpenedReply, RangeRow, ZoneRow } from "../shared/replies.ts";
import { sec } from "./sec.ts";

const SIDE = "A rear quarter is the side behind the door.";
const WHERE = {
  us: `A rocker is the long closed box below the doors. The cowl is the box in front of the windshield. ${SIDE}`,
  uk: `A sill is the long closed box below the doors. The scuttle is the box in front of the windscreen. ${SIDE}`,
};

/** row: of the range. body: whose drawing. of: the label of the row, where there are several.
 *  more: what belongs below. */
export function zonesSection(
  row: RangeRow,
  body: string,
  words: OpenedReply["words"],
  of = "",
  ...more: Children[]
): HTMLElement {
  const box = el("div", {});
  const items = el(
    "div",
    { class: "zone-list" },
    row.zones.map((zone) => zoneEntry(zone, box)),
  );
  const picture = el("div", { class: "zone-picture" });
  box.append(
    what("Where are these on a car?", WHERE[words]),
    el("div", { class: "zone-pair" }, items, picture),
  );
  openedOut(body, row.zones).then(
    (figure) => picture.append(figure),
    () => {
      picture.append(el("p", { class: "hint" }, "The drawing could not be loaded; the list says the same."));
    },
  );
  return sec(
    "zones",
    freshId("zones"),
    of ? `Where the rust hides: ${of}` : "Where the rust hides",
    box,
    more,
  );
}

function zoneEntry(zone: ZoneRow, box: HTMLElement): HTMLElement {
  const details = el(
    "details",
    { "data-zone": zone.id },
    el(
      "summary",
      {},
      el("span", { class: "zone-name" }, zone.name),
      " ",
      el("span", { class: "zone-line" }, zone.line),
    ),
    zone.behind && el("p", {}, zone.behind),
    el(
      "table",
      { class: "parts" },
      el("caption", { class: "visually-hidden" }, `${zone.name}: parts`),
      el(
        "thead",
        {},
        el("tr", {}, el("th", { scope: "col" }, "Part"), el("th", { scope: "col" }, "Rusted through")),
      ),
      el(
        "tbody",
        {},
        zone.items.map((i) => el("tr", {}, el("th", { scope: "row" }, i.name), el("td", {}, i.line))),
      ),
    ),
  );
  const mark = (on: boolean): void => {
    for (const part of box.querySelectorAll<SVGElement>(".part"))
      part.classList.toggle("in-hand", on && part.dataset.zone === zone.id);
  };
  details.addEventListener("toggle", () => mark(details.open));
  details.addEventListener("pointerenter", () => mark(true));
  details.addEventListener("pointerleave", () => mark(false));
  return details;
}
