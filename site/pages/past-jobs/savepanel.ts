// Keeping the jobs: on this device after it was asked for, as a file, and as a
// table. Two tabs are noticed before anything is written over.

import { button, el } from "../shared/dom.ts";
import { band } from "../shared/bands.ts";
import { saveFile } from "../shared/files.ts";
import { clockText, moment } from "../shared/timestamp.ts";
import { jobsShelf } from "./storage.ts";
import { takeOut } from "./takeout.ts";

const FULL = "Could not keep this on the device (its storage is full or switched off). Save a file now.";

export class Keeping {
  node = el("section", { class: "keep no-paper", "aria-labelledby": "keep-title" });
  on = false;
  #stamp = null;
  #last = "";
  #said = el("p", { class: "keep-said", role: "status" });
  #area = el("div", {});
  #host;

  /** host: link, ledger, frame, goOn(found), another() */
  constructor(host) {
    this.#host = host;
    jobsShelf.whenOtherTabSaves((found) => {
      if (this.on && found?.stamp !== this.#stamp) this.#other(found);
    });
    addEventListener("beforeunload", (event) => {
      if (!this.on && this.#host.ledger.unsaved && !this.#host.ledger.file.invented) event.preventDefault();
    });
    this.#build();
  }

  /** Called in every change that counts, before anything else. */
  keep() {
    if (!this.on) {
      this.#draw();
      return;
    }
    const found = jobsShelf.load();
    if (found && found !== "unreadable" && found.stamp !== this.#stamp) {
      this.#other(found);
      return;
    }
    this.#write();
  }

  #write() {
    const { ledger, frame } = this.#host;
    const stamp = `${Date.now()} ${Math.random().toString(36).slice(2)}`;
    const done = jobsShelf.save(ledger.file, moment(), stamp, { waiting: ledger.waiting });
    if (done) {
      this.#stamp = stamp;
      this.#last = clockText();
      frame.put("storage", null);
    } else {
      this.on = false;
      frame.put("storage", band("storage", [FULL], [["Save a file", () => this.save()]]));
    }
    this.#draw();
    return done;
  }

  begin(force = false) {
    if (jobsShelf.load() && !force) {
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
      this.#area.querySelector("button").focus();
      return;
    }
    this.#area.replaceChildren();
    this.on = true;
    this.#write();
  }

  /** Goes on with what was found: this tab is now the one that keeps it. */
  goOn(found) {
    this.on = true;
    this.#stamp = found.stamp;
    this.#last = found.when.slice(11);
    this.#draw();
  }

  stop() {
    this.on = false;
    this.#stamp = null;
    this.#area.replaceChildren();
    this.#said.textContent = "";
    this.#draw();
  }

  /** Another tab wrote meanwhile: nothing is put together, and one is asked for. */
  #other(found) {
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

  save() {
    const { ledger } = this.#host;
    saveFile("past-jobs.json", ledger.text());
    ledger.saved();
    this.say("The file went to where your browser saves files.");
    this.#draw();
  }

  say(text) {
    this.#said.textContent = text;
  }

  #draw() {
    const { ledger } = this.#host;
    this.node.querySelector(".keep-line").textContent = this.on
      ? `Kept on this device, last change at ${this.#last}.`
      : `Not kept on this device${ledger.unsaved ? ", and not saved as a file since the last change" : ""}: what is not saved is gone when this tab is closed.`;
    this.node.querySelector("[data-key=keep]").hidden = this.on;
    this.node.querySelector("[data-key=erase]").hidden = !this.on;
  }

  #build() {
    const erase = () => {
      const gone = jobsShelf.erase();
      this.on = false;
      this.#draw();
      this.say(
        gone
          ? "Nothing of these jobs is kept on this device now. They are still on this page until it is closed."
          : "The device would not erase it. Clear this site's data in the browser.",
      );
      this.node.querySelector("[data-key=keep]").focus();
    };
    this.node.replaceChildren(
      el("h2", { id: "keep-title", tabindex: "-1" }, "Keep it"),
      el("p", { class: "keep-line" }),
      el(
        "div",
        { class: "with-buttons" },
        button("Keep on this device", () => this.begin(), { "data-key": "keep" }),
        button("Erase from this device", erase, { "data-key": "erase" }),
        button("Save a file", () => this.save(), { "data-key": "save" }),
        button("Print", () => print(), { "data-key": "print" }),
      ),
      this.#area,
      this.#said,
      takeOut({ link: this.#host.link, say: (text) => this.say(text) }),
      el(
        "p",
        {},
        button("Other past jobs", () => this.#host.another(), { class: "quiet", "data-key": "another" }),
      ),
    );
  }
}
