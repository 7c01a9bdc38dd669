// Saving the jobs: on this device once somebody asked for it, as a file, and as a table. When
// two tabs have the same jobs, this notices before one overwrites the other.

import { band } from "../shared/bands.ts";
import { button, el } from "../shared/dom.ts";
import type { EngineClient } from "../shared/engineclient.ts";
import { saveFile } from "../shared/files.ts";
import type { Frame } from "../shared/frame.ts";
import type { Found, Saved } from "../shared/storage.ts";
import { clockText, moment } from "../shared/timestamp.ts";
import type { Ledger } from "./ledger.ts";
import { jobsStore, type StoredExtra, type StoredJobs } from "./storage.ts";
import { takeOut } from "./takeout.ts";

const FULL = "Could not keep this on the device (its storage is full or switched off). Save a file now.";

/** Past jobs that are saved on this device. */
export type SavedJobs = Saved<StoredJobs, StoredExtra>;
type FoundJobs = Found<StoredJobs, StoredExtra>;

const stampOf = (found: FoundJobs): string | undefined =>
  found === null || found === "unreadable" ? undefined : found.stamp;

export interface SavePanelHost {
  client: EngineClient;
  ledger: Ledger;
  frame: Frame;
  /** Opens the jobs that another tab has saved. */
  goOn(found: SavedJobs): void;
  /** Leaves these jobs for others. */
  another(): void;
}

export class SavePanel {
  node = el("section", { class: "keep no-paper", "aria-labelledby": "keep-title" });
  on = false;
  #stamp: string | undefined = undefined;
  #last = "";
  #line = el("p", { class: "keep-line" });
  #saveButton = button("Keep on this device", () => this.begin(), { "data-key": "keep" });
  #eraseButton = button("Erase from this device", () => this.#erase(), { "data-key": "erase" });
  #said = el("p", { class: "keep-said", role: "status" });
  #area = el("div", {});
  #host: SavePanelHost;

  constructor(host: SavePanelHost) {
    this.#host = host;
    jobsStore.whenOtherTabSaves((found) => {
      if (this.on && stampOf(found) !== this.#stamp) this.#other(found);
    });
    addEventListener("beforeunload", (event) => {
      const { ledger } = this.#host;
      if (!this.on && ledger.unsaved && !ledger.file?.invented) event.preventDefault();
    });
    this.#build();
  }

  /** Called with every change that counts, before anything else happens. */
  changed(): void {
    if (!this.on) {
      this.#draw();
      return;
    }
    const found = jobsStore.load();
    if (found && found !== "unreadable" && found.stamp !== this.#stamp) {
      this.#other(found);
      return;
    }
    this.#write();
  }

  #write(): void {
    const { ledger, frame } = this.#host;
    const stamp = `${Date.now()} ${Math.random().toString(36).slice(2)}`;
    const done = jobsStore.save(ledger.current, moment(), stamp, { waiting: ledger.waiting });
    if (done) {
      this.#stamp = stamp;
      this.#last = clockText();
      frame.put("storage", null);
    } else {
      this.on = false;
      frame.put("storage", band("storage", [FULL], [["Save a file", () => this.save()]]));
    }
    this.#draw();
  }

  begin(force = false): void {
    if (jobsStore.load() && !force) {
      this.#area.replaceChildren(
        el(
          "div",
          { class: "band", role: "group", "aria-label": "Replace the kept jobs?" },
          el("p", {}, "Other past jobs are kept on this device already."),
          el(
            "div",
            { class: "band-buttons" },
            button("Put these in their place", () => this.begin(true)),
            button("Leave the others", () => this.#area.replaceChildren()),
          ),
        ),
      );
      this.#area.querySelector("button")?.focus();
      return;
    }
    this.#area.replaceChildren();
    this.on = true;
    this.#write();
  }

  /** The jobs that were saved here are now the open ones, and this tab saves them. */
  goOn(found: SavedJobs): void {
    this.on = true;
    this.#stamp = found.stamp;
    this.#last = found.when.slice(11);
    this.#draw();
  }

  stop(): void {
    this.on = false;
    this.#stamp = undefined;
    this.#area.replaceChildren();
    this.#said.textContent = "";
    this.#draw();
  }

  /** Another tab has saved meanwhile: nothing is merged, and somebody has to choose. */
  #other(found: FoundJobs): void {
    this.on = false;
    const { frame, goOn } = this.#host;
    if (!found || found === "unreadable")
      frame.put(
        "tabs",
        band("tabs", [
          "Another tab has erased these jobs from the device. This tab no longer keeps them; they are still here until it is closed.",
        ]),
      );
    else
      frame.put(
        "tabs",
        band(
          "tabs",
          [
            `Another tab has changed the jobs kept here, last at ${found.when.slice(11)}; those are the newer. This tab kept its last change at ${this.#last}. Nothing is put together from both.`,
          ],
          [
            [
              "Go on with the newer ones",
              () => {
                frame.put("tabs", null);
                goOn(found);
              },
            ],
            [
              "Go on with these and keep them instead",
              () => {
                frame.put("tabs", null);
                this.begin(true);
              },
            ],
          ],
        ),
      );
    this.#draw();
  }

  /** Saves a file. */
  save(): void {
    const { ledger } = this.#host;
    saveFile("past-jobs.json", ledger.text());
    ledger.saved();
    this.say("The file went to where your browser saves files.");
    this.#draw();
  }

  say(text: string): void {
    this.#said.textContent = text;
  }

  #draw(): void {
    const { ledger } = this.#host;
    this.#line.textContent = this.on
      ? `Kept on this device, last change at ${this.#last}.`
      : `Not kept on this device${ledger.unsaved ? ", and not saved as a file since the last change" : ""}: what is not saved is gone when this tab is closed.`;
    this.#saveButton.hidden = this.on;
    this.#eraseButton.hidden = !this.on;
  }

  #erase(): void {
    const gone = jobsStore.erase();
    this.on = false;
    this.#draw();
    this.say(
      gone
        ? "Nothing of these jobs is kept on this device now. They are still on this page until it is closed."
        : "The device would not erase it. Clear this site's data in the browser.",
    );
    this.#saveButton.focus();
  }

  #build(): void {
    this.node.replaceChildren(
      el("h2", { id: "keep-title", tabindex: "-1" }, "Keep it"),
      this.#line,
      el(
        "div",
        { class: "with-buttons" },
        this.#saveButton,
        this.#eraseButton,
        button("Save a file", () => this.save(), { "data-key": "save" }),
        button("Print", () => print(), { "data-key": "print" }),
      ),
      this.#area,
      this.#said,
      takeOut({ client: this.#host.client, say: (text) => this.say(text) }),
      el(
        "p",
        {},
        button("Other past jobs", () => this.#host.another(), { class: "quiet", "data-key": "another" }),
      ),
    );
  }
}
