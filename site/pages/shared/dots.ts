// Twenty dots on a money axis, each one car in twenty. The engine gives the positions as
// parts of the axis; this file only draws them. Dots inside the range are full and those
// outside are hollow, so that shape, not colour, tells them apart.

import { el, freshId, svg } from "./dom.ts";
import type { Axis, Dot, RangeRow } from "./replies.ts";

/** Height and width in dot diameters: the engine packs for thirty to the axis. */
const ACROSS = 30;
const MARGIN = 1;
const RADIUS = 0.44;

/** Where a dot is on the axis, from 0 to 1, and how high it is stacked. */
export type DotPlace = Pick<Dot, "at" | "stack" | "inside">;
/** A row of dots and what it says in words. */
export interface DotRow {
  dots: readonly DotPlace[];
  dots_text: string;
}

function dot(d: DotPlace, height: number): SVGCircleElement {
  const outline = d.inside ? 0 : 0.12;
  return svg("circle", {
    cx: MARGIN + d.at * ACROSS,
    cy: height - d.stack + 0.5,
    r: RADIUS - outline / 2,
    class: d.inside ? "dot inside" : "dot outside",
    "stroke-width": outline,
  });
}

function ticks(axis: Axis): HTMLElement {
  const box = el("div", { class: "ticks", "aria-hidden": "true" });
  for (const tick of axis.ticks) {
    const mark = el("span", { class: "tick" }, tick.text);
    mark.style.setProperty("--at", String(tick.at));
    box.append(mark);
  }
  return box;
}

/** One row of dots. levels: room for the tallest stack of all rows, in dots. */
export function dotRow(row: DotRow, axis: Axis, levels: number): HTMLElement {
  const id = freshId("dots");
  const height = levels + 0.2;
  const picture = svg(
    "svg",
    {
      viewBox: `0 0 ${ACROSS + 2 * MARGIN} ${height + 0.5}`,
      role: "img",
      "aria-labelledby": id,
      class: "dots",
    },
    row.dots.map((d) => dot(d, height)),
    svg("path", { d: `M${MARGIN} ${height}H${MARGIN + ACROSS}`, class: "stroke", "stroke-width": 0.08 }),
    axis.ticks.map((t) =>
      svg("path", { d: `M${MARGIN + t.at * ACROSS} ${height}v0.5`, class: "stroke", "stroke-width": 0.08 }),
    ),
  );
  return el("figure", { class: "dot-figure" }, picture, ticks(axis), el("figcaption", { id }, row.dots_text));
}

/** The same figures for every row as a table. */
export function figuresTable(
  rows: readonly Pick<RangeRow, "label" | "low_text" | "half_text" | "set_aside_text" | "high_text">[],
): HTMLTableElement {
  const cell = (text: string): HTMLTableCellElement => el("td", {}, text);
  return el(
    "table",
    { class: "figures" },
    el("caption", {}, "The same in figures"),
    el(
      "thead",
      {},
      el(
        "tr",
        {},
        ["", "1 in 10 below", "half below", "8 in 10 below", "1 in 10 above"].map((h) =>
          h ? el("th", { scope: "col" }, h) : el("td", {}),
        ),
      ),
    ),
    el(
      "tbody",
      {},
      rows.map((r) =>
        el(
          "tr",
          {},
          el("th", { scope: "row" }, r.label),
          cell(r.low_text),
          cell(r.half_text),
          cell(r.set_aside_text),
          cell(r.high_text),
        ),
      ),
    ),
  );
}

/** The room that rows need for their stacks, in dots. */
export function levelsOf(rows: readonly { dots: readonly Pick<Dot, "stack">[] }[]): number {
  return Math.max(4, ...rows.flatMap((r) => r.dots.map((d) => d.stack)));
}
