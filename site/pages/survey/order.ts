// The order in which the cursor walks the list: rows of cells, zone by zone or
// box by box. Nothing here touches the page.

/** Rows of a zone: a part with one line is one row; one with several gets a row
 *  for its name and one for each line. cells: [left, right] or [whole]. */
export function zoneRows(zone) {
  return zone.rows.flatMap((part) => {
    const cells = (line) => (line.whole ? [line.whole] : [line.left || null, line.right || null]);
    const several = part.lines.length > 1 || part.lines[0].label;
    if (!several) return [{ head: part.name, cells: cells(part.lines[0]) }];
    return [
      { head: part.name, title: true, cells: [] },
      ...part.lines.map((line, n) => ({
        head: line.label || `${part.name} ${n + 1}`,
        sub: true,
        cells: cells(line),
      })),
    ];
  });
}

/** Rows of one closed box. */
export const boxRows = (box, items) => box.items.map((on) => ({ head: items[on].name, cells: [on] }));

/** All items of some rows: across (left, right, next row), or down one side
 *  with what has no side, then down the other. */
export function sequence(rows, down) {
  if (!down) return rows.flatMap((row) => row.cells.filter(Boolean));
  const first = rows.map((row) => row.cells[0]).filter(Boolean);
  const second = rows
    .filter((row) => row.cells.length > 1)
    .map((row) => row.cells[1])
    .filter(Boolean);
  return [...first, ...second];
}

/** The groups of a list with their rows: zones, or boxes when opening up. */
export function groupsOf(sheet, opening) {
  if (!opening) return sheet.zones.map((z) => ({ id: z.id, name: z.name, rows: zoneRows(z) }));
  return (sheet.boxes ?? []).map((b) => ({
    id: b.id,
    name: b.name,
    box: b.id,
    rows: boxRows(b, sheet.items),
  }));
}

/** The rows of all closed boxes in one list, each box under its name. */
export const allRows = (groups, state) =>
  groups.flatMap((g) => [{ head: `${g.name}: ${state(g)}`, title: true, cells: [] }, ...g.rows]);

export function groupOf(groups, on) {
  return groups.find((g) => g.rows.some((row) => row.cells.includes(on))) ?? groups[0];
}

/** The item after or before one, across groups; null past either end. */
export function step(groups, on, by, down) {
  const all = groups.flatMap((g) => sequence(g.rows, down));
  return all[all.indexOf(on) + by] ?? null;
}

/** The item above, below, left or right of one inside its group, else itself. */
export function beside(rows, on, rowBy, columnBy) {
  const filled = rows.filter((row) => row.cells.some(Boolean));
  const at = filled.findIndex((row) => row.cells.includes(on));
  if (at < 0) return on;
  const column = filled[at].cells.indexOf(on);
  if (columnBy) return filled[at].cells[column + columnBy] || on;
  for (let n = at + rowBy; n >= 0 && n < filled.length; n += rowBy) {
    const found =
      filled[n].cells[Math.min(column, filled[n].cells.length - 1)] || filled[n].cells.find(Boolean);
    if (found) return found;
  }
  return on;
}

/** Where the cursor stands when a group is gone to. */
export const firstOf = (group, down) => sequence(group.rows, down)[0];
export const lastOf = (group, down) => sequence(group.rows, down).at(-1);
