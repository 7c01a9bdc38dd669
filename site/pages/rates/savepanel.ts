// Saving the draft on this device, once somebody asked for it. When two tabs have the same
// draft, this notices and never merges the two.

import { band } from "../shared/bands.ts";
import { button, el } from "../shared/dom.ts";
import { DurableStore } from "../shared/durablestorage.ts";
import { saveFile } from "../shared/files.ts";
import type { Frame } from "../shared/frame.ts";
import { type DraftRates, isDraftRates } from "../shared/ratesfile.ts";
import type { Found } from "../shared/storage.ts";
import { clockText, moment, momentText } from "../shared/timestamp.ts";
import type { Draft } from "./draft.ts";

/** Apart from the cars; the rates are under the name "car" that all stores have. */
const store = new DurableStore<object>("underpaint rates draft 1");
const FULL = "Could not keep this on the device (its storage is full or switched off). Save a file now.";

/** A draft that is saved on this device. stamp: differs with each saving. */
export interface SavedDraft {
  rates: DraftRates;
  when: string;
  stamp: string | undefined;
}

/** The draft on this device; null when none is saved. */
export function savedDraft(): SavedDraft | "unreadable" | null {
  return draftOf(store.load());
}

function draftOf(found: Found<object>): SavedDraft | "unreadable" | null {
  if (found === null || found === "unreadable") return found;
  return isDraftRates(found.car) ? { rates: found.car, when: found.when, stamp: found.stamp } : "unreadable";
}

const stampOf = (found: SavedDraft | "unreadable" | null): string | undefined =>
  found === null || found === "unreadable" ? undefined : found.stamp;

/** Takes over what is newer on the disk. To be awaited before a draft is offered. */
export const settleDraft = (): Promise<void> => store.settle();

/** When a saved draft was last changed, in words. */
export const whenText = (found: SavedDraft): string => momentText(found.when);

/** Saves a file of the stored text, for a draft that cannot be used. */
export const saveDraftText = (): void => saveFile("rates-draft.json", store.text() ?? "");

export interface SavePanelHost {
  draft: Draft;
  frame: Frame;
  /** The text of the rates file, or null while the draft has faults. */
  canonical(): string | null;
  /** Opens the draft that another tab has saved. */
  goOn(found: SavedDraft): void;
}

export class SavePanel {
  node = el("section", { class: "keep", "aria-labelledby": "keep-title" });
  on = false;
  #stamp: string | undefined = undefined;
  #line = el("p", { class: "keep-line" });
  #said = el("p", { class: "keep-said", role: "status" });
  #keepButton = button("Keep on this device", () => this.begin());
  #eraseButton = button("Erase from this device", () => this.erase(true));
  #host: SavePanelHost;

  constructor(host: SavePanelHost) {
    this.#host = host;
    store.whenOtherTabSaves((found) => {
      if (this.on && stampOf(draftOf(found)) !== this.#stamp) this.#other();
    });
    this.node.append(
      el("h2", { id: "keep-title" }, "Keep the draft"),
      this.#line,
      el(
        "div",
        { class: "keep-buttons" },
        el(
          "div",
          {},
          this.#keepButton,
          this.#eraseButton,
          button("Save a file", () => this.save()),
        ),
      ),
      this.#said,
    );
    this.#draw();
  }

  /** Would closing this tab lose changes? */
  get loses(): boolean {
    return !this.on && this.#host.draft.changed;
  }

  /** Called with every change. */
  changed(): void {
    if (!this.on) return;
    const found = savedDraft();
    if (found && stampOf(found) !== this.#stamp) {
      this.#other();
      return;
    }
    this.#write();
  }

  #write(): boolean {
    const stamp = `${Date.now()} ${Math.random().toString(36).slice(2)}`;
    const { draft, frame } = this.#host;
    this.on = store.save(draft.current, moment(), stamp);
    if (this.on) {
      this.#stamp = stamp;
      this.#said.textContent = `Kept on this device at ${clockText()}.`;
      frame.put("storage", null);
    } else frame.put("storage", band("storage", [FULL], [["Save a file", () => this.save()]]));
    this.#draw();
    return this.on;
  }

  /** The draft that was saved here is now the one in the form. */
  goOn(found: SavedDraft): void {
    this.on = true;
    this.#stamp = found.stamp;
    this.#said.textContent = `Kept on this device, ${whenText(found)}.`;
    this.#draw();
  }

  /** Another draft is now in the form: what is stored stays as it is. */
  stop(): void {
    this.on = false;
    this.#stamp = undefined;
    this.#said.textContent = "";
    this.#draw();
  }

  begin(force = false): void {
    const { frame } = this.#host;
    if (savedDraft() && !force) {
      const away = () => frame.put("replace", null);
      frame.put(
        "replace",
        band(
          "replace",
          ["Another draft is kept on this device already."],
          [
            [
              "Put this one in its place",
              () => {
                away();
                this.begin(true);
              },
            ],
            ["Leave the other one", away],
          ],
        ),
      );
      scrollTo(0, 0);
      return;
    }
    if (this.#write()) this.#eraseButton.focus();
  }

  #other(): void {
    this.on = false;
    this.#draw();
    const found = savedDraft();
    const { frame, goOn } = this.#host;
    const away = () => frame.put("tabs", null);
    if (!found || found === "unreadable") {
      frame.put(
        "tabs",
        band("tabs", [
          "Another tab has erased the draft from the device. This tab no longer keeps it; it is still here until the tab is closed.",
        ]),
      );
      return;
    }
    frame.put(
      "tabs",
      band(
        "tabs",
        [
          `Another tab has changed the draft kept here, ${whenText(found)}; that one is the newer. Nothing is put together from both.`,
        ],
        [
          [
            "Go on with the newer one",
            () => {
              away();
              goOn(found);
            },
          ],
          [
            "Keep this one instead",
            () => {
              away();
              this.begin(true);
            },
          ],
        ],
      ),
    );
  }

  erase(fromButton = false): void {
    store.erase();
    this.on = false;
    this.#said.textContent = "Nothing of these rates is kept on this device now.";
    this.#draw();
    if (fromButton) this.#keepButton.focus();
  }

  /** Saves a file of the draft, even with faults: this page can open it again. */
  save(): void {
    saveFile(
      "rates-draft.json",
      this.#host.canonical() ?? `${JSON.stringify(this.#host.draft.rates, null, 1)}\n`,
    );
    this.#host.draft.saved();
    this.#said.textContent = "The file went to where your browser saves files. Open it here to go on.";
  }

  #draw(): void {
    this.#line.textContent = this.on
      ? "Every change is kept on this device."
      : "The draft is not kept on this device: it is gone when this tab is closed.";
    this.#keepButton.hidden = this.on;
    this.#eraseButton.hidden = !this.on;
  }
}
