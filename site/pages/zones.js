// Where rust is to be expected: a list in words, with the opened-out drawing
// beside it. A zone in hand is outlined on the drawing; the list is the real
// thing and the drawing its mirror.

import { el, freshId } from "./dom.js";
import { openedOut } from "./drawing.js";

/** row: a row of the range; body: whose drawing; of: as for the next step. */
export function zonesSection(row, body, of = "") {
  const id = freshId("zones");
  const box = el("section", { class: "zones", "aria-labelledby": id }, el("h2", { id }, of ? `Zone by zone: ${of}` : "Zone by zone"));
  const items = el("div", { class: "zone-list" }, row.zones.map((zone) => zoneEntry(zone, box)));
  const picture = el("div", { class: "zone-picture" });
  box.append(el("div", { class: "zone-pair" }, items, picture));
  openedOut(body, row.zones).then((figure) => picture.append(figure), () => {
    picture.append(el("p", { class: "hint" }, "The drawing could not be loaded; the list says the same."));
  });
  return box;
}

function zoneEntry(zone, box) {
  const details = el("details", { "data-zone": zone.id },
    el("summary", {}, el("span", { class: "zone-name" }, zone.name), " ", el("span", { class: "zone-line" }, zone.line)),
    zone.behind && el("p", {}, zone.behind),
    el("table", { class: "parts" },
      el("caption", { class: "visually-hidden" }, `${zone.name}: parts`),
      el("thead", {}, el("tr", {}, el("th", { scope: "col" }, "Part"), el("th", { scope: "col" }, "Rusted through"))),
      el("tbody", {}, zone.items.map((i) => el("tr", {}, el("th", { scope: "row" }, i.name), el("td", {}, i.line))))));
  const mark = (on) => {
    for (const part of box.querySelectorAll(".part")) part.classList.toggle("in-hand", on && part.dataset.zone === zone.id);
  };
  details.addEventListener("toggle", () => mark(details.open));
  details.addEventListener("pointerenter", () => mark(true));
  details.addEventListener("pointerleave", () => mark(false));
  return details;
}
