// The figures of the jobs as a table for a spreadsheet.

import { button, el } from "../shared/dom.ts";
import { choice } from "./fields.ts";

const SEPARATORS = [
  [",", "commas between the columns, a point before the cents"],
  [";", "semicolons between the columns, a comma before the cents"],
  ["tab", "tabs between the columns, a point before the cents"],
];

/** host: link, say(text) */
export function takeOut(host) {
  const which = choice(
    "The table has",
    SEPARATORS,
    ",",
    "A spreadsheet that is set to a comma before the cents wants the semicolons.",
  );
  const save = async () => {
    const reply = await host.link.ask({ ask: "write_jobs", separator: which.select.value });
    if (reply.kind !== "jobs_written") {
      host.say(reply.text);
      return;
    }
    const address = URL.createObjectURL(new Blob([reply.text], { type: "text/csv" }));
    const anchor = el("a", { href: address, download: "past-jobs.csv" });
    document.body.append(anchor);
    anchor.click();
    anchor.remove();
    setTimeout(() => URL.revokeObjectURL(address), 10000);
    host.say(
      "The table went to where your browser saves files. It holds the figures, not the cars: keep the file of past jobs as well.",
    );
  };
  return el(
    "div",
    { class: "take-out" },
    el("h3", {}, "As a table for a spreadsheet"),
    which.node,
    el("p", {}, button("Save a table", save, { "data-key": "csv" })),
  );
}
