// Our own line drawings: side views for the first question, the car opened out flat for the
// zones, and a cut below the door. All have the colour of the text.

import { ofBuild } from "./address.ts";
import type { Body } from "./carfile.ts";
import { el, freshId, svg } from "./dom.ts";
import type { ZoneRow } from "./replies.ts";

/** A line of a drawing: an SVG path, and how heavy it is. */
export interface DrawnLine {
  d: string;
  weight: "strong" | "plain" | "light" | "fine";
}
/** The outline of one item of the car. */
export interface DrawnShape extends DrawnLine {
  item: string;
}
export interface DrawnSheet {
  /** A viewBox around it, in the drawing's own units. */
  crop: string;
  shapes: DrawnShape[];
  lines: DrawnLine[];
}
/** The car opened out flat: its outer panels, and what is under them. */
export interface Drawing {
  sheets: Record<"skins" | "behind", DrawnSheet>;
}

/** The width of a line by its weight, in units of the drawing. */
const WEIGHT: Readonly<Record<string, number>> = { strong: 1.7, plain: 1.1, light: 0.85, fine: 0.7 };
export const widthOf = ({ weight }: DrawnLine): number => WEIGHT[weight] ?? 1;

async function read(name: string): Promise<Response> {
  const response = await fetch(ofBuild(`drawings/${name}.json`));
  if (!response.ok) throw new Error(`drawing ${name}: ${response.status}`);
  return response;
}

/** The drawing of a body, by the name that the engine gives. */
export const readDrawing = async (name: string): Promise<Drawing> => (await read(name)).json();

/** A line or face of a side view. kind: what it is of, which the styles draw. */
interface SideLine {
  d: string;
  kind:
    | "body"
    | "glass"
    | "line"
    | "fine"
    | "bright"
    | "chrome"
    | "solid"
    | "ground"
    | "tyre"
    | "rim"
    | "hub";
}
const readSides = async (): Promise<{ sides: Record<Body, SideLine[]> }> => (await read("sides")).json();

let sides: ReturnType<typeof readSides> | null = null;
/** Side view of a body. It draws itself once it is loaded; until then the words are enough. */
export function sideView(body: Body): SVGSVGElement {
  const figure = svg("svg", {
    viewBox: "10 4 380 126",
    class: "side-view",
    "aria-hidden": "true",
    focusable: "false",
  });
  sides ??= readSides();
  sides.then(
    (all) => figure.append(...all.sides[body].map(({ d, kind }) => svg("path", { d, class: kind }))),
    () => {},
  );
  return figure;
}

function stroke(line: DrawnLine): SVGPathElement {
  return svg("path", { d: line.d, class: "stroke", "stroke-width": widthOf(line) });
}

/** What each cut shows, with its heavy and its light lines. */
const CUTS: readonly (readonly [text: string, strong: string[], fine: string[]])[] = [
  [
    "A separate rail below the floor, held to it with bolts and rubber blocks",
    ["M22 2L20 34", "M18 36H34V52H18Z", "M34 46H118", "M54 56H74V74H54Z"],
    ["M59 46V56H69V46", "M64 40V66"],
  ],
  [
    "One shell: a deep box below the door with a seam hanging under it, and no rail of its own beside it",
    ["M22 2L20 34", "M14 36H38V58L27 64V76H23V64L14 58Z", "M38 52H118"],
    ["M25 64V76"],
  ],
];

/** What to look for under the door: two cuts across the car with their words. */
export function underTheDoor(): HTMLElement {
  return el(
    "div",
    { class: "cuts" },
    CUTS.map(([text, strong, fine]) =>
      el(
        "figure",
        {},
        svg(
          "svg",
          { viewBox: "0 0 120 80", "aria-hidden": "true", focusable: "false" },
          strong.map((d) => svg("path", { d, class: "stroke", "stroke-width": 2.2 })),
          fine.map((d) => svg("path", { d, class: "stroke", "stroke-width": 1.1 })),
        ),
        el("figcaption", {}, text),
      ),
    ),
  );
}

type Hatch = "some" | "half" | "most";

/** Slanting lines in three densities: closer for more cars of ten. */
function hatching(id: string): SVGDefsElement {
  const one = (name: Hatch, gap: number): SVGPatternElement =>
    svg(
      "pattern",
      {
        id: `${id}-${name}`,
        width: gap,
        height: gap,
        patternUnits: "userSpaceOnUse",
        patternTransform: "rotate(45)",
      },
      svg("path", { d: `M0 0V${gap}`, class: "stroke", "stroke-width": 1.3 }),
    );
  return svg("defs", {}, one("some", 11), one("half", 6), one("most", 3.2));
}

/** Which hatching stands for how many cars of ten; the words are in the key. */
const STEPS: readonly (readonly [least: number, hatch: Hatch])[] = [
  [8, "most"],
  [5, "half"],
  [2, "some"],
];
const KEY: readonly (readonly [hatch: Hatch | "blank", text: string])[] = [
  ["blank", "fewer than 2 cars in 10"],
  ["some", "2 to 4"],
  ["half", "5 to 7"],
  ["most", "8 or more"],
];
const hatchOf = (inTen: number): Hatch | null => STEPS.find(([least]) => inTen >= least)?.[1] ?? null;

/** inTen: how many cars of ten are rusted through at each item. zoneOf: the zone of each. */
function sheet(
  part: DrawnSheet,
  inTen: ReadonlyMap<string, number>,
  zoneOf: ReadonlyMap<string, string>,
  id: string,
): SVGSVGElement {
  const shapes = part.shapes.map((shape) => {
    const hatch = hatchOf(inTen.get(shape.item) ?? 0);
    return svg(
      "g",
      { class: "part", "data-zone": zoneOf.get(shape.item) },
      svg("path", { d: shape.d, class: "paper", "fill-rule": "evenodd" }),
      hatch && svg("path", { d: shape.d, fill: `url(#${id}-${hatch})`, "fill-rule": "evenodd" }),
      svg("path", { d: shape.d, class: "stroke", "stroke-width": widthOf(shape) }),
    );
  });
  return svg(
    "svg",
    { viewBox: part.crop, class: "opened-out", "aria-hidden": "true", focusable: "false" },
    hatching(id),
    shapes,
    part.lines.map(stroke),
  );
}

function keyEntry([name, text]: (typeof KEY)[number]): HTMLLIElement {
  const id = freshId("key");
  return el(
    "li",
    {},
    svg(
      "svg",
      { viewBox: "0 0 36 20", class: "key-box", "aria-hidden": "true", focusable: "false" },
      hatching(id),
      svg("rect", { x: 1, y: 1, width: 34, height: 18, class: "stroke", "stroke-width": 1, fill: "none" }),
      name !== "blank" && svg("rect", { x: 1, y: 1, width: 34, height: 18, fill: `url(#${id}-${name})` }),
    ),
    text,
  );
}

/** The car opened out flat, nose up, in two sheets, hatched by how many cars of ten are rusted
 *  through at each part. The list beside it says the same. */
export async function openedOut(body: string, zones: readonly ZoneRow[]): Promise<HTMLElement> {
  const { sheets } = await readDrawing(body);
  const inTen = new Map<string, number>();
  const zoneOf = new Map<string, string>();
  for (const zone of zones) {
    for (const item of zone.items) {
      inTen.set(item.id, item.in_ten);
      zoneOf.set(item.id, zone.id);
    }
  }
  const id = freshId("sheet");
  return el(
    "figure",
    { class: "sheets" },
    el(
      "div",
      { class: "sheet-pair" },
      el(
        "div",
        {},
        el("p", { class: "sheet-name" }, "Outside"),
        sheet(sheets.skins, inTen, zoneOf, `${id}-skins`),
      ),
      el(
        "div",
        {},
        el("p", { class: "sheet-name" }, "Behind the skins"),
        sheet(sheets.behind, inTen, zoneOf, `${id}-behind`),
      ),
    ),
    el(
      "figcaption",
      {},
      el(
        "p",
        {},
        "The car opened out flat, nose up; its left is on your left. The closer the lines, the more cars of ten are rusted through there.",
      ),
      el("ul", { class: "key" }, KEY.map(keyEntry)),
    ),
  );
}
