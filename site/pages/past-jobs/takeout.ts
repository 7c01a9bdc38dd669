// The figures of the jobs as a table for a spreadsheet.

import { button, el } from "../shared/dom.ts";
import type { EngineClient } from "../shared/engineclient.ts";
import { saveFile } from "../shared/files.ts";
import { choice } from "./fields.ts";

const SEPARATORS: readonly (readonly [separator: string, text: string])[] = [
  [",", "commas between the columns, a point before the cents"],
  [";", "semicolons between the columns, a comma before the cents"],
  ["tab", "tabs between the columns, a point before the cents"],
];

export interface TableHost {
  client: EngineClient;
  say(text: string): void;
}

export function takeOut(host: TableHost): HTMLElement {
  const which = choice(
    "The table has",
    SEPARATORS,
    ",",
    "A spreadsheet that is set to a comma before the cents wants the semicolons.",
  );
  const save = async () => {
    const reply = await host.client.ask({ ask: "write_jobs", separator: which.select.value });
    if (reply.kind !== "jobs_written") {
      host.say(reply.text);
      return;
    }
    saveFile("past-jobs.csv", reply.text, "text/csv");
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
