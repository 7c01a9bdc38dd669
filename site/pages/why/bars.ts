// Bars that start at zero, drawn beside the words that say the same. A length is a
// fraction of the full width of the picture.

import { type Children, el, svg } from "../shared/dom.ts";

/** A line of a list of bars. part: the full length, 0 to 1; edge: how far an outline goes
 *  on, 0 to 1; more: smaller words below the bar. */
export type BarRow = readonly [text: Children, part: number, edge?: number, more?: string];

const HEIGHT = 5;

/** The number in an amount of money, for lengths and order only. */
export const amount = (text: string): number => Number(text.replace(/\D/g, ""));

const clamp = (part: number) => Math.max(0, Math.min(1, part));

function box(part: number, className: "bar-edge" | "bar-ink"): SVGRectElement {
  const width = Math.max(0.4, 100 * clamp(part) - 0.4);
  return svg("rect", { x: 0.2, y: 0.2, width, height: HEIGHT - 0.4, class: className });
}

/** A bar filled up to part, with an outline up to edge where there is one. */
export function bar(part: number, edge?: number): SVGSVGElement {
  return svg(
    "svg",
    {
      viewBox: `0 0 100 ${HEIGHT}`,
      preserveAspectRatio: "none",
      class: "bar",
      "aria-hidden": "true",
      focusable: "false",
    },
    edge !== undefined && box(edge, "bar-edge"),
    box(part, "bar-ink"),
  );
}

/** The words of each row come first, and the bar mirrors them. */
export function barList(
  rows: readonly BarRow[],
  { ordered = false }: { ordered?: boolean } = {},
): HTMLUListElement | HTMLOListElement {
  return el(
    ordered ? "ol" : "ul",
    { class: "bars" },
    rows.map(([text, part, edge, more]) =>
      el("li", {}, el("p", {}, text), bar(part, edge), more && el("p", { class: "bar-more" }, more)),
    ),
  );
}
