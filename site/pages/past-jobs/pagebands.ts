// Bands of the page that offer what is saved on this device, or ask before jobs are lost.

import { type BandButton, band } from "../shared/bands.ts";
import { saveFile } from "../shared/files.ts";
import type { Frame } from "../shared/frame.ts";
import { momentText } from "../shared/timestamp.ts";
import type { SavedJobs } from "./savepanel.ts";
import { jobsStore } from "./storage.ts";

/** Offers the past jobs that are saved on this device, if there are any. */
export function offerSaved(frame: Frame, goOn: (found: SavedJobs) => unknown): void {
  const found = jobsStore.load();
  const erase: BandButton = [
    "Erase",
    () => {
      jobsStore.erase();
      frame.put("found", null);
    },
  ];
  if (!found) {
    frame.put("found", null);
    return;
  }
  if (found === "unreadable") {
    frame.put(
      "found",
      band(
        "found",
        ["Past jobs were kept on this device, but they cannot be read any more."],
        [["Save what is there as a file", () => saveFile("past-jobs.json", jobsStore.text() ?? "")], erase],
      ),
    );
    return;
  }
  const n = Array.isArray(found.car.jobs) ? found.car.jobs.length : 0;
  frame.put(
    "found",
    band(
      "found",
      [
        `Past jobs are kept on this device, from ${momentText(found.when)}: ${n === 1 ? "1 job" : `${n} jobs`}.`,
      ],
      [
        ["Go on", () => goOn(found)],
        ["Save a file", () => saveFile("past-jobs.json", JSON.stringify(found.car))],
        erase,
      ],
    ),
  );
}

export interface LeaveActs {
  lose(): void;
  save(): void;
  stay(): void;
}

/** Asks what is to happen with changes that are saved nowhere. */
export function askToLeave(frame: Frame, { lose, save, stay }: LeaveActs): void {
  const node = band(
    "leave",
    ["The last changes are kept nowhere. Opening other jobs loses them."],
    [
      ["Lose them", lose],
      ["Save a file first", save],
      ["Stay with these", stay],
    ],
  );
  frame.put("leave", node);
  scrollTo(0, 0);
  node.querySelector("button")?.focus();
}
