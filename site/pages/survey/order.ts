// The order in which the cursor goes through the list: rows of cells, zone by zone or box by
// box. Nothing here touches the page.

import type { SheetBox, SheetLine, SheetReply, SheetZone } from "../shared/replies.ts";

/** A row of the list. cells: the items of both sides, null where a side has none; or one
 *  item without a side; or none in a row that is a heading. */
export interface Row {
  head: string;
  cells: readonly (string | null)[];
  /** The row is only a heading. */
  title?: boolean;
  /** The row belongs to the heading above it. */
  sub?: boolean;
}

/** A part of the list that is shown at once: a zone, or a closed box when opening up. */
export interface Group {
  id: string;
  name: string;
  rows: readonly Row[];
}

/** A part with one line is one row; a part with several gets a row for its name and one for
 *  each line. */
export function zoneRows(zone: Pick<SheetZone, "rows">): Row[] {
  const cells = (line: SheetLine) => (line.whole ? [line.whole] : [line.left || null, line.right || null]);
  return zone.rows.flatMap(({ name, lines }): Row[] => {
    const [only, second] = lines;
    if (!only) return [];
    if (!second && !only.label) return [{ head: name, cells: cells(only) }];
    return [
      { head: name, title: true, cells: [] },
      ...lines.map((line, n) => ({ head: line.label || `${name} ${n + 1}`, sub: true, cells: cells(line) })),
    ];
  });
}

export const boxRows = (box: SheetBox, items: SheetReply["items"]): Row[] =>
  box.items.map((on) => ({ head: items[on]?.name ?? on, cells: [on] }));

/** All items of some rows: across (left, right, next row); or, with down, the left side and
 *  what has no side, and then the right side. */
export function sequence(rows: readonly Row[], down: boolean): string[] {
  const isItem = (on: string | null | undefined): on is string => Boolean(on);
  if (!down) return rows.flatMap((row) => row.cells.filter(isItem));
  const first = rows.map((row) => row.cells[0]);
  const second = rows.map((row) => row.cells[1]);
  return [...first, ...second].filter(isItem);
}

/** The groups of the list with their rows. */
export function groupsOf(sheet: SheetReply, opening: boolean): Group[] {
  if (!opening) return sheet.zones.map((z) => ({ id: z.id, name: z.name, rows: zoneRows(z) }));
  return sheet.boxes.map((b) => ({ id: b.id, name: b.name, rows: boxRows(b, sheet.items) }));
}

/** The rows of all closed boxes in one list, each box under its name and its state. */
export const allRows = (groups: readonly Group[], state: (group: Group) => string): Row[] =>
  groups.flatMap((g) => [{ head: `${g.name}: ${state(g)}`, title: true, cells: [] }, ...g.rows]);

export const hasItem = (group: Group, on: string): boolean =>
  group.rows.some((row) => row.cells.includes(on));

/** The group of an item, or the first one. */
export const groupOf = (groups: readonly Group[], on: string): Group | undefined =>
  groups.find((g) => hasItem(g, on)) ?? groups[0];

/** The item that is by places after an item, across groups; null past either end. */
export function step(groups: readonly Group[], on: string, by: number, down: boolean): string | null {
  const all = groups.flatMap((g) => sequence(g.rows, down));
  return all[all.indexOf(on) + by] ?? null;
}

/** The item above, below, left or right of an item inside its group; the same item where
 *  there is none. rowBy and columnBy: 1, 0 or -1. */
export function beside(rows: readonly Row[], on: string, rowBy: number, columnBy: number): string {
  const filled = rows.map((row) => row.cells).filter((cells) => cells.some(Boolean));
  const at = filled.findIndex((cells) => cells.includes(on));
  const here = filled[at];
  if (!here) return on;
  const column = here.indexOf(on);
  if (columnBy) return here[column + columnBy] || on;
  const ahead = rowBy > 0 ? filled.slice(at + 1) : filled.slice(0, at).reverse();
  for (const cells of ahead) {
    const found = cells[Math.min(column, cells.length - 1)] || cells.find(Boolean);
    if (found) return found;
  }
  return on;
}

/** Where the cursor starts in a group, and where it ends. */
export const firstOf = (group: Group, down: boolean): string | undefined => sequence(group.rows, down)[0];
export const lastOf = (group: Group, down: boolean): string | undefined => sequence(group.rows, down).at(-1);
