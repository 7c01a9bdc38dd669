// Keeping the car on this device: every press at once, with its time shown. Two
// tabs on one car are noticed before anything is written over.

import { button, el } from "../shared/dom.ts";
import { band } from "../shared/bands.ts";
import { encode } from "../shared/carurl.ts";
import { saveFile } from "../shared/files.ts";
import { toShare, today } from "../shared/linkcontent.ts";
import { shopStore } from "../shared/durablestorage.ts";
import { clockText, moment } from "../shared/timestamp.ts";

/** Longest link that a page reads; see link.js. */
const MOST_LINK = 16384;
const FULL = "Could not keep this on the device (its storage is full or switched off). Save a file now.";

export class Keeping {
  node = el("section", { class: "keep", "aria-labelledby": "keep-title" });
  /** The short line that is always in view, and the whole section. */
  line = el("p", { class: "keep-short" });
  on = false;
  #stamp = null;
  #last = "";
  #said = el("p", { class: "keep-said", role: "status" });
  #area = el("div", { class: "keep-area" });
  #host;

  /** host: job, frame, rates(), reply() (range or null), goOn(found), again() */
  constructor(host) {
    this.#host = host;
    shopStore.whenOtherTabSaves((found) => {
      if (this.on && found?.stamp !== this.#stamp) this.#other(found);
    });
    addEventListener("beforeunload", (event) => {
      if (this.loses) event.preventDefault();
    });
  }
  #failed = false;
  /** The car as it was opened, or as it lies in a file: so much is not lost. */
  #safe = null;
  /** The page goes on to another one that takes the car along. */
  takenAlong = false;

  /** Is anything recorded that would be gone with this tab? */
  get loses() {
    const { job } = this.#host;
    return (
      Boolean(job.car) &&
      !this.takenAlong &&
      (this.#failed || (!this.on && job.from?.kind !== "sample" && job.text() !== this.#safe))
    );
  }

  /** A car was opened; what comes out of this tab's own history lies nowhere else. */
  opened({ again }) {
    this.#safe = again ? null : this.#host.job.text();
  }

  /** Writes the car down; called in each press, before anything else. */
  keep() {
    if (!this.on) {
      this.#draw();
      return;
    }
    const found = shopStore.load();
    if (found && found !== "unreadable" && found.stamp !== this.#stamp) {
      this.#other(found);
      return;
    }
    this.#write();
  }

  #write() {
    const { job } = this.#host;
    const stamp = `${Date.now()} ${Math.random().toString(36).slice(2)}`;
    const done = shopStore.save(job.car, moment(), stamp, { ways: job.ways, from: job.from });
    this.#failed = !done;
    if (done) {
      this.#stamp = stamp;
      this.#last = clockText();
      this.#host.frame.put("storage", null);
    } else this.#host.frame.put("storage", band("storage", [FULL], [["Save a file", () => this.save()]]));
    this.#draw();
    return done;
  }

  /** Goes on with what was found: this tab is now the one that keeps it. */
  goOn(found) {
    this.on = true;
    this.#stamp = found.stamp;
    this.#last = found.when.slice(11);
    this.#draw();
  }

  get stamp() {
    return this.on ? this.#stamp : null;
  }

  begin(force = false) {
    const found = shopStore.load();
    if (found && !force) {
      this.#area.replaceChildren(this.#askReplace());
      this.#area.querySelector("button").focus();
      return;
    }
    this.#area.replaceChildren();
    this.on = true;
    if (!this.#write()) this.on = false;
    this.#draw();
  }

  stop() {
    this.on = false;
    this.#stamp = null;
    this.#last = "";
    this.#failed = false;
    this.#area.replaceChildren();
    this.#said.textContent = "";
    this.#draw();
  }

  #askReplace() {
    return el(
      "div",
      { class: "band", role: "group", "aria-label": "Replace the kept car?" },
      el("p", {}, "Another car is kept on this device already."),
      button("Put this one in its place", () => this.begin(true)),
      button("Leave the other one", () => this.#area.replaceChildren()),
    );
  }

  /** Another tab wrote meanwhile: nothing is merged, and one is asked for. */
  #other(found) {
    this.on = false;
    const { frame, goOn } = this.#host;
    const mine = this.#last;
    if (!found || found === "unreadable") {
      frame.put(
        "tabs",
        band("tabs", ["Another tab has erased this car from the device. This tab no longer keeps it."]),
      );
      this.#draw();
      return;
    }
    frame.put(
      "tabs",
      band(
        "tabs",
        [
          `Another tab has recorded on the car kept here, last at ${found.when.slice(11)}; that one is the newer. This tab kept its last press at ${mine}. Nothing is put together from both.`,
        ],
        [
          [
            "Go on with the newer one",
            () => {
              frame.put("tabs", null);
              goOn(found);
            },
          ],
          [
            "Go on with this one and keep it instead",
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

  async save() {
    const { job } = this.#host;
    saveFile("this-car.json", job.text());
    this.#safe = job.text();
    this.#said.textContent = "The file went to where your browser saves files.";
  }

  async #link() {
    const { job, rates, reply } = this.#host;
    const address = location.href.split("#")[0] + (await encode(toShare(job.car, reply(), rates(), today())));
    const tooLong = address.slice(address.indexOf("#")).length > MOST_LINK;
    if (tooLong) {
      this.#area.replaceChildren(
        el(
          "p",
          { class: "error" },
          "So much is recorded that it does not fit into a link. Save a file instead.",
        ),
      );
      return;
    }
    const area = el("textarea", {
      id: "car-link",
      rows: 4,
      readonly: true,
      spellcheck: "false",
      on: { focus: (event) => event.target.select() },
    });
    area.value = address;
    this.#area.replaceChildren(
      el(
        "div",
        { class: "link-box" },
        el("label", { for: "car-link" }, "The link"),
        area,
        el(
          "p",
          { class: "hint" },
          "It holds the answers and everything recorded. Whoever has it can read that, and it stays in histories and chats where it was pasted.",
        ),
        button("Copy the link", async () => {
          try {
            await navigator.clipboard.writeText(address);
            this.#said.textContent = "The link is copied.";
          } catch {
            area.focus();
          }
        }),
        button("Erase the link here", () => this.#area.replaceChildren(), { class: "quiet" }),
      ),
    );
    area.focus();
  }

  #draw() {
    const line = this.on
      ? `Kept on this device, last press at ${this.#last}.`
      : "Not kept on this device: it is gone when this tab is closed.";
    if (!this.node.hasChildNodes()) this.#build();
    this.line.textContent = this.on ? `Kept on this device ${this.#last}` : "Not kept on this device";
    this.node.querySelector(".keep-line").textContent = line;
    this.node.querySelector('[data-key="keep"]').hidden = this.on;
    this.node.querySelector('[data-key="erase"]').hidden = !this.on;
  }

  #build() {
    const erase = () => {
      shopStore.erase();
      this.on = false;
      this.#draw();
      this.#said.textContent = "Nothing of this car is kept on this device now.";
    };
    this.node.replaceChildren(
      el("h2", { id: "keep-title" }, "Keep it"),
      el("p", { class: "keep-line" }),
      el(
        "div",
        { class: "keep-buttons" },
        el(
          "div",
          {},
          button("Keep on this device", () => this.begin(), { "data-key": "keep" }),
          button("Erase from this device", erase, { "data-key": "erase" }),
          button("Save a file", () => this.save()),
          button("Make a link", () => this.#link()),
        ),
      ),
      this.#area,
      this.#said,
      el(
        "p",
        {},
        button("Another car", () => this.#host.again(), { class: "quiet", "data-key": "again" }),
      ),
    );
  }
}
