// The page without jobs: a file, a new beginning, or the sample.

import { button, el } from "../shared/dom.ts";
import { chooser } from "./jobfile.ts";

export interface StartHost {
  currency: string;
  openFile(file: File): unknown;
  begin(): unknown;
  sample(): unknown;
}

export function startView(host: StartHost): HTMLElement {
  const pick = chooser(".json,application/json", ([file]) => host.openFile(file));
  return el(
    "div",
    { class: "jobs-start" },
    el("h1", { tabindex: "-1" }, "Past jobs"),
    el(
      "p",
      {},
      "What finished jobs came to, beside the ranges that were said at first: so a shop sees how its ranges come out, and can let its own figures learn from them. Worked out on this device; nothing is sent anywhere, and only the shop sees it.",
    ),
    el(
      "div",
      { class: "start-ways" },
      el(
        "section",
        {},
        el("h2", {}, "Open a file of past jobs"),
        el("p", {}, "The file that this page saved, from this or another device."),
        el("p", {}, button("Open a file", pick.press, { "data-key": "open" }), pick.node),
      ),
      el(
        "section",
        {},
        el("h2", {}, "Begin a new one"),
        el(
          "p",
          {},
          `In ${host.currency}, as in the rates on this site. Jobs are entered by hand, or brought in from a spreadsheet or from car files.`,
        ),
        el("p", {}, button("Begin a new one", host.begin, { "data-key": "begin" })),
      ),
      el(
        "section",
        {},
        el("h2", {}, "Look at the sample"),
        el(
          "p",
          {},
          "24 jobs of an invented shop. No such car was ever in a workshop. It takes about a minute to work out.",
        ),
        el("p", {}, button("Look at the sample (invented)", host.sample, { "data-key": "sample" })),
      ),
    ),
  );
}
