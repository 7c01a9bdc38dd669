// Saving the jobs: on this device once somebody asked for it, as a file, and as a table. What
// goes for every page of the shop is in shared/savepanel.ts.

import { button, el } from "../shared/dom.ts";
import type { EngineClient } from "../shared/engineclient.ts";
import { saveFile } from "../shared/files.ts";
import type { Frame } from "../shared/frame.ts";
import { SavePanel } from "../shared/savepanel.ts";
import type { SaveWords } from "../shared/savewords.ts";
import type { Saved } from "../shared/storage.ts";
import type { Ledger } from "./ledger.ts";
import { jobsStore, type StoredExtra, type StoredJobs } from "./storage.ts";
import { takeOut } from "./takeout.ts";

/** Past jobs that are saved on this device. */
export type SavedJobs = Saved<StoredJobs, StoredExtra>;

const wordsFor = (ledger: Ledger): SaveWords => ({
  title: "Keep it",
  line: (on, last) =>
    on
      ? `Kept on this device, last change at ${last}.`
      : `Not kept on this device${ledger.unsaved ? ", and not saved as a file since the last change" : ""}: what is not saved is gone when this tab is closed.`,
  replace: {
    label: "Replace the kept jobs?",
    question: "Other past jobs are kept on this device already.",
    yes: "Put these in their place",
    no: "Leave the others",
  },
  erasedElsewhere:
    "Another tab has erased these jobs from the device. This tab no longer keeps them; they are still here until it is closed.",
  newer: (when, last) =>
    `Another tab has changed the jobs kept here, last at ${when}; those are the newer. This tab kept its last change at ${last}. Nothing is put together from both.`,
  takeNewer: "Go on with the newer ones",
  keepThis: "Go on with these and keep them instead",
  erased: "Nothing of these jobs is kept on this device now. They are still on this page until it is closed.",
  filed: "The file went to where your browser saves files.",
});

export interface JobsPanelHost {
  client: EngineClient;
  ledger: Ledger;
  frame: Frame;
  /** Opens the jobs that another tab has saved. */
  goOn(found: SavedJobs): unknown;
  /** Leaves these jobs for others. */
  another(): void;
}

export type JobsPanel = SavePanel<StoredJobs, StoredExtra>;

export function jobsPanel({ client, ledger, frame, goOn, another }: JobsPanelHost): JobsPanel {
  const panel: JobsPanel = new SavePanel<StoredJobs, StoredExtra>({
    store: jobsStore,
    frame,
    words: wordsFor(ledger),
    current: () => ({ thing: ledger.current, more: { waiting: ledger.waiting } }),
    file: () => {
      saveFile("past-jobs.json", ledger.text());
      ledger.saved();
    },
    goOn,
    buttons: button("Print", () => print(), { "data-key": "print" }),
    below: [
      takeOut({ client, say: (text) => panel.say(text) }),
      el("p", {}, button("Other past jobs", another, { class: "quiet", "data-key": "another" })),
    ],
    className: "no-paper",
  });
  addEventListener("beforeunload", (event) => {
    if (!panel.on && ledger.unsaved && !ledger.file?.invented) event.preventDefault();
  });
  return panel;
}
