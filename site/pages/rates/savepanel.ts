// Saving the draft on this device, once somebody asked for it, and as a file. What goes for
// every page of the shop is in shared/savepanel.ts.

import { DurableStore } from "../shared/durablestorage.ts";
import { saveFile } from "../shared/files.ts";
import type { Frame } from "../shared/frame.ts";
import { type DraftRates, isDraftRates } from "../shared/ratesfile.ts";
import { SavePanel } from "../shared/savepanel.ts";
import type { SaveWords } from "../shared/savewords.ts";
import type { Saved } from "../shared/storage.ts";
import { momentText } from "../shared/timestamp.ts";
import type { Draft } from "./draft.ts";

/** Apart from the cars; the rates are under the name "car" that all stores have. */
export const draftStore = new DurableStore<DraftRates>("underpaint rates draft 1", isDraftRates);

/** A draft that is saved on this device. */
export type SavedDraft = Saved<DraftRates>;

/** When a saved draft was last changed, in words. */
export const whenText = (found: SavedDraft): string => momentText(found.when);

/** Saves a file of the stored text, for a draft that cannot be used. */
export const saveDraftText = (): void => saveFile("rates-draft.json", draftStore.text() ?? "");

const WORDS: SaveWords = {
  title: "Keep the draft",
  line: (on) =>
    on
      ? "Every change is kept on this device."
      : "The draft is not kept on this device: it is gone when this tab is closed.",
  saved: (time) => `Kept on this device at ${time}.`,
  found: (time) => `Kept on this device, ${time}.`,
  replace: {
    label: "Replace the kept draft?",
    question: "Another draft is kept on this device already.",
    yes: "Put this one in its place",
    no: "Leave the other one",
  },
  erasedElsewhere:
    "Another tab has erased the draft from the device. This tab no longer keeps it; it is still here until the tab is closed.",
  newer: (when) =>
    `Another tab has changed the draft kept here, ${when}; that one is the newer. Nothing is put together from both.`,
  takeNewer: "Go on with the newer one",
  keepThis: "Keep this one instead",
  erased: "Nothing of these rates is kept on this device now.",
  filed: "The file went to where your browser saves files. Open it here to go on.",
};

export interface DraftPanelHost {
  draft: Draft;
  frame: Frame;
  /** The text of the rates file, or null while the draft has faults. */
  canonical(): string | null;
  /** Opens the draft that another tab has saved. */
  goOn(found: SavedDraft): void;
}

export type DraftPanel = SavePanel<DraftRates>;

export function draftPanel({ draft, frame, canonical, goOn }: DraftPanelHost): DraftPanel {
  return new SavePanel<DraftRates>({
    store: draftStore,
    frame,
    words: WORDS,
    current: () => ({ thing: draft.current }),
    // A draft with faults is saved as well: this page can open it again.
    file: () => {
      saveFile("rates-draft.json", canonical() ?? `${JSON.stringify(draft.rates, null, 1)}\n`);
      draft.saved();
    },
    goOn,
    timeOf: whenText,
  });
}
