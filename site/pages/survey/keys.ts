// Which key does what. Letters go by the character, not by the place of the
// key, so that every Latin keyboard works. Single letters can be turned off.

const MOVES = {
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
const LETTERS = { f: ["finding"], c: ["unseen"], o: ["box"], e: ["rest"], "?": ["help"] };

/** The act of a key press, or null when it is not ours. finding: a finding's
 *  letter is awaited. */
export function actOf(event, { conditions, findings, letters, finding }) {
  const { key } = event;
  if ((event.ctrlKey || event.metaKey) && !event.altKey && key.toLowerCase() === "z" && !event.shiftKey)
    return ["undo"];
  if (event.ctrlKey || event.metaKey || event.altKey) return null;
  if (MOVES[key]) return MOVES[key];
  if (!letters || [...key].length !== 1) return null;
  const letter = key.toLowerCase();
  if (finding) {
    const found = findings.find((f) => f.key === letter);
    return found ? ["found", found] : ["not_found", letter];
  }
  const condition = conditions.find((c) => c.key === letter);
  return condition ? ["condition", condition] : (LETTERS[letter] ?? null);
}

/** The table of keys, for "?". */
export function keyTable(conditions, findings) {
  return [
    ...conditions.map((c) => [c.key.toUpperCase(), `${c.name}; then the next part`]),
    ["C", "Could not see: dealt with, still not known"],
    ["F, then a letter", "What was found here; then the word"],
    ...findings.map((f) => [`F ${f.key.toUpperCase()}`, f.name]),
    ["O", "Closed box opened, or not opened: all parts that share it"],
    ["E", "Rest of the seen parts of this zone: sound; closed boxes stay not known"],
    ["Arrows, Home, End", "Move; first and last part of the zone"],
    ["Page Up, Page Down", "Zone before, zone after"],
    ["Backspace, Ctrl Z", "Take back the last entry and stand on it"],
    ["Enter, Esc", "Into the part's notes, and back to the list"],
    ["?", "This table"],
  ];
}
