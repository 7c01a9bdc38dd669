// The shop's own part prices as a table for a spreadsheet.

import { button, el } from "../shared/dom.ts";
import { saveFile } from "../shared/files.ts";
import type { ReplyTo } from "../shared/requests.ts";
import type { FormHost } from "./formhost.ts";

const SEPARATORS: readonly (readonly [separator: string, text: string])[] = [
  [",", "Cells cut by commas"],
  [";", "Cells cut by semicolons, decimals with a comma"],
  ["tab", "Cells cut by tabs"],
];

export function pricesOut(host: FormHost): HTMLElement {
  const said = el("p", { role: "status" });
  const save = async (separator: string) => {
    let reply: ReplyTo<"write_prices">;
    try {
      reply = await host.client.ask({ ask: "write_prices", rates: host.draft.text(), separator });
    } catch {
      said.textContent = "The sums did not answer. Try once more.";
      return;
    }
    if (reply.kind !== "prices_written") {
      said.textContent = `The table could not be made: ${reply.text}`;
      return;
    }
    saveFile(separator === "tab" ? "part-prices.tsv" : "part-prices.csv", reply.text, "text/csv");
    said.textContent = "The table went to where your browser saves files.";
  };
  return el(
    "section",
    {},
    el("h3", {}, "Prices for a spreadsheet"),
    el(
      "p",
      { class: "hint" },
      "Save the list above as a table. Your spreadsheet decides which kind it opens well.",
    ),
    el(
      "div",
      { class: "add" },
      SEPARATORS.map(([id, text]) => button(text, () => save(id))),
    ),
    said,
  );
}
