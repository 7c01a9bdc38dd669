// Which key does what. Letters go by the character and not by the place of the key, so that
// every Latin keyboard works. Single letters can be turned off.

import type { HitZone } from "../shared/carfile.ts";
import type { SheetCondition, SheetFinding } from "../shared/replies.ts";

/** A finding of the whole car that is added or removed. at: the part where Undo goes. */
export interface WholeCarEntry {
  id: string;
  name: string;
  on: boolean;
  at: string;
}

/** A record of a zone that was hit, or of squareness. */
export interface HitEntry {
  where: HitZone | "square";
  /** Null takes it back. */
  id: string | null;
  /** What is said about it. */
  said: string;
  at: string;
}

/** What a key, a tap or a button does in the list: it moves the cursor, or shows something. */
export type Move =
  | readonly ["beside", rowBy: number, columnBy: number]
  | readonly ["end", which: "first" | "last"]
  | readonly ["group", by: number]
  | readonly ["panel" | "away" | "words" | "help" | "finding"];

/** What records something, or undoes that. */
export type RecordAct =
  | readonly ["condition", SheetCondition]
  | readonly ["found", SheetFinding]
  | readonly ["not_found", letter: string]
  | readonly ["whole_car", WholeCarEntry]
  | readonly ["hit", HitEntry]
  | readonly ["unseen" | "box" | "rest" | "sure" | "undo"];

export type Act = Move | RecordAct;

const MOVES: Readonly<Record<string, Act>> = {
  ArrowUp: ["beside", -1, 0],
  ArrowDown: ["beside", 1, 0],
  ArrowLeft: ["beside", 0, -1],
  ArrowRight: ["beside", 0, 1],
  Home: ["end", "first"],
  End: ["end", "last"],
  PageUp: ["group", -1],
  PageDown: ["group", 1],
  Enter: ["panel"],
  Escape: ["away"],
  Backspace: ["undo"],
};
const LETTERS: Readonly<Record<string, Act>> = {
  f: ["finding"],
  c: ["unseen"],
  o: ["box"],
  e: ["rest"],
  "?": ["help"],
};

type KeyPress = Pick<KeyboardEvent, "key" | "ctrlKey" | "metaKey" | "altKey" | "shiftKey">;

export interface KeyState {
  conditions: readonly SheetCondition[];
  findings: readonly SheetFinding[];
  /** Whether single letters act. */
  letters: boolean;
  /** Whether the letter of a finding comes next. */
  finding: boolean;
}

/** The act of a key press, or null when the key is not one of ours. */
export function actOf(event: KeyPress, { conditions, findings, letters, finding }: KeyState): Act | null {
  const { key } = event;
  if ((event.ctrlKey || event.metaKey) && !event.altKey && key.toLowerCase() === "z" && !event.shiftKey)
    return ["undo"];
  if (event.ctrlKey || event.metaKey || event.altKey) return null;
  const move = MOVES[key];
  if (move) return move;
  if (!letters || [...key].length !== 1) return null;
  const letter = key.toLowerCase();
  if (finding) {
    const found = findings.find((f) => f.key === letter);
    return found ? ["found", found] : ["not_found", letter];
  }
  const condition = conditions.find((c) => c.key === letter);
  return condition ? ["condition", condition] : (LETTERS[letter] ?? null);
}

/** The table of keys, for "?": each with what it does. */
export function keyTable(
  conditions: readonly SheetCondition[],
  findings: readonly SheetFinding[],
): (readonly [key: string, does: string])[] {
  return [
    ...conditions.map((c) => [c.key.toUpperCase(), `${c.name}; then the next part`] as const),
    ["C", "Could not see: dealt with, still not known"],
    ["F, then a letter", "What was found here; then the word"],
    ...findings.map((f) => [`F ${f.key.toUpperCase()}`, f.name] as const),
    ["O", "Closed box opened, or not opened: all parts that share it"],
    ["E", "Rest of the seen parts of this zone: sound; closed boxes stay not known"],
    ["Arrows, Home, End", "Move; first and last part of the zone"],
    ["Page Up, Page Down", "Zone before, zone after"],
    ["Backspace, Ctrl Z", "Take back the last entry and stand on it"],
    ["Enter, Esc", "Into the part's notes, and back to the list"],
    ["?", "This table"],
  ];
}
