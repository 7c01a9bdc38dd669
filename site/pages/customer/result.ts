// The page with the range: sections in order of weight. Those that depend on the engine's reply
// are replaced while it refines. What the visitor typed or unfolded, and the focus, stay.

import type { Body } from "../shared/carfile.ts";
import { button, byId, type Children, el } from "../shared/dom.ts";
import { paperFoot, paperHead } from "../shared/paper.ts";
import type { CautionMessage, OpenedReply, RangeReply, RangeRow } from "../shared/replies.ts";
import { scanCode } from "../shared/scancode.ts";
import { type AnotherBodyHost, anotherBody } from "./anotherbody.ts";
import { askShop } from "./askshop.ts";
import type { OneLook } from "./onelook.ts";
import { rangeFigure } from "./range.ts";
import { sec } from "./sec.ts";
import {
  cautionLine,
  howLong,
  howSure,
  inItToo,
  notInIt,
  stagePrices,
  stageSection,
  whereMoneyGoes,
} from "./sections.ts";
import { zonesSection } from "./zones.ts";

const FOCUSABLE = "summary, button, input, a[href], [tabindex='0']";

type Content = Node | false | null;

/** Puts new content into a box; what is unfolded and the focus stay as they are. */
export function exchange(box: HTMLElement, ...content: (Content | Content[])[]): void {
  const open = [...box.querySelectorAll("details")].map((d) => d.open);
  const focusable = (): HTMLElement[] => [...box.querySelectorAll<HTMLElement>(FOCUSABLE)];
  const active = document.activeElement;
  const at = active instanceof HTMLElement ? focusable().indexOf(active) : -1;
  box.replaceChildren(...content.flat().filter((node) => node instanceof Node));
  box.querySelectorAll("details").forEach((d, i) => {
    if (open[i]) d.open = true;
  });
  if (at >= 0) focusable()[at]?.focus();
}

/** Rows whose part is the same appear once. */
function distinct(rows: readonly RangeRow[], part: (row: RangeRow) => unknown): RangeRow[] {
  const seen = new Map<string, RangeRow>();
  for (const row of rows) {
    const key = JSON.stringify(part(row));
    if (!seen.has(key)) seen.set(key, row);
  }
  return [...seen.values()];
}

/** Cautions are at the lines they belong to; those without a line of their own here are at
 *  the end. */
const OWN_LINES = ["range", "stage", "own_work", "structure"];
const cautionsAt = (reply: RangeReply, ...lines: string[]): CautionMessage[] =>
  reply.cautions.filter((c) => lines.includes(OWN_LINES.includes(c.where) ? c.where : "end"));
const cautionLines = (reply: RangeReply, ...lines: string[]): HTMLElement[] =>
  cautionsAt(reply, ...lines).map(cautionLine);

/** ask: how to reach the shop, below the last of them. */
function stages(reply: RangeReply, ...ask: Children[]): HTMLElement[] {
  const rows = distinct(reply.rows, (r) => r.stage);
  const [first] = rows;
  if (first && rows.length > 2) return [stagePrices(first.stage, rows, ask)];
  return rows.map((row, i) => {
    const last = i === rows.length - 1;
    return stageSection(
      row.stage,
      last ? cautionsAt(reply, "stage", "own_work", "end") : [],
      rows.length > 1 ? row.label : "",
      last && ask,
    );
  });
}

function zones(reply: RangeReply, bodies: readonly Body[], words: OpenedReply["words"]): HTMLElement[] {
  const each = bodies.length === reply.rows.length && bodies.length > 1;
  const shown = (each ? bodies : bodies.slice(0, 1)).flatMap((body, i) => {
    const row = reply.rows[i];
    return row ? [{ row, body }] : [];
  });
  const cautions = cautionLines(reply, "structure");
  if (shown.length > 2)
    return [
      sec(
        "zones",
        "zones-title",
        "Where the rust hides",
        el("p", { class: "hint" }, "Choose a body to see it zone by zone."),
        cautions,
      ),
    ];
  return shown.map(({ row, body }, i) =>
    zonesSection(row, body, words, shown.length > 1 ? row.label : "", i === shown.length - 1 && cautions),
  );
}

const box = (name: string): HTMLElement => el("div", { class: `box box-${name}` });

export interface ResultHost {
  opened: OpenedReply;
  bodies: Body[];
  /** Goes on to the question that would make the range narrower; null when none is left. */
  goCloser: (() => void) | null;
  folds: Node | null;
  look: OneLook | null;
  another: AnotherBodyHost;
  /** That the rates are past their date. */
  past: Node | null;
  basis: Node;
  cover: Node;
  savePanel: Node;
  /** The link to these answers. */
  address(): Promise<string>;
}

export class ResultPage {
  readonly node: HTMLElement;
  #boxes = {
    head: box("head"),
    figure: box("figure"),
    another: box("another"),
    closer: box("closer"),
    next: box("next"),
    wide: box("wide"),
    zones: box("zones"),
    absent: box("absent"),
    long: box("long"),
    cover: box("cover"),
    sure: box("sure"),
    basis: box("basis"),
    keep: box("keep"),
    foot: box("foot"),
  };
  #host: ResultHost;

  constructor(host: ResultHost) {
    this.#host = host;
    this.#boxes.basis.append(host.basis);
    this.#boxes.keep.append(host.savePanel);
    if (host.look) this.#boxes.closer.append(host.look.first, host.look.node);
    if (host.goCloser)
      this.#boxes.closer.append(
        el(
          "p",
          { class: "act-more" },
          button("Answer another question", host.goCloser, { class: "quiet way-on" }),
        ),
      );
    if (host.folds) this.#boxes.wide.append(host.folds);
    this.node = el("div", { class: "result" }, Object.values(this.#boxes));
  }

  /** last: the range has settled. */
  show(reply: RangeReply, last: boolean): void {
    const boxes = this.#boxes;
    const { opened, bodies, past } = this.#host;
    const first = !boxes.figure.hasChildNodes();
    exchange(boxes.figure, rangeFigure(reply, [past, cautionLines(reply, "range")]));
    if (!first && !last) return;
    exchange(
      boxes.head,
      paperHead(opened, reply),
      el(
        "p",
        { class: "car-line" },
        reply.car_line,
        " ",
        button(
          "Change",
          () => {
            byId("basis-title").scrollIntoView();
            boxes.basis.querySelector("button")?.focus();
          },
          { class: "change" },
        ),
      ),
    );
    const { look, another } = this.#host;
    exchange(boxes.another, anotherBody(reply, another));
    exchange(boxes.next, stages(reply, look?.stage, askShop(opened, this.#host.address)));
    if (look && last && reply.rows.length === 1) look.settled();
    exchange(boxes.absent, inItToo(reply), notInIt(reply));
    exchange(boxes.zones, zones(reply, bodies, opened.words));
    const [row, second] = reply.rows;
    exchange(boxes.long, howLong(reply, row && !second ? whereMoneyGoes(row) : null));
    // An amount can be compared with one range only.
    if (second) boxes.cover.replaceChildren();
    else if (!boxes.cover.hasChildNodes()) boxes.cover.append(this.#host.cover);
    exchange(boxes.sure, howSure(reply, cautionLines(reply, "end")));
    if (last) this.#foot(reply);
  }

  /** The foot of the paper, with the link and the code to scan. */
  async #foot(reply: RangeReply): Promise<void> {
    try {
      const address = await this.#host.address();
      const code = await scanCode(address).catch(() => null);
      exchange(this.#boxes.foot, paperFoot(this.#host.opened, reply, address, code));
    } catch {
      // Without a link the paper still has the figures.
    }
  }
}
