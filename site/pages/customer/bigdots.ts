// The twenty dots of the range, drawn at the width that they have on the screen, so that the
// dots are as large as they can be and the text beside them stays the same size everywhere.
//
// Inside the range the dots stand in columns between its two ends, outside they stand in
// columns counted outwards from the ends: no dot is ever on the wrong side of an end.

import { el, freshId, svg } from "../shared/dom.ts";
import type { Axis, Dot, RangeRow } from "../shared/replies.ts";

/** Diameter of a dot at these two widths of the picture, in px, and on a straight line between
 *  them. */
const NARROW = { width: 328, dot: 20 };
const WIDE = { width: 1200, dot: 46 };
/** On a narrow range the dots are smaller rather than stacked higher than this. */
const TALLEST = 300;
const SMALLEST = 14;
/** From this width on there is room for the words beside the ends. */
const ROOMY = 600;
/** The axis ends short of the picture, so that the amounts at its ends fit. */
const MARGIN = 4;
/** On paper the picture is 182 mm wide (print.css). */
const PAPER = 688;

const diameterAt = (width: number): number => {
  const slope = (WIDE.dot - NARROW.dot) / (WIDE.width - NARROW.width);
  return Math.min(WIDE.dot, Math.max(SMALLEST, NARROW.dot + (width - NARROW.width) * slope));
};

export interface PlacedDot {
  x: number;
  /** Its place in its column, from 1. */
  stack: number;
  inside: boolean;
}

/** Puts the dots into columns. low and high: the ends of the range, as parts of the axis.
 *  length: of the axis, in px. size: the diameter of a dot. */
export function placeDots(
  dots: readonly Pick<Dot, "exact" | "inside">[],
  low: number,
  high: number,
  length: number,
  size: number,
): PlacedDot[] {
  const [from, to] = [low * length, high * length];
  const columns = Math.max(1, Math.floor((to - from) / size));
  const width = (to - from) / columns;
  const heights = new Map<number, number>();
  return dots.map(({ exact, inside }) => {
    const at = exact * length;
    let x: number;
    if (inside) {
      const column = Math.min(columns - 1, Math.max(0, Math.floor((at - from) / width)));
      x = from + (column + 0.5) * width;
    } else {
      // The ends are rounded, so a price may lie a little within them.
      const below = at < (from + to) / 2;
      const column = Math.max(0, Math.floor((below ? from - at : at - to) / size));
      x = below ? from - (column + 0.5) * size : to + (column + 0.5) * size;
    }
    const stack = (heights.get(x) ?? 0) + 1;
    heights.set(x, stack);
    return { x, stack, inside };
  });
}

const line = (d: string, name: string): SVGPathElement => svg("path", { d, class: name });
const text = (x: number, y: number, name: string, content: string, anchor = "middle"): SVGTextElement =>
  svg("text", { x, y, class: name, "text-anchor": anchor }, content);

/** Slanted lines within a box, each cut off at its edges. */
function hatching(x: number, y: number, width: number, height: number, gap: number): string {
  let d = "";
  for (let at = gap / 2; at < width + height; at += gap) {
    const [x1, x2] = [Math.max(0, at - height), Math.min(width, at)];
    if (x2 > x1) d += `M${x + x1} ${y + at - x1}L${x + x2} ${y + at - x2}`;
  }
  return d;
}

/** How many of the amounts of an axis fit: the first and the last always do. */
function ticksShown(axis: Axis, length: number): (tick: Axis["ticks"][number], i: number) => boolean {
  const last = axis.ticks.length - 1;
  const each = Math.ceil(64 / (length / Math.max(1, last)));
  return (_, i) => i === last || (i % each === 0 && last - i >= each);
}

function draw(row: RangeRow, axis: Axis, width: number, label: string): SVGElement {
  const roomy = width >= ROOMY;
  const length = width - 2 * MARGIN;
  const [low, high] = [row.low_minor / axis.max_minor, row.high_minor / axis.max_minor];
  let size = diameterAt(width);
  let dots = placeDots(row.dots, low, high, length, size);
  while (size > SMALLEST && size * Math.max(...dots.map((d) => d.stack)) > TALLEST) {
    size = Math.max(SMALLEST, size * 0.9);
    dots = placeDots(row.dots, low, high, length, size);
  }
  const tallest = (within: readonly PlacedDot[]): number => Math.max(0, ...within.map((d) => d.stack)) * size;
  const bar = {
    height: Math.min(size, roomy ? 30 : 16),
    width: (row.stage.price_minor / axis.max_minor) * length,
  };
  // The words of the bar stand over it, and over the dots that are so far left.
  const words = roomy
    ? ["The one price we can give now:", `${row.stage.name.toLowerCase()}, ${row.stage.price_text}`]
    : ["Priced now:", row.stage.price_text];
  const reach = Math.max(...words.map((w) => w.length)) * 7.4 + size / 2;
  const lift = Math.max(bar.height, tallest(dots.filter((d) => d.x < reach))) + 8;
  const ground = Math.max(tallest(dots) + 2, lift + 34);
  const endText = roomy ? 21 : 17;
  const height = ground + (roomy ? 62 : 54);
  const [x1, x2] = [MARGIN + low * length, MARGIN + high * length];
  const fits = ticksShown(axis, length);
  const shown = (t: Axis["ticks"][number], i: number): boolean =>
    fits(t, i) && [low, high].every((end) => Math.abs(end - t.at) * length > 24);
  const edge = roomy ? 2.5 : 2;
  const nodes: SVGElement[] = [
    line(`M${MARGIN} ${ground}H${MARGIN + length}`, "axis"),
    ...axis.ticks.map((t) => line(`M${MARGIN + t.at * length} ${ground}v6`, "axis-tick")),
    ...axis.ticks
      .filter(shown)
      .map((t) =>
        text(
          MARGIN + t.at * length,
          ground + 20,
          "axis-text",
          t.text,
          t.at === 0 ? "start" : t.at === 1 ? "end" : "middle",
        ),
      ),
    line(`M${x1} ${ground}v${roomy ? 32 : 26}M${x2} ${ground}v${roomy ? 32 : 26}`, "end-line"),
    svg("rect", {
      x: MARGIN,
      y: ground - bar.height,
      width: bar.width,
      height: bar.height,
      class: "bar-box",
    }),
    line(hatching(MARGIN, ground - bar.height, bar.width, bar.height, roomy ? 9 : 7), "bar-lines"),
    ...words.map((w, i) => text(MARGIN, ground - lift - (1 - i) * 18, "bar-text", w, "start")),
    ...dots.map((d) =>
      svg("circle", {
        cx: MARGIN + d.x,
        cy: ground - 1 - (d.stack - 0.5) * size,
        r: d.inside ? size / 2 - 1 : size / 2 - 1 - edge / 2,
        class: d.inside ? "dot inside" : "dot outside",
        "stroke-width": edge,
      }),
    ),
  ];
  // On a very narrow range the two amounts would cover each other; the words above have them.
  const half = (content: string): number => content.length * endText * 0.3;
  if (x2 - x1 > half(row.low_text) + half(row.high_text)) {
    const y = ground + (roomy ? 52 : 44);
    const place = (x: number, content: string): number =>
      Math.min(width - half(content), Math.max(half(content), x));
    nodes.push(
      text(place(x1, row.low_text), y, "end-text", row.low_text),
      text(place(x2, row.high_text), y, "end-text", row.high_text),
    );
  }
  return svg(
    "svg",
    { viewBox: `0 0 ${width} ${height}`, class: "dots big-dots", role: "img", "aria-labelledby": label },
    nodes,
  );
}

/** The dots of one row with what they say in words. */
export function bigDots(row: RangeRow, axis: Axis): HTMLElement {
  const id = freshId("dots");
  const picture = el("div", { class: "big-picture" });
  let drawn = 0;
  const drawAt = (width: number): void => {
    const whole = Math.max(240, Math.round(width));
    if (whole === drawn) return;
    drawn = whole;
    picture.replaceChildren(draw(row, axis, whole, id));
  };
  const onScreen = (): void => {
    if (picture.clientWidth) drawAt(picture.clientWidth);
  };
  drawAt(Math.min(WIDE.width, document.documentElement.clientWidth - 2 * 16));
  new ResizeObserver(onScreen).observe(picture);
  whenPrinted(picture, () => drawAt(PAPER), onScreen);
  return el(
    "figure",
    { class: "dot-figure" },
    picture,
    el(
      "figcaption",
      {},
      el("span", { id }, row.dots_text),
      ` The hatched bar at the left is ${row.stage.name.toLowerCase()} at ${row.stage.price_text}, the one price we can give now.`,
    ),
  );
}

/** How each picture is drawn for paper, and for the screen again. */
const printed = new WeakMap<Element, Record<"paper" | "screen", () => void>>();
const drawAllFor = (which: "paper" | "screen"): void => {
  for (const picture of document.querySelectorAll(".big-picture")) printed.get(picture)?.[which]();
};
let listening = false;
function whenPrinted(picture: HTMLElement, paper: () => void, screen: () => void): void {
  printed.set(picture, { paper, screen });
  if (listening) return;
  listening = true;
  addEventListener("beforeprint", () => drawAllFor("paper"));
  addEventListener("afterprint", () => drawAllFor("screen"));
}
