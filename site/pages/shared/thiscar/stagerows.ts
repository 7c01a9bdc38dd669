// The rows of "before and after" that have a range to draw.

import type { BeforeAfterReply, StageRange, StageRow } from "../replies.ts";

/** The row of a stage that is done. */
export type DrawnRow = StageRow & StageRange;

export const isDrawn = (row: StageRow): row is DrawnRow => row.done && Boolean(row.dots?.length);

export const drawnRows = (reply: BeforeAfterReply): DrawnRow[] => reply.rows.filter(isDrawn);

/** What moved the range, each list under its name; a list without an entry is left out. */
export const movedLists = (reply: BeforeAfterReply): { name: string; lines: string[] }[] =>
  [
    { name: "Worse than usual", lines: reply.worse },
    { name: "Better than usual", lines: reply.better },
  ].filter(({ lines }) => lines.length > 0);
