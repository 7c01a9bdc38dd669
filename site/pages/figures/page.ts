// Shortens the tables to the rows that hold every word typed. Without it the whole
// page is there to be read, and to be searched by the browser.

import "../shared/trustedtypes.ts";

const field = document.getElementById("filter-text");
const count = document.getElementById("filter-count");
const rows = [...document.querySelectorAll("tr[data-entry], tr[data-part]")].map((node) => ({
  node,
  text: node.textContent.toLowerCase(),
}));
const blocks = [...document.querySelectorAll(".topic, .topic table")];

function shorten() {
  const words = field.value.toLowerCase().split(/\s+/).filter(Boolean);
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

document.getElementById("filter").hidden = false;
field.addEventListener("input", shorten);
shorten();
