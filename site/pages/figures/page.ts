// Shortens the tables to the rows that contain every word typed. Without this script the
// page shows all rows, and the browser's own search finds them.

import "../shared/trustedtypes.ts";
import { byId } from "../shared/dom.ts";

const field = byId("filter-text");
if (!(field instanceof HTMLInputElement)) throw new Error('expected "filter-text" to be an input');
const count = byId("filter-count");
const rows = [...document.querySelectorAll<HTMLElement>("tr[data-entry], tr[data-part]")].map((node) => ({
  node,
  text: node.textContent.toLowerCase(),
}));
const blocks = document.querySelectorAll<HTMLElement>(".topic, .topic table");

function shorten(typed: string): void {
  const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
  let left = 0;
  for (const { node, text } of rows) {
    node.hidden = !words.every((word) => text.includes(word));
    if (!node.hidden) left++;
  }
  for (const block of blocks)
    block.hidden =
      words.length > 0 && !block.querySelector("tr[data-entry]:not([hidden]), tr[data-part]:not([hidden])");
  count.textContent = words.length ? `${left} of ${rows.length} lines` : `${rows.length} lines`;
}

byId("filter").hidden = false;
field.addEventListener("input", () => shorten(field.value));
shorten(field.value);
