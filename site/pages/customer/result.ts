// The page with the range: sections in order of weight. Sections that depend on
// the answer of the engine are exchanged as it refines; what the visitor typed,
// unfolded or stands on stays.

import { askShop } from "./askshop.ts";
import { button, el } from "../shared/dom.ts";
import {
  howLong,
  howSure,
  notInIt,
  rangeFigure,
  stagePrices,
  stageSection,
  whereMoneyGoes,
} from "./range.ts";
import { zonesSection } from "./zones.ts";
import { paperFoot, paperHead } from "../shared/paper.ts";
import { scanCode } from "../shared/scancode.ts";

const FOCUSABLE = "summary, button, input, a[href], [tabindex='0']";

/** Puts new content into a box, keeping what is unfolded and where the focus is. */
export function exchange(box, ...content) {
  const open = [...box.querySelectorAll("details")].map((d) => d.open);
  const at = [...box.querySelectorAll(FOCUSABLE)].indexOf(document.activeElement);
  box.replaceChildren(...content.flat().filter(Boolean));
  box.querySelectorAll("details").forEach((d, i) => {
    if (open[i]) d.open = true;
  });
  if (at >= 0) box.querySelectorAll(FOCUSABLE)[at]?.focus();
}

/** Rows whose part is the same are shown once; else each under its label. */
function distinct(rows, part) {
  const seen = new Map();
  for (const row of rows) {
    const key = JSON.stringify(part(row));
    if (!seen.has(key)) seen.set(key, row);
  }
  return [...seen.values()];
}

/** Cautions stand at the lines they belong to; what has no line of its own here
 *  stands at the end. */
const OWN_LINES = ["range", "stage", "structure", "floors", "paint"];
const cautionsAt = (reply, ...lines) =>
  reply.cautions.filter((c) => lines.includes(OWN_LINES.includes(c.where) ? c.where : "end"));
const cautionLines = (reply, ...lines) =>
  cautionsAt(reply, ...lines).map((c) => el("p", { class: "caution", "data-caution": c.id }, c.text));

function stages(reply) {
  const rows = distinct(reply.rows, (r) => r.stage);
  if (rows.length > 2) return [stagePrices(rows)];
  return rows.map((row, i) =>
    stageSection(
      row.stage,
      i === rows.length - 1 ? cautionsAt(reply, "stage") : [],
      rows.length > 1 ? row.label : "",
    ),
  );
}

function zones(reply, bodies, words) {
  const shown =
    bodies.length === reply.rows.length && bodies.length > 1
      ? reply.rows.map((r, i) => [r, bodies[i]])
      : [[reply.rows[0], bodies[0]]];
  if (shown.length > 2) return [el("p", { class: "hint" }, "Choose a body to see it zone by zone.")];
  return [
    ...shown.map(([row, body]) => zonesSection(row, body, words, shown.length > 1 ? row.label : "")),
    ...cautionLines(reply, "structure", "floors"),
  ];
}

const BOXES = [
  "head",
  "figure",
  "closer",
  "next",
  "absent",
  "zones",
  "long",
  "cover",
  "basis",
  "sure",
  "keep",
  "foot",
];

export class ResultPage {
  node;
  #boxes = {};
  #host;

  /** host: opened, bodies, cover, basis, keep (nodes), closer (step or
   *  null), goCloser(), look (OneLook or null), folds (node or null), past (node or null), address()
   *  (a promise). */
  constructor(host) {
    this.#host = host;
    for (const name of BOXES) this.#boxes[name] = el("div", { class: `box box-${name}` });
    this.#boxes.basis.append(host.basis);
    this.#boxes.keep.append(host.keep);
    if (host.closer)
      this.#boxes.closer.append(button("See what would make it closer", host.goCloser, { class: "go" }));
    if (host.look) this.#boxes.closer.append(host.look.first, host.look.node);
    if (host.folds) this.#boxes.closer.append(host.folds);
    this.node = el("div", { class: "result" }, Object.values(this.#boxes));
  }

  show(reply, last) {
    const box = this.#boxes;
    const { opened, bodies, past } = this.#host;
    const first = !box.figure.hasChildNodes();
    exchange(box.figure, rangeFigure(reply, { extra: [past, cautionLines(reply, "range")] }));
    if (!first && !last) return;
    exchange(
      box.head,
      paperHead(opened, reply),
      el(
        "p",
        { class: "car-line" },
        reply.car_line,
        " ",
        button(
          "Change",
          () => {
            document.getElementById("basis-title").scrollIntoView();
            box.basis.querySelector("button").focus();
          },
          { class: "change" },
        ),
      ),
    );
    exchange(box.next, stages(reply), askShop(opened, this.#host.address));
    const { look } = this.#host;
    if (look) box.next.querySelector(".next details")?.before(look.stage);
    if (look && last && reply.rows.length === 1) look.settled();
    exchange(box.absent, notInIt(reply));
    exchange(box.zones, zones(reply, bodies, opened.words));
    exchange(
      box.long,
      howLong(reply),
      reply.rows.length === 1 && whereMoneyGoes(reply.rows[0]),
      cautionLines(reply, "paint"),
    );
    // A sum can be held against one range only.
    if (reply.rows.length > 1) box.cover.replaceChildren();
    else if (!box.cover.hasChildNodes()) box.cover.append(this.#host.cover);
    exchange(box.sure, howSure(reply), cautionLines(reply, "end"));
    if (last) this.#foot(reply);
  }

  /** The foot of the paper, with the link and the code to scan. */
  async #foot(reply) {
    try {
      const address = await this.#host.address();
      const code = await scanCode(address).catch(() => null);
      exchange(this.#boxes.foot, paperFoot(this.#host.opened, reply, address, code));
    } catch {
      /* Without a link the paper still holds the figures. */
    }
  }
}
