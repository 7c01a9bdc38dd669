// The car opened out flat, nose up, hatched by what is recorded. The hatching is ink only,
// and the list says the same in words.

import { ofBuild } from "../address.ts";
import type { Condition } from "../carfile.ts";
import { attributeAt, el, freshId, svg } from "../dom.ts";
import type { SheetCondition } from "../replies.ts";

interface Line {
  d: string;
  weight: keyof typeof WEIGHT;
}
interface Shape extends Line {
  item: string;
}
interface Sheet {
  crop: string;
  shapes: Shape[];
  lines: Line[];
}
/** What a file in drawings/ holds of one body. */
interface DrawingFile {
  sheets: { skins: Sheet; behind: Sheet };
}

const WEIGHT = { strong: 1.7, plain: 1.1, light: 0.85, fine: 0.7 };

/** Hatching by condition. Sound is blank, and what is gone is cut out. */
const HATCH = {
  sound: "blank",
  light_pitting: "dots",
  heavy_pitting: "close",
  pinholes: "ringed",
  rusted_through: "crossed",
  gone: "cut",
} as const satisfies Record<Condition, string>;
type Hatch = (typeof HATCH)[Condition];

const SAID: Record<Hatch, string> = {
  blank: "blank",
  dots: "dots",
  close: "close dots",
  ringed: "ringed dots",
  crossed: "crossed",
  cut: "cut out: a heavy broken line",
};
const HATCH_FILLED: ReadonlySet<string> = new Set(["dots", "close", "ringed", "crossed"]);

function patterns(id: string): SVGDefsElement {
  const pattern = (name: Hatch, size: number, ...marks: SVGElement[]) =>
    svg("pattern", { id: `${id}-${name}`, width: size, height: size, patternUnits: "userSpaceOnUse" }, marks);
  const spot = (at: number, r: number) => svg("circle", { cx: at, cy: at, r, class: "spot" });
  return svg(
    "defs",
    {},
    pattern("dots", 9, spot(4.5, 1.1)),
    pattern("close", 4, spot(2, 1)),
    pattern(
      "ringed",
      8,
      spot(4, 1),
      svg("circle", { cx: 4, cy: 4, r: 2.7, class: "stroke", "stroke-width": 0.7 }),
    ),
    pattern("crossed", 5, svg("path", { d: "M0 0L5 5M5 0L0 5", class: "stroke", "stroke-width": 0.9 })),
  );
}

const strokeOf = (line: Line, kind = "stroke") =>
  svg("path", { d: line.d, class: kind, "stroke-width": WEIGHT[line.weight] });

function shapeOf(shape: Shape, id: string): SVGGElement {
  return svg(
    "g",
    { class: "part", "data-item": shape.item },
    svg("path", { d: shape.d, class: "skin", "fill-rule": "evenodd" }),
    svg("path", { d: shape.d, class: "hatch", "fill-rule": "evenodd", fill: "none", "data-id": id }),
    strokeOf(shape, "stroke edge"),
  );
}

function sheetOf(sheet: Sheet, id: string): SVGSVGElement {
  return svg(
    "svg",
    { viewBox: sheet.crop, class: "opened-out", "aria-hidden": "true", focusable: "false" },
    patterns(id),
    sheet.shapes.map((shape) => shapeOf(shape, id)),
    sheet.lines.map((line) => strokeOf(line)),
  );
}

function keyEntry(name: Hatch | "none", text: string): HTMLLIElement {
  const id = freshId("hatch");
  const box = { x: 2, y: 2, width: 32, height: 16 };
  return el(
    "li",
    {},
    svg(
      "svg",
      { viewBox: "0 0 36 20", class: "key-box", "aria-hidden": "true", focusable: "false" },
      patterns(id),
      HATCH_FILLED.has(name) && svg("rect", { ...box, fill: `url(#${id}-${name})` }),
      svg("rect", {
        ...box,
        fill: "none",
        class: name === "cut" ? "stroke cut-edge" : name === "none" ? "stroke none-edge" : "stroke",
        "stroke-width": name === "cut" ? 3 : name === "none" ? 0.7 : 1.4,
      }),
    ),
    text,
  );
}

type NamedCondition = Pick<SheetCondition, "id" | "name">;

export function hatchingKey(conditions: readonly NamedCondition[]): HTMLUListElement {
  return el(
    "ul",
    { class: "key" },
    conditions.map((c) => keyEntry(HATCH[c.id], `${c.name}: ${SAID[HATCH[c.id]]}`)),
    keyEntry("none", "Not recorded: a thin line"),
  );
}

/** Draws the condition of a part. */
function mark(group: SVGGElement, condition: Condition | null): void {
  const name = condition && HATCH[condition];
  group.classList.toggle("not-recorded", name === null);
  group.classList.toggle("cut-out", name === "cut");
  for (const hatch of group.querySelectorAll<SVGPathElement>(".hatch")) {
    const filled = name !== null && HATCH_FILLED.has(name);
    hatch.setAttribute("fill", filled ? `url(#${hatch.dataset.id}-${name})` : "none");
  }
}

export interface DrawingHost {
  /** The condition that is recorded for an item, or null. */
  condition(on: string): Condition | null;
  /** Somebody pressed an item. */
  tap(on: string): void;
}

export class Drawing {
  node = el("figure", { class: "sheets car-drawing" });
  #of: string | null = null;
  #host: DrawingHost;

  constructor(host: DrawingHost) {
    this.#host = host;
  }

  /** Rejects when the drawing cannot be loaded. body: the name of its file. */
  async show(body: string, conditions: readonly NamedCondition[]): Promise<void> {
    if (this.#of === body) {
      this.refresh();
      return;
    }
    this.#of = body;
    const response = await fetch(ofBuild(`drawings/${body}.json`));
    if (!response.ok) throw new Error(`drawing: ${response.status}`);
    const { sheets }: DrawingFile = await response.json();
    if (this.#of !== body) return;
    this.node.replaceChildren(
      this.#pair(sheets),
      el(
        "figcaption",
        {},
        el(
          "p",
          {},
          "The car opened out flat, nose up; its left is on your left. The part in hand has a heavy outline.",
        ),
        hatchingKey(conditions),
      ),
    );
    this.refresh();
  }

  #pair({ skins, behind }: DrawingFile["sheets"]): HTMLDivElement {
    const id = freshId("car");
    const one = (name: string, sheet: Sheet, end: string) =>
      el("div", {}, el("p", { class: "sheet-name" }, name), sheetOf(sheet, `${id}-${end}`));
    const tap = (event: Event) => {
      const on = attributeAt(event, "data-item");
      if (on) this.#host.tap(on);
    };
    return el(
      "div",
      { class: "sheet-pair", on: { click: tap } },
      one("Outside", skins, "skins"),
      one("Behind the skins", behind, "behind"),
    );
  }

  get #parts(): NodeListOf<SVGGElement> {
    return this.node.querySelectorAll("[data-item]");
  }

  refresh(): void {
    for (const group of this.#parts) mark(group, this.#host.condition(group.dataset.item ?? ""));
  }

  outline(on: string | null): void {
    for (const group of this.#parts) group.classList.toggle("in-hand", group.dataset.item === on);
  }
}
