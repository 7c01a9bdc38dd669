// Part prices from a spreadsheet and back: pasted or opened, looked at before any
// of it is taken.

import { button, el, list } from "../dom.js";
import { saveFile } from "../files.js";

/** Longest table read, in bytes. */
const MOST_BYTES = 4_000_000;

export function pricesIn(host) {
  const box = el("textarea", { id: "prices-text", rows: 5, spellcheck: "false", "aria-describedby": "prices-hint" });
  const file = el("input", { type: "file", id: "prices-file", accept: ".csv,.tsv,.txt,text/csv" });
  const found = el("div", { class: "found", role: "status" });
  let decimal = "";
  const read = async (text) => {
    if (!text.trim()) { found.replaceChildren(el("p", {}, "Nothing was pasted.")); return; }
    const reply = await host.link.ask({ ask: "read_prices", text, decimal, words: host.words(), currency: host.draft.get("currency") });
    show(reply, text);
  };
  const answer = (mark, text) => { decimal = mark; read(text); };
  const show = (reply, text) => {
    if (reply.kind !== "prices_read") { found.replaceChildren(el("p", { class: "error" }, reply.text)); return; }
    const good = reply.prices.length;
    found.replaceChildren(...[
      el("p", {}, `${good} good ${good === 1 ? "row" : "rows"}, ${reply.refused} refused.`),
      ...reply.questions.slice(0, 1).map((q) => el("div", { class: "band" }, el("p", {}, q.text), button("The point marks decimals: 1,234.50", () => answer("point", text)), button("The comma marks decimals: 1.234,50", () => answer("comma", text)))),
      reply.refusals.length > 0 && list(reply.refusals.slice(0, 50).map((r) => r.text), { class: "refusals" }),
      reply.refusals.length > 50 && el("p", { class: "hint" }, `and ${reply.refused - 50} more.`),
      reply.ignored.length > 0 && el("p", { class: "hint" }, `Columns not read: ${reply.ignored.join(", ")}.`),
      good > 0 && button(`Take the ${good} good ${good === 1 ? "row" : "rows"}`, () => take(reply.prices)),
    ].filter(Boolean));
  };
  const take = (prices) => {
    const same = (a, b) => a.part === b.part && a.way === b.way && (a.body ?? "") === (b.body ?? "");
    const kept = host.draft.get("parts.prices").filter((old) => !prices.some((p) => same(p, old)));
    host.draft.set("parts.prices", [...kept, ...prices], `took ${prices.length} part prices`);
    host.redraw();
  };
  file.addEventListener("change", async () => {
    const [one] = file.files;
    if (!one) return;
    if (one.size > MOST_BYTES) { found.replaceChildren(el("p", { class: "error" }, "This table is longer than can be read here (4 MB).")); return; }
    box.value = "";
    await read(await one.text());
  });
  return el("section", { class: "prices-in" }, el("h3", {}, "Prices from a spreadsheet"),
    el("p", { class: "hint", id: "prices-hint" }, "Columns: part, way, low, likely, high; if you like body, had, note. The first row holds these names. Part and way by name or id. A row with the likely price alone is taken as exact."),
    el("div", { class: "typed" }, el("label", { for: "prices-text" }, "Paste the table"), box), button("Look at it", () => read(box.value)),
    el("div", { class: "typed" }, el("label", { for: "prices-file" }, "or open a file"), file), found);
}

const SEPARATORS = [[",", "Cells cut by commas"], [";", "Cells cut by semicolons, decimals with a comma"], ["tab", "Cells cut by tabs"]];

export function pricesOut(host) {
  const said = el("p", { role: "status" });
  const save = async (separator) => {
    const reply = await host.link.ask({ ask: "write_prices", rates: host.draft.text(), separator });
    if (reply.kind !== "prices_written") { said.textContent = reply.text; return; }
    saveFile("part-prices.csv", reply.text, "text/csv");
    said.textContent = "The table went to where your browser saves files.";
  };
  return el("section", {}, el("h3", {}, "Prices for a spreadsheet"), el("div", { class: "add" }, SEPARATORS.map(([id, text]) => button(text, () => save(id)))), said);
}
